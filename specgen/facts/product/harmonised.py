"""What the law itself says of the substances of a composition, by their registry numbers, and what a mixture of them reaches.

A supplier is bound by a harmonised class whether the composition names it or not. Called by the rules on hazards.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from fractions import Fraction

from specgen.facts.product.hazard_facts import substances_of
from specgen.model.product import Component, Product
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.hazard_class import Classification
from specgen.trade.judged import Classified
from specgen.trade.mixture import Ingredient, mixture_classes
from specgen.units.quantity import Quantity

_TABLE = "harmonised_classes"
# Under these notes a substance is carcinogenic or mutagenic only above a share of benzene, butadiene or formaldehyde.
_ON_PROOF = frozenset({"J", "K", "P", "8", "9"})
_PROVEN = frozenset({"carcinogenicity", "mutagenicity"})


@remembered
def _by_number() -> Mapping[str, tuple[Row, ...]]:
    found: dict[str, tuple[Row, ...]] = {}
    for row in table(_TABLE).rows:
        if row["act"] and row["cas"]:
            found[row["cas"]] = (*found.get(row["cas"], ()), row)
    return found


def harmonised(cas: str, on: date) -> Row | None:
    """The row of the table in force on a day for a registry number; None where it has none."""
    day = on.isoformat()
    rows = _by_number().get(cas, ())
    return next((row for row in rows if row["from"] <= day and not (row["until"] and row["until"] <= day)), None)


def classes_of(row: Row) -> tuple[Classification, ...]:
    """The classes of a row that hold without proof; the statement stands where the category has several."""
    proof = bool(_ON_PROOF & set(row["notes"].split()))
    found = (_read(cell) for cell in row["classes"].split(", ") if cell)
    return tuple(entry for entry in found if not (proof and entry.hazard_class in _PROVEN))


def left_out(line: Component, on: date) -> tuple[Classification, ...]:
    """The harmonised classes of a component of which it declares none of the same kind."""
    row = harmonised(line.cas, on) if line.cas else None
    stated = {entry.hazard_class for entry in line.classes}
    return tuple(entry for entry in classes_of(row) if entry.hazard_class not in stated) if row is not None else ()


def reached_unsaid(product: Product, on: date) -> Iterator[Classified]:
    """The classes a mixture reaches once each component has the harmonised classes it leaves out, the worst of each kind."""
    plain = substances_of(product)
    whole = [_completed(entry, line, on) for entry, line in zip(plain, product.composition, strict=True)]
    if whole == list(plain):
        return
    known = {_key(found) for found in mixture_classes("", plain) if isinstance(found, Classified)}
    for found in mixture_classes("", whole):
        if isinstance(found, Classified) and _key(found) not in known:
            yield found


def _key(found: Classified) -> tuple[str, str, str]:
    return found.hazard_class, found.category, found.statement


def _completed(entry: Ingredient, line: Component, on: date) -> Ingredient:
    more = left_out(line, on)
    row = harmonised(line.cas, on) if more and line.cas else None
    if row is None:
        return entry
    limits = [cell.split() for cell in row["limits"].split(", ") if cell]
    specific = {
        hazard_class: Quantity.of("share", Fraction(least), "%")
        for hazard_class, category, _, least in limits
        if any((found.hazard_class, found.category) == (hazard_class, category) for found in more)
    }
    factors = [int(factor) for factor in row["m_factors"].split()]
    water = bool(factors) and any(found.hazard_class.startswith("aquatic") for found in more)
    return replace(
        entry,
        classes=(*entry.classes, *more),
        m_acute=factors[0] if water else entry.m_acute,
        m_chronic=factors[-1] if water else entry.m_chronic,
        specific={**specific, **entry.specific},
    )


def _read(cell: str) -> Classification:
    hazard_class, category, statement = cell.split()
    told = hazard_class == "stot_single" and category == "3"
    return Classification(hazard_class, category, statement if told else "")
