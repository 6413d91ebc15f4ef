"""What no way through the program reaches is deleted, or stands in "Not used yet" of DEVELOPERS.md with the work it waits for."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from specgen.standards.tables import table_names
from tests.what_is_used import Name, uncited_documents, unused_definitions, unused_tables

DEVELOPERS = Path(__file__).parent.parent / "DEVELOPERS.md"
EXEMPT = {
    ("specgen.facts.graph", "document_reach"): "taken up with what an approval rests on",
    ("specgen.rules.page", "Page.examples"): "the tests run the examples of every page by it",
}


def rows() -> list[tuple[str, list[str]]]:
    """The rows of the section: what each is, and the names it lists."""
    section = DEVELOPERS.read_text("utf-8").partition("## Not used yet\n")[2].partition("\n## ")[0]
    cells = [line.strip("|").split("|") for line in section.splitlines() if line.startswith("| ")]
    return [(first.split()[0], re.findall(r"`([^`]+)`", first)) for first, *_ in cells[2:] if "`" in first]


LISTED_TABLES = {name for kind, names in rows() if kind == "table" for name in names}


def _listed() -> set[Name]:
    named: set[Name] = set()
    for kind, names in rows():
        if kind != "table":
            module, *members = names
            named |= {(f"specgen.{module}", member) for member in members}
    return named


def test_what_is_unused_is_listed() -> None:
    assert unused_definitions("specgen.", _listed()) - _listed() - set(EXEMPT) == set()
    assert unused_tables(_listed()) - LISTED_TABLES == set()


@pytest.mark.parametrize("name", sorted(_listed() | set(EXEMPT)), ids=".".join)
def test_what_is_listed_is_there_and_still_unused(name: Name) -> None:
    assert name in unused_definitions("specgen.")


@pytest.mark.parametrize("name", sorted(LISTED_TABLES))
def test_a_table_that_is_listed_is_there_and_still_unused(name: str) -> None:
    assert name in table_names()
    assert name in unused_tables()


def test_every_document_is_cited() -> None:
    assert uncited_documents() == set()


def test_the_search_sees_what_is_used_and_what_is_not() -> None:
    unused = unused_definitions("specgen.trade.")
    assert ("specgen.trade.film", "wet_film") not in unused
    assert ("specgen.trade.vapour", "as_nco") in unused
    assert ("specgen.trade.vapour", "as_nco") not in unused_definitions(
        "specgen.", [("specgen.trade.vapour", "as_nco")]
    )
    assert not {"loss_ranges", "rust_grades", "binder_families_read"} & unused_tables()
