"""Air temperature against relative humidity: where paint may be applied, the least water in the air, and the climate of the job.

Tells apart by shape and not by colour. Its figures stand in words beside it. Called by the view of the method statement.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

_WIDTH, _HEIGHT = 760, 184
_LEFT, _RIGHT, _TOP, _BOTTOM = 40, 440, 30, 146
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="14"'

Point = tuple[float, float]
"""Temperature on the axis, relative humidity in %."""


@dataclass(frozen=True, slots=True)
class Curve:
    """A line with its name; `dashes` tells it from the others."""

    label: str
    points: tuple[Point, ...]
    dashes: str


@dataclass(frozen=True, slots=True)
class Field:
    """The axis of temperature, the corners that limits allow (None where nobody has said) and those of the job, each coldest,
    warmest, driest, most humid."""

    coldest: float
    warmest: float
    allowed: tuple[float, float, float, float] | None
    job: tuple[float, float, float, float]
    ticks: tuple[tuple[float, str], ...]


def climate_window(field: Field, curves: Sequence[Curve], names: tuple[str, str, str, str], title: str) -> str:
    """SVG. `names`: of the allowed region, of the climate of the job, and of both axes."""
    allowed, job, across, up = names
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_WIDTH} {_HEIGHT}" '
        f'width="{_WIDTH}" height="{_HEIGHT}" class="climate-window"><title>{escape(title)}</title>',
        _box(field.allowed, field, 'fill="#e2dfe1" stroke="none"') if field.allowed is not None else "",
        *_axes(field, across, up),
        *(_curve(curve, field) for curve in curves),
        _box(field.job, field, 'fill="none" stroke="#1b1d1f" stroke-width="1.6"'),
        *_key(curves, allowed if field.allowed is not None else "", job),
        "</svg>",
    ]
    return "".join(parts)


def _x(temperature: float, field: Field) -> float:
    inside = min(max(temperature, field.coldest), field.warmest)
    return _LEFT + (_RIGHT - _LEFT) * (inside - field.coldest) / (field.warmest - field.coldest)


def _y(humidity: float) -> float:
    return _BOTTOM - (_BOTTOM - _TOP) * min(max(humidity, 0.0), 100.0) / 100


def _box(corners: tuple[float, float, float, float], field: Field, pen: str) -> str:
    coldest, warmest, driest, humid = corners
    left, right, top, bottom = _x(coldest, field), _x(warmest, field), _y(humid), _y(driest)
    return f'<rect x="{left:.1f}" y="{top:.1f}" width="{right - left:.1f}" height="{bottom - top:.1f}" {pen}/>'


def _axes(field: Field, across: str, up: str) -> Iterator[str]:
    yield f'<path d="M{_LEFT} {_TOP} V{_BOTTOM} H{_RIGHT}" fill="none" stroke="#1b1d1f" stroke-width="0.8"/>'
    for temperature, printed in field.ticks:
        x = _x(temperature, field)
        yield f'<path d="M{x:.1f} {_BOTTOM} v4" stroke="#1b1d1f" stroke-width="0.8"/>'
        yield f'<text x="{x:.1f}" y="{_BOTTOM + 18}" text-anchor="middle" {_FONT}>{escape(printed)}</text>'
    for humidity in (0, 20, 40, 60, 80, 100):
        yield f'<text x="{_LEFT - 6}" y="{_y(humidity) + 4:.1f}" text-anchor="end" {_FONT}>{humidity}</text>'
    yield f'<text x="{(_LEFT + _RIGHT) / 2:.0f}" y="{_HEIGHT - 4}" text-anchor="middle" {_FONT}>{escape(across)}</text>'
    yield f'<text x="0" y="14" {_FONT}>{escape(up)}</text>'


def _curve(curve: Curve, field: Field) -> str:
    line = " L".join(f"{_x(t, field):.1f} {_y(h):.1f}" for t, h in curve.points)
    return f'<path d="M{line}" fill="none" stroke="#1b1d1f" stroke-width="1" stroke-dasharray="{curve.dashes}"/>'


def _key(curves: Sequence[Curve], allowed: str, job: str) -> Iterator[str]:
    x, y = _RIGHT + 16, _TOP + 10
    if allowed:
        yield f'<rect x="{x}" y="{y - 9}" width="18" height="10" fill="#e2dfe1"/>'
        yield f'<text x="{x + 24}" y="{y}" {_FONT}>{escape(allowed)}</text>'
    else:
        y -= 20
    yield f'<rect x="{x}" y="{y + 11}" width="18" height="10" fill="none" stroke="#1b1d1f" stroke-width="1.6"/>'
    yield f'<text x="{x + 24}" y="{y + 20}" {_FONT}>{escape(job)}</text>'
    for number, curve in enumerate(curves, start=2):
        at = y + 20 * number
        yield f'<path d="M{x} {at - 4} h18" stroke="#1b1d1f" stroke-dasharray="{curve.dashes}"/>'
        yield f'<text x="{x + 24}" y="{at}" {_FONT}>{escape(curve.label)}</text>'
