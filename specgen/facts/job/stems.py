"""Which rows of a table a sentence can be about, by the parts of words that it holds. Called by those who read sentences by tables."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

Groups = tuple[frozenset[str], ...]
_START = 2  # of the letters of a stem, by which it is looked up
_MOST_WORDS = 20_000


def groups_of(stems: str) -> Groups:
    """The groups of a cell, as in `coat|paint&thick`, one stem of each of which a sentence has to hold; none of an empty cell."""
    return tuple(frozenset(group.split("|")) for group in stems.split("&")) if stems else ()


class Stems:
    """Rows by their stems, each of at least two letters of one word. A row without any can be meant by every sentence."""

    def __init__(self, rows: Sequence[Groups]) -> None:
        self._rows = rows
        self._always = [number for number, groups in enumerate(rows) if not groups]
        self._by_stem: dict[str, list[int]] = {}
        starts: dict[str, set[str]] = {}
        for number, groups in enumerate(rows):
            for stem in groups[0] if groups else ():
                self._by_stem.setdefault(stem, []).append(number)
            for stem in frozenset[str]().union(*groups):
                starts.setdefault(stem[:_START], set()).add(stem)
        self._starts = {start: sorted(stems) for start, stems in starts.items()}
        self._of_word = lru_cache(maxsize=_MOST_WORDS)(self._stems_of)

    def likely(self, small: str) -> list[int]:
        """The numbers of the rows whose stems a sentence in small letters holds, in their order."""
        held = frozenset[str]().union(*map(self._of_word, small.split()))
        begun = {row for stem in held for row in self._by_stem.get(stem, ())}.union(self._always)
        return [row for row in sorted(begun) if not any(held.isdisjoint(group) for group in self._rows[row])]

    def _stems_of(self, word: str) -> frozenset[str]:
        """The same words come back in sentence after sentence, so that each is looked through once."""
        return frozenset(
            stem
            for at in range(len(word))
            for stem in self._starts.get(word[at : at + _START], ())
            if word.startswith(stem, at)
        )
