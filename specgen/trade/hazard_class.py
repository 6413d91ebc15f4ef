"""A classification as a safety data sheet states it, and the row of the table of label elements it stands for.

Called by `labelling`, `precautions`, `mixture` and the rules on hazards.
"""

from __future__ import annotations

from typing import NamedTuple

from specgen.standards.citations import MEMORY, Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.codes import parts
from specgen.units.locale import phrase

_ELEMENTS = "label_elements"
_CLASSES = "hazard_classes"


class Classification(NamedTuple):
    """A class (an id of the table hazard_classes) and category; `statement` where the category has several.

    So H335 or H336 of STOT SE 3, and a narrower form of a statement, as H360D.
    """

    hazard_class: str
    category: str
    statement: str = ""

    def __str__(self) -> str:
        name = table(_CLASSES).row("id", self.hazard_class)["name"]
        told = phrase("{name}, category {category}", name=phrase(name), category=self.category)
        return phrase("{told} ({code})", told=told, code=self.statement) if self.statement else told


class Element(NamedTuple):
    """One code on a label, the classes or the ground it follows from, and on whose word."""

    code: str
    reasons: tuple[str, ...]
    source: Citation
    note: str = ""


@remembered
def elements_of(found: Classification) -> Row:
    """The one row of label elements of a classification.

    Raises KeyError where the table has none, or has two that only the statement tells apart.
    """
    rows = [row for row in table(_ELEMENTS).rows if (row["hazard_class"], row["category"]) == _key(found)]
    if found.statement:
        rows = [row for row in rows if any(found.statement.startswith(code) for code in parts(row["statements"]))]
    if len(rows) != 1:
        known = ", ".join(f"{row['category']} {row['statements']}" for row in rows)
        raise KeyError(f"the table of label elements has {len(rows)} rows for {_key(found)}: {known}")
    return rows[0]


def statements_of(found: Classification, row: Row) -> tuple[str, ...]:
    """The hazard statements of a row, in the narrower form the classification names."""
    codes = parts(row["statements"])
    return tuple(found.statement if found.statement.startswith(code) else code for code in codes)


def source_of_cell(row: Row, column: str, code: str = "") -> Citation:
    """On whose word a cell of a row stands, or one code of it: some are from memory where the rest was read."""
    unsure = parts(row["unconfirmed"])
    source = table(_ELEMENTS).row_citation(row)
    if column in unsure or (code and code in unsure):
        return Citation(MEMORY.basis, source.document, source.clause)
    return source


def severity_rank(found: Classification) -> int:
    """How far down its class a category stands; 0 is the most severe."""
    return parts(table(_CLASSES).row("id", found.hazard_class)["categories"]).index(found.category)


def _key(found: Classification) -> tuple[str, str]:
    return found.hazard_class, found.category
