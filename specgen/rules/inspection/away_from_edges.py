"""INS011 DFT is measured away from edges

Checks
    The minimum distance of readings from edges, corners and holes; and the flat shapes of the items measured, which must be wide enough for such a reading; under an own rule only for the distance that it states.
Why
    At an edge the film draws thin and the gauge is misled; such a reading does not represent the face.
Passes
    jobs.refit.inspection.primer-film.readings: {from_edge: 25 mm}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.items.DOOR.shapes.skin.width: 50 mm

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.items.DOOR.shapes.skin: {id: skin, kind: tube, length: 1000 mm, diameter: 30 mm}

    jobs.refit.inspection.primer-film.readings: {from_edge: 30 mm}
    jobs.refit.items.DOOR.shapes.skin: {id: skin, kind: plate, length: 1000 mm, width: 60 mm, sides: 1}
Fails
    jobs.refit.inspection.primer-film.readings: {from_edge: 10 mm}    # at jobs.refit.inspection.primer-film.readings.from_edge

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.items.DOOR.shapes.skin.width: 40 mm    # at jobs.refit.items.DOOR.shapes.skin.width

    jobs.refit.inspection.primer-film.readings: {from_edge: 24.9 mm}    # at jobs.refit.inspection.primer-film.readings.from_edge

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.items.DOOR.shapes: [{id: skin, kind: plate, length: 49.9 mm, width: 50 mm, sides: 1}, {id: box, kind: box, length: 100 mm, width: 100 mm, height: 49.9 mm}, {id: rail, kind: angle, length: 1000 mm, width: 40 mm, height: 60 mm}, {id: bolt, kind: cylinder, diameter: 20 mm, height: 40 mm}, {id: pipe, kind: tube, length: 45 mm, diameter: 60 mm}]    # at jobs.refit.items.DOOR.shapes.skin.length    # at jobs.refit.items.DOOR.shapes.box.height    # at jobs.refit.items.DOOR.shapes.rail.width    # at jobs.refit.items.DOOR.shapes.bolt.height    # at jobs.refit.items.DOOR.shapes.pipe.length

    Given second good
    jobs.lids.inspection.film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 2.3 mil, max: 3.8 mil}
    jobs.lids.inspection.film.after: gloss
    jobs.lids.inspection.film.gauge: {principle: destructive}
    jobs.lids.items.FRAME.shapes.strip.width: 1.9 in    # at jobs.lids.items.FRAME.shapes.strip.width    # also INS013 at jobs.lids.inspection.film.criterion.min

    jobs.refit.inspection.primer-film.readings: {from_edge: 35 mm}
    jobs.refit.items.DOOR.shapes.skin.width: 60 mm    # at jobs.refit.items.DOOR.shapes.skin.width

    Given second good
    jobs.rails.inspection.film.readings: {from_edge: 0.98 in}    # at jobs.rails.inspection.film.readings.from_edge

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, shapes: [{id: box, kind: box, length: 40 mm, width: 45 mm, height: 60 mm}, {id: angle, kind: angle, length: 45 mm, width: 60 mm, height: 40 mm}], system: cab}    # at jobs.refit.items.STEP.shapes.box.length    # at jobs.refit.items.STEP.shapes.box.width    # at jobs.refit.items.STEP.shapes.angle.length    # at jobs.refit.items.STEP.shapes.angle.height
To put right
    Keep 25 mm away from edges, corners and holes; measure narrow parts by a witness panel or by an own rule with its wording.
"""

from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import BEFORE_PAINT
from specgen.model.acceptance import AcceptanceRule
from specgen.model.job import ShapeKind
from specgen.rules.kit import WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table
from specgen.trade.given import from_table

# The sizes that run from edge to edge of a face; a round body has edges at its ends only.
_ACROSS = {
    ShapeKind.PLATE: ("length", "width"),
    ShapeKind.BOX: ("length", "width", "height"),
    ShapeKind.ANGLE: ("length", "width", "height"),
    ShapeKind.TUBE: ("length",),
    ShapeKind.CYLINDER: ("height",),
}


@rule("INS011", on=Job, severity=WARNING, source=table("reading_distance").citation)
def away_from_edges(job: Job, spec: Spec, on: date) -> Problems:
    least = from_table("reading_distance", table("reading_distance").rows[0], "least_mm", "length", "mm").quantity
    for point in film_points(job):
        planned = point.readings.from_edge if point.readings is not None else None
        if planned is not None and planned.base < least.base:
            what = f"readings of {point.id} may be {planned} from an edge; the minimum distance is {least}"
            yield Problem(("inspection", point.id, "readings", "from_edge"), what)
        own = point.criterion.rule is AcceptanceRule.OWN
        # an own rule says itself how narrow parts are read, but for a distance that it states
        apart = planned if own else least
        if apart is None or point.at in BEFORE_PAINT:
            continue
        for item, _ in places(point, job, spec):
            for shape in item.shapes:
                for name in _ACROSS[shape.kind]:
                    size: Quantity | None = getattr(shape, name)
                    if size is not None and 0 < size.base < apart.base * 2:
                        what = f"{shape.id} has a {name} of {size}: no point on it is {apart} from every edge"
                        yield Problem(("items", item.id, "shapes", shape.id, name), what)
