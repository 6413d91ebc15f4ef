"""The hazard pictograms of the GHS as drawings of our own: a black symbol on white in a red square set on its point.

The form is that of the GHS, annex 1, and of CLP annex V; the geometry is ours. Called by `views.pictogram`; the SVG text
goes into a document as it is. Each drawing holds its name as `<title>`, which is its text in a tagged PDF and for a
screen reader, and stays legible without colour: the frame turns dark grey.
"""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

INK = "#000000"
RED = "#d2121b"

_FRAME = f'<path d="M50 6 L94 50 L50 94 L6 50 Z" fill="#ffffff" stroke="{RED}" stroke-width="7.5"/>'
_WHITE = 'fill="#ffffff"'

# What is inside the frame, in a field of 100 by 100 whose corners the frame cuts off: |x - 50| + |y - 50| stays below 38.
_SYMBOLS: Mapping[str, str] = {
    "GHS01": (
        '<circle cx="45" cy="60" r="11"/>'
        '<path d="M50.5 45.5 L53 21 L57.5 40 L68 30.5 L62 44.5 L77 46 L63.5 52 L72 63 L59 57.5 '
        'C58.5 52.5 55.5 48 50.5 45.5 Z"/>'
        '<path d="M33 38 L38 44.5 L34.5 46 Z M41.5 27.5 L44.5 41 L40 40.5 Z M24.5 50 L33 52.5 L31.5 55.5 Z '
        'M60 64 L65 71 L58 68 Z"/>'
    ),
    "GHS02": (
        '<path d="M53 16 C53 28 64 32 64 46 C66 42 66 38 64 33 C71 40 73 49 69 57 C67 62 63 66 57 68 H43 '
        'C36 65 31 59 32 50 C33 44 36 41 36 35 C39 38 40 41 40 45 C44 36 53 29 53 16 Z"/>'
        f'<path d="M51 40 C51 48 58 51 58 59 C58 64 55 68 50 68 C45 68 43 64 43 60 C43 53 51 48 51 40 Z" {_WHITE}/>'
        '<rect x="37" y="70" width="26" height="4"/>'
    ),
    "GHS03": (
        '<circle cx="50" cy="59" r="10.5" fill="none" stroke="#000000" stroke-width="5"/>'
        '<path d="M52 16 C52 24 60 28 60 37 C62 34 62 32 61 29 C66 34 67 41 63 46 C60 44.5 55 43.5 50 43.5 '
        'C45 43.5 40 44.5 37 46 C33 40 37 35 38 30 C40 32 41 34 41 37 C44 30 52 25 52 16 Z"/>'
        f'<path d="M51 32 C51 36 55 38 55 42.5 C52 42 48 42 45.5 42.5 C45 38 51 36 51 32 Z" {_WHITE}/>'
        '<rect x="39" y="73" width="22" height="3.5"/>'
    ),
    "GHS04": (
        '<g transform="translate(48.8 50.6) rotate(-34) scale(0.86)">'
        '<path d="M-19 -11 H6 C11 -11 14 -8 16 -5 H20 V-7 H26 V7 H20 V5 H16 C14 8 11 11 6 11 H-19 '
        'C-26 11 -29 6 -29 0 C-29 -6 -26 -11 -19 -11 Z"/></g>'
    ),
    "GHS05": (
        # two tubes that pour, and what they pour on: a plate and a hand, both eaten into
        '<g transform="translate(39.5 33) rotate(-36)"><path d="M-10.5 -3.6 H5 A3.6 3.6 0 0 1 5 3.6 H-10.5 Z" '
        'fill="#ffffff" stroke="#000000" stroke-width="2.2"/><path d="M-10.5 0 H8.6 A3.6 3.6 0 0 1 5 3.6 '
        'H-10.5 Z"/></g>'
        '<g transform="translate(60.5 33) rotate(36)"><path d="M10.5 -3.6 H-5 A3.6 3.6 0 0 0 -5 3.6 H10.5 Z" '
        'fill="#ffffff" stroke="#000000" stroke-width="2.2"/><path d="M10.5 0 H-8.6 A3.6 3.6 0 0 0 -5 3.6 '
        'H10.5 Z"/></g>'
        '<ellipse cx="32" cy="44" rx="1.7" ry="2.6"/><ellipse cx="32" cy="50.5" rx="1.7" ry="2.6"/>'
        '<ellipse cx="68" cy="44" rx="1.7" ry="2.6"/><ellipse cx="68" cy="50.5" rx="1.7" ry="2.6"/>'
        '<path d="M26 56.5 H29 C29 60 30.5 61 32 61 C33.5 61 35 60 35 56.5 H47 V64 H26 Z"/>'
        '<path d="M47.5 73 L53 60 C54.3 57.3 57 56.5 60 56.5 H64.5 C64.8 60 66.5 61 68 61 C69.5 61 71 60 71.2 56.5 '
        "H73.5 C76.5 56.5 76.5 62 73.5 62 L67 62.6 L70.5 64.5 C72.5 66 71 68.4 68.5 67.6 L63.5 66.5 "
        'C61 70 57.5 71 55.5 75.5 Z"/>'
    ),
    "GHS06": (
        '<g transform="translate(50 63.5) scale(0.9) translate(-50 -63.5)">'
        '<g stroke="#000000" stroke-width="5" stroke-linecap="round"><path d="M33 58 L66 69 M67 58 L34 69"/></g>'
        '<circle cx="31.5" cy="60" r="3.2"/><circle cx="33.5" cy="55.5" r="3.2"/>'
        '<circle cx="68.5" cy="60" r="3.2"/><circle cx="66.5" cy="55.5" r="3.2"/>'
        '<circle cx="65.5" cy="71.5" r="3.2"/><circle cx="68" cy="67.5" r="3.2"/>'
        '<circle cx="34.5" cy="71.5" r="3.2"/><circle cx="32" cy="67.5" r="3.2"/></g>'
        '<path d="M50 19.5 C60 19.5 65.5 26 65.5 34 '
        'C65.5 39.5 63.5 43 59 46 V55 H41 V46 C36.5 43 34.5 39.5 34.5 34 C34.5 26 40 19.5 50 19.5 Z"/>'
        f'<circle cx="43" cy="36" r="4.6" {_WHITE}/><circle cx="57" cy="36" r="4.6" {_WHITE}/>'
        f'<path d="M50 40 L53 46 H47 Z" {_WHITE}/>'
        '<path d="M45 49 V55 M50 49 V55 M55 49 V55" stroke="#ffffff" stroke-width="1.6"/>'
    ),
    "GHS07": (
        '<path d="M50 22 C55 22 58 26 57.5 31 L54 56 C53.5 59 46.5 59 46 56 L42.5 31 C42 26 45 22 50 22 Z"/>'
        '<circle cx="50" cy="69" r="6"/>'
    ),
    "GHS08": (
        '<circle cx="50" cy="26" r="8.5"/>'
        '<path d="M42 36 H58 C67 37 72 43 72 53 L66.5 70 H33.5 L28 53 C28 43 33 37 42 36 Z"/>'
        f'<path d="M50 36.5 L52.8 47.2 L62.5 41.5 L57 51.5 L68 54 L57 56.5 L62.5 66.5 L52.8 60.8 '
        f'L50 70.5 L47.2 60.8 L37.5 66.5 L43 56.5 L32 54 L43 51.5 L37.5 41.5 L47.2 47.2 Z" {_WHITE}/>'
    ),
    "GHS09": (
        # a bare tree, and a dead fish at the edge of the water
        '<path d="M32 66 L35.5 65 L36.2 47.5 L27.5 39.5 L29 37.7 L36.3 43 L34.8 27.5 L38 27 L39 35.5 '
        'L44.5 27.5 L46.5 28.8 L40.4 40.5 L40.6 44.5 L49.5 35 L51.2 36.6 L42 50.5 L43 65 Z"/>'
        '<path d="M27.5 64.5 H72.5 L67 70 C63 67.5 59 72 55 70 C51 67.5 47 72 43 70 C40 68.5 36.5 71 33.5 70 Z"/>'
        '<path d="M45.5 57 C49 48.5 62 47 69 54.5 L76.5 48.5 C74.8 53.5 74.8 57.5 76.5 61.5 L69 58.5 '
        'C62 64.5 50 64 45.5 57 Z"/>'
        '<path d="M49.8 53.6 L53.2 57 M53.2 53.6 L49.8 57" stroke="#ffffff" stroke-width="1.5"/>'
    ),
}

CODES = tuple(_SYMBOLS)


def pictogram(code: str, title: str) -> str:
    """SVG of the pictogram of a code, as in GHS02; the size is set where it is printed. Raises KeyError without one."""
    symbol = _SYMBOLS[code]
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" class="pictogram" role="img" viewBox="0 0 100 100" '
        f'width="100" height="100"><title>{escape(title)}</title>{_FRAME}<g fill="{INK}">{symbol}</g></svg>'
    )
