"""Reactivity of an aerosol: grams of ozone on a gram of contents, propellant included.

Which set of factors was used is named in the working; the federal table of 2025 was not read. Called by the rules on
VOC and by the data sheet.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from specgen.standards.citations import Citation
from specgen.standards.tables import table
from specgen.trade.given import Given, Source, amount, take
from specgen.trade.known import NotKnown
from specgen.trade.working import Input, Working, work
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

FactorSet = Literal["2010", "2008"]

_FACTORS = "reactivity_factors"
_COLUMNS: dict[FactorSet, str] = {"2010": "mir", "2008": "rf_2008"}
_UNIT = "g O3/g"


@dataclass(frozen=True, slots=True)
class Reactant:
    """One component of the contents. `counts` is False for water, solids and whatever holds no carbon.

    `factor` is a bare number in g of ozone on g, where it is known from elsewhere (a bin of hydrocarbon solvents).
    """

    name: str
    share: Source
    cas: str = ""
    counts: bool = True
    factor: Source | None = None


def weighted_reactivity(id: str, reactants: Sequence[Reactant], factors: FactorSet = "2010") -> Working | NotKnown:
    """Product-weighted reactivity in g of ozone on g of product, a bare number. Source: 40 CFR 59.505.

    A component below 0.1 % counts nothing, a negative factor counts 0. NotKnown where a factor is not known.
    """
    least = Fraction(table("reactivity_rules").row("id", "counts_from")["figure"])
    inputs: list[Input] = []
    terms, missing = [], []
    for number, entry in enumerate(reactants, start=1):
        share = amount(entry.share)
        if not isinstance(share, Quantity):
            raise TypeError(f"{entry.name} has a bare number for a share, where a percentage is taken")
        if not entry.counts or share.to("%") < least:
            continue
        factor = entry.factor if entry.factor is not None else _factor(entry.cas, factors)
        if factor is None:
            missing.append(f"reactivity factor of {entry.name}")
            continue
        inputs.append(take(f"w_{number}", phrase("{name}, share by mass", name=entry.name), entry.share, "share", "%"))
        inputs.append(take(f"R_{number}", phrase("{name}, reactivity factor", name=entry.name), factor, "", _UNIT))
        terms.append(f"w_{number} * R_{number}")
    if missing:
        return NotKnown("reactivity", f"the set of {factors} does not hold every factor", tuple(missing))
    formula = f"({' + '.join(terms)}) / 100" if terms else "0"
    note = f"factors of {factors}; 100: percent" if terms else "0: nothing in it counts"
    name = phrase("product-weighted reactivity, factors of {factors}", factors=factors)
    return work(id, name, formula, tuple(inputs), unit=_UNIT, places=2, source=_source(factors), note=note)


def _factor(cas: str, factors: FactorSet) -> Given | None:
    row = next((row for row in table(_FACTORS).rows if row["cas"] == cas), None)
    text = row[_COLUMNS[factors]] if row is not None else ""
    return Given(max(Fraction(text), Fraction(0)), f"table:{_FACTORS}") if text else None


def _source(factors: FactorSet) -> Citation:
    """The factors of 2008 are from memory; those of 2010 were read."""
    whole = table(_FACTORS).citation
    memory = table("reactivity_limits_us").citation.basis
    return whole if factors == "2010" else Citation(memory, "40-CFR-59-E", "Table 2A of 2008")
