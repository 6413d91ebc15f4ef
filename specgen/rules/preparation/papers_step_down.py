"""PRE016 No paper is skipped in a sanding sequence

Checks
    The papers of consecutive sanding steps, in their order: from one to the next the grain size falls by no more than the table allows. It does not rise again: within one abrasive or instruction in words, whether by P number or by grit, and between two steps of one kind that speak of the same places. A P number that does not exist cannot be assessed.
Why
    Where a paper is skipped, or a coarser one comes last, the scratches of the coarse one remain in the surface and sink through primer and colour weeks later.
Passes
    preparations.sand-steel.steps.sand.abrasive: P80, then P180

    preparations.sand-steel.steps.sand.text: Sand with 80 grit, then 180 grit.

    preparations.sand-steel.steps.sand.text: Sand with P180, P120 on bare spots.
    preparations.sand-steel.steps.sand.abrasive: P120 to P180

    preparations.sand-steel.steps.sand: {id: sand, do: sand, text: Sand old paint around it., abrasive: P180, grade: SP 11}
    preparations.sand-steel.steps.last: {id: last, do: sand, text: Sand bare metal., abrasive: P120}

    preparations.sand-steel.steps.degrease: {id: degrease, do: sand, text: Sand., abrasive: P40}
    preparations.sand-steel.steps.dust: {id: dust, do: degrease, text: Degrease., acceptance: A white cloth stays white.}
    preparations.sand-steel.steps.sand: {id: sand, do: power-tool, text: Grind., grade: SP 11}
    preparations.sand-steel.steps.last: {id: last, do: sand, text: Sand., abrasive: P180}
    preparations.sand-steel.steps: [{id: wash, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: first, do: sand, text: Sand., abrasive: P40, grade: P Ma}, {id: again, do: degrease, text: Degrease.}, {id: sand, do: sand, text: Sand., abrasive: P180}]
Fails
    preparations.sand-steel.steps.sand.abrasive: P150, then P100    # at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps.sand.text: Sand with 150 grit, then 80 grit.    # at preparations.sand-steel.steps.sand.text

    preparations.sand-steel.steps.sand.abrasive: P150
    preparations.sand-steel.steps.last: {id: last, do: sand, text: Sand again., abrasive: P120}    # at preparations.sand-steel.steps.last.abrasive

    preparations.sand-steel.steps.sand.abrasive: P40, then P180    # at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps.sand.abrasive: P90, then P180    # note at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps: [{id: wash, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: first, do: feather-edge, text: Feather., abrasive: "P180, then P240"}, {id: blow, do: dust-off, text: Blow off.}, {id: tool, do: sand, text: Sand., grade: P Ma}, {id: sand, do: sand, text: Sand., abrasive: P800}]    # at preparations.sand-steel.steps.sand.abrasive    # also PRE017 at preparations.sand-steel.steps.sand.abrasive

    Given second good
    preparations.abrade.steps.sand.abrasive: P800    # at preparations.abrade.steps.sand.abrasive
To put right
    Add a paper between the two, as in P80, P120, P180, and write them from coarse to fine.
"""

import re

from specgen.facts.pairs.papers import finer_first, grain, papers_in, too_wide_steps
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Preparation, Problem, Problems, Spec, date, rule, table
from specgen.units.rounding import significant

_SANDING = {StepKind.SAND, StepKind.FEATHER}
# Words by which two steps speak of two places.
_PLACES = re.compile(
    r"\b(?:bare|rust\w*|metal|steel|zinc|spots?|scratch\w*|damage\w*|round|around|rest|sound|old|existing|paint|finish|primer|surfacer|"
    r"filler|putty|edges?|welds?|inside|outside|insides?|outsides?|faces?|panels?|corners?|flats?|gelcoat|clear|blend\w*|rings?)\b",
    re.I,
)


@rule(
    "PRE016",
    on=Preparation,
    severity=WARNING,
    source=PRACTICE,
)
def papers_step_down(preparation: Preparation, spec: Spec, on: date) -> Problems:
    most = table("sanding_step").rows[0]["most_ratio"]
    before: list[str] = []
    last: PreparationStep | None = None
    for step in preparation.steps:
        backwards = list(_finer_first(step))
        yield from backwards
        if step.do not in _SANDING:
            # dusting off between two papers does not end the run, other work does
            before, last = (before, last) if step.do is StepKind.DUST_OFF else ([], None)
            continue
        if last is not None and not backwards and step.do is last.do and _places(step) == _places(last):
            yield from _coarser_again(last, step)
        last = step
        path, named = ("steps", step.id, "abrasive"), papers_in(step.abrasive)
        unknown = [paper for paper in named if grain(paper) is None]
        if unknown:
            what = f"cannot be assessed: P{unknown[0]} is not a paper of the P series"
            yield Problem(path, what, "write the number printed on the paper", NOTE)
        for coarse, fine, ratio in too_wide_steps([*before, *named]):
            what = f"from P{coarse} to P{fine} the grain size falls by a factor of {significant(ratio, 2)}; the maximum is {most}"
            yield Problem(path, what)
        before = list(named[-1:]) or before


def _finer_first(step: PreparationStep) -> Problems:
    for key, text in (("abrasive", step.abrasive), ("text", step.text)):
        found = finer_first(text)
        if found is not None:
            yield Problem(("steps", step.id, key), f"{found[1]} follows {found[0]}, which is finer")


def _coarser_again(last: PreparationStep, step: PreparationStep) -> Problems:
    ended, begins = papers_in(last.abrasive)[-1:], papers_in(step.abrasive)[-1:]
    if ended and begins and int(begins[0]) < int(ended[0]):
        what = f"P{begins[0]} follows P{ended[0]} of {last.id}, which is finer"
        yield Problem(("steps", step.id, "abrasive"), what)


def _places(step: PreparationStep) -> set[str]:
    return {word.lower() for word in _PLACES.findall(step.text or "")}
