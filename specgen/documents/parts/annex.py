"""The workings annex: every figure of a document with formula, inputs and source, to be worked out again by hand.

A figure whose inputs are the maker's shows its result alone. Called by `method_statement` and `data_sheet`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from specgen.documents.parts.wording import Words
from specgen.standards.tables import table
from specgen.trade.working import HELD_BY_MAKER, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingView:
    """`about` is its id; `of` the same in words, without what kind of figure it is: the name says that."""

    number: str
    name: str
    about: str
    of: str
    formula: str
    substituted: str
    inputs: tuple[tuple[str, str, str, str], ...]
    result: str
    source: str
    note: str
    held: str


def annex(workings: Iterable[Working], words: Words, elsewhere: str = "") -> tuple[WorkingView, ...]:
    """Each Working numbered W1, W2 and on; inputs that are results of others name them by that number.

    `elsewhere` says where a result comes from whose working is not in this list.
    """
    listed = list(workings)
    numbers = {working.id: f"W{position}" for position, working in enumerate(listed, 1)}
    return tuple(_view(working, numbers, words, elsewhere) for working in listed)


def held(working: Working, name: str, about: str, number: str, words: Words) -> WorkingView:
    """A working of which a customer sees the result alone, under a name that gives nothing of its inputs away.

    For figures that build on the maker's through other workings, so that no input of theirs is marked the maker's.
    """
    source, shut = words(str(working.source)), words(HELD_BY_MAKER)
    return WorkingView(
        number=number,
        name=name,
        about=about,
        of=_of(about),
        formula="",
        substituted="",
        inputs=(),
        result=words.worked(working),
        source=source,
        note="",
        held=shut,
    )


def _view(working: Working, numbers: dict[str, str], words: Words, elsewhere: str) -> WorkingView:
    held = working.held_by_maker
    return WorkingView(
        number=numbers[working.id],
        name=words(working.name),
        about=working.id,
        of=_of(working.id),
        formula="" if held else working.formula_text(words.translate),
        substituted="" if held else working.substituted(words.translate),
        inputs=() if held else tuple(_inputs(working, numbers, words, elsewhere)),
        result=words.worked(working),
        source=words(str(working.source)),
        note="" if held else words(working.note),
        held=words(HELD_BY_MAKER) if held else "",
    )


def _inputs(
    working: Working, numbers: dict[str, str], words: Words, elsewhere: str
) -> Iterator[tuple[str, str, str, str]]:
    """Sign, name, figure, and where the figure comes from: another working or a table; a stated figure needs no more."""
    for entry, figure in working.printed_inputs(words.translate):
        origin = ""
        if entry.origin.startswith("working:"):
            origin = numbers.get(entry.origin.removeprefix("working:"), elsewhere)
        elif entry.origin.startswith("table:"):
            origin = words(table(entry.origin.removeprefix("table:")).title)
        yield entry.sign, words(entry.name), figure, origin


# what follows the id of a job or product where that comes first, and what the program puts behind the author's ids
_AFTER_AN_ID = ("packs", "aerosol")
_MADE = re.compile(r"packs|exact|all|one|aerosol|flammable|flammable_at_most|heat|\d+-(least|most)|")


def _of(working_id: str) -> str:
    """`film.door-yellow.primer` is `door-yellow, primer`: the author's ids, without the program's own words."""
    first, *rest = re.split(r"[./]", working_id)
    parts = [first, *rest] if rest and rest[0] in _AFTER_AN_ID else rest
    return ", ".join(part for part in parts if not _MADE.fullmatch(part))
