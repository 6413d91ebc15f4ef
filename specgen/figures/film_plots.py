"""Film readings against their limits: every spot in its place, and how often each film was read.

Tells apart by shape and not by colour: a spot outside its limits is an open square. The table beside it says the same in words.
Called by the view of the conformity report.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from specgen.figures.axis import Axis, figure

_WIDTH = 760
_LEFT, _RIGHT, _TOP = 46, 640, 22
_SPOTS_BOTTOM, _SPOTS_HEIGHT = 168, 208
_BARS_BOTTOM, _BARS_HEIGHT = 116, 158
_COUNTED = 4
"""Steps that the number of readings is told in, at most."""
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="14"'
_INK = "#1b1d1f"
_APART = 15
"""Least distance of two names on one edge."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One spot, or one item: its mean, its lowest and highest reading, and whether it lies inside its limits."""

    mean: float
    low: float
    high: float
    inside: bool


@dataclass(frozen=True, slots=True)
class Group:
    """Marks that belong together, under one name."""

    name: str
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class Limit:
    """A film that decides, with what it is called; `dashes` tells it from the others."""

    film: float
    name: str
    dashes: str


def spot_plot(groups: Sequence[Group], limits: Sequence[Limit], unit: str, title: str) -> str:
    """SVG; empty text where there is no mark."""
    marks = [mark for group in groups for mark in group.marks]
    if not marks:
        return ""
    axis = Axis.over([*(end for mark in marks for end in (mark.low, mark.high)), *(limit.film for limit in limits)])
    parts = [
        _opened(_SPOTS_HEIGHT, title),
        *_upright(axis, unit),
        *_levels(limits, axis),
        *_groups(groups, axis),
        "</svg>",
    ]
    return "".join(parts)


def histogram(
    films: Sequence[tuple[float, int]], limits: Sequence[Limit], across: str, upright: str, title: str
) -> str:
    """How many readings of each film, in columns; SVG, empty text where there is none. `across` and `upright` name the axes."""
    if not films:
        return ""
    axis = Axis.over([*(film for film, _ in films), *(limit.film for limit in limits)])
    columns = _columns(films, axis)
    most = max(count for _, _, count in columns)
    parts = [_opened(_BARS_HEIGHT, title)]
    for low, high, count in columns:
        left, right, top = _x(low, axis), _x(high, axis), _BARS_BOTTOM - (_BARS_BOTTOM - _TOP) * count / most
        parts.append(
            f'<rect x="{left:.1f}" y="{top:.1f}" width="{max(right - left, 0.5):.1f}" height="{_BARS_BOTTOM - top:.1f}" '
            f'fill="#d5d2d4" stroke="{_INK}" stroke-width="0.6"/>'
        )
    parts += [*_level(axis, across), *_counts(most, upright), *_posts(limits, axis), "</svg>"]
    return "".join(parts)


def _opened(height: int, title: str) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_WIDTH} {height}" '
        f'width="{_WIDTH}" height="{height}" class="film-plot"><title>{escape(title)}</title>'
    )


def _x(film: float, axis: Axis) -> float:
    return _LEFT + (_RIGHT - _LEFT) * axis.share(film)


def _y(film: float, axis: Axis) -> float:
    return _SPOTS_BOTTOM - (_SPOTS_BOTTOM - _TOP) * axis.share(film)


def _upright(axis: Axis, unit: str) -> Iterator[str]:
    yield f'<path d="M{_LEFT} {_TOP} V{_SPOTS_BOTTOM} H{_RIGHT}" fill="none" stroke="{_INK}" stroke-width="0.8"/>'
    yield f'<text x="0" y="12" {_FONT}>{escape(unit)}</text>'
    for film in axis.ticks():
        yield f'<text x="{_LEFT - 6}" y="{_y(film, axis) + 4:.1f}" text-anchor="end" {_FONT}>{figure(film)}</text>'


def _levels(limits: Sequence[Limit], axis: Axis) -> Iterator[str]:
    below = float("inf")
    for limit in sorted(limits, key=lambda limit: -limit.film):
        y = _y(limit.film, axis)
        yield f'<path d="M{_LEFT} {y:.1f} H{_RIGHT}" stroke="{_INK}" stroke-width="1.2" stroke-dasharray="{limit.dashes}"/>'
        name = y if below == float("inf") else max(y, below + _APART)
        below = name
        yield f'<text x="{_RIGHT + 6}" y="{name + 4:.1f}" {_FONT}>{escape(limit.name)}</text>'


def _groups(groups: Sequence[Group], axis: Axis) -> Iterator[str]:
    count = sum(len(group.marks) for group in groups)
    step = (_RIGHT - _LEFT) / count
    size = min(4.0, step * 0.4)
    at, ends = 0, [-1e9, -1e9]
    for number, group in enumerate(groups):
        left = _LEFT + at * step
        if number:
            yield f'<path d="M{left:.1f} {_SPOTS_BOTTOM} v8" stroke="{_INK}" stroke-width="0.8"/>'
        # a name stands in the second line where the first is taken, and not at all where both are
        line = next((line for line in (0, 1) if left > ends[line]), None)
        if line is not None:
            yield f'<text x="{left + 3:.1f}" y="{_SPOTS_BOTTOM + 18 + 17 * line}" {_FONT}>{escape(group.name)}</text>'
            ends[line] = left + 8.6 * len(group.name) + 6
        for place, mark in enumerate(group.marks):
            yield from _mark(mark, left + (place + 0.5) * step, size, axis)
        at += len(group.marks)


def _mark(mark: Mark, x: float, size: float, axis: Axis) -> Iterator[str]:
    yield f'<path d="M{x:.1f} {_y(mark.low, axis):.1f} V{_y(mark.high, axis):.1f}" stroke="{_INK}" stroke-width="0.8"/>'
    y = _y(mark.mean, axis)
    if mark.inside:
        yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{size * 0.75:.1f}" fill="{_INK}"/>'
    else:
        side = size * 2.2
        yield (
            f'<rect x="{x - side / 2:.1f}" y="{y - side / 2:.1f}" width="{side:.1f}" height="{side:.1f}" '
            f'fill="#ffffff" stroke="{_INK}" stroke-width="1.6"/>'
        )


def _columns(films: Sequence[tuple[float, int]], axis: Axis) -> list[tuple[float, float, int]]:
    """Columns a fifth of a tick wide; a film on an edge belongs to the column above it."""
    wide = axis.step / 5
    counts: dict[int, int] = {}
    for film, count in films:
        number = int((film - axis.low) / wide + 1e-9)
        counts[number] = counts.get(number, 0) + count
    return [(axis.low + at * wide, axis.low + (at + 1) * wide, count) for at, count in sorted(counts.items())]


def _counts(most: int, upright: str) -> Iterator[str]:
    yield f'<path d="M{_LEFT} {_TOP} V{_BARS_BOTTOM}" stroke="{_INK}" stroke-width="0.8"/>'
    yield f'<text x="0" y="12" {_FONT}>{escape(upright)}</text>'
    step = next(size * 10**power for power in range(9) for size in (1, 2, 5) if most <= size * 10**power * _COUNTED)
    for count in range(0, most + 1, step):
        y = _BARS_BOTTOM - (_BARS_BOTTOM - _TOP) * count / most
        yield f'<path d="M{_LEFT} {y:.1f} h-4" stroke="{_INK}" stroke-width="0.8"/>'
        yield f'<text x="{_LEFT - 7}" y="{y + 4:.1f}" text-anchor="end" {_FONT}>{count}</text>'


def _level(axis: Axis, across: str) -> Iterator[str]:
    yield f'<path d="M{_LEFT} {_BARS_BOTTOM} H{_RIGHT}" stroke="{_INK}" stroke-width="0.8"/>'
    for film in axis.ticks():
        x = _x(film, axis)
        yield f'<path d="M{x:.1f} {_BARS_BOTTOM} v4" stroke="{_INK}" stroke-width="0.8"/>'
        yield f'<text x="{x:.1f}" y="{_BARS_BOTTOM + 18}" text-anchor="middle" {_FONT}>{figure(film)}</text>'
    yield f'<text x="{_RIGHT + 14}" y="{_BARS_BOTTOM + 4}" {_FONT}>{escape(across)}</text>'


def _posts(limits: Sequence[Limit], axis: Axis) -> Iterator[str]:
    beyond = -1e9
    for limit in sorted(limits, key=lambda limit: limit.film):
        x = _x(limit.film, axis)
        yield f'<path d="M{x:.1f} 14 V{_BARS_BOTTOM}" stroke="{_INK}" stroke-width="1.2" stroke-dasharray="{limit.dashes}"/>'
        at = max(x, beyond)
        yield f'<text x="{at:.1f}" y="{_BARS_HEIGHT - 4}" text-anchor="middle" {_FONT}>{escape(limit.name)}</text>'
        beyond = at + 7.6 * len(limit.name) + 10
