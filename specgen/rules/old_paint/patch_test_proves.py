"""OLD003 A patch test proves a pair that asks for one

Checks
    The first new coat over the top old coat: where the tables call for a patch test, as they do for strong solvent over old alkyd, one has passed by a limit that is written down.
Why
    Sources differ on such pairs, and so do old coats of one name; the part itself decides. The test method sets no limit, so without a written one anything passes.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h and class 1 of ISO 2409 after 7 days}

    jobs.refit.items.DOOR.old_coats: [{id: house, family: oil_alkyd, thickness: 30 um, cured: yes}, {id: factory, family: oem_finish, thickness: 60 um}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes}]    # at jobs.refit.items.DOOR.patch_test

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes}]    # at jobs.refit.items.DOOR.patch_test.limit
    jobs.refit.items.DOOR.patch_test: {result: pass}

    jobs.refit.items.STEP.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes}]    # at jobs.refit.items.STEP.patch_test

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: oil_alkyd, thickness: 3 mil, sound: yes, cured: yes}    # at jobs.rails.items.LOCKER.patch_test
To put right
    Lay a patch of the whole system on old paint prepared as in this job, and judge it by a written limit.
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
        limits = f"write the limit down; usual is {pass_limits()}"
        if test is None:
            what = f"{pair.sentence()}; it asks for a patch test and none is stated"
            yield Problem(path, what, f"lay a patch of the system on the old paint; it passes with {pass_limits()}")
        elif test.result is PatchResult.PASS:
            yield Problem(
                (*path, "limit"), f"{pair.stack.item.id}: the patch test passed, but by no written limit", limits
            )
