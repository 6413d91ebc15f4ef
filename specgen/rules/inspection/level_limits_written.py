"""INS005 The limits of an SSPC-PA 2 level are written out

Checks
    A criterion to SSPC-PA 2 at a level other than 1 and 3 states its limits for spot and area measurements as numbers; without them this is a note. A level that the standard does not have is a warning.
Why
    The standard sets the limits of each level, but only those of levels 1 and 3 were seen quoted here, level 1 as the one that allows no deviation; readings are not assessed by limits that nobody has verified.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 4, min: 40 um, max: 80 um, spot_min: 32 um, area_min: 40 um, area_max: 80 um, spot_max: 120 um}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 1, min: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 5, min: 40 um, max: 80 um, spot_min: 32 um, area_min: 40 um}

    jobs.refit.inspection.primer-film.criterion: {rule: own, level: 4, min: 40 um, max: 80 um, text: every reading}
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 4, min: 40 um, max: 80 um}    # note at jobs.refit.inspection.primer-film.criterion.level

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 7, min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.level

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 4, min: 40 um, max: 80 um, spot_min: 32 um, area_min: 40 um, area_max: 80 um}    # note at jobs.refit.inspection.primer-film.criterion.level

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 4, min: 40 um, max: 80 um, spot_min: 32 um, area_min: 40 um, spot_max: 120 um}    # note at jobs.refit.inspection.primer-film.criterion.level

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 5, min: 40 um, max: 80 um, spot_min: 32 um}    # note at jobs.refit.inspection.primer-film.criterion.level

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 6, min: 40 um, max: 80 um}    # warning at jobs.refit.inspection.primer-film.criterion.level
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, criterion: {rule: SSPC-PA-2, edition: "2012", level: 2, min: 15 um, max: 30 um, area_min: 15 um}}    # note at jobs.refit.inspection.base-film.criterion.level    # also INS013 at jobs.refit.inspection.base-film.criterion.max    # also INS013 at jobs.refit.inspection.base-film.criterion.min
To put right
    Write spot_min, spot_max, area_min and area_max from the standard.
"""

from specgen.model.acceptance import AcceptanceRule
from specgen.rules.kit import NOTE, WARNING, Job, Problem, Problems, Spec, date, rule, table


@rule("INS005", on=Job, severity=WARNING, source=table("sspc_pa_2_levels").citation)
def level_limits_written(job: Job, spec: Spec, on: date) -> Problems:
    levels = {row["level"]: row for row in table("sspc_pa_2_levels").rows}
    for point in job.inspection:
        criterion = point.criterion
        if criterion.rule is not AcceptanceRule.PA_2 or criterion.level is None:
            continue
        path = ("inspection", point.id, "criterion", "level")
        row = levels.get(str(criterion.level))
        if row is None:
            yield Problem(path, f"{criterion.level} is not a level of SSPC-PA 2; its levels are: {', '.join(levels)}")
            continue
        # A level without a most spot, as far as known, needs none written.
        needed = ["spot_min", "area_min", *(["spot_max", "area_max"] if row["spot_max_pct"] else [])]
        lacking = [name for name in needed if getattr(criterion, name) is None]
        if row["seen"] != "yes" and lacking:
            what = f"level {criterion.level} of {point.id} is stated without {', '.join(lacking)}"
            yield Problem(path, what, severity=NOTE)
