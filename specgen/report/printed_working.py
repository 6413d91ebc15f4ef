"""A Working as text with everything it builds on, so that it can be worked out again by hand. Called by `specgen explain`.

Inputs that are the maker's are held back unless the reader is the maker.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from specgen.trade.working import HELD_BY_MAKER, Working

_CHAIN = "working:"


def printed_working(working: Working, known: Mapping[str, Working], *, for_maker: bool) -> str:
    """The working asked for first, then those its figures come from, each once; ends with a line end."""
    pages = [_page(entry, for_maker=for_maker) for entry in _chain(working, known, for_maker=for_maker)]
    return "\n".join(pages)


def _chain(working: Working, known: Mapping[str, Working], *, for_maker: bool) -> Iterator[Working]:
    waiting, seen = [working], set()
    while waiting:
        entry = waiting.pop(0)
        if entry.id in seen:
            continue
        seen.add(entry.id)
        yield entry
        inputs = entry.inputs if for_maker else entry.shown_inputs()
        origins = (given.origin.removeprefix(_CHAIN) for given in inputs if given.origin.startswith(_CHAIN))
        waiting.extend(known[origin] for origin in origins if origin in known)


def _page(working: Working, *, for_maker: bool) -> str:
    lines = [f"{working.name} ({_CHAIN}{working.id})"]
    if working.held_by_maker and not for_maker:
        lines += [f"  = {working.printed()}, {HELD_BY_MAKER}"]
    else:
        lines += [f"  {working.formula_text()}", f"  = {working.substituted()}", f"  = {working.printed()}"]
        for given, figure in working.printed_inputs():
            origin = f"  [{given.origin}]" if given.origin else ""
            lines.append(f"    {given.sign}: {given.name}, {figure}{origin}")
        if working.note:
            lines.append(f"  note: {working.note}")
    lines.append(f"  source: {working.source}")
    return "\n".join(lines) + "\n"
