"""The catalogue of rules, faults and published tables as linked HTML pages. Called by `specgen explain --html`."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specgen.rendering.environment import fill
from specgen.report.explanations import Explanation, explanations
from specgen.standards.citations import documents
from specgen.standards.tables import Table, table, table_names

_TEMPLATE = "catalogue/page.html.j2"
_ID = re.compile(r"\b([A-Z]{3}[0-9]{3})\b")


@dataclass(frozen=True, slots=True)
class Part:
    """A heading with its text; `block` is printed line by line. `see` are the ids of other pages the text names."""

    heading: str
    text: str
    block: bool
    see: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of the index: where the page is, what it is called, and a word on it."""

    href: str
    id: str
    title: str
    word: str


@dataclass(frozen=True, slots=True)
class CataloguePage:
    """One page: parts of a rule or fault, rows of a table, or the two lists of the index."""

    title: str
    word: str
    parts: tuple[Part, ...] = ()
    columns: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    lists: tuple[tuple[str, tuple[Entry, ...]], ...] = ()


def catalogue_pages() -> dict[str, bytes]:
    """File name to page: `index.html`, one page an id, one a table. Links lead from page to page in the same folder."""
    known = explanations()
    tables = [table(name) for name in table_names()]
    pages = {"index.html": _index(known, tables)}
    pages |= {f"{page.id}.html": _explained(page, known) for page in known.values()}
    pages |= {f"table-{entry.name}.html": _tabulated(entry) for entry in tables}
    return {name: _printed(page) for name, page in pages.items()}


def _printed(page: CataloguePage) -> bytes:
    return fill(_TEMPLATE, language="en", medium="screen", view=page, draft=False).encode("utf-8")


def _index(known: dict[str, Explanation], tables: list[Table]) -> CataloguePage:
    rules = tuple(Entry(f"{p.id}.html", p.id, p.title, p.severity.value) for p in known.values())
    listed = tuple(Entry(f"table-{t.name}.html", t.name, t.title, str(t.basis)) for t in tables)
    return CataloguePage(
        "Rules, source errors and tables", "", lists=(("Rules and faults", rules), ("Published tables", listed))
    )


def _explained(page: Explanation, known: dict[str, Explanation]) -> CataloguePage:
    parts = tuple(
        Part(heading, text.strip("\n"), text.startswith("\n"), _named(text, page.id, known))
        for heading, text in page.parts
        if text
    )
    return CataloguePage(f"{page.id} {page.title}", page.severity.value, parts)


def _named(text: str, own: str, known: dict[str, Explanation]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(found for found in _ID.findall(text) if found != own and found in known))


def _tabulated(entry: Table) -> CataloguePage:
    heads = [("Document", documents()[entry.document].title if entry.document in documents() else entry.document)]
    heads += [("Edition", entry.edition), ("Clause", entry.clause), ("Basis", str(entry.basis))]
    parts = tuple(Part(heading, text, False, ()) for heading, text in heads if text)
    rows = tuple(tuple(row[column] for column in entry.columns) for row in entry.rows)
    return CataloguePage(entry.title, f"table:{entry.name}", parts, entry.columns, rows)
