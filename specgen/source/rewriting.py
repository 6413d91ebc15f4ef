"""Words of a source file replaced where the reader saw them; comments, layout and every other sign stay. Called by `upgrade`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from specgen.source.tree import Mapping, Mark, Node, Scalar, Sequence

_LINES = re.compile("(\r\n|\r|\n)")
_QUOTES = ("'", '"')


class Replacement(NamedTuple):
    """One word at its place and what stands there instead; an empty `old` puts `new` in front of the place."""

    mark: Mark
    old: str
    new: str


class NotThereError(Exception):
    """A word does not stand where the reader saw it, as in a text of several lines; the argument is its mark."""


def replaced(raw: bytes, replacements: Iterable[Replacement]) -> bytes:
    """The bytes of a file with each word replaced. Raises NotThereError, UnicodeDecodeError."""
    # lines and their ends by turns
    pieces = _LINES.split(raw.decode("utf-8"))
    # a byte order mark is no column
    skipped = 1 if pieces[0].startswith("\ufeff") else 0
    for mark, old, new in sorted(replacements, reverse=True):
        at = 2 * (mark.line - 1)
        line = pieces[at] if at < len(pieces) else ""
        shift = skipped if mark.line == 1 else 0
        start = mark.column - 1 + shift
        stretch = line[start : mark.end_column - 1 + shift] if old else ""
        pieces[at] = line[:start] + _word(stretch, old, new, mark) + line[start + len(stretch) :]
    return "".join(pieces).encode("utf-8")


def _word(stretch: str, old: str, new: str, mark: Mark) -> str:
    if stretch == old:
        return new
    if stretch[:1] in _QUOTES and stretch == f"{stretch[0]}{old}{stretch[0]}":
        return f"{stretch[0]}{new}{stretch[0]}"
    raise NotThereError(mark)


def same_text(one: Node, other: Node) -> bool:
    """Whether two trees hold the same, wherever in their files it stands."""
    if isinstance(one, Scalar) and isinstance(other, Scalar):
        return (one.text, one.plain) == (other.text, other.plain)
    if isinstance(one, Sequence) and isinstance(other, Sequence):
        return len(one.items) == len(other.items) and all(map(same_text, one.items, other.items))
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.entries.keys() == other.entries.keys() and all(
            same_text(held, other.entries[key]) for key, held in one.entries.items()
        )
    return False
