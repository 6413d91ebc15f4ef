"""SVG, by what is allowed in it: plain shapes, words, gradients. It is written anew from that; anything else is refused by name.

What editors leave for themselves (their own namespaces, metadata, titles) shows nothing and stays behind. What would change the
drawing if it were left out (filters, masks, pictures, references) is refused.
"""

from __future__ import annotations

import re
from html import escape
from typing import Any
from xml.parsers import expat

from specgen.pictures.refused import NotAPicture

MOST_BYTES = 1024 * 1024
MOST_ELEMENTS = 5_000
DEEPEST = 30
LARGEST_SIDE = 100_000
NARROWEST = 50
"""How often the shorter side may go into the longer one; what is narrower prints as a hair."""

_SVG = "http://www.w3.org/2000/svg"
_SHAPES = frozenset(("path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan"))
_WORDS = frozenset(("text", "tspan"))
_GRADIENTS = frozenset(("linearGradient", "radialGradient", "stop"))
_DRAWN = _SHAPES | _GRADIENTS | {"svg", "g", "defs"}
_LEFT_OUT = frozenset(("title", "desc", "metadata"))
_PAINT = frozenset(
    (
        "fill", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-dasharray",
        "stroke-dashoffset", "fill-rule", "font-size", "font-weight", "text-anchor", "stop-color", "display", "visibility",
    )
)  # fmt: skip
_PLACED = frozenset(
    (
        "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "fx", "fy", "dx", "dy", "d", "points", "width", "height",
        "transform", "offset", "gradientUnits", "gradientTransform", "id",
    )
)  # fmt: skip
# without these the drawing is another one; at their usual value they do nothing
_CHANGES = re.compile(
    r"spreadMethod|filter|clip-path|mask.*|marker.*|mix-blend-mode|isolation|opacity|fill-opacity|stroke-opacity|stop-opacity|href"
    r"|transform-.*|on.*"
)
_USUAL = frozenset(("none", "pad", "normal", "auto", "1", "1.0", "1.00", "100%"))
_VALUE = re.compile(r"[-+\w\s.,#%()]*")
_GRADIENT = re.compile(r"url\(\s*[\"']?(#[\w\-.]+)[\"']?\s*\)")
_FIGURE = r"[-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:e[-+]?[0-9]+)?"
_LENGTH = re.compile(rf"{_FIGURE}(?:px|pt|mm|cm|in|em|%)?", re.I | re.A)
_LIST = re.compile(rf"\s*(?:{_FIGURE}[\s,]*)*", re.I | re.A)
_TRANSFORM = re.compile(
    rf"\s*(?:(?:matrix|translate|scale|rotate|skewX|skewY)\(\s*{_FIGURE}(?:[\s,]+{_FIGURE})*\s*\)[\s,]*)*", re.A
)
_PATH = re.compile(rf"\s*(?:m\s*{_FIGURE}[\s,]*{_FIGURE}(?:[\s,]*[mzlhvcsqta]|[\s,]*{_FIGURE})*\s*)?", re.I | re.A)
# what these hold has to be drawn by the typesetter, which gives up the whole page over a slip
_GRAMMAR = {
    "d": _PATH, "points": _LIST, "transform": _TRANSFORM, "gradientTransform": _TRANSFORM,
    **dict.fromkeys(("x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "fx", "fy", "width", "height"), _LENGTH),
    **dict.fromkeys(("stroke-width", "stroke-miterlimit", "stroke-dashoffset", "font-size", "offset"), _LENGTH),
}  # fmt: skip
_NUMBER = re.compile(r"\s*([0-9]*\.?[0-9]+)\s*(px)?\s*")
_WHITE = frozenset(("none", "transparent", "white", "snow", "rgb(255,255,255)", "rgb(100%,100%,100%)"))
_HEX = re.compile(r"#([0-9a-f]{6}|[0-9a-f]{3})")
WHITE_FROM = 250
"""From which share of light on, of 255, a colour is white on paper."""

_FACE = ' font-family="Specgen Sans, sans-serif"'
_PLAIN = "save it as plain SVG of shapes, with words turned into outlines, or as PNG"


def drawing(data: bytes) -> tuple[bytes, int, int, bool]:
    """The drawing written anew, its width and height, and whether all of it is white. Raises NotAPicture."""
    if len(data) > MOST_BYTES:
        raise NotAPicture(f"the drawing is larger than {MOST_BYTES // 1024} KiB", "simplify it, or save it as PNG")
    reader = _Reader()
    try:
        reader.parser.Parse(data, True)
    except expat.ExpatError as error:
        raise NotAPicture(f"the drawing cannot be read from line {error.lineno} on", _PLAIN) from None
    except (ValueError, LookupError):
        raise NotAPicture("the characters of the drawing cannot be read", "save it as UTF-8") from None
    return (
        "".join(reader.written).encode("utf-8"),
        max(1, round(reader.width)),
        max(1, round(reader.height)),
        not reader.shows,
    )


class _Reader:
    """Takes each element as it comes; what is left out is left out with all that stands in it."""

    def __init__(self) -> None:
        self.written: list[str] = []
        self.width = self.height = 0.0
        self.shows = False
        self._open: list[str] = []
        self._inherited: list[tuple[str, str, bool]] = [("black", "none", True)]
        self._skipped = 0
        self._elements = 0
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._words
        self.parser.StartDoctypeDeclHandler = self._doctype
        self.parser.EntityDeclHandler = self._doctype
        self.parser.ProcessingInstructionHandler = self._instruction

    def _refuse(self, what: str) -> NotAPicture:
        return NotAPicture(f"line {self.parser.CurrentLineNumber} of the drawing holds {what}", _PLAIN)

    def _doctype(self, *_: Any) -> None:
        raise self._refuse("a document type or an entity, which may stand for anything")

    def _instruction(self, *_: Any) -> None:
        raise self._refuse("an instruction to a program")

    def _start(self, full: str, attributes: dict[str, str]) -> None:
        space, _, name = full.rpartition(" ")
        self._elements += 1
        if self._elements > MOST_ELEMENTS:
            raise NotAPicture(f"the drawing has more than {MOST_ELEMENTS:,} elements", "simplify it, or save it as PNG")
        if self._skipped or (self._open and (space != _SVG or name in _LEFT_OUT)):
            self._skipped += 1
            return
        if space != _SVG or name not in _DRAWN or (name == "svg") != (not self._open):
            raise self._refuse(f"the element {name[:40]}, which is not drawn here")
        if len(self._open) >= DEEPEST:
            raise self._refuse(f"elements nested more than {DEEPEST} deep")
        kept = self._kept(attributes)
        if name == "svg":
            self._size(attributes)
            kept = {key: value for key, value in kept.items() if key in _PAINT}
        fill, stroke, there = self._inherited[-1]
        fill, stroke = kept.get("fill", fill), kept.get("stroke", stroke)
        there = there and kept.get("display") != "none" and kept.get("visibility") not in ("hidden", "collapse")
        self._inherited.append((fill, stroke, there and name not in _GRADIENTS and name != "defs"))
        if name in _SHAPES and name not in _WORDS and self._seen() and _has_extent(name, kept):
            self.shows = True
        self._open.append(name)
        if name == "svg":
            view = f'viewBox="{self._box}" width="{self.width:g}" height="{self.height:g}"{_FACE}'
            self.written.append(f'<svg xmlns="{_SVG}" {view}')
        else:
            self.written.append(f"<{name}")
        self.written += [f' {key}="{escape(value)}"' for key, value in sorted(kept.items())]
        self.written.append(">")

    def _end(self, _: str) -> None:
        if self._skipped:
            self._skipped -= 1
            return
        self._inherited.pop()
        self.written.append(f"</{self._open.pop()}>")

    def _seen(self) -> bool:
        """Whether what stands here shows on white paper."""
        fill, stroke, there = self._inherited[-1]
        return there and not (_is_white(fill) and _is_white(stroke))

    def _words(self, text: str) -> None:
        if not self._skipped and self._open and self._open[-1] in _WORDS and text.strip() and self._seen():
            self.shows = True
        if not self._skipped and self._open and (self._open[-1] in _WORDS or not text.strip()):
            self.written.append(escape(text, quote=False))

    def _kept(self, attributes: dict[str, str]) -> dict[str, str]:
        stated = {name: value.strip() for name, value in attributes.items() if " " not in name}
        if any(name.endswith(" href") for name in attributes):
            raise self._refuse("a reference")
        for declared in stated.pop("style", "").split(";"):
            name, _, value = declared.partition(":")
            if name.strip():
                stated[name.strip()] = value.strip()
        kept: dict[str, str] = {}
        for name, value in stated.items():
            if name in _PAINT or name in _PLACED:
                found = _GRADIENT.fullmatch(value) if name in ("fill", "stroke") else None
                said = _GRAMMAR.get(name, _VALUE)
                if found is None and not (
                    said.fullmatch(value) and _VALUE.fullmatch(value) and "url" not in value.lower()
                ):
                    raise self._refuse(f"{name} with a value that is not drawn here")
                kept[name] = f"url({found[1]})" if found is not None else value
            elif _CHANGES.fullmatch(name) and value not in _USUAL:
                raise self._refuse(f"{name[:40]}, which is not drawn here")
        return kept

    def _size(self, attributes: dict[str, str]) -> None:
        box = attributes.get("viewBox", "").replace(",", " ").split()
        try:
            if box:
                left, top, self.width, self.height = (float(part) for part in box)
            else:
                found = [_NUMBER.fullmatch(attributes.get(side, "")) for side in ("width", "height")]
                left = top = 0.0
                self.width, self.height = (float(size[1]) if size is not None else 0.0 for size in found)
        except ValueError:
            raise self._refuse("a viewBox that is not four numbers") from None
        sides = (abs(left), abs(top), self.width, self.height)
        if not (all(side <= LARGEST_SIDE for side in sides) and min(self.width, self.height) > 0):
            raise self._refuse("no size: state viewBox with four numbers")
        if max(self.width, self.height) > NARROWEST * min(self.width, self.height):
            raise self._refuse(f"a side more than {NARROWEST} times the other")
        self._box = f"{left:g} {top:g} {self.width:g} {self.height:g}"


def _is_white(paint: str) -> bool:
    """White, or so near it that paper hides it."""
    plain = re.sub(r"\s", "", paint.lower())
    if plain in _WHITE:
        return True
    hexed = _HEX.fullmatch(plain)
    if hexed is None:
        return False
    digits = hexed[1] if len(hexed[1]) == 6 else "".join(digit * 2 for digit in hexed[1])
    return min(int(digits[at : at + 2], 16) for at in (0, 2, 4)) >= WHITE_FROM


# what a shape is without, it does not draw
_EXTENT = {
    "rect": ("width", "height"), "circle": ("r",), "path": ("d",), "polygon": ("points",),
    "polyline": ("points",),
}  # fmt: skip


def _has_extent(name: str, kept: dict[str, str]) -> bool:
    return all(re.search(r"[1-9]", kept.get(leaf, "")) for leaf in _EXTENT.get(name, ()))
