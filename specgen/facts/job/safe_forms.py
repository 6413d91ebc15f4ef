"""Sentences that raise a dangerous subject and say none of what makes it safe, by the table of such forms.

The twin of `practices`: that table holds what must not be said, this one what has to be. Where a practice is told of a text already,
nothing is told here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property, lru_cache

from specgen.facts.job.circumstances import circumstances
from specgen.facts.job.practices import SENTENCE, instructions, practices, small_letters_of
from specgen.facts.job.stems import Stems, ways_of
from specgen.facts.job.told_by_name import told_by_name
from specgen.model.node import Node
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.model.walk import Path
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table

_PASSES = re.compile(
    r"\b(?:not|never|(?<!if )(?<!leaves )(?:no(?! (?:dust|air|wind)\b)|none|nobody|nothing)|neither|nor|without|"
    r"forbid\w*|forbidden|prohibit\w*|ban|banned|avoid\w*|instead of|"
    r"rather than|permit|data sheets?|technical service|must not|(?<!that )(?<!which )cannot)\b",
    re.I,
)
_GOES_ON = re.compile(r"\s*(?:it|they|these) (?:is|are|was|were|may|can|will|runs?|stays?)\b", re.I)
_SO_THAT = re.compile(r"\bso that (?:it|they|nothing|nobody|no|the [\w-]+)\b[^.;,]*", re.I)  # an aim forbids nothing
_DENIED = re.compile(
    r"\b(?:not|never|nobody|no one|nor|without)(?: (?:\w+ )?(?:or|nor)| be| being| even| ever)*\s*$", re.I
)
_PERSON = re.compile(r"\b[A-Z]\. ?[A-Z][a-z]+")
_NAMES_ENOUGH = frozenset({"standby", "rescue", "atmosphere_test"})  # who is named there knows the rules of the yard
_MOST_TEXTS = 20_000


def unsafe(record: Node, spec: Spec) -> list[tuple[Path, str, Row]]:
    """Where a sentence of a job, preparation, system or product raises such a subject alone: its words, with the row."""
    rows = {row["id"]: row for row in table("safe_forms").rows}
    found = [
        (path, row, words)
        for path, text in instructions(record, spec)
        for row, words in lacking(text, path[-1])
        if not told_by_name(record, spec, path, text, words)
    ]
    if not found:
        return []
    told = {path for path, _, _ in practices(record, spec)}
    met = circumstances(record, spec)
    return [
        (path, words, rows[row])
        for path, row, words in found
        if path not in told and _holds(rows[row]["when"], met | _coat(record, path))
    ]


def _holds(when: str, met: frozenset[str]) -> bool:
    return not when or not met.isdisjoint(when.split())


def _coat(record: Node, path: Path) -> frozenset[str]:
    """The role of the coat that a text of a system speaks of."""
    if not isinstance(record, System) or path[0] != "layers":
        return frozenset()
    return frozenset(str(layer.role) for layer in record.layers if layer.id == path[1] and layer.role is not None)


@lru_cache(maxsize=_MOST_TEXTS)
def lacking(text: str, leaf: str) -> tuple[tuple[str, str], ...]:
    """Each row once that a text raises without a safe form, and the sentence; a row of one leaf is held against the whole of it."""
    return tuple(_read(text, leaf))


def _read(text: str, leaf: str) -> Iterator[tuple[str, str]]:
    readers, told = _readers(), set[str]()
    for said in _sentences(text):
        small = said.lower()
        for one in (readers[number] for number in _stems().likely(small)):
            if one.row in told or one.where not in {"", leaf}:
                continue
            if one.lacks_in(text if one.where else said):
                told.add(one.row)
                yield one.row, (text if one.where else said).strip()


def _sentences(text: str) -> Iterator[str]:
    """The sentences of a text; one that goes on of the same thing ("It is switched off when ...") is read with the one before."""
    before = ""
    for said in SENTENCE.split(text):
        yield f"{before.strip()}, {said.strip()}" if before and _GOES_ON.match(said) else said
        before = said


class _Reader:
    """How one row is read. Expressions are compiled once they are needed."""

    def __init__(self, row: Row) -> None:
        self.row, self.where, self.stems = row["id"], row["where"], ways_of(row["stems"])
        self._subject, self._safe, self._spoils = row["subject"], row["safe"], row["spoils"]

    def lacks_in(self, said: str) -> bool:
        """Whether the words raise the subject and nothing in them makes it safe, or something undoes that."""
        if self._raised.search(said.lower()) is None:
            return False
        if _PERSON.search(said) if self.where in _NAMES_ENOUGH else _PASSES.search(_SO_THAT.sub("", said)):
            return False
        return self._is_undone(said) or self._sound.search(said) is None

    def _is_undone(self, said: str) -> bool:
        return self._undone is not None and any(
            not _DENIED.search(said[: found.start()]) for found in self._undone.finditer(said)
        )

    @cached_property
    def _raised(self) -> re.Pattern[str]:
        return re.compile(small_letters_of(self._subject))

    @cached_property
    def _sound(self) -> re.Pattern[str]:
        return re.compile(self._safe, re.I)

    @cached_property
    def _undone(self) -> re.Pattern[str] | None:
        return re.compile(self._spoils, re.I) if self._spoils else None


@remembered
def _readers() -> tuple[_Reader, ...]:
    return tuple(map(_Reader, table("safe_forms").rows))


@remembered
def _stems() -> Stems:
    return Stems([one.stems for one in _readers()])
