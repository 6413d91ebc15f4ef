"""USU012 The correction of a gauge is part of the profile

Checks
    The correction value deducted from the readings on blast-cleaned items, against the upper end of the profile that their preparation specifies, and where the gauge is zeroed on smooth steel against the correction for a fine profile, 10 um. On galvanised steel the correction is the zinc, and is not judged.
Why
    The correction stands for the part of the profile that the gauge reads as film. Above the whole profile it takes paint off the record, and every sound coat is rejected.
Passes
    Given second good
    jobs.rails.inspection.first.gauge: {principle: magnetic, zeroed_on: smooth-steel, correction: 1.5 mil}

    Given second good
    jobs.rails.substrate: {material: galvanized_hot_dip, thickness: 0.25 in, zinc_state: new}
    jobs.rails.inspection.first.gauge: {principle: magnetic, correction: 85 um}
    jobs.rails.inspection.film.gauge: {principle: magnetic, correction: 85 um}
    preparations.blast.steps.blast: {id: blast, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: max 500 um, pressure: 250 kPa, zinc_loss: 10 um, profile: 1..1.5 mil, profile_method: ISO 8503-5}
    without jobs.rails.items.LOCKER
    without jobs.lids.items.FRAME
Fails
    Given second good
    jobs.rails.inspection.first.gauge: {principle: magnetic, zeroed_on: smooth-steel, correction: 1.6 mil}    # at jobs.rails.inspection.first.gauge.correction

    Given second good
    jobs.rails.inspection.first.gauge: {principle: magnetic, zeroed_on: smooth-steel, correction: 9 um}    # at jobs.rails.inspection.first.gauge.correction
To put right
    Zero the gauge on the blasted surface and note the difference to smooth steel, or take the usual value for the profile: 10 um for fine, 25 um for medium, 40 um for coarse.
"""

from specgen.facts.job.inspected import places
from specgen.facts.pairs.parts import members
from specgen.facts.usual import proportion
from specgen.model.acceptance import Gauge, ZeroedOn
from specgen.model.preparation import Substrate
from specgen.rules.kit import LOGIC, PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USU012", on=Job, severity=WARNING, source=LOGIC)
def correction_below_profile(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        correction = point.gauge.correction if point.gauge is not None else None
        if correction is None:
            continue
        read = [item for item, _ in places(point, job, spec)]
        if any(_galvanised(spec.substrate_of(job, item)) for item in read):
            continue
        prepared = [spec.preparation_of(job, item) for item in read]
        steps = [step for one in prepared if one is not None for step in one.steps]
        highs = [step.profile.high for step in steps if step.profile is not None and step.profile.high is not None]
        if highs and correction > max(highs):
            what = f"correction {correction}; the profile below the paint is at most {max(highs)}"
            yield Problem(("inspection", point.id, "gauge", "correction"), what)
        elif highs and _on_smooth_steel(point.gauge) and correction.to("um") < proportion("correction_least"):
            what = (
                f"correction {correction}; of a blast profile, even a fine one, the gauge reads 10 um or more as film"
            )
            yield Problem(("inspection", point.id, "gauge", "correction"), what, source=PRACTICE)


def _galvanised(substrate: Substrate | None) -> bool:
    return substrate is not None and substrate.material in members("galvanized")


def _on_smooth_steel(gauge: Gauge | None) -> bool:
    return gauge is not None and gauge.zeroed_on is ZeroedOn.SMOOTH
