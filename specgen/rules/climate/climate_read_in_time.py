"""CLI011 The ambient conditions are measured each day before coating

Checks
    Each inspection point whose inspection or method names the ambient conditions: it looks at least once a day, and outdoors or on site more often, by its sampling or by the words of its frequency, and at least one such point does not fall only at receipt or completion.
Why
    The dew point moves by the hour. Conditions read once a week, or when the paint is already on, say nothing of the day on which the coat was laid.
Passes
    jobs.refit.inspection.air: {id: air, check: Air temperature and dew point, at: during-application, frequency: Before each coat and weekly by the recorder, criterion: {text: inside the limits}}

    jobs.refit.inspection.air: {id: air, check: Air temperature and dew point, at: during-application, frequency: Once a week, sampling: {every: 24 h}, criterion: {text: inside the limits}}

    jobs.refit.inspection.air: {id: air, check: Air temperature and dew point, at: completion, criterion: {text: records complete}}
    jobs.refit.inspection.dew: {id: dew, check: Dew point, at: during-application, criterion: {text: inside the limits}}
Fails
    jobs.refit.inspection.air: {id: air, check: Air temperature and dew point, at: during-application, frequency: Once a week, criterion: {text: inside the limits}}    # at jobs.refit.inspection.air.frequency

    jobs.refit.inspection.air: {id: air, check: Climate, at: during-application, sampling: {every: 25 h}, criterion: {text: inside the limits}}    # at jobs.refit.inspection.air.sampling.every

    jobs.refit.inspection.air: {id: air, check: Climate, at: during-application, frequency: "Once, on the first day", criterion: {text: inside the limits}}    # at jobs.refit.inspection.air.frequency

    jobs.refit.workplace: outdoors    # at jobs.refit.inspection.air.frequency
    jobs.refit.inspection.air: {id: air, check: Climate, at: during-application, frequency: Each morning, criterion: {text: inside the limits}}

    jobs.refit.inspection.air: {id: air, check: Climate, at: completion, criterion: {text: inside the limits}}    # at jobs.refit.inspection.air.at
To put right
    Measure air, surface temperature, humidity and dew point before each coat and every four hours while coating, and after every change of weather.
"""

from specgen.facts.job.how_often import once_a_day, seldom
from specgen.facts.job.looked_for import CLIMATE
from specgen.model.acceptance import Stage
from specgen.model.application import OPEN_AIR
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule

_TOO_LATE_OR_EARLY = {Stage.RECEIPT, Stage.COMPLETION}


@rule("CLI011", on=Job, severity=WARNING, source=PRACTICE)
def climate_read_in_time(job: Job, spec: Spec, on: date) -> Problems:
    points = [point for point in job.inspection if CLIMATE.search(f"{point.check} {point.method or ''}")]
    for point in points:
        found = seldom(point)
        if found is not None and point.at not in _TOO_LATE_OR_EARLY:
            typed = point.sampling is not None and point.sampling.every is not None
            key = ("sampling", "every") if typed else ("frequency",)
            what = (
                f"{point.id} measures the ambient conditions less than once a day ({found}); they change within hours"
            )
            yield Problem(("inspection", point.id, *key), what)
        daily = once_a_day(point) if found is None and job.workplace in OPEN_AIR else None
        if daily is not None:
            what = f"{point.id} measures the ambient conditions once a day ({daily}); outdoors they change within hours"
            yield Problem(("inspection", point.id, "frequency"), what)
    if points and all(point.at in _TOO_LATE_OR_EARLY for point in points):
        first = points[0]
        what = (
            f"{first.id} measures the ambient conditions at {first.at}, and no point does while the coats are applied"
        )
        yield Problem(("inspection", first.id, "at"), what)
