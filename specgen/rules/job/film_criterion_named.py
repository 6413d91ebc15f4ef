"""JOB003 A DFT criterion names its acceptance rule

Checks
    Each inspection point whose criterion states a minimum, nominal or maximum DFT also names the acceptance rule for the readings (one as specified that names none accepts no reading outside the limits), and its edition where that rule is SSPC-PA 2 (a warning where a level stands beside a minimum or maximum, which every edition with levels reads alike), with its level from the edition of 2012 on; earlier editions had no levels. A minimum alone needs no rule: no reading may be below it. An own rule states what it counts, in keys or in words; the keys of an own rule stand under no other.
Why
    The same readings satisfy one acceptance rule and fail another, and the editions of one rule differ; without the name it cannot be decided whether a low reading fails.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: 90-10, nominal: 60 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2004", min: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "1 May 2004", min: 40 um}

    jobs.refit.inspection.primer-film.criterion: {min: 40 um}

    jobs.refit.inspection.primer-film.criterion: {min: 40 um, text: at least 40 um at every spot}

    jobs.refit.inspection.primer-film.criterion: {as_specified: yes}

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, each: spot}

    jobs.refit.inspection.primer-film.criterion: {rule: own, nominal: 60 um, max: 80 um, least_reading: 80 %, below_nominal: 10 %}
Fails
    jobs.refit.inspection.primer-film.criterion: {min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, level: 3, min: 40 um, max: 80 um}    # warning at jobs.refit.inspection.primer-film.criterion.edition

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.edition

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, level: 3, nominal: 60 um}    # at jobs.refit.inspection.primer-film.criterion.edition

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, below_nominal: 10 %}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um, each: spot}    # warning at jobs.refit.inspection.primer-film.criterion.each

    jobs.refit.inspection.primer-film.criterion: {nominal: 60 um, text: all}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.primer-film.criterion: {max: 60 um, text: all}    # at jobs.refit.inspection.primer-film.criterion.rule    # also INS013 at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2004", level: 3, min: 40 um, max: 80 um}    # warning at jobs.refit.inspection.primer-film.criterion.level

    jobs.refit.inspection.prepared.criterion: {}    # at jobs.refit.inspection.prepared.criterion.text

    Given second good
    jobs.lids.inspection.film.criterion: {rule: SSPC-PA-2, edition: "2012", min: 2.3 mil, max: 3.8 mil}    # at jobs.lids.inspection.film.criterion.level    # also INS013 at jobs.lids.inspection.film.criterion.max    # also INS013 at jobs.lids.inspection.film.criterion.min
To put right
    Name the rule with its edition and level, or write rule: own and what it counts (each: reading, each: spot, or least_reading and below_nominal with nominal), or its wording.
"""

import re

from specgen.facts.job.counting import counting
from specgen.model.acceptance import AcceptanceRule, Criterion
from specgen.rules.kit import ERROR, LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule, table

_EDITIONS = table("sspc_pa_2_editions")


@rule("JOB003", on=Job, severity=ERROR, source=LOGIC)
def film_criterion_named(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        criterion = point.criterion
        path = ("inspection", point.id, "criterion")
        film = any(value is not None for value in (criterion.min, criterion.nominal, criterion.max))
        # a minimum alone is read one way only: no reading is below it
        counted = criterion.nominal is not None or criterion.max is not None
        if counted and criterion.rule is None and not criterion.as_specified:
            yield Problem((*path, "rule"), f"the DFT criterion of {point.id} names no acceptance rule")
        if criterion.rule is AcceptanceRule.PA_2:
            yield from _edition_and_level(criterion, point.id)
        if criterion.rule is AcceptanceRule.OWN and criterion.text is None and counting(criterion) is None:
            yield Problem((*path, "text"), f"{point.id} names rule: own but gives no wording for it")
        for name in ("each", "least_reading", "below_nominal"):
            if getattr(criterion, name) is not None and criterion.rule is not AcceptanceRule.OWN:
                what = f"{point.id} states {name}, which is read under rule: own alone"
                yield Problem((*path, name), what, "write rule: own, or leave the key out", WARNING)
        if criterion.rule is None and criterion.text is None and not film and not criterion.as_specified:
            yield Problem((*path, "text"), f"the inspection point {point.id} has no acceptance criterion")


def _edition_and_level(criterion: Criterion, point: str) -> Problems:
    path = ("inspection", point, "criterion")
    if criterion.edition is None:
        what = f"the criterion of {point} names SSPC-PA 2 without its edition"
        # a level and a limit of its own are read alike in every edition that has levels
        limits = (
            criterion.min,
            criterion.max,
            criterion.spot_min,
            criterion.spot_max,
            criterion.area_min,
            criterion.area_max,
        )
        alike = criterion.level is not None and any(limit is not None for limit in limits)
        yield Problem((*path, "edition"), what, severity=WARNING if alike else None)
        return
    years = [int(year) for year in re.findall(r"(?:19|20)\d\d", criterion.edition)]
    first = min(int(row["from_edition"]) for row in _EDITIONS.rows if row["levels"] == "yes")
    without_levels = bool(years) and max(years) < first
    if without_levels and criterion.level is not None:
        what = f"{point} names a level of SSPC-PA 2 in the edition {criterion.edition}, which has no levels"
        yield Problem(
            (*path, "level"),
            what,
            f"name the edition of {first} or a later one, or leave the level out",
            WARNING,
            _EDITIONS.citation,
        )
    elif criterion.level is None and not without_levels:
        yield Problem((*path, "level"), f"the criterion of {point} names SSPC-PA 2 without its level")
