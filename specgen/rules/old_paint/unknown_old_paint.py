"""OLD002 An unknown existing coating is solvent-rubbed and patch-tested

Checks
    Each existing coat that remains and whose generic type is not stated: for the outermost one a solvent rub or a patch test is stated, for a deeper one the patch test.
Why
    Paint that a solvent dissolves lifts beneath strong new paint, and this is seen only when the first coat is on it. A lacquer deep in the existing coating does the same.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant, lead: no, chromate: no}]

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, lead: no, chromate: no}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h}

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, lead: no, chromate: no}]
    preparations.sand-steel.steps.strip: {id: strip, do: strip, text: Strip to the metal.}
Fails
    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, lead: no, chromate: no}]    # at jobs.refit.items.DOOR.old_coats.found.family

    jobs.refit.items.DOOR.old_coats: [{id: under, thickness: 40 um, lead: no, chromate: no}, {id: factory, family: oem_finish, thickness: 60 um, lead: no, chromate: no}]    # warning at jobs.refit.items.DOOR.old_coats.under.family

    Given second good
    without jobs.rails.items.LOCKER.old_coats.works.family    # warning at jobs.rails.items.LOCKER.old_coats.works.family
    jobs.rails.items.LOCKER.old_coats.works.lead: no
    jobs.rails.items.LOCKER.old_coats.works.chromate: no

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, thickness: 3 mil, lead: no, chromate: no}    # at jobs.rails.items.LOCKER.old_coats.later.family

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 60 um, lead: no, chromate: no}]
    jobs.refit.items.STEP.old_coats: [{id: found, thickness: 60 um, lead: no, chromate: no}]    # at jobs.refit.items.STEP.old_coats.found.family
To put right
    Rub a spot with a white rag wetted with MEK or acetone and record the result (soluble, softens or resistant); then apply a test patch of the whole system on the prepared existing coating and assess it against a written limit.
"""

from specgen.facts.job.stack import stacks
from specgen.facts.pairs.old_paint import citation_of, pass_limits
from specgen.rules.kit import ERROR, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("OLD002", on=Job, severity=ERROR, source=citation_of("rub_test"))
def unknown_old_paint(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        if stack.item.patch_test is not None or stack.first is None:
            continue
        for old in stack.old:
            if old.family is not None or (old is stack.top_of_old and old.coat.rub is not None):
                continue
            remedy = f"rub it with MEK, then apply a test patch; acceptance criterion: {pass_limits()}"
            if old is stack.top_of_old:
                what = f"{stack.item.id}: {old.name} is of unknown type and has neither a solvent rub nor a patch test"
                yield Problem(
                    (*old.path, "family") if old.path[-1] != "material" else old.path, what, remedy, absolute=True
                )
            else:
                what = f"{stack.item.id}: {old.name}, below the outermost existing coat, is of unknown type and has no patch test"
                yield Problem((*old.path, "family"), what, remedy, severity=WARNING, absolute=True)
