"""OLD004 No system is applied where its patch test failed

Checks
    The patch test of each item.
Why
    The job itself proves that new and existing paint are incompatible; what lifts on a hand's breadth lifts on the whole panel.
Passes
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h}

    jobs.refit.items.DOOR.patch_test: {result: fail, limit: no lifting in 48 h}
    preparations.sand-steel.steps.strip: {id: strip, do: strip, text: Strip to the metal.}
Fails
    jobs.refit.items.DOOR.patch_test: {result: fail, limit: no lifting in 48 h}    # at jobs.refit.items.DOOR.patch_test.result

    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h}
    jobs.refit.items.STEP.patch_test: {result: fail, limit: no lifting in 48 h}    # at jobs.refit.items.STEP.patch_test.result
To put right
    Strip the existing coating, choose another system, or put a barrier coat between and prove it by a new test patch.
"""

from specgen.facts.job.stack import old_paint_goes
from specgen.model.job import PatchResult
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("OLD004", on=Job, severity=ERROR, source=LOGIC)
def patch_test_failed(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        test = item.patch_test
        if test is not None and test.result is PatchResult.FAIL and not old_paint_goes(job, item, spec):
            what = f"the patch test on the existing coating of {item.id} failed, but the system is still applied"
            yield Problem(("items", item.id, "patch_test", "result"), what)
