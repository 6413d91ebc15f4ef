"""INS029 Each mark of a figure has a letter of its own

Checks
    The letters of the marks of each figure of a job, its items, the steps of its preparations and its inspection points.
Why
    Whoever looks for A and finds two of them measures at one and leaves out the other.
Passes
    jobs.refit.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0}, {id: corner, letter: B, x: 0.5, y: 1}]}]

    jobs.refit.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0}]}]
    jobs.refit.items.DOOR.figures: [{id: inner, file: sketch.svg, caption: Door, alternative_text: The door from inside, marks: [{id: edge, letter: A, x: 0.5, y: 0}]}]
Fails
    jobs.refit.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0}, {id: corner, letter: A, x: 0.5, y: 1}]}]    # at jobs.refit.figures.sketch.marks.corner.letter

    jobs.refit.items.DOOR.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0}, {id: middle, letter: B, x: 0.2, y: 0}, {id: corner, letter: B, x: 0.5, y: 1}]}]    # at jobs.refit.items.DOOR.figures.sketch.marks.corner.letter

    preparations.sand-steel.steps.sand.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0}, {id: corner, letter: A, x: 0.5, y: 1}]}]    # at preparations.sand-steel.steps.sand.figures.sketch.marks.corner.letter
To put right
    Give each mark another letter.
"""

from collections.abc import Sequence

from specgen.model.figure import Figure
from specgen.rules.kit import ERROR, LOGIC, Job, Path, Problem, Problems, Spec, date, rule


@rule("INS029", on=Job, severity=ERROR, source=LOGIC)
def letters_differ(job: Job, spec: Spec, on: date) -> Problems:
    own = ("jobs", job.id)
    yield from _twice(job.figures, own)
    for item in job.items:
        yield from _twice(item.figures, (*own, "items", item.id))
    for point in job.inspection:
        yield from _twice(point.figures, (*own, "inspection", point.id))
    used = (spec.preparation_of(job, item) for item in job.items)
    for preparation in {one.id: one for one in used if one is not None}.values():
        for step in preparation.steps:
            yield from _twice(step.figures, ("preparations", preparation.id, "steps", step.id))


def _twice(figures: Sequence[Figure], path: Path) -> Problems:
    for figure in figures:
        first: dict[str, str] = {}
        for mark in figure.marks:
            if first.setdefault(mark.letter, mark.id) != mark.id:
                what = f"the marks {first[mark.letter]} and {mark.id} of the figure {figure.id} both have the letter {mark.letter}"
                yield Problem((*path, "figures", figure.id, "marks", mark.id, "letter"), what, absolute=True)
