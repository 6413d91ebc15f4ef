"""JOB002 Every shape has the dimensions its kind needs

Checks
    The dimensions of each shape of an item: length and width of a plate, length and diameter of a tube, length, width and height of a box, both legs and length of an angle, height and diameter of a cylinder; none of them zero, and none that the shape does not have.
Why
    With a dimension missing the area is unknown; a dimension too many indicates that the wrong shape was named.
Passes
    jobs.refit.items.DOOR.shapes.skin: {id: skin, kind: cylinder, height: 600 mm, diameter: 300 mm}

    jobs.refit.items.DOOR.shapes: [{id: a, kind: plate, length: 1 m, width: 1 m}, {id: b, kind: tube, length: 1 m, diameter: 40 mm}, {id: c, kind: box, length: 1 m, width: 1 m, height: 1 m}, {id: d, kind: angle, length: 1 m, width: 40 mm, height: 40 mm}]
Fails
    without jobs.refit.items.DOOR.shapes.skin.width    # at jobs.refit.items.DOOR.shapes.skin.width    # also USE009 at jobs.refit.items.DOOR.shapes.skin.width

    jobs.refit.items.DOOR.shapes.skin.diameter: 40 mm    # at jobs.refit.items.DOOR.shapes.skin.diameter

    jobs.refit.items.DOOR.shapes.skin.length: 0 mm    # at jobs.refit.items.DOOR.shapes.skin.length

    Given second good
    jobs.lids.items.FRAME.shapes.post: {id: post, kind: cylinder, height: 2 ft, length: 2 ft}    # at jobs.lids.items.FRAME.shapes.post.length    # at jobs.lids.items.FRAME.shapes.post.diameter    # also USE009 at jobs.lids.items.FRAME.shapes.post.diameter

    jobs.refit.items.DOOR.shapes.box: {id: box, kind: box, length: 1 m, width: 1 m}    # at jobs.refit.items.DOOR.shapes.box.height    # also USE009 at jobs.refit.items.DOOR.shapes.box.height

    jobs.refit.items.DOOR.shapes.angle: {id: angle, kind: angle, length: 1 m, width: 40 mm, height: 0 mm}    # at jobs.refit.items.DOOR.shapes.angle.height

    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, shapes: [{id: tube, kind: tube, diameter: 40 mm}], system: chassis}    # at jobs.refit.items.STEP.shapes.tube.length    # also USE009 at jobs.refit.items.STEP.shapes.tube.length
To put right
    State the dimensions of that kind of shape, all of them above zero, and no others.
"""

from collections.abc import Mapping

from specgen.model.job import ShapeKind
from specgen.rules.kit import ERROR, LOGIC, Concern, Job, Problem, Problems, Spec, date, rule

SIZES: Mapping[ShapeKind, tuple[str, ...]] = {
    ShapeKind.PLATE: ("length", "width"),
    ShapeKind.TUBE: ("length", "diameter"),
    ShapeKind.BOX: ("length", "width", "height"),
    ShapeKind.ANGLE: ("length", "width", "height"),
    ShapeKind.CYLINDER: ("height", "diameter"),
}


@rule("JOB002", on=Job, severity=ERROR, concern=Concern.FILM, source=LOGIC)
def shape_complete(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        for shape in item.shapes:
            path = ("items", item.id, "shapes", shape.id)
            for size in ("length", "width", "height", "diameter"):
                value = getattr(shape, size)
                if size in SIZES[shape.kind] and value is None:
                    yield Problem((*path, size), f"the {shape.kind} {shape.id} states no {size}")
                elif size not in SIZES[shape.kind] and value is not None:
                    yield Problem((*path, size), f"a {shape.kind} has no {size}")
                elif value is not None and value.base == 0:
                    yield Problem((*path, size), f"the {size} of {shape.id} is zero")
