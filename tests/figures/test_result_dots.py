"""The dots of a test report: where each stands on the axis, which is drawn open, and that none covers another."""

from __future__ import annotations

import re

import pytest

from specgen.figures.axis import Axis
from specgen.figures.result_dots import Dot, result_dots

NAMES = ("creep (mm)", "mean 0.73 mm", "lies far out, or not counted")


@pytest.mark.parametrize(
    ("values", "ticks"),
    [
        ([0.6, 0.9, 1.0], [0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1]),
        ([81, 82, 75], [74, 76, 78, 80, 82, 84]),
        ([5, 5, 5], [4.95, 5, 5.05]),
        ([0, 0, 0.4], [0, 0.1, 0.2, 0.3, 0.4, 0.5]),
        ([-20, -15], [-21, -20, -19, -18, -17, -16, -15, -14]),
    ],
)
def test_an_axis_goes_from_one_round_figure_to_another(values: list[float], ticks: list[float]) -> None:
    axis = Axis.over(values)
    assert [round(tick, 6) for tick in axis.ticks()] == ticks
    assert all(0 <= axis.share(value) <= 1 for value in values)


def test_every_result_stands_over_its_figure() -> None:
    drawn = result_dots(
        [Dot("P1", 0.6, apart=False), Dot("P2", 0.9, apart=True)], 0.75, [(1.0, "at most 1.0 mm")], NAMES, "creep"
    )
    figures = {
        float(text): float(x) for x, text in re.findall(r'<text x="([\d.]+)" y="87" [^>]*>([\d.]+)</text>', drawn)
    }
    dots = re.findall(r'<circle cx="([\d.]+)" cy="[\d.]+" r="4.5" fill="(#\w+)"[^>]*><title>(P\d)', drawn)
    assert [(float(x), fill, name) for x, fill, name in dots] == [
        (figures[0.6], "#1b1d1f", "P1"),
        (figures[0.9], "#ffffff", "P2"),
    ]
    assert f'<path d="M{figures[1.0]:.1f} 18 V68"' in drawn
    assert all(text in drawn for text in (*NAMES, "at most 1.0 mm"))


def test_equal_results_stand_one_above_the_other() -> None:
    drawn = result_dots([Dot(f"P{number}", 81, apart=False) for number in range(3)], 81, [], NAMES, "gloss")
    heights = [float(y) for y in re.findall(r'cy="([\d.]+)"', drawn)]
    assert heights == [62.5, 52.5, 42.5]
    assert NAMES[2] not in drawn


@pytest.mark.parametrize("count", [2, 4, 30])
def test_many_equal_results_stay_below_the_words_of_the_mean(count: int) -> None:
    dots = [Dot(f"P{number}", 5.0, apart=False) for number in range(count)]
    drawn = result_dots(dots, 5.0, [], NAMES, "pull-off")
    heights = [float(found) for found in re.findall(r'cy="([-0-9.]+)"', drawn)]
    assert len(set(heights)) == count
    # the words of the mean stand at 32
    assert min(heights) - 4.5 > 32
