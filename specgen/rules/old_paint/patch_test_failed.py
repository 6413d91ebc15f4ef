"""OLD004 No system goes on where its patch test failed

Checks
    The patch test of each item.
Why
    The job holds its own proof that new and old paint do not go together; what lifts on a hand's breadth lifts on the whole panel.
Passes
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h}

    jobs.refit.items.DOOR.patch_test: {result: fail, limit: no lifting in 48 h}
    preparations.sand-steel.steps.strip: {id: strip, do: strip, text: Strip to the metal.}
Fails
    jobs.refit.items.DOOR.patch_test: {result: fail, limit: no lifting in 48 h}    # at jobs.refit.items.DOOR.patch_test.result

    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h}
    jobs.refit.items.STEP.patch_test: {result: fail, limit: no lifting in 48 h}    # at jobs.refit.items.STEP.patch_test.result
To put right
    Strip the old paint, choose another system, or put a barrier between and prove it by a new patch.
"""

from specgen.facts.job.stack import old_paint_goes
from specgen.model.job import PatchResult
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("OLD004", on=Job, severity=ERROR, source=LOGIC)
def patch_test_failed(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        test = item.patch_test
        if test is not None and test.result is PatchResult.FAIL and not old_paint_goes(job, item, spec):
            what = f"the patch test on the old paint of {item.id} failed, and the system goes on all the same"
            yield Problem(("items", item.id, "patch_test", "result"), what)
