"""What the sentences of a record order that spoils the coat or endangers people, by the table of such practices.

A sentence is read once, whatever record it stands in. What is forbidden in the same clause, or excused by the row, is no order, but
an excuse that is itself denied ("not masked", "grinding is no part of the work") excuses nothing; a row that holds in some
circumstances alone is told where the record meets one of them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property, lru_cache

from specgen.facts.job.circumstances import circumstances
from specgen.facts.job.stems import Stems, ways_of
from specgen.facts.job.told_by_name import told_by_name
from specgen.facts.memo import gathered
from specgen.facts.texts import texts
from specgen.model.declaring import Polarity
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.preparation import Preparation
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.model.walk import Path
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table

SENTENCE = re.compile(r"[;\n]|\.(?!\d)")
_BREAK = re.compile(r",(?!\d)|\bbut\b")
_FORBIDDEN = re.compile(
    r"\b(?:not|never|no(?! longer\b)|none|nobody|nothing|nowhere|neither|nor|without|forbid\w*|forbidden|prohibit\w*|ban|banned|avoid\w*|"
    r"instead of|rather than|unless|except|reject\w*|refus\w*|must not|"
    r"(?<!that )(?<!which )cannot (?:be )?(?:switched|stopped|run|start)|excluded|free of|against(?! stains)|"
    r"until (?:it|they) (?:is|are)(?! (?:hot|warm))|"
    r"other than)\b",
    re.I,
)
_DENIED_BEFORE = re.compile(r"\b(?:not|never|no|without|nor|instead of|rather than)\s+(?:be |being |to be )?$", re.I)
_DENIED_AFTER = re.compile(
    r"\w*(?: \w+)? (?:(?:is|are|was|were|need|needs|does|do) not\b|(?:is|are) (?:no part|left out|omitted|unnecessary|skipped)\b)",
    re.I,
)
# what is left out is a practice of its own, but this forbids even there
_PROHIBITED = re.compile(r"\b(?:(?:must|may|shall) not|never (?:be )?(?:left|let|allowed))\b", re.I)
_LIST_GOES_ON = re.compile(r"\s*(?:\w+[ -]){0,3}?(?:or|nor) (?:\w+ )?", re.I)
_KEPT_APART = frozenset(
    {"claims", "first_aid", "protection", "document"}
)  # said of the product, or judged by a rule of their own
_ORDERS = frozenset({"method", "abrasive", "frequency", "where"})
_MOST_TEXTS = 20_000
_CAPITAL = re.compile(r"(?<!\\)[A-Z]")
# letters that are small already and that an expression for both cases takes for another
_READ_AS = str.maketrans(
    "\N{LATIN SMALL LETTER DOTLESS I}\N{LATIN SMALL LETTER LONG S}\N{GREEK SMALL LETTER MU}", "is\N{MICRO SIGN}"
)


def practices(record: Node, spec: Spec) -> list[tuple[Path, str, Row]]:
    """Where a sentence of a job, preparation, system or product orders such a thing, in its own words, with the row."""
    rows = _rows()
    found = [
        (path, words, rows[row])
        for path, text in instructions(record, spec)
        for row, words in ordered(text)
        if rows[row]["where"] in {"", path[-1]} and not told_by_name(record, spec, path, text, words)
    ]
    met = circumstances(record, spec) if any(row["when"] for _, _, row in found) else frozenset()
    return [one for one in found if not one[2]["when"] or not met.isdisjoint(one[2]["when"].split())]


@gathered
def instructions(record: Node, spec: Spec) -> Iterator[tuple[Path, str]]:
    """The texts of a job, preparation, system or product that tell people what to do; nothing of any other record."""
    if not isinstance(record, Job | Preparation | System | Product):
        return
    for path, text, said in texts(spec, record):
        if (said.polarity is Polarity.REQUIREMENT_TEXT or path[-1] in _ORDERS) and _KEPT_APART.isdisjoint(path):
            yield path, text


def named(record: Node, path: Path) -> str:
    """Who orders it: the step of a preparation, the coat of a system, else the record."""
    within = isinstance(record, Preparation | System) and len(path) > 2
    return path[1] if within else str(getattr(record, "id", ""))


@lru_cache(maxsize=_MOST_TEXTS)
def ordered(text: str) -> tuple[tuple[str, str], ...]:
    """What a text orders by its words alone, whatever the circumstances: the id of each row, once, and the words."""
    return tuple(_read(text))


def _read(text: str) -> Iterator[tuple[str, str]]:
    told = set[str]()
    for sentence in SENTENCE.split(text):
        plain = _in_small_letters(sentence)
        for one in (_readers()[number] for number in _stems().likely(plain)):
            if one.row in told:
                continue
            for found in one.words.finditer(plain):
                if one.excused(text if one.whole else sentence):
                    break
                start, end = found.span()
                before = _clause_before(sentence[:start])
                after = _BREAK.split(sentence[end:])[0]
                words = sentence[start:end]
                forbids = _PROHIBITED if one.left_out else _FORBIDDEN
                if not (_FORBIDDEN.search(before) or forbids.search(words) or _FORBIDDEN.search(after)):
                    told.add(one.row)
                    yield one.row, words.strip()
                    break


def _in_small_letters(text: str) -> str:
    """The text, sign for sign, as an expression for both cases would read it."""
    small = text.lower()
    whole = small if len(small) == len(text) else "".join(one if len(one.lower()) > 1 else one.lower() for one in text)
    return whole.translate(_READ_AS)


def small_letters_of(words: str) -> str:
    """An expression that finds in small letters what `words` finds in any."""
    return _CAPITAL.sub(lambda found: found[0].lower(), words).translate(_READ_AS)


def _clause_before(text: str) -> str:
    """What stands before in the same clause; a list that goes on ("nothing into drain, soil or ...") belongs to it."""
    clauses = _BREAK.split(text)
    listed = len(clauses) > 1 and _LIST_GOES_ON.fullmatch(clauses[-1]) is not None
    return " ".join(clauses[-2:]) if listed else clauses[-1]


class _Reader:
    """How one row is read: its id, the stems that a sentence must hold, whether leaving out is the practice
    (`left_out`), and whether it is read in one leaf alone, the whole of which may excuse it. Expressions are compiled once they are
    needed."""

    def __init__(self, row: Row) -> None:
        self.row, self.stems = row["id"], ways_of(row["stems"])
        self.left_out, self.whole = bool(row["denied"]), bool(row["where"])
        self._words, self._unless = row["words"], row["unless"]

    @cached_property
    def words(self) -> re.Pattern[str]:
        """To be held against small letters: that takes half the time to compile, and less to search, than one for both cases."""
        return re.compile(rf"(?<!\w)(?:{small_letters_of(self._words)})")

    def excused(self, text: str) -> bool:
        return self._excuse is not None and any(
            not _DENIED_BEFORE.search(text[: found.start()]) and not _DENIED_AFTER.match(text[found.end() :])
            for found in self._excuse.finditer(text)
        )

    @cached_property
    def _excuse(self) -> re.Pattern[str] | None:
        return re.compile(self._unless, re.I) if self._unless else None


@remembered
def _rows() -> dict[str, Row]:
    return {row["id"]: row for row in table("practices_in_words").rows}


@remembered
def _readers() -> tuple[_Reader, ...]:
    return tuple(map(_Reader, table("practices_in_words").rows))


@remembered
def _stems() -> Stems:
    return Stems([one.stems for one in _readers()])
