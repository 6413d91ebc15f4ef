"""Colour differences against the 34 published pairs of Sharma, Wu and Dalal (2005), and against an open library where it is installed."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.trade.colour import Lab, difference_2000, difference_ab

PAIRS = list(csv.DictReader((Path(__file__).parent / "data" / "sharma_2005.csv").open(encoding="utf-8")))
# The hues of this pair lie opposite: which of them is the first turns the sign of a difference of exactly half a turn.
OPPOSITE = "14"


def _colours(row: dict[str, str]) -> tuple[Lab, Lab]:
    one, other = ([float(row[f"{axis}{number}"]) for axis in ("L", "a", "b")] for number in "12")
    return Lab(*one), Lab(*other)


def test_all_pairs_are_there() -> None:
    assert [row["pair"] for row in PAIRS] == [str(number) for number in range(1, 35)]


@pytest.mark.parametrize("row", PAIRS, ids=[row["pair"] for row in PAIRS])
def test_published_pair(row: dict[str, str]) -> None:
    one, other = _colours(row)
    assert difference_2000(one, other) == pytest.approx(float(row["dE00"]), abs=1e-4)
    assert difference_ab(one, other) == pytest.approx(float(row["dE76"]), abs=1e-4)
    if row["pair"] != OPPOSITE:
        assert difference_2000(other, one) == difference_2000(one, other)


_axis = st.integers(-1280, 1280).map(lambda tenths: tenths / 10)
_colour = st.builds(Lab, st.integers(0, 1000).map(lambda tenths: tenths / 10), _axis, _axis)


@given(_colour)
def test_a_colour_does_not_differ_from_itself(colour: Lab) -> None:
    assert difference_2000(colour, colour) == 0 == difference_ab(colour, colour)


@given(_colour, _colour)
def test_the_distance_is_the_same_both_ways(one: Lab, other: Lab) -> None:
    assert difference_ab(one, other) == difference_ab(other, one)
    assert difference_2000(one, other) >= 0


@given(st.integers(0, 1000), st.integers(0, 1000))
def test_greys_differ_by_lightness_alone(first: int, second: int) -> None:
    one, other = Lab(first / 10, 0, 0), Lab(second / 10, 0, 0)
    assert difference_ab(one, other) == pytest.approx(abs(first - second) / 10, abs=1e-4)
    assert difference_2000(one, other) <= difference_ab(one, other) + 1e-4


@pytest.fixture(scope="module")
def library() -> Any:
    return pytest.importorskip("colour", reason="colour-science of the test extra is not installed")


# how long a library takes at its first answer is no matter of what it says
@settings(deadline=None)
@given(_colour, _colour)
def test_the_library_says_the_same(library: Any, one: Lab, other: Lab) -> None:
    ours, theirs = ((c.lightness, c.a, c.b) for c in (one, other))
    assert difference_ab(one, other) == pytest.approx(float(library.delta_E(ours, theirs, method="CIE 1976")), abs=2e-4)
    told = float(library.delta_E(ours, theirs, method="CIE 2000"))
    # opposite hues: either answer is right
    other_way = float(library.delta_E(theirs, ours, method="CIE 2000"))
    assert any(difference_2000(one, other) == pytest.approx(value, abs=2e-4) for value in (told, other_way))
