"""The coats of a system in section, their heights to scale. Called by the views; the SVG text goes into the document as it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from html import escape

# Labels that are longer than `_LONG` characters need the wide drawing.
_WIDTH, _WIDE, _LONG = 394, 514, 33
_LEFT, _RIGHT = 0, 100
_SUBSTRATE = 26
# The drawing stands beside what is said of the system, and is as low as that.
_STACK = 84
_LABEL_GAP = 21
# The lowest label stands clear of that of the substrate.
_FIRST_LABEL = 4.0
_TOP = 14.0
_ABOVE_LABEL = 20.0
# Alternating tints that stay apart in greyscale; the figure's labels carry the meaning.
_TINTS = ("#8f8791", "#d6d1d4", "#b3abb0", "#efedee")
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="16"'


@dataclass(frozen=True, slots=True)
class Band:
    """One coat: its label, its film as printed, its height in um."""

    label: str
    film: str
    height: Fraction


def layer_section(bands: Sequence[Band], substrate: str, title: str) -> str:
    """SVG of the coats from the substrate up, first band lowest. Empty text where there is no band."""
    total = sum((band.height for band in bands), Fraction(0))
    if not bands or total == 0:
        return ""
    heights = [float(band.height / total) * _STACK for band in bands]
    labels = _label_heights(heights)
    floor = max(_TOP + _STACK, labels[-1] + _ABOVE_LABEL)
    height = floor + _SUBSTRATE + 2
    longest = max(len(substrate), *(len(_said(band)) for band in bands))
    width, size = (_WIDE, "layer-section wide") if longest > _LONG else (_WIDTH, "layer-section")
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {width} {height:.0f}" '
        f'width="{width}" height="{height:.0f}" class="{size}"><title>{escape(title)}</title>'
    ]
    y = floor
    for number, (band, tall, label) in enumerate(zip(bands, heights, labels, strict=True)):
        y -= tall
        parts.append(
            f'<rect x="{_LEFT}" y="{y:.1f}" width="{_RIGHT}" height="{tall:.1f}" '
            f'fill="{_TINTS[number % len(_TINTS)]}" stroke="#1b1d1f" stroke-width="0.8"/>'
        )
        middle, label_at = y + tall / 2, floor - label
        parts.append(
            f'<path d="M{_RIGHT} {middle:.1f} L{_RIGHT + 16} {label_at - 4:.1f} H{_RIGHT + 24}" '
            f'fill="none" stroke="#55585b" stroke-width="0.8"/>'
            f'<text x="{_RIGHT + 30}" y="{label_at:.1f}" {_FONT}>{escape(_said(band))}</text>'
        )
    parts.append(_substrate(floor, substrate))
    parts.append("</svg>")
    return "".join(parts)


def _said(band: Band) -> str:
    return f"{band.label}, {band.film}"


def _label_heights(heights: Sequence[float]) -> list[float]:
    """How high above the substrate the foot of each label stands: beside its coat, pushed up where coats are thin, so that labels
    never overlap. Those of many coats stand higher than the stack.
    """
    found: list[float] = []
    below, at = 0.0, 0.0
    for tall in heights:
        at = max(below + tall / 2 - 4, at + _LABEL_GAP if found else _FIRST_LABEL)
        found.append(at)
        below += tall
    return found


def _substrate(floor: float, name: str) -> str:
    hatch = "".join(
        f"M{x} {floor + _SUBSTRATE:.1f} L{x + _SUBSTRATE} {floor:.1f} "
        for x in range(_LEFT, _RIGHT - _SUBSTRATE + 1, 12)
    )
    return (
        f'<rect x="{_LEFT}" y="{floor:.1f}" width="{_RIGHT}" height="{_SUBSTRATE}" fill="#ffffff" stroke="#1b1d1f" '
        f'stroke-width="0.8"/><path d="{hatch}" stroke="#55585b" stroke-width="0.6"/>'
        f'<path d="M{_RIGHT} {floor + _SUBSTRATE / 2:.1f} H{_RIGHT + 24}" stroke="#55585b" stroke-width="0.8"/>'
        f'<text x="{_RIGHT + 30}" y="{floor + _SUBSTRATE / 2 + 4:.1f}" {_FONT}>{escape(name)}</text>'
    )
