"""CLI009 Outdoors and on site the ambient conditions are measured before coating

Checks
    Jobs worked outdoors or on site: an inspection point, or a test step of the preparation, names the ambient conditions or one of them: air, surface temperature, humidity, dew point, weather.
Why
    In the open, temperature and dew point change by the hour. A limit that nobody measures is met on paper only, and paint laid on dew blisters or peels.
Passes
    jobs.refit.workplace: outdoors
    jobs.refit.inspection.dew: {id: dew, check: Dew point, at: during-application, criterion: {text: inside the limits}}

    jobs.refit.workplace: outdoors
    preparations.sand-steel.steps.air: {id: air, do: test, text: Measure air and surface temperature and humidity.}
Fails
    Given second good
    without jobs.rails.inspection.climate    # at jobs.rails.inspection

    Given second good
    without jobs.lids.inspection.climate    # at jobs.lids.inspection

    jobs.refit.workplace: outdoors    # at jobs.refit.inspection
To put right
    Add a point at: during-application that measures air, surface temperature, humidity and dew point before each coat and every few hours, with what is done outside the limits.
"""

from specgen.facts.job.looked_for import CLIMATE, words_of
from specgen.model.acceptance import Stage
from specgen.model.application import Workplace
from specgen.model.preparation import StepKind
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule

_IN_THE_OPEN = {Workplace.OUTDOORS, Workplace.ON_SITE}


@rule("CLI009", on=Job, severity=WARNING, source=PRACTICE)
def climate_read_outdoors(job: Job, spec: Spec, on: date) -> Problems:
    if job.workplace not in _IN_THE_OPEN:
        return
    used = [found for item in job.items if (found := spec.preparation_of(job, item)) is not None]
    said = [words_of(point) for point in job.inspection if point.at is not Stage.RECEIPT]
    said += [f"{step.text} {step.acceptance or ''}" for each in used for step in each.steps if step.do is StepKind.TEST]
    if not any(CLIMATE.search(text) for text in said):
        what = f"the work of {job.id} is {job.workplace}, but no inspection point measures air, surface temperature, humidity or dew point"
        yield Problem(("inspection",), what)
