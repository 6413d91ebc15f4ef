"""The names of the days above a plan: none is printed over another."""

import re
from itertools import pairwise

import pytest

from specgen.figures.schedule_bars import Axis, Bar, schedule_bars

_DAY = 24 * 60
_NAMED = re.compile(r'<text x="([0-9.]+)" y="27"[^>]*>([^<]+)<')


@pytest.mark.parametrize(
    ("days", "first", "named"),
    [(5, 600, 6), (5, 1400, 5), (60, 600, 10)],
)
def test_names_of_days_have_room(days: int, first: int, named: int) -> None:
    """`first`: minutes of the day at which the plan starts; late in the evening its first day has no room; of 60 days each sixth is named."""
    left = _DAY - first
    marks = (0, *(left + _DAY * number for number in range(days)))
    axis = Axis(left + _DAY * days, tuple((at, ("Mon", f"11-{number:02d}")) for number, at in enumerate(marks)), ())
    drawn = schedule_bars([Bar("preparation", 0, 90, None, True)], axis, "The plan")
    at = sorted(float(x) for x, _ in _NAMED.findall(drawn))
    assert len(at) == named
    assert all(after - before >= 44 for before, after in pairwise(at))
