"""OLD002 Unknown old paint is rubbed and patch tested

Checks
    Each old coat that stays and whose family nobody states: the top one has a solvent rub or a patch test behind it, a deeper one the patch test.
Why
    Paint that a solvent dissolves lifts under strong new paint, and nobody sees it until the first coat lies on it. A lacquer far down in the stack does the same.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant}]

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h}

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um}]
    preparations.sand-steel.steps.strip: {id: strip, do: strip, text: Strip to the metal.}
Fails
    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um}]    # at jobs.refit.items.DOOR.old_coats.found.family

    jobs.refit.items.DOOR.old_coats: [{id: under, thickness: 40 um}, {id: factory, family: oem_finish, thickness: 60 um}]    # warning at jobs.refit.items.DOOR.old_coats.under.family

    Given second good
    without jobs.rails.items.LOCKER.old_coats.works.family    # warning at jobs.rails.items.LOCKER.old_coats.works.family

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, thickness: 3 mil}    # at jobs.rails.items.LOCKER.old_coats.later.family

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 60 um}]
    jobs.refit.items.STEP.old_coats: [{id: found, thickness: 60 um}]    # at jobs.refit.items.STEP.old_coats.found.family
To put right
    Rub a spot with a white rag wet with MEK or acetone and write down what it does (soluble, softens or resistant); then lay a patch of the whole system on prepared old paint and judge it by a written limit.
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
            remedy = f"rub it with MEK, then lay a patch; it passes with {pass_limits()}"
            if old is stack.top_of_old:
                what = f"{stack.item.id}: nobody knows what {old.name} is, and it was neither rubbed with solvent nor patch tested"
                yield Problem(
                    (*old.path, "family") if old.path[-1] != "material" else old.path, what, remedy, absolute=True
                )
            else:
                what = f"{stack.item.id}: nobody knows what {old.name} below the top coat is, and no patch was tested"
                yield Problem((*old.path, "family"), what, remedy, severity=WARNING, absolute=True)
