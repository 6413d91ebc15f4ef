"""OLD003 A patch test proves the combinations that require one

Checks
    The first new coat over the outermost existing coat: where the tables require a patch test, as they do for strong solvent over aged alkyd, one has passed against a written limit.
Why
    Sources differ on such pairs, and so do existing coats of the same name; the part itself decides. The test method sets no limit, so without a written one any result is accepted.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, lead: no, chromate: no}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h and class 1 of ISO 2409 after 7 days}

    jobs.refit.items.DOOR.old_coats: [{id: house, family: oil_alkyd, thickness: 30 um, cured: yes, lead: no, chromate: no}, {id: factory, family: oem_finish, thickness: 60 um, lead: no, chromate: no}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, lead: no, chromate: no}]    # at jobs.refit.items.DOOR.patch_test

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, lead: no, chromate: no}]    # at jobs.refit.items.DOOR.patch_test.limit
    jobs.refit.items.DOOR.patch_test: {result: pass}

    jobs.refit.items.STEP.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, lead: no, chromate: no}]    # at jobs.refit.items.STEP.patch_test

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: oil_alkyd, thickness: 3 mil, sound: yes, cured: yes, lead: no, chromate: no}    # at jobs.rails.items.LOCKER.patch_test
To put right
    Apply a test patch of the whole system on existing coating prepared as in this job, and assess it against a written limit.
"""

from specgen.facts.pairs.old_paint import citation_of, pass_limits, top_pairs
from specgen.model.job import PatchResult
from specgen.rules.kit import WARNING, Job, Problem, Problems, Spec, date, rule


@rule("OLD003", on=Job, severity=WARNING, source=citation_of("patch_test"))
def patch_test_proves(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.verdict.refused or not pair.verdict.patch_test or pair.proven:
            continue
        test = pair.stack.item.patch_test
        path = ("items", pair.stack.item.id, "patch_test")
        limits = f"write the limit; usual: {pass_limits()}"
        if test is None:
            what = f"{pair.sentence()}; a patch test is required but not stated"
            remedy = f"apply a test patch of the system on the existing coating; acceptance criterion: {pass_limits()}"
            yield Problem(path, what, remedy)
        elif test.result is PatchResult.PASS:
            yield Problem(
                (*path, "limit"), f"{pair.stack.item.id}: the patch test passed, but no limit is stated for it", limits
            )
