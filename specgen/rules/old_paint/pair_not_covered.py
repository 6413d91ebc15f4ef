"""OLD015 A source covers the new coat over the existing one

Checks
    The first new coat over the outermost existing coat: a table or common practice covers the pair.
Why
    Where no public statement is found, the pair is neither accepted nor refused; a test on the part itself must decide.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]
Fails
    products.barrier.binder: acrylic_1k    # at jobs.refit.items.STEP.old_coats.stove
    jobs.refit.items.STEP.old_coats: [{id: stove, family: silicone_heat, thickness: 40 um}]

    Given second good
    products.mastic.binder: acrylic_1k
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: silicone_heat, thickness: 3 mil, sound: yes}    # at jobs.rails.items.LOCKER.old_coats.later    # also OVR001 at systems.deck.layers.gloss.product
To put right
    Apply a test patch of the whole system on the prepared existing coating and assess it against a written limit.
"""

from specgen.facts.pairs.families import NOT_NAMED
from specgen.facts.pairs.old_paint import pass_limits, top_pairs
from specgen.facts.pairs.overcoat import Verdict
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("OLD015", on=Job, severity=NOTE, source=LOGIC)
def pair_not_covered(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.new.family != NOT_NAMED and pair.verdict.verdict is Verdict.NOT_LISTED and not pair.proven:
            what = f"{pair.sentence()}, and no patch test is stated: the pair cannot be assessed"
            yield Problem(
                pair.old.path, what, f"apply a test patch; acceptance criterion: {pass_limits()}", absolute=True
            )
