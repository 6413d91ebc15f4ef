"""OLD015 Somebody speaks of the new coat over the old

Checks
    The first new coat over the top old coat: some table or common practice speaks of the pair.
Why
    Where no public statement is found, the pair is neither accepted nor refused; the part itself has to show it.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]
Fails
    products.barrier.binder: acrylic_1k    # at jobs.refit.items.STEP.old_coats.stove
    jobs.refit.items.STEP.old_coats: [{id: stove, family: silicone_heat, thickness: 40 um}]

    Given second good
    products.mastic.binder: acrylic_1k
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: silicone_heat, thickness: 3 mil, sound: yes}    # at jobs.rails.items.LOCKER.old_coats.later    # also OVR001 at systems.deck.layers.gloss.product
To put right
    Lay a patch of the whole system on the prepared old paint and judge it by a written limit.
"""

from specgen.facts.pairs.old_paint import pass_limits, top_pairs
from specgen.facts.pairs.overcoat import Verdict
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("OLD015", on=Job, severity=NOTE, source=LOGIC)
def pair_not_covered(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.verdict.verdict is Verdict.NOT_LISTED and not pair.proven:
            what = f"cannot judge: {pair.sentence()}, and no patch test is stated"
            yield Problem(pair.old.path, what, f"lay a patch; it passes with {pass_limits()}", absolute=True)
