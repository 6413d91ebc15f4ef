"""OLD005 The first coat does not lift the existing coating

Checks
    The first new coat over the outermost existing coat: strong solvent over paint that dissolves (lacquer, vinyl, chlorinated rubber, whatever comes off in the solvent rub), and solvent over alkyd that is not through-dry.
Why
    The solvent swells or dissolves the existing coat; it wrinkles and blisters within minutes and no later coat hides it.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, rub: resistant, lead: no, chromate: no}]
Fails
    jobs.refit.items.STEP.old_coats: [{id: shop, family: vinyl, thickness: 60 um, lead: no, chromate: no}]    # at jobs.refit.items.STEP.old_coats.shop

    jobs.refit.items.STEP.old_coats: [{id: found, thickness: 60 um, rub: soluble, lead: no, chromate: no}]    # at jobs.refit.items.STEP.old_coats.found

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 60 um, lead: no, chromate: no}, {id: house, family: oil_alkyd, thickness: 30 um, cured: no, sound: yes, lead: no, chromate: no}]    # warning at jobs.refit.items.DOOR.old_coats.house

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: chlorinated_rubber, thickness: 3 mil, sound: yes, rub: soluble, lead: no, chromate: no}    # at jobs.rails.items.LOCKER.old_coats.later
To put right
    Strip the existing coat; or wait until it is hard; or seal it with waterborne paint, proven by a patch test with a written limit.
"""

from specgen.facts.pairs.old_paint import MADE_FOR_METAL, top_pairs
from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import ERROR, Job, Problem, Problems, Spec, date, rule


@rule("OLD005", on=Job, severity=ERROR, source=table_row("mechanisms", "lifting"))
def top_coat_lifts(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.lifts and pair.new.family not in MADE_FOR_METAL:
            yield Problem(pair.old.path, pair.sentence(), source=pair.verdict.citation, absolute=True)
