"""The results of a test as dots on a line, with their mean and the limits they are held against. Tells apart by shape and not by colour.

Its figures stand in the table beside it. Called by the view of a test report.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

_WIDTH, _LEFT, _RIGHT = 560, 20, 540
_HEIGHT, _AXIS = 84, 50
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="12"'


@dataclass(frozen=True, slots=True)
class Dot:
    """One result by its name; `apart` draws it open: it lies far out, or is not counted."""

    name: str
    value: float
    apart: bool


def result_dots(
    dots: Sequence[Dot], mean: float, limits: Sequence[tuple[float, str]], unit: str, names: tuple[str, str], title: str
) -> str:
    """SVG. `limits` with their words; `names` of the mean and of a dot that is drawn open."""
    ends = [dot.value for dot in dots] + [value for value, _ in limits] + [mean]
    room = (max(ends) - min(ends)) * 0.1 or abs(max(ends)) * 0.1 or 1
    low, high = min(ends) - room, max(ends) + room

    def x(value: float) -> float:
        return _LEFT + (_RIGHT - _LEFT) * (value - low) / (high - low)

    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_WIDTH} {_HEIGHT}" width="{_WIDTH}" height="{_HEIGHT}" '
        f'class="result-dots"><title>{escape(title)}</title>',
        f'<line x1="{_LEFT}" y1="{_AXIS}" x2="{_RIGHT}" y2="{_AXIS}" stroke="#1b1d1f" stroke-width="1"/>',
    ]
    for value, said in limits:
        parts.append(
            f'<line x1="{x(value):.1f}" y1="14" x2="{x(value):.1f}" y2="{_AXIS + 8}" '
            'stroke="#1b1d1f" stroke-width="2" stroke-dasharray="5 3"/>'
        )
        parts.append(_text(x(value), 11, said))
    parts.append(
        f'<line x1="{x(mean):.1f}" y1="{_AXIS - 16}" x2="{x(mean):.1f}" y2="{_AXIS + 6}" stroke="#1b1d1f" stroke-width="1.4"/>'
    )
    parts.append(_text(x(mean), _AXIS + 20, names[0]))
    for dot in dots:
        fill = "#ffffff" if dot.apart else "#1b1d1f"
        parts.append(
            f'<circle cx="{x(dot.value):.1f}" cy="{_AXIS}" r="4.5" fill="{fill}" stroke="#1b1d1f" stroke-width="1.4"/>'
        )
    if any(dot.apart for dot in dots):
        parts.append(
            f'<text x="{_RIGHT}" y="{_HEIGHT - 2}" text-anchor="end" {_FONT}>\N{WHITE CIRCLE} {escape(names[1])}</text>'
        )
    parts.append(f'<text x="{_LEFT}" y="{_HEIGHT - 2}" {_FONT}>{escape(unit)}</text></svg>')
    return "".join(parts)


def _text(x: float, y: float, said: str) -> str:
    """Words at a place, kept inside the picture."""
    anchor = "start" if x < _WIDTH / 4 else "end" if x > _WIDTH * 3 / 4 else "middle"
    return f'<text x="{x:.1f}" y="{y}" text-anchor="{anchor}" {_FONT}>{escape(said)}</text>'
