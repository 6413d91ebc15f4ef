"""PRE009 Mill scale is not left to hand tools

Checks
    Steel of rust grade A that is prepared to a hand- or power-tool grade and no further. Hot-rolled steel with such a grade and no stated rust grade cannot be assessed.
Why
    A hand tool polishes tight mill scale and leaves it; months later the scale lifts and takes the paint with it.
Passes
    jobs.refit.substrate.rust_grade: A

    Given second good
    jobs.lids.items.FRAME.substrate.rust_grade: A
Fails
    jobs.refit.substrate.rust_grade: A
    preparations.sand-steel.steps.sand.grade: St 3    # at preparations.sand-steel.steps.sand.grade    # also PRE008 at preparations.sand-steel.steps.sand.grade    # also PRE008 at preparations.sand-steel.steps.sand.grade

    Given second good
    jobs.lids.items.FRAME.substrate.rust_grade: B
    preparations.blast.steps.blast: {id: blast, do: power-tool, text: Brush., grade: SP 3}    # note at preparations.blast.steps.blast.grade    # also PRE008 at preparations.blast.steps.blast.grade    # also USE006 at jobs.rails.consumption.profile

    Given second good
    jobs.rails.substrate.rust_grade: B
    jobs.lids.items.FRAME.substrate.rust_grade: A
    preparations.blast.steps.blast: {id: blast, do: power-tool, text: Brush., grade: SP 3}    # at preparations.blast.steps.blast.grade    # also PRE008 at preparations.blast.steps.blast.grade    # also USE006 at jobs.rails.consumption.profile
To put right
    Blast-clean, pickle (SP 8) or power-tool clean to bare metal (SP 11).
"""

from specgen.facts.pairs.floor import best_step
from specgen.facts.pairs.parts import grade_notes, prepared_with
from specgen.rules.kit import NOTE, WARNING, Preparation, Problem, Problems, Spec, cite, date, rule, table


@rule(
    "PRE009",
    on=Preparation,
    severity=WARNING,
    source=cite("MIL-HDBK-1110", "6.7.5"),
)
def scale_not_by_hand(preparation: Preparation, spec: Spec, on: date) -> Problems:
    leave_scale = grade_notes("leaves mill scale")
    for part in prepared_with(preparation, spec):
        step = best_step(part.preparation) if part.is_bare_steel else None
        if step is None or step.grade not in leave_scale:
            continue
        path, rust = ("steps", step.id, "grade"), part.substrate.rust_grade
        if rust == "A":
            source = table("preparation_grade_notes").row_citation(leave_scale[step.grade])
            what = f"{step.grade} leaves the mill scale of rust grade A on {part.name}"
            yield Problem(path, what, source=source)
        elif rust is None and part.material == "steel_hot_rolled":
            what = f"cannot be assessed: {step.grade} on hot-rolled steel whose rust grade is not stated"
            yield Problem(path, what, "write the rust grade of the steel, A to D", NOTE)
