"""Which rows of a table a sentence can be about, by the parts of words that it holds. Called by those who read sentences by tables."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

Groups = tuple[frozenset[str], ...]
Ways = tuple[Groups, ...]
_START = 2  # of the letters of a stem, by which it is looked up
_MOST_WORDS = 20_000


def ways_of(stems: str) -> Ways:
    """The ways of a cell, as in `cloth|rag;coat|paint&thick`: of one of them a sentence holds a stem of every group; none of an empty
    cell."""
    ways = stems.split(";") if stems else ()
    return tuple(tuple(frozenset(group.split("|")) for group in way.split("&")) for way in ways)


class Stems:
    """Rows by their stems, each of at least two letters of one word. A row without any can be meant by every sentence."""

    def __init__(self, rows: Sequence[Ways]) -> None:
        self._always = [number for number, ways in enumerate(rows) if not ways]
        # by the stems of its first group each way, as the number of its row and the other groups
        self._by_stem: dict[str, list[tuple[int, Groups]]] = {}
        starts: dict[str, set[str]] = {}
        for number, ways in enumerate(rows):
            for first, *others in ways:
                for stem in first:
                    self._by_stem.setdefault(stem, []).append((number, tuple(others)))
                for stem in first.union(*others):
                    starts.setdefault(stem[:_START], set()).add(stem)
        self._starts = {start: sorted(stems) for start, stems in starts.items()}
        self._of_word = lru_cache(maxsize=_MOST_WORDS)(self._stems_of)

    def likely(self, small: str) -> list[int]:
        """The numbers of the rows whose stems a sentence in small letters holds, in their order."""
        held = frozenset[str]().union(*map(self._of_word, small.split()))
        found = set(self._always)
        for stem in held:
            for row, others in self._by_stem.get(stem, ()):
                if row not in found and not any(map(held.isdisjoint, others)):
                    found.add(row)
        return sorted(found)

    def _stems_of(self, word: str) -> frozenset[str]:
        """The same words come back in sentence after sentence, so that each is looked through once."""
        return frozenset(
            stem
            for at in range(len(word))
            for stem in self._starts.get(word[at : at + _START], ())
            if word.startswith(stem, at)
        )
