"""INS020 Each mark named by an inspection point is on one figure

Checks
    Each entry under marked of an inspection point is a mark of one figure of the job, written figure/mark: of the job itself, its items, the steps of its preparations or its inspection points.
Why
    A point that is inspected at a mark nobody can find is inspected anywhere.
Passes
    jobs.refit.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0}]}]
    jobs.refit.inspection.primer-film.marked: [sketch/edge]

    preparations.sand-steel.steps.sand.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 1}]}]
    jobs.refit.inspection.prepared.marked: [sketch/edge]
Fails
    jobs.refit.inspection.primer-film.marked: [sketch/edge]    # at jobs.refit.inspection.primer-film.marked

    jobs.refit.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0.5}]}]
    jobs.refit.inspection.primer-film.marked: [sketch/edge, sketch/corner]    # at jobs.refit.inspection.primer-film.marked

    jobs.refit.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0.5}]}]
    jobs.refit.items.DOOR.figures: [{id: sketch, file: sketch.svg, caption: Door, alternative_text: The door from outside, marks: [{id: edge, letter: A, x: 0.5, y: 0.5}]}]
    jobs.refit.inspection.primer-film.marked: [sketch/edge]    # at jobs.refit.inspection.primer-film.marked
To put right
    Write the id of the figure, a slash and the id of the mark; give two figures two ids.
"""

from specgen.facts.job.pictures import marks_of
from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("INS020", on=Job, severity=ERROR, source=LOGIC)
def marks_known(job: Job, spec: Spec, on: date) -> Problems:
    if not any(point.marked for point in job.inspection):
        return
    there = marks_of(job, spec)
    for point in job.inspection:
        path = ("inspection", point.id, "marked")
        for named in point.marked:
            if named not in there:
                known = list(there)
                remedy = nearest_of(named, known, IDS_SHOWN) if known else ""
                yield Problem(path, f"{named} is not a mark on a figure of the job {job.id}", remedy)
            elif len(there[named]) > 1:
                yield Problem(path, f"{named} is on {len(there[named])} figures of the job {job.id}")
