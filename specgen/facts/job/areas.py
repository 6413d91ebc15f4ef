"""The area of an item: worked out from its shapes, or stated, less what is masked, plus its edges, times its count.

Where both are given the shapes count, and a rule holds the area against them. Called by `quantities`.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial

from specgen.model.job import Item, ShapeKind
from specgen.model.job import Shape as ShapeSource
from specgen.model.walk import Path
from specgen.standards.citations import LOGIC
from specgen.trade.area import Angle, Box, Cylinder, Edge, Plate, Shape, Tube, coated_area, shape_area, total_area
from specgen.trade.given import Given, Source, take
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working, work
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

# What has to be stated of each body, in the order it is asked for.
_SIZES = {
    ShapeKind.PLATE: ("length", "width"),
    ShapeKind.TUBE: ("diameter", "length"),
    ShapeKind.ANGLE: ("height", "width", "length"),
    ShapeKind.CYLINDER: ("diameter", "height"),
    ShapeKind.BOX: ("length", "width", "height"),
}

# The four walls of a box are always coated; five faces add one lid, six both.
_LIDS = {4: 0, 5: 1, 6: 2, None: 2}

# More terms than this in one sum cannot be followed on paper.
_TERMS = 12


def item_area(item: Item, path: Path) -> tuple[list[Working], Working] | NotKnown | None:
    """The workings an item's area builds on, and the area itself in m2; None where neither area nor shapes are stated.

    A size that is missing is named; more masked than there is is a fault of the item at `path`.
    """
    if item.area is None and not item.shapes:
        return None
    gap = _first_gap(item, path)
    return gap if gap is not None else worked_out(f"area of {item.id}", partial(_area, item, path), path)


def area_of_shapes(item: Item, path: Path) -> tuple[list[Working], Working] | NotKnown:
    """The workings that the area of the shapes of one part builds on, and that area, before masking and edges."""
    gap = _first_gap(item, path)
    return gap if gap is not None else worked_out(f"area of {item.id}", partial(_shapes, item, path), path)


def _first_gap(item: Item, path: Path) -> NotKnown | None:
    return next((gap for shape in item.shapes if (gap := _gap(shape, path)) is not None), None)


def _gap(shape: ShapeSource, path: Path) -> NotKnown | None:
    what = f"area of the {shape.kind} {shape.id}"
    if shape.kind is ShapeKind.BOX and shape.sides not in _LIDS:
        why = f"the box {shape.id} is coated on {shape.sides} faces; only 4, 5 or 6 can be calculated"
        return NotKnown(what, why, at=path)
    for name in _SIZES[shape.kind]:
        if getattr(shape, name) is None:
            at = (*path, "shapes", shape.id, name)
            return NotKnown(what, f"the {shape.kind} {shape.id} has no {name}", (name,), at=at)
    return None


def _shapes(item: Item, path: Path) -> tuple[list[Working], Working]:
    supporting: list[Working] = []
    bodies: list[Working] = []
    for shape in item.shapes:
        area = shape_area(f"area.{item.id}.{shape.id}", _shape(shape, (*path, "shapes", shape.id)))
        supporting.append(area)
        bodies.append(_times(shape, area, item, supporting))
    return supporting, summed_area(f"area.{item.id}/one", bodies, supporting)


def _area(item: Item, path: Path) -> tuple[list[Working], Working]:
    supporting: list[Working] = []
    one: Source
    if item.area is not None and not item.shapes:
        one = _given(item.area, path, "area")
    else:
        supporting, one = _shapes(item, path)
    masked = [_given(m.area, path, "masked", m.id, "area") for m in item.masked if m.area is not None]
    edges = [
        Edge(_given(e.length, path, "edges", e.id, "length"), _given(e.width, path, "edges", e.id, "width"))
        for e in item.edges
    ]
    count = Given(Fraction(item.count), ".".join((*path, "count")))
    return supporting, coated_area(f"area.{item.id}", one, masked, edges, count)


def summed_area(name: str, areas: Sequence[Working], supporting: list[Working]) -> Working:
    """The areas together; many are added up in groups, each a Working of its own in `supporting`."""
    if len(areas) == 1:
        return areas[0]
    if len(areas) > _TERMS:
        groups = [areas[at : at + _TERMS] for at in range(0, len(areas), _TERMS)]
        areas = [summed_area(f"{name}/{number}", group, supporting) for number, group in enumerate(groups, 1)]
        return summed_area(name, areas, supporting)
    total = total_area(name, areas)
    supporting.append(total)
    return total


def _times(shape: ShapeSource, area: Working, item: Item, supporting: list[Working]) -> Working:
    if shape.count is None or shape.count == 1:
        return area
    inputs = (take("A", "area of one", area, "area", "m2"), take("n", "number on one part", shape.count))
    several = work(
        f"area.{item.id}.{shape.id}/all",
        phrase("area of all pieces: {id}", id=shape.id),
        "A * n",
        inputs,
        kind="area",
        unit="m2",
        places=2,
        source=LOGIC,
    )
    supporting.append(several)
    return several


def _shape(shape: ShapeSource, path: Path) -> Shape:
    def size(name: str) -> Given:
        return _given(getattr(shape, name), path, name)

    def counted(otherwise: int) -> Given:
        """The coated sides or ends as stated, else the number that is usual for the shape."""
        stated = shape.sides
        return Given(Fraction(otherwise)) if stated is None else Given(Fraction(stated), ".".join((*path, "sides")))

    match shape.kind:
        case ShapeKind.PLATE:
            return Plate(size("length"), size("width"), counted(1))
        case ShapeKind.TUBE:
            return Tube(size("diameter"), size("length"), counted(0))
        case ShapeKind.ANGLE:
            return Angle(size("height"), size("width"), size("length"))
        case ShapeKind.CYLINDER:
            return Cylinder(size("diameter"), size("height"), counted(2))
        case ShapeKind.BOX:
            return Box(size("length"), size("width"), size("height"), _LIDS[shape.sides])


def _given(value: Quantity, path: Path, *way: str) -> Given:
    return Given(value, ".".join((*path, *way)))
