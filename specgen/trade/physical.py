"""Molar mass, boiling point, explosive limit and flash point of a volatile substance, by its registry number.

Sources disagree and all of them stand in the table physical_data; what is taken is the lowest that is no slip. Called by
`exposure_flow`, `combustion` and by facts on what a product contains.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.standards.citations import Citation, documents
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.given import Given, from_table

_TABLE, _SOURCES, _SLIPS = "physical_data", "physical_sources", "physical_left_out"


class LowestLimit(NamedTuple):
    """The lower explosive limit in % by volume that is reckoned with, whose figure it is, and how that document is called."""

    figure: Given
    source: Citation
    document: str


class Physical(NamedTuple):
    """What the tables hold of a substance; None where no source has a figure. Temperatures in degC."""

    molar_mass: Given | None
    boiling: Fraction | None
    flash: Fraction | None
    explosive: LowestLimit | None
    source: Citation

    @property
    def burns(self) -> bool | None:
        """A gas at 20 degC that has a lower limit burns; a liquid is judged by its flash point, and without one is unknown."""
        if self.boiling is not None and self.boiling < 20:
            return True if self.explosive is not None else None
        if self.flash is None:
            return None
        return self.flash <= Fraction(table("flammable_component").row("id", "flash_point")["figure"])


@remembered
def physical(cas: str) -> Physical | None:
    """The figures of a substance; None where the table does not hold it."""
    row = next((row for row in table(_TABLE).rows if row["cas"] == cas), None)
    if row is None:
        return None
    flash = min((Fraction(row[column]) for column in _credible(row, "flash")), default=None)
    return Physical(
        from_table(_TABLE, row, "molar_mass", "molar_mass", "g/mol") if row["molar_mass"] else None,
        Fraction(row["boiling"]) if row["boiling"] else None,
        flash,
        _explosive(row),
        table(_TABLE).row_citation(row),
    )


def _explosive(row: Row) -> LowestLimit | None:
    column = min(_credible(row, "lel"), key=lambda column: Fraction(row[column]), default=None)
    if column is None:
        return None
    source = table(_SOURCES).row_citation(table(_SOURCES).row("source", _source_of(column)))
    title = documents()[source.document].title if source.document else source.basis.value
    return LowestLimit(from_table(_TABLE, row, column, "vapour_share", "%"), source, title)


def _credible(row: Row, quantity: str) -> tuple[str, ...]:
    """The columns of one quantity that hold a figure and no slip; those of the second rank only where the first has none."""
    ranked: dict[str, list[str]] = {}
    for column in _held(row, quantity):
        ranked.setdefault(table(_SOURCES).row("source", _source_of(column))["rank"], []).append(column)
    return tuple(ranked[min(ranked)]) if ranked else ()


def _held(row: Row, quantity: str) -> Iterator[str]:
    slips = {(slip["cas"], slip["column"]) for slip in table(_SLIPS).rows}
    for column in table(_TABLE).columns:
        if column.startswith(f"{quantity}_") and row[column] and (row["cas"], column) not in slips:
            yield column


def _source_of(column: str) -> str:
    return column.rpartition("_")[2]
