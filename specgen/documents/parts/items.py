"""How many of an item there are, as printed. Called by `method_statement` and `job_card`."""

from __future__ import annotations

from specgen.documents.parts.wording import Words
from specgen.model.job import Hand, Item

_BLANK = "\N{NO-BREAK SPACE}"


def number_of(item: Item, words: Words) -> str:
    """`4`; `2 left, 2 right` of parts that are left and right."""
    if item.hand is None:
        return str(item.count)
    half = item.count // 2
    said = words.word(item.hand).format(*((item.count - half, half) if item.hand is Hand.BOTH else (item.count,)))
    # a number stays with its side in a narrow column
    return said.replace(" ", _BLANK).replace(f",{_BLANK}", ", ")
