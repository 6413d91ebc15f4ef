"""Colour difference of two colours given as L*a*b*: dE*ab of 1976 (ISO/CIE 11664-4) and CIEDE2000 (ISO/CIE 11664-6).

Called by the rules on colour. Square roots and angles are irrational, so the arithmetic is that of the machine, good to ten digits;
a result is rounded to four places, which is as fine as the published check values.
"""

from __future__ import annotations

from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt
from typing import NamedTuple

_PLACES = 4
_HALF_TURN, _TURN = 180.0, 360.0
_TWENTY_FIVE_7 = 25.0**7
# Two hues that lie opposite but for the last digits of the machine lie opposite.
_OPPOSITE = 1e-9


class Lab(NamedTuple):
    """One colour: lightness, red or green, yellow or blue, under the illuminant and observer stated beside it."""

    lightness: float
    a: float
    b: float


def difference_ab(one: Lab, other: Lab) -> float:
    """dE*ab: the distance of the two colours."""
    return round(
        sqrt((one.lightness - other.lightness) ** 2 + (one.a - other.a) ** 2 + (one.b - other.b) ** 2), _PLACES
    )


def difference_2000(one: Lab, other: Lab) -> float:
    """CIEDE2000 with all weights one: the distance corrected for how the eye sees lightness, chroma and hue."""
    mean_chroma = (hypot(one.a, one.b) + hypot(other.a, other.b)) / 2
    widened = 1 + 0.5 * (1 - sqrt(mean_chroma**7 / (mean_chroma**7 + _TWENTY_FIVE_7)))
    chroma1, hue1 = _polar(one.a * widened, one.b)
    chroma2, hue2 = _polar(other.a * widened, other.b)
    d_lightness, d_chroma = other.lightness - one.lightness, chroma2 - chroma1
    turn = _between(hue1, hue2) if chroma1 * chroma2 else 0.0
    d_hue = 2 * sqrt(chroma1 * chroma2) * sin(radians(turn) / 2)
    lightness, chroma = (one.lightness + other.lightness) / 2, (chroma1 + chroma2) / 2
    hue = _mean_hue(hue1, hue2) if chroma1 * chroma2 else hue1 + hue2
    s_lightness = 1 + 0.015 * (lightness - 50) ** 2 / sqrt(20 + (lightness - 50) ** 2)
    s_chroma = 1 + 0.045 * chroma
    s_hue = 1 + 0.015 * chroma * _eye(hue)
    parts = d_lightness / s_lightness, d_chroma / s_chroma, d_hue / s_hue
    turned = -sin(radians(60 * exp(-(((hue - 275) / 25) ** 2)))) * 2 * sqrt(chroma**7 / (chroma**7 + _TWENTY_FIVE_7))
    return round(sqrt(sum(part**2 for part in parts) + turned * parts[1] * parts[2]), _PLACES)


def _polar(a: float, b: float) -> tuple[float, float]:
    return hypot(a, b), degrees(atan2(b, a)) % _TURN if a or b else 0.0


def _between(hue1: float, hue2: float) -> float:
    """From the first hue to the second, the shorter way."""
    turn = hue2 - hue1
    if turn > _HALF_TURN + _OPPOSITE:
        return turn - _TURN
    return turn + _TURN if turn < -_HALF_TURN - _OPPOSITE else turn


def _mean_hue(hue1: float, hue2: float) -> float:
    if abs(hue1 - hue2) <= _HALF_TURN + _OPPOSITE:
        return (hue1 + hue2) / 2
    return (hue1 + hue2 + (_TURN if hue1 + hue2 < _TURN else -_TURN)) / 2


def _eye(hue: float) -> float:
    """How much a difference of hue is seen at a hue."""
    return (
        1
        - 0.17 * cos(radians(hue - 30))
        + 0.24 * cos(radians(2 * hue))
        + 0.32 * cos(radians(3 * hue + 6))
        - 0.20 * cos(radians(4 * hue - 63))
    )
