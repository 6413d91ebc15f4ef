"""A repaired spot in section: old coats ground back in rings, the sanded zone around them, the new coats lapping on it.

A principle and not to scale, for widths of millimetres and films of micrometres cannot be; the figures stand in its
key as finished text. Called by `specgen.documents.method_statement.old_coats`; the SVG text goes into the document as it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from html import escape

# The room to the right holds the longest name of a paint with its film in both units.
_WIDTH = 760
_BARE, _RINGS, _SANDED, _END = 70.0, 170.0, 100.0, 390.0
_EDGE = _BARE + _RINGS
_SUBSTRATE = 24.0
# The old coats share this height, and the new ones are drawn thinner, so that many still make one drawing.
_OLD_STACK, _OLD_MOST, _NEW_STACK, _NEW_MOST = 84.0, 22.0, 36.0, 9.0
# How far into the sanded zone the last of the new coats is drawn.
_LAPPED = 0.7
_LINE = 18
MOST_OLD_COATS = 12
"""More old coats than this cannot be told apart in a drawing."""
_OLD_TINTS = ("#a39ba1", "#d6d1d4")
_NEW_TINTS = ("#ffffff", "#efedee")
_FONT = 'font-family="Specgen Sans, sans-serif" font-size="14"'
_PEN = 'stroke="#1b1d1f" stroke-width="0.8"'

Points = list[tuple[float, float]]


def feather_edge(old: Sequence[str], new: Sequence[str], substrate: str, key: Sequence[str], title: str) -> str:
    """SVG of a repair: `old` and `new` name the coats from the part up, `key` explains the zones A, B, C and D.

    Empty text where there is no old coat or no new one, and for more than MOST_OLD_COATS old ones.
    """
    if not old or not new or len(old) > MOST_OLD_COATS:
        return ""
    thick, thin = min(_OLD_MOST, _OLD_STACK / len(old)), min(_NEW_MOST, _NEW_STACK / len(new))
    top = 30.0
    floor = max(top + thin * len(new) + thick * len(old) + 8, 12.0 + _LINE * (len(old) + 1))
    dimension = floor + _SUBSTRATE + 16
    height = dimension + 14 + _LINE * len(key) + 4
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_WIDTH} {height:.0f}" '
        f'width="{_WIDTH}" height="{height:.0f}" class="feather-edge"><title>{escape(title)}</title>',
        *_old_coats(old, floor, thick),
        *_new_coats(new, floor, thin, thick * len(old)),
        *_substrate(substrate, floor),
        *_zones(dimension),
        *(_text(0, dimension + 14 + _LINE * (number + 1) - 4, line) for number, line in enumerate(key)),
        "</svg>",
    ]
    return "".join(parts)


def _old_coats(old: Sequence[str], floor: float, thick: float) -> Iterator[str]:
    ring = _RINGS / len(old)
    label_at = floor - 1
    for number, name in enumerate(old):
        left, low = _BARE + ring * number, floor - thick * number
        outline = [(left, low), (left + ring, low - thick), (_END, low - thick), (_END, low)]
        yield _shape(outline, _OLD_TINTS[number % 2])
        middle = low - thick / 2
        label_at = min(middle + 4, label_at - (_LINE if number else 0))
        yield _leader(middle, label_at)
        yield _text(_END + 30, label_at, name)


def _new_coats(new: Sequence[str], floor: float, thin: float, rise: float) -> Iterator[str]:
    # The last coat is drawn first, for each coat covers the end of the one below it.
    for number in reversed(range(len(new))):
        end = _EDGE + _SANDED * _LAPPED * (number + 1) / len(new)
        lift = thin * (number + 1)
        outline = [(0, floor), (0, floor - lift), (_BARE, floor - lift), (_EDGE, floor - rise - lift)]
        outline += [(end - 6, floor - rise - lift), (end, floor - rise), (_EDGE, floor - rise), (_BARE, floor)]
        yield _shape(outline, _NEW_TINTS[number % 2])
    summit = floor - thin * len(new)
    first, last = new[0], new[-1]
    yield f'<path d="M30 {summit + 2:.1f} V20" fill="none" stroke="#55585b" stroke-width="0.8"/>'
    yield _text(0, 15, first if len(new) == 1 else f"{first} – {last}")


def _substrate(name: str, floor: float) -> Iterator[str]:
    low = floor + _SUBSTRATE
    yield _shape([(0, floor), (_END, floor), (_END, low), (0, low)], "#ffffff")
    hatch = "".join(
        f"M{x} {low:.1f} L{x + _SUBSTRATE:.0f} {floor:.1f} " for x in range(0, int(_END - _SUBSTRATE) + 1, 12)
    )
    yield f'<path d="{hatch}" stroke="#55585b" stroke-width="0.6"/>'
    yield _leader(floor + _SUBSTRATE / 2, floor + _SUBSTRATE / 2 + 4)
    yield _text(_END + 30, floor + _SUBSTRATE / 2 + 4, name)


def _zones(y: float) -> Iterator[str]:
    ends = (0.0, _BARE, _EDGE, _EDGE + _SANDED, _END)
    ticks = "".join(f"M{x:.1f} {y - 5:.1f} V{y + 5:.1f} " for x in ends)
    yield f'<path d="M0 {y:.1f} H{_END:.1f} {ticks}" fill="none" {_PEN}/>'
    for letter, left, right in zip("ABCD", ends, ends[1:], strict=False):
        middle = (left + right) / 2
        yield (
            f'<rect x="{middle - 9:.1f}" y="{y - 8:.1f}" width="18" height="16" fill="#ffffff"/>'
            f'<text x="{middle:.1f}" y="{y + 5:.1f}" text-anchor="middle" font-weight="600" {_FONT}>{letter}</text>'
        )


def _shape(points: Points, fill: str) -> str:
    drawn = " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
    return f'<polygon points="{drawn}" fill="{fill}" {_PEN}/>'


def _leader(middle: float, label_at: float) -> str:
    return (
        f'<path d="M{_END} {middle:.1f} L{_END + 16} {label_at - 4:.1f} H{_END + 24}" '
        'fill="none" stroke="#55585b" stroke-width="0.8"/>'
    )


def _text(x: float, y: float, text: str) -> str:
    return f'<text x="{x:.0f}" y="{y:.1f}" {_FONT}>{escape(text)}</text>'
