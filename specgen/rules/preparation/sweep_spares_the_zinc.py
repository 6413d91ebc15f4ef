"""PRE007 Sweep-blasting preserves the zinc coating

Checks
    Each sweep-blasting step on galvanised steel: its pressure, its abrasive grain size and its maximum zinc removal, against the documents, which differ. Distance and angle are not assessed: the documents contradict each other. Of a grain size stated as no larger than a figure only that figure is judged. Without pressure and grain size it cannot be assessed.
Why
    A hard sweep removes the zinc that protects the steel for decades, or lifts it in flakes that take the paint with them.
Passes
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 200..500 um, pressure: 2.7 bar, zinc_loss: 10 um, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 150..800 um, pressure: 275 kPa, zinc_loss: 10 um, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep with grain no larger than 500 um., grade: SP 16, medium: garnet, grain: max 500 um, pressure: 275 kPa, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}
Fails
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 200..500 um, pressure: 4 bar, zinc_loss: 15 um, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.sweep.steps.sweep.pressure    # also PRE007 at preparations.sweep.steps.sweep.zinc_loss

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 500..1200 um, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.sweep.steps.sweep.grain    # also PRE007 note at preparations.sweep.steps.sweep.pressure

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 149..800 um, pressure: 276 kPa, zinc_loss: 10.1 um, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.sweep.steps.sweep.grain    # note at preparations.sweep.steps.sweep.pressure    # at preparations.sweep.steps.sweep.zinc_loss

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: first, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 200..500 um, pressure: 40 psi, profile: 19..20 um, profile_method: ISO 8503-5}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 150..801 um, pressure: 250 kPa, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # note at preparations.sweep.steps.first.pressure    # at preparations.sweep.steps.sweep.grain

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, pressure: 275 kPa, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # note at preparations.sweep.steps.sweep.grain

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: sweep
    preparations.sweep: {id: sweep, title: Sweep, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: max 801 um, pressure: 275 kPa, profile: 19..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.sweep.steps.sweep.grain

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    preparations.sand-steel.steps.dust: {id: dust, do: sweep-blast, text: Sweep., medium: garnet, grain: 200..500 um, pressure: 276 kPa, profile: 13..20 um, profile_method: ISO 8503-5}    # note at preparations.sand-steel.steps.dust.pressure
To put right
    Sweep-blast with a fine non-metallic abrasive, at the lower of the two pressures, and measure the zinc before and after.
"""

from fractions import Fraction

from specgen.facts.pairs.parts import prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import NOTE, WARNING, Preparation, Problem, Problems, Row, Spec, cite, date, rule, table
from specgen.standards.citations import documents

_LIMITS = table("sweep_blast_limits")


@rule("PRE007", on=Preparation, severity=WARNING, source=cite("HDGASA-9"))
def sweep_spares_the_zinc(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if not any(part.is_zinc for part in prepared_with(preparation, spec)):
        return
    for step in preparation.steps:
        if step.do is StepKind.SWEEP:
            yield from _pressure(step)
            yield from _grain(step)
            yield from _zinc_loss(step)


def _pressure(step: PreparationStep) -> Problems:
    path, (strict, wide) = ("steps", step.id, "pressure"), sorted(_rows("pressure"), key=lambda row: int(row["most"]))
    if step.pressure is None:
        yield _missing(path, "pressure", f"write it, at most {strict['most']} kPa")
    elif (stated := step.pressure.to("kPa")) > int(strict["most"]):
        said = f"{_said(strict, strict['most'])}, {_said(wide, wide['most'])}"
        mild = NOTE if stated <= int(wide["most"]) else None
        yield Problem(
            path, f"sweep-blasted at {step.pressure}; the maximum is {said}", "", mild, _LIMITS.row_citation(wide)
        )


def _grain(step: PreparationStep) -> Problems:
    path, rows = ("steps", step.id, "grain"), _rows("grain")
    if step.grain is None:
        yield _missing(path, "abrasive grain size", "write it, as in 200..500 um")
        return
    low, high = step.grain.low, step.grain.high
    least, most = min(int(row["least"]) for row in rows), max(int(row["most"]) for row in rows)
    too_fine = low is not None and low.to("um") < least
    too_coarse = high is not None and high.to("um") > most
    if high is None or too_fine or too_coarse:
        said = ", ".join(_said(row, f"{row['least']} to {row['most']}") for row in rows)
        source = _LIMITS.row_citation(max(rows, key=lambda row: int(row["most"])))
        yield Problem(path, f"grain size {step.grain} is outside the range of every document: {said}", source=source)


def _zinc_loss(step: PreparationStep) -> Problems:
    (usual,), (hard,) = _rows("zinc loss"), _rows("zinc loss, hard limit")
    if step.zinc_loss is None or step.zinc_loss.to("um") <= Fraction(usual["most"]):
        return
    beyond = step.zinc_loss.to("um") > Fraction(hard["most"])
    row, called = (hard, "the hard limit") if beyond else (usual, "the usual limit")
    what = f"the step may remove {step.zinc_loss} of zinc; {called} is {row['most']} {row['unit']}"
    yield Problem(("steps", step.id, "zinc_loss"), what, source=_LIMITS.row_citation(row))


def _rows(what: str) -> list[Row]:
    return [row for row in _LIMITS.rows if row["what"] == what]


def _said(row: Row, figure: str) -> str:
    return f"{figure} {row['unit']} ({documents()[row['document']].title})"


def _missing(path: tuple[str, ...], what: str, remedy: str) -> Problem:
    said = f"cannot be assessed: zinc is sweep-blasted, but the {what} is not stated"
    return Problem(path, said, remedy, NOTE, _LIMITS.row_citation(_rows("pressure")[-1]))
