"""The results of a test as dots above an axis, with their mean and the limits they are held against. Tells apart by shape and not by
colour.

The same figures stand in the table beside it. Called by the view of a test report.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from specgen.figures.axis import Axis

_WIDTH, _LEFT, _RIGHT = 480, 30, 450
_HEIGHT, _LINE = 110, 68
_LIMITS, _MEAN = 14, 32
"""Heights of the names of the limits, and of the mean."""
_DOT, _APART = 4.5, 10
_ROOM = _LINE - _MEAN - 4 - 2 * _DOT
"""From the lowest dot to the highest that keeps clear of the words of the mean."""
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="14"'
_INK = "#1b1d1f"


@dataclass(frozen=True, slots=True)
class Dot:
    """One result by its name; `apart` draws it open: it lies far out, or is not counted."""

    name: str
    value: float
    apart: bool


def result_dots(
    dots: Sequence[Dot], mean: float, limits: Sequence[tuple[float, str]], names: tuple[str, str, str], title: str
) -> str:
    """SVG. `limits` with their words; `names` of the axis with its unit, of the mean, and of a dot that is drawn open."""
    across, of_mean, of_open = names
    axis = Axis.over([*(dot.value for dot in dots), *(value for value, _ in limits), mean])
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_WIDTH} {_HEIGHT}" width="{_WIDTH}" height="{_HEIGHT}" '
        f'class="result-dots"><title>{escape(title)}</title>',
        *_scale(axis, across),
    ]
    for value, said in limits:
        parts.append(_upright(_x(value, axis), _LIMITS + 4, 'stroke-width="2" stroke-dasharray="5 3"'))
        parts.append(_text(_x(value, axis), _LIMITS, said))
    parts.append(_upright(_x(mean, axis), _MEAN + 4, 'stroke-width="1.4"'))
    parts.append(_text(_x(mean, axis), _MEAN, of_mean))
    parts += _dots(dots, axis)
    if any(dot.apart for dot in dots):
        said = f"\N{WHITE CIRCLE} {of_open}"
        parts.append(f'<text x="{_RIGHT}" y="{_HEIGHT - 4}" text-anchor="end" {_FONT}>{escape(said)}</text>')
    return "".join([*parts, "</svg>"])


def _x(value: float, axis: Axis) -> float:
    return _LEFT + (_RIGHT - _LEFT) * axis.share(value)


def _scale(axis: Axis, across: str) -> Iterator[str]:
    """The line with its figures, and what it measures."""
    yield f'<path d="M{_LEFT} {_LINE} H{_RIGHT}" stroke="{_INK}" stroke-width="1"/>'
    for value, said in zip(axis.ticks(), axis.figures(), strict=True):
        x = _x(value, axis)
        yield f'<path d="M{x:.1f} {_LINE} v5" stroke="{_INK}" stroke-width="1"/>'
        yield f'<text x="{x:.1f}" y="{_LINE + 19}" text-anchor="middle" {_FONT}>{said}</text>'
    yield f'<text x="{_LEFT}" y="{_HEIGHT - 4}" {_FONT}>{escape(across)}</text>'


def _dots(dots: Sequence[Dot], axis: Axis) -> Iterator[str]:
    """One dot a result; those that would cover each other stand one above the other, closer where they would reach the words."""
    stood: list[tuple[float, int]] = []
    for dot in dots:
        x, level = _x(dot.value, axis), 0
        while any(abs(x - left) < _APART and level == other for left, other in stood):
            level += 1
        stood.append((x, level))
    highest = max((level for _, level in stood), default=0)
    rise = min(_APART, _ROOM / highest) if highest else _APART
    for dot, (x, level) in zip(dots, stood, strict=True):
        fill = "#ffffff" if dot.apart else _INK
        yield (
            f'<circle cx="{x:.1f}" cy="{_LINE - _DOT - 1 - level * rise:.1f}" r="{_DOT}" fill="{fill}" stroke="{_INK}" '
            f'stroke-width="1.4"><title>{escape(dot.name)}</title></circle>'
        )


def _upright(x: float, top: float, pen: str) -> str:
    return f'<path d="M{x:.1f} {top} V{_LINE}" stroke="{_INK}" {pen}/>'


def _text(x: float, y: float, said: str) -> str:
    """Words at a place, kept inside the picture."""
    anchor = "start" if x < _WIDTH / 5 else "end" if x > _WIDTH * 4 / 5 else "middle"
    return f'<text x="{x:.1f}" y="{y}" text-anchor="{anchor}" {_FONT}>{escape(said)}</text>'
