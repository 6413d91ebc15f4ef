"""What a PDF says of its own structure, for reading it aloud and for taking it apart: mended where the typesetter is coarse.

Called by `pdf` before the bytes are written, with the document tree the typesetter has built (a `pydyf.PDF`). Clauses are
those of ISO 14289-1; the elements are those of ISO 32000-1, clause 14.8.4.
"""

from __future__ import annotations

import re
from typing import Any

import pydyf  # type: ignore[import-untyped]  # ships no types

from specgen.rendering.failure import RenderError

_HEADING = re.compile(r"/H([1-6])")


def mend_tags(tree: Any) -> None:
    """Mend tables and lists. Raises RenderError for headings that skip a level and for a drawing without a title.

    Of a table or list set over several pages the typesetter makes one a page, with the head repeated.
    """
    records = (one for one in tree.objects if isinstance(one, pydyf.Dictionary))
    elements = {one.reference: one for one in records if one.get("Type") == "/StructElem"}
    level = 0
    for element in list(elements.values()):
        kind = element["S"]
        if heading := _HEADING.fullmatch(kind):
            level = _next_level(level, int(heading[1]))
        elif kind == "/Figure" and not element.get("Alt"):
            # clause 7.3
            raise RenderError("A drawing has no title, so it cannot be read aloud. Give its svg element one.")
        elif kind == "/TH":
            _scope(element, elements)
        elif kind == "/L":
            _pairs(element, elements)
            _strays(element, elements)
    for element in [one for one in elements.values() if one["S"] == "/LI"]:
        _body(element, elements, tree)


def _next_level(before: int, level: int) -> int:
    """Clause 7.4.2: a level may be left out upwards, never downwards."""
    if level > before + 1:
        where = f"follows one of level {before}" if before else "is the first"
        raise RenderError(
            f"A heading of level {level} {where}. Make it one of level {before + 1}, so that none is skipped."
        )
    return level


def _scope(cell: Any, elements: dict[bytes, Any]) -> None:
    """Clause 7.5: a heading cell in the head of a table heads its column, one in its body the row.

    One that spans columns in the body stands over what follows.
    """
    part = elements[elements[cell["P"]]["P"]]["S"]
    cell["A"]["Scope"] = "/Column" if part == "/THead" or "ColSpan" in cell["A"] else "/Row"


def _pairs(listed: Any, elements: dict[bytes, Any]) -> None:
    """A name and its value, set as two entries in a division, become one entry: the name its label, the value its body."""
    for division in (elements[kid] for kid in listed["K"]):
        entries = [elements[kid] for kid in division["K"] if kid in elements]
        if division["S"] != "/Div" or not 1 <= len(entries) <= 2 or any(entry["S"] != "/LI" for entry in entries):
            continue
        division["S"] = "/LI"
        # one alone is the rest of a value that began on the page before
        for entry, (outer, inner) in zip(reversed(entries), (("/LBody", "/Div"), ("/Lbl", "/Span")), strict=False):
            entry["S"] = outer
            for kid in entry["K"]:
                elements[kid]["S"] = inner


def _strays(listed: Any, elements: dict[bytes, Any]) -> None:
    """Clause 7.2: a list holds entries only; the blank between two entries set side by side goes to the one before it."""
    kept: list[bytes] = []
    for kid in listed["K"]:
        if elements[kid]["S"] in ("/LI", "/L", "/Caption", "/Div") or not kept:
            kept.append(kid)
        else:
            bodies = [one for one in elements[kept[-1]]["K"] if one in elements and elements[one]["S"] == "/LBody"]
            home = bodies[-1] if bodies else kept[-1]
            elements[kid]["P"] = home
            elements[home]["K"].append(kid)
    listed["K"] = pydyf.Array(kept)


def _body(entry: Any, elements: dict[bytes, Any], tree: Any) -> None:
    """Clause 7.2: what stands in an entry beside its number or bullet is one body; the typesetter leaves paragraphs bare."""
    beside = [kid for kid in entry["K"] if elements[kid]["S"] != "/Lbl"]
    if all(elements[kid]["S"] == "/LBody" for kid in beside):
        return
    body = pydyf.Dictionary(
        {"Type": "/StructElem", "S": "/LBody", "K": pydyf.Array(beside), "Pg": entry["Pg"], "P": entry.reference}
    )
    tree.add_object(body)
    for kid in (elements[kid] for kid in beside):
        kid["P"] = body.reference
        if kid["S"] == "/LBody":
            kid["S"] = "/Div"
    entry["K"] = pydyf.Array([*(kid for kid in entry["K"] if kid not in beside), body.reference])
