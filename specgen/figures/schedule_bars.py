"""A plan as bars: a row a step, what is left of its interval as a line behind it, time without work shaded.

Tells apart by shape and not by colour. The table beside it says the same in words. Called by the view of the method statement.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

_WIDTH = 760
_LEFT = 230
_ROW = 22
_TOP = 42
_NAME = 44
"""Room that the name of a day takes."""
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="14"'
_PEN = 'stroke="#1b1d1f" stroke-width="0.8"'


@dataclass(frozen=True, slots=True)
class Bar:
    """One step. Minutes from the left edge; `until` is the last start of the step after it, None where there is no limit.

    `fixed`: it cannot begin later without a later end of all, and is drawn full; others are drawn hollow.
    """

    label: str
    start: int
    end: int
    until: int | None
    fixed: bool


@dataclass(frozen=True, slots=True)
class Axis:
    """From 0 to `minutes`; `days` are (minute of midnight or the left edge, lines of its name), `closed` the times without work."""

    minutes: int
    days: tuple[tuple[int, tuple[str, ...]], ...]
    closed: tuple[tuple[int, int], ...]


def schedule_bars(bars: Sequence[Bar], axis: Axis, title: str) -> str:
    """SVG; empty text where there is no bar."""
    if not bars or axis.minutes <= 0:
        return ""
    height = _TOP + _ROW * len(bars) + 8
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_WIDTH} {height}" '
        f'width="{_WIDTH}" height="{height}" class="schedule-bars"><title>{escape(title)}</title>',
        *(_closed(begin, end, axis, height) for begin, end in axis.closed),
        *_days(axis, height),
        *(mark for number, bar in enumerate(bars) for mark in _bar(bar, _TOP + _ROW * number, axis)),
        "</svg>",
    ]
    return "".join(parts)


def _x(minute: int, axis: Axis) -> float:
    inside = min(max(minute, 0), axis.minutes)
    return _LEFT + (_WIDTH - _LEFT - 4) * inside / axis.minutes


def _closed(begin: int, end: int, axis: Axis, height: int) -> str:
    left, right = _x(begin, axis), _x(end, axis)
    return (
        f'<rect x="{left:.1f}" y="{_TOP - 8}" width="{right - left:.1f}" height="{height - _TOP + 4}" fill="#e9e7e8"/>'
    )


def _days(axis: Axis, height: int) -> Iterator[str]:
    free = float(_WIDTH)
    for minute, names in reversed(axis.days):  # where two names have no room, the later one is named
        x = _x(minute, axis)
        yield f'<path d="M{x:.1f} 8 V{height - 4}" stroke="#6b6e70" stroke-width="0.6"/>'
        if x + _NAME <= free:
            for number, name in enumerate(names):
                yield f'<text x="{x + 3:.1f}" y="{13 + 14 * number}" {_FONT}>{escape(name)}</text>'
            free = x


def _bar(bar: Bar, top: int, axis: Axis) -> Iterator[str]:
    left, right = _x(bar.start, axis), _x(bar.end, axis)
    middle = top + 7
    yield f'<text x="0" y="{top + 11}" {_FONT}>{escape(bar.label)}</text>'
    if bar.until is not None:
        end = _x(bar.until, axis)
        yield f'<path d="M{right:.1f} {middle} H{end:.1f} M{end:.1f} {top + 1} V{top + 13}" {_PEN} fill="none"/>'
    fill = "#3c3f41" if bar.fixed else "#ffffff"
    yield f'<rect x="{left:.1f}" y="{top + 1}" width="{max(right - left, 2):.1f}" height="12" fill="{fill}" {_PEN}/>'
