"""INS003 ISO 19840 is used within its scope

Checks
    A criterion to ISO 19840: its nominal DFT, and whether the items measured are blast-cleaned.
Why
    The standard was written for rough surfaces and thicker films; on sanded sheet and thin coats its acceptance rule has little meaning.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 40 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    systems.cab.layers.primer.film.nominal: 40 um
    systems.cab.total.nominal: 110 um

    Given second good
    jobs.lids.inspection.film.items: [FRAME]
    jobs.lids.inspection.film.after: gloss
    jobs.lids.inspection.film.criterion: {rule: ISO-19840, nominal: 2 mil, max: 2.5 mil, low_readings: fewer-than}
    jobs.lids.inspection.film.gauge: {principle: destructive}
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 30 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.nominal
    jobs.refit.substrate.material: steel_blasted    # also INS013 at jobs.refit.inspection.primer-film.criterion.nominal

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, max: 80 um, low_readings: fewer-than}    # note at jobs.refit.inspection.primer-film.criterion.nominal
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 39.9 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.nominal
    jobs.refit.substrate.material: steel_blasted    # also INS013 at jobs.refit.inspection.primer-film.criterion.nominal

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.rule
    jobs.refit.items.DOOR.substrate: {material: steel_blasted, thickness: 1.5 mm}
    jobs.refit.items.STEP.system: cab
To put right
    Write an own rule, such as no reading below a stated percentage of the nominal DFT and at most a stated number below nominal; or name SSPC-PA 2 with its level.
"""

from specgen.facts.job.criteria import criteria_of
from specgen.facts.job.inspected import places
from specgen.facts.job.points import is_rough
from specgen.model.acceptance import AcceptanceRule
from specgen.rules.kit import NOTE, WARNING, Job, Problem, Problems, Spec, date, rule, table
from specgen.trade.given import from_table


@rule("INS003", on=Job, severity=WARNING, source=table("iso_19840_limits").citation)
def iso_19840_in_its_field(job: Job, spec: Spec, on: date) -> Problems:
    limits = "iso_19840_limits"
    least = from_table(limits, table(limits).row("what", "nominal film, from"), "value", "thickness", "um").quantity
    for point in job.inspection:
        if point.criterion.rule is not AcceptanceRule.ISO_19840:
            continue
        # the thinnest film that is read is the one that may be below
        stated = [held.criterion for held in criteria_of(point, job, spec)] or [point.criterion]
        criterion = min(stated, key=lambda one: one.nominal.base if one.nominal is not None else 0)
        path = ("inspection", point.id, "criterion")
        if criterion.nominal is None:
            what = f"{point.id} states no nominal DFT, on which ISO 19840 is based"
            yield Problem((*path, "nominal"), what, "write the nominal DFT", severity=NOTE)
        elif criterion.nominal.base < least.base:
            yield Problem(
                (*path, "nominal"),
                f"nominal DFT {criterion.nominal} is below the scope of ISO 19840, which begins at {least}",
            )
        smooth = sorted({item.id for item, _ in places(point, job, spec) if not is_rough(job, item, spec)})
        if smooth:
            yield Problem((*path, "rule"), f"ISO 19840 is for rough surfaces; not blast-cleaned: {', '.join(smooth)}")
