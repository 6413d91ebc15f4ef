"""The area to be coated, from the shapes a person would measure on the work piece.

All lengths enter in m and the result is in m2; openings, toes and thicknesses are neglected as the docstrings say.
Called by the list of materials and the rules on areas.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from specgen.standards.citations import LOGIC
from specgen.trade.given import Given, Source, take
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_, phrase

# Ten digits of the ratio: the area of a tank of 10^4 m2 is right to the last square millimetre.
CIRCLE = Fraction("3.1415926536")
"""Circumference of a circle over its diameter."""


class Plate(NamedTuple):
    """A flat plate, coated on one or two sides; its edges are an edge allowance."""

    length: Source
    width: Source
    sides: Source = 1


class Tube(NamedTuple):
    """A tube coated outside. `ends` is the number of its ends that are closed by a disc."""

    diameter: Source
    length: Source
    ends: Source = 0


class Box(NamedTuple):
    """A box of flat faces: `lids` of length by width, `sides` of length by height, `ends` of width by height.

    A closed box has two of each; a box open at the top has one lid. Inside faces are counted by doubling.
    """

    length: Source
    width: Source
    height: Source
    lids: Source = 2
    sides: Source = 2
    ends: Source = 2


class Angle(NamedTuple):
    """An angle section coated all round: twice the sum of its legs is its girth, whatever its thickness.

    Cut ends are not counted.
    """

    leg_a: Source
    leg_b: Source
    length: Source


class Cylinder(NamedTuple):
    """An upright cylinder, such as a tank, coated outside. `ends` is the number of its ends that are coated."""

    diameter: Source
    height: Source
    ends: Source = 2


Shape = Plate | Tube | Box | Angle | Cylinder


class Edge(NamedTuple):
    """An allowance for an edge that is coated beside the faces."""

    length: Source
    width: Source


def shape_area(id: str, shape: Shape) -> Working:
    """The area of a shape in m2. Source: geometry."""
    inputs: tuple[Input, ...]
    match shape:
        case Plate():
            inputs = (_metres("L", "length", shape.length), _metres("W", "width", shape.width))
            inputs = (*inputs, take("n", "coated sides", shape.sides))
            return _area(id, "area of the plate", "L * W * n", inputs)
        case Tube():
            return _round(id, "area of the tube", shape.diameter, "length", shape.length, shape.ends)
        case Cylinder():
            return _round(id, "area of the cylinder", shape.diameter, "height", shape.height, shape.ends)
        case Angle():
            inputs = (_metres("a", "one leg", shape.leg_a), _metres("b", "other leg", shape.leg_b))
            inputs = (*inputs, _metres("L", "length", shape.length))
            return _area(id, "area of the angle", "2 * (a + b) * L", inputs, N_("2: both faces of each leg"))
        case Box():
            return _box(id, shape)


def coated_area(
    id: str, area: Source, masked: Sequence[Source] = (), edges: Sequence[Edge] = (), count: Source = 1
) -> Working:
    """The area to coat on `count` equal pieces, in m2: the area of one, less what is masked, plus its edges.

    Raises WorkingError where more is masked than there is.
    """
    inputs = [take("A", "area of one piece", area, "area", "m2")]
    formula = "A"
    for number, patch in enumerate(masked, start=1):
        inputs.append(take(f"M_{number}", phrase("masked area {number}", number=number), patch, "area", "m2"))
        formula += f" - M_{number}"
    if sum((entry.number for entry in inputs[1:]), Fraction(0)) > inputs[0].number:
        raise WorkingError("the masked area is larger than the piece")
    for number, edge in enumerate(edges, start=1):
        inputs.append(_metres(f"L_{number}", phrase("length of edge {number}", number=number), edge.length))
        inputs.append(_metres(f"W_{number}", phrase("allowance on edge {number}", number=number), edge.width))
        formula += f" + L_{number} * W_{number}"
    inputs.append(take("n", "number of pieces", count))
    return _area(id, "area to coat", f"({formula}) * n", tuple(inputs))


def total_area(id: str, areas: Sequence[Source]) -> Working:
    """Several areas together, in m2. Raises WorkingError for none."""
    inputs = tuple(
        take(f"A_{number}", phrase("area {number}", number=number), area, "area", "m2")
        for number, area in enumerate(areas, start=1)
    )
    return _area(id, "total area", " + ".join(entry.symbol for entry in inputs), inputs)


def _box(id: str, box: Box) -> Working:
    inputs = (
        _metres("L", "length", box.length),
        _metres("W", "width", box.width),
        _metres("H", "height", box.height),
        take("n_LW", "faces of length by width", box.lids),
        take("n_LH", "faces of length by height", box.sides),
        take("n_WH", "faces of width by height", box.ends),
    )
    return _area(id, "area of the box", "n_LW * L * W + n_LH * L * H + n_WH * W * H", inputs)


def _round(id: str, name: str, diameter: Source, along: str, length: Source, ends: Source) -> Working:
    inputs = (
        take("pi", "circumference of a circle over its diameter", Given(CIRCLE, "mathematical constant")),
        _metres("D", "outside diameter", diameter),
        _metres("L", along, length),
        take("n", "closed ends", ends),
    )
    formula = "pi * D * L + n * pi * (D / 2) * (D / 2)"
    return _area(id, name, formula, inputs, N_("2: the radius of an end is half its diameter"))


def _metres(symbol: str, name: str, value: Source) -> Input:
    return take(symbol, name, value, "length", "m")


def _area(id: str, name: str, formula: str, inputs: tuple[Input, ...], note: str = "") -> Working:
    return work(id, name, formula, inputs, kind="area", unit="m2", places=2, source=LOGIC, note=note)
