"""INS023 The prepared surface is inspected each day

Checks
    Each inspection point after the preparation that looks at the surface: it looks at least once a day, by its sampling or by the words of its frequency. Tests of abrasive, air, water and instruments are left out.
Why
    What is prepared today is coated today. A point that looks once a week lets the surfaces of the other days be coated without anybody having looked.
Passes
    jobs.refit.inspection.dust: {id: dust, check: Dust, at: after-preparation, frequency: Three places each shift, criterion: {text: quantity 2}}

    jobs.refit.inspection.grit: {id: grit, check: Salt in the abrasive, at: after-preparation, frequency: Once a week, criterion: {text: within the limit}}
Fails
    jobs.refit.inspection.dust: {id: dust, check: Dust, at: after-preparation, frequency: One place a month, criterion: {text: quantity 2}}    # at jobs.refit.inspection.dust.frequency

    jobs.refit.inspection.seen: {id: seen, check: Grade of the steel, at: after-preparation, sampling: {every: 7 days}, criterion: {text: as this document states}}    # at jobs.refit.inspection.seen.sampling.every
To put right
    Inspect each part, or each shift, before its first coat.
"""

import re

from specgen.facts.job.how_often import seldom
from specgen.facts.job.looked_for import CLIMATE
from specgen.model.acceptance import Stage
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule

_OF_THE_EQUIPMENT = re.compile(
    r"abrasive|grit\b|compressed|blast(?:ing)? air|\bwater\b|\boil in|gauge|instrument|calibrat|lead|exposure", re.I
)


@rule("INS023", on=Job, severity=WARNING, source=PRACTICE)
def surface_looked_at_each_day(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        said = f"{point.check} {point.method or ''}"
        found = seldom(point)
        if point.at is not Stage.PREPARED or found is None or _OF_THE_EQUIPMENT.search(said) or CLIMATE.search(said):
            continue
        typed = point.sampling is not None and point.sampling.every is not None
        key = ("sampling", "every") if typed else ("frequency",)
        what = f"{point.id} looks at the prepared surface less than once a day ({found}); what is prepared in between is coated without inspection"
        yield Problem(("inspection", point.id, *key), what)
