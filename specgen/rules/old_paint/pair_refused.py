"""OLD013 The first coat is compatible with the existing coating

Checks
    The first new coat over the outermost existing coat in the published tables, where no other rule covers the pair.
Why
    Coats that have failed on each other elsewhere fail here too.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]
Fails
    jobs.refit.items.STEP.old_coats: [{id: stove, family: silicone_heat, thickness: 40 um}]    # warning at jobs.refit.items.STEP.old_coats.stove

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: silicone_heat, thickness: 3 mil, sound: yes}    # warning at jobs.rails.items.LOCKER.old_coats.later
To put right
    Strip the existing coat, put a coat between that is compatible with both, or choose another system.
"""

from specgen.facts.pairs.old_paint import MADE_FOR_METAL, top_pairs
from specgen.facts.pairs.overcoat import overcoating
from specgen.rules.kit import ERROR, Job, Problem, Problems, Spec, date, rule


@rule(
    "OLD013",
    on=Job,
    severity=ERROR,
    source=overcoating("epoxy_2k", "vinyl").citation,
)
def pair_refused(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        told = pair.lifts or pair.bare_electrocoat or pair.old.family == "bituminous"
        if not pair.verdict.refused or told or pair.new.family in MADE_FOR_METAL:
            continue
        remedy = f"possible only with: {pair.verdict.asked()}" if pair.verdict.needs else ""
        yield Problem(pair.old.path, pair.sentence(), remedy, source=pair.verdict.citation, absolute=True)
