"""Sentences that do without a precaution, or give one of the excuses by which people depart from what is specified, by three tables.

`precautions` holds what may not be done without and `denials` the words that leave it out, so that neither has to know the other;
`excuses` holds what is said where a rule is known and passed over. Where a practice or an unsafe form is told of a text already,
nothing is told here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property, lru_cache

from specgen.facts.job.circumstances import circumstances
from specgen.facts.job.practices import SENTENCE, instructions, practices
from specgen.facts.job.safe_forms import unsafe
from specgen.facts.job.stems import Stems, ways_of
from specgen.facts.job.told_by_name import told_by_name
from specgen.model.node import Node
from specgen.model.spec import Spec
from specgen.model.walk import Path
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table

_DENIED_ITSELF = re.compile(
    r"\b(?:not|never|no|none|nobody|nothing|nowhere|neither|nor|stops?|stopped|reject\w*|refus\w*|forbid\w*|avoid\w*|against)\b"
)
_MOOT = re.compile(
    r"\b(?:unless|never|nobody|no one|nowhere|must not|shall not|may not|not allowed|forbidden|prohibited|rejected|data sheets?|"
    r"within (?:the |its |this )?(?:stated |maximum )?(?:\d|interval|pot life)|no (?:more|less|fewer)\b|"
    r"beyond (?:the )?(?:stated )?(?:\d|\w+ (?:seconds|minutes|hours))|"
    r"only (?:in|where|if|when|with|after|once|\d+ ?\w+ after) (?!some|there|ask|time|the (?:inspector|customer)|it )|"
    r"(?:is|are) not (?:used|accepted|taken|delivered|sprayed|entered|released))"
)
# what makes the precaution needless stands beside it: it is done, or shown, in another way
_MADE_UP_FOR = re.compile(
    r"\bwhere no water break|\b(?:where|when|if)\b[^,]*\b(?:is|are|was|were|has been|have been)(?: \w+)? "
    r"(?:tested|measured|blasted|plugged|fitted with plugs|welded (?:in|over)|"
    r"embedded|cast in|stripped|fitted|filled with (?:oil|grease|foam|concrete))\b"
)
_NOBODY_AFTER = re.compile(r"[^,;]{0,40}?\b(?:no|nobody|nothing)\b")
_CLAUSE = re.compile(r",(?!\d)|\bbut\b|:")
_ASKED_BY_RULES = frozenset({"if_exceeded"})  # leaves of which a rule asks that the precaution is named
_MOST_TEXTS = 20_000


def made_light_of(record: Node, spec: Spec) -> list[tuple[Path, str, Row]]:
    """Where a text of a job, preparation, system or product leaves out a precaution or excuses it: the first sentence, with its row."""
    rows = _rows()
    found = [
        (path, row, words)
        for path, text in instructions(record, spec)
        for row, words in passed_over(text)
        if not told_by_name(record, spec, path, text, words)
    ]
    if not found:
        return []
    told = {path for path, _, _ in practices(record, spec)} | {path for path, _, _ in unsafe(record, spec)}
    met = circumstances(record, spec)
    first: dict[Path, tuple[Path, str, Row]] = {}
    for path, row, words in found:
        judged_elsewhere = path in told or (path[-1] in _ASKED_BY_RULES and "plain" in rows[row])
        if not judged_elsewhere and (not rows[row]["when"] or not met.isdisjoint(rows[row]["when"].split())):
            first.setdefault(path, (path, words, rows[row]))
    return list(first.values())


@lru_cache(maxsize=_MOST_TEXTS)
def passed_over(text: str) -> tuple[tuple[str, str], ...]:
    """The rows by which a text leaves out a precaution or excuses it, each once, and the sentence."""
    return tuple(_read(text))


def _read(text: str) -> Iterator[tuple[str, str]]:
    readers, told = _readers(), set[str]()
    for said in SENTENCE.split(text):
        small = said.lower()
        likely = [readers[number] for number in _stems().likely(small)]
        denied = any(one.denied for one in likely) and any(stem in small for stem in _denying())
        for one in likely:
            if one.row not in told and (denied or not one.denied) and one.found_in(small):
                told.add(one.row)
                yield one.row, said.strip()


class _Excuse:
    """How a row of `excuses` is read. Expressions are compiled once they are needed."""

    denied = False

    def __init__(self, row: Row) -> None:
        self.row, self.stems = row["id"], ways_of(row["stems"])
        self._read_as, self._passes = row["words"], row["unless"].lower()

    def found_in(self, said: str) -> bool:
        return self._told.search(said) is not None and not self._rightly(said)

    def _rightly(self, said: str) -> bool:
        return self._sound is not None and self._sound.search(said) is not None

    @cached_property
    def _told(self) -> re.Pattern[str]:
        return re.compile(rf"(?<!\w)(?:{self._read_as})")

    @cached_property
    def _sound(self) -> re.Pattern[str] | None:
        return re.compile(rf"\b(?:{self._passes})") if self._passes else None


class _Precaution(_Excuse):
    """How a row of `precautions` is read: its words where one of the denials stands about them, which is not denied itself."""

    denied = True

    def __init__(self, row: Row) -> None:
        super().__init__(row)
        self._plain = bool(row["plain"])

    def found_in(self, said: str) -> bool:
        if self._rightly(said) or _MOOT.search(said) or _MADE_UP_FOR.search(said):
            return False
        return any(self._left_out(said, *found.span()) for found in self._told.finditer(said))

    def _left_out(self, said: str, start: int, end: int) -> bool:
        before, after = said[:start], said[end:]
        if self._plain and _IS_NOT.search(before) and not _DENIED_ITSELF.search(_IS_NOT.sub("", before)):
            return True
        for leads, follows in _denials():
            led = leads.search(before) if leads else None
            if (led or not leads) and (follows is None or follows.match(after)):
                clause = _CLAUSE.split(said[: led.start() if led else start])[-1]
                goes_without = led is not None and led[0].startswith("without")
                if not _DENIED_ITSELF.search(clause) and not (goes_without and _NOBODY_AFTER.match(after)):
                    return True
        return False


_IS_NOT = re.compile(r"\b(?:is|are|be|was|were) not $")


@remembered
def _denials() -> tuple[tuple[re.Pattern[str] | None, re.Pattern[str] | None], ...]:
    return tuple(
        (
            re.compile(rf"{row['before']} $") if row["before"] else None,
            re.compile(row["after"]) if row["after"] else None,
        )
        for row in table("denials").rows
    )


@remembered
def _denying() -> frozenset[str]:
    return frozenset(stem for row in table("denials").rows for stem in row["stems"].split("|")) | {"not "}


@remembered
def _rows() -> dict[str, Row]:
    _denials()  # the answer rests on this table too
    return {row["id"]: row for name in ("precautions", "excuses") for row in table(name).rows}


@remembered
def _readers() -> tuple[_Excuse, ...]:
    return (*map(_Precaution, table("precautions").rows), *map(_Excuse, table("excuses").rows))


@remembered
def _stems() -> Stems:
    return Stems([one.stems for one in _readers()])
