"""The standards named in words: which they are, of which edition, and which test method each stands for.

Every place of a source that cites a standard in words is read here: the method of an inspection point, a preparation grade, a
required test, the basis of a claim. Only names that the tables know are read; any other is left to the reader.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from specgen.standards.citations import Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table

_EDITION = (
    r"(?:(?:[:\-–]| ?, ?| ?\()\s?(?P<year>(?:19|20)\d\d)\b\)?"  # ISO 2409:2013, ISO 2409 (2013)
    r"|-(?P<short>\d\d[a-z]?(?:\((?:19|20)\d\d\))?)(?![\d-]))?"  # ASTM D4541-22, ASTM D610-08(2019)
)
_VARIANT = re.compile(r"[\s,(:]{0,3}(?:test )?(?:method|procedure|cycle|type) (?P<variant>[A-Z0-9])\b", re.IGNORECASE)
_HALF = 50


class Named(NamedTuple):
    """A standard as a text names it. `edition` is the year or what follows the number; `written` is the text itself."""

    standard: str
    edition: str
    variant: str
    written: str
    start: int
    end: int


class Aged(NamedTuple):
    """A standard that is not the one in force: the edition named is older, or another standard has replaced it."""

    named: Named
    now: str
    replaced: bool
    source: Citation


@remembered
def _names() -> re.Pattern[str]:
    known = {row["standard"] for name in ("test_standards", "test_editions") for row in table(name).rows}
    known |= {row["old"] for row in table("test_successors").rows}
    parts = [_spelt(name) for name in sorted(known, key=len, reverse=True)]
    return re.compile(rf"(?<![\w-])(?P<name>{'|'.join(parts)})(?!\w){_EDITION}")


def _spelt(name: str) -> str:
    """A name as people write it: with a hyphen for its blank, and an ASTM number without its body."""
    body, _, number = name.partition(" ")
    blank = r"[ \-]?\s?"
    if not number:
        return re.escape(name)
    escaped = re.escape(number)
    if body == "ASTM":
        return rf"(?:ASTM{blank})?{escaped}"
    if body == "NACE":
        return rf"(?:NACE{blank}|AMPP{blank})?{escaped}"
    return re.escape(body) + blank + escaped


@remembered
def _by_spelling() -> dict[str, str]:
    known = {row["standard"] for name in ("test_standards", "test_editions") for row in table(name).rows}
    known |= {row["old"] for row in table("test_successors").rows}
    spelt = {_plain(name): name for name in known}
    return spelt | {_plain(name.partition(" ")[2]): name for name in known if name.startswith(("ASTM ", "NACE "))}


def _plain(text: str) -> str:
    return re.sub(r"[\s\-]", "", text).removeprefix("AMPP").upper()


@remembered
def standards_in(text: str) -> tuple[Named, ...]:
    """Every standard of the tables that a text names, in its order."""
    return tuple(_standards_in(text))


def _standards_in(text: str) -> Iterator[Named]:
    for found in _names().finditer(text):
        edition = found["year"] or found["short"] or ""
        after = _VARIANT.match(text, found.end())
        yield Named(
            _by_spelling()[_plain(found["name"])],
            edition,
            after["variant"].upper() if after is not None else "",
            found[0].strip(" ,("),
            found.start(),
            after.end() if after is not None else found.end(),
        )


def aged(named: Named) -> Aged | None:
    """What is in force in place of a standard that is named; None for one that is in force, or of which nothing is known."""
    replaced = table("test_successors")
    for row in replaced.rows:
        if row["old"] == named.standard:
            return Aged(named, row["new"], replaced=True, source=replaced.row_citation(row))
    editions = table("test_editions")
    for row in editions.rows:
        if row["standard"] == named.standard and named.edition and _year(named.edition) < _year(row["current"]):
            return Aged(named, row["current"], replaced=False, source=editions.row_citation(row))
    return None


def _year(edition: str) -> int:
    """The year an edition was issued or last confirmed, in full: 2023, 22, 08(2019)."""
    digits = re.findall(r"\d+", edition)[-1]
    if len(digits) > 2:
        return int(digits)
    return int(digits) + (1900 if int(digits) > _HALF else 2000)


def methods_of(standard: str, variant: str = "", said: str = "") -> tuple[str, ...]:
    """The test methods a standard holds; where it holds several, those its variant or the words beside it name."""
    rows = [row for row in table("test_standards").rows if row["standard"] == standard]
    if len(rows) > 1:
        words = f"method {variant} {said}".casefold() if variant else said.casefold()
        fitting = [row for row in rows if row["variant"] and row["variant"].casefold() in words]
        fitting = fitting or [row for row in rows if says(said, row["method"])]
        rows = fitting or rows
    return tuple(dict.fromkeys(row["method"] for row in rows))


@remembered
def _called() -> dict[str, re.Pattern[str]]:
    found = {}
    for row in table("test_methods").rows:
        phrases = [
            re.escape(word).replace(r"\-", "[- ]?").replace(r"\ ", "[- ]") for word in row["words"].split("; ") if word
        ]
        if phrases:
            found[row["id"]] = re.compile(rf"\b(?:{'|'.join(phrases)})\b", re.IGNORECASE)
    return found


def says(text: str, method: str) -> re.Match[str] | None:
    """Where a text calls a test method by one of its words."""
    pattern = _called().get(method)
    return pattern.search(text) if pattern is not None else None


@remembered
def methods_in(text: str) -> tuple[str, ...]:
    """The test methods a text names, by a standard or by their words, in the order of the table."""
    named = {method for one in standards_in(text) for method in methods_of(one.standard, one.variant, text)}
    return tuple(row["id"] for row in table("test_methods").rows if row["id"] in named or says(text, row["id"]))


@remembered
def standard_row(standard: str, method: str) -> Row | None:
    """What the table of standards says of a standard as this method."""
    rows = (row for row in table("test_standards").rows if (row["standard"], row["method"]) == (standard, method))
    return next(rows, None)
