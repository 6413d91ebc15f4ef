"""Areas of shapes, masked areas, edges and counts."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from specgen.trade.area import Angle, Box, Cylinder, Edge, Plate, Shape, Tube, coated_area, shape_area, total_area
from specgen.trade.working import WorkingError
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up


def length(text: str) -> Quantity:
    return parse_quantity("length", text)


def m2(text: str) -> Quantity:
    return parse_quantity("area", f"{text} m2")


def shape(case: dict[str, str]) -> Shape:
    first, second, third = length(case["first"]), length(case["second"]), case["third"]
    match case["shape"]:
        case "plate":
            return Plate(first, second, int(third))
        case "tube":
            return Tube(first, second, int(third))
        case "cylinder":
            return Cylinder(first, second, int(third))
        case "angle":
            return Angle(first, second, length(third))
    lids, sides, ends = (int(count) for count in case["fourth"].split())
    return Box(first, second, length(third), lids, sides, ends)


@pytest.mark.cases("areas")
def test_area_of_a_shape(case: dict[str, str]) -> None:
    assert round_half_up(shape_area("a", shape(case)).number, int(case["places"])) == Decimal(case["area"])


def test_masked_areas_edges_and_count() -> None:
    plate = shape_area("a", Plate(length("2 m"), length("1 m")))
    found = coated_area("t", plate, [m2("0.5"), m2("0.1")], [Edge(length("6 m"), length("50 mm"))], 4)
    assert found.number == Fraction("6.8")
    assert found.substituted() == "(2 − 0.5 − 0.1 + 6 × 0.05) × 4"
    assert found.inputs[0].origin == "working:a"


@pytest.mark.parametrize("masked", [["1.1"], ["0.6", "0.5"], ["0.5", "0.3", "0.3"]])
def test_more_masked_than_there_is_is_refused_even_with_edges(masked: list[str]) -> None:
    with pytest.raises(WorkingError) as refused:
        coated_area("t", m2("1"), [m2(patch) for patch in masked], [Edge(length("10 m"), length("1 m"))])
    assert refused.value.what == "the masked area is larger than the piece"


def test_a_piece_that_is_masked_all_over_has_no_area() -> None:
    assert coated_area("t", m2("1"), [m2("0.6"), m2("0.4")]).number == 0


def test_areas_together() -> None:
    assert total_area("t", [m2("1.5"), m2("0.25")]).quantity == m2("1.75")


def test_open_box_has_a_lid_less() -> None:
    sizes = (length("3 m"), length("2 m"), length("1 m"))
    closed, opened = shape_area("a", Box(*sizes)), shape_area("b", Box(*sizes, lids=1))
    assert closed.number - opened.number == 6
