"""INS009 The blast profile is deducted from the readings

Checks
    A point that measures DFT with a magnetic gauge zeroed on smooth steel, on blast-cleaned items: it states the correction value deducted from every reading. Where the point does not count by ISO 19840, common practice asks for it; not on zinc, which is read before and deducted.
Why
    Such a gauge measures into the valleys of the profile and includes part of it in the reading; the film is then accepted but is too thin on the peaks.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, zeroed_on: smooth-steel, correction: 25 um}

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, zeroed_on: blast-profile}
Fails
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, zeroed_on: smooth-steel}    # at jobs.refit.inspection.primer-film.gauge.correction

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, zeroed_on: smooth-steel}    # at jobs.refit.inspection.primer-film.gauge.correction

    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, gauge: {principle: magnetic, zeroed_on: smooth-steel}, criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: at-most}}    # at jobs.refit.inspection.base-film.gauge.correction    # also INS013 at jobs.refit.inspection.base-film.criterion.max    # also INS013 at jobs.refit.inspection.base-film.criterion.nominal

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.items.STEP.substrate: {material: steel_blasted, thickness: 2 mm}
    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, zeroed_on: smooth-steel}    # at jobs.refit.inspection.primer-film.gauge.correction    # also INS003 at jobs.refit.inspection.primer-film.criterion.rule
To put right
    Write as correction 10 um for a fine, 25 um for a medium or 40 um for a coarse profile; or zero the gauge on the profile.
"""

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import is_rough, material_of, principle_of
from specgen.facts.pairs.parts import members
from specgen.model.acceptance import AcceptanceRule, GaugePrinciple, ZeroedOn
from specgen.model.job import Item
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule, table


@rule(
    "INS009",
    on=Job,
    severity=WARNING,
    source=table("iso_19840_corrections").citation,
)
def profile_taken_off(job: Job, spec: Spec, on: date) -> Problems:
    usual = ", ".join(f"{row['correction_um']} um ({row['profile']})" for row in table("iso_19840_corrections").rows)
    for point in film_points(job):
        gauge = point.gauge
        if gauge is None or gauge.correction is not None or principle_of(point) is not GaugePrinciple.MAGNETIC:
            continue
        iso = point.criterion.rule is AcceptanceRule.ISO_19840
        items = [item for item, _ in places(point, job, spec)]
        rough = any(is_rough(job, item, spec) and (iso or _is_steel(job, item, spec)) for item in items)
        if gauge.zeroed_on is ZeroedOn.SMOOTH and rough:
            what = f"the gauge of {point.id} is zeroed on smooth steel and no correction value is stated; usual value: {usual}"
            yield Problem(("inspection", point.id, "gauge", "correction"), what, source=None if iso else PRACTICE)


def _is_steel(job: Job, item: Item, spec: Spec) -> bool:
    row = material_of(job, item, spec)
    return row is not None and row["magnetic"] == "yes" and row["id"] not in members("galvanized")
