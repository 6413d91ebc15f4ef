"""The limit a law sets on the VOC or the reactivity of a product on a day, and the reactivity beside it.

Called by the rules on emissions and by the VOC table of the documents: both judge by the day they are handed.
"""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.facts.pairs.families import WATERBORNE
from specgen.facts.product.hazard_facts import package_of
from specgen.model.product import Product, VocCategory
from specgen.trade.known import NotKnown
from specgen.trade.voc_limit import VocLimit, lowest_limit, reactivity_limit, voc_limit_eu, voc_limit_us_refinish


def limit_of(product: Product, entry: VocCategory, on: date) -> VocLimit | NotKnown | None:
    """The limit on a day of one category the product names: in g/L or lb/gal, for cans in the US in g of ozone on g.

    None for a law that no table speaks of.
    """
    aerosol = package_of(product) == "aerosol"
    match entry.jurisdiction:
        case "EU" | "GB":
            return voc_limit_eu(entry.category, on, waterborne=product.binder in WATERBORNE)
        case "US-CA" | "US" if aerosol:
            return reactivity_limit("US-CA" if entry.jurisdiction == "US-CA" else "US", entry.category, on)
        case "US":
            return voc_limit_us_refinish(entry.category)
        case _:
            return None


class Reactivity(NamedTuple):
    """What a can states of its reactivity for a market, in g of ozone on g, and the lowest limit that holds for it.

    `missing` are the leaves below `voc` that are not stated, of reactivity and factors.
    """

    stated: Fraction | None
    limit: VocLimit | NotKnown
    missing: tuple[str, ...]

    @property
    def exceeded(self) -> VocLimit | None:
        """The limit where the stated reactivity is above it; None where it is not, or where either is not known."""
        held = self.limit
        above = (
            isinstance(held, VocLimit)
            and isinstance(held.limit, Fraction)
            and self.stated is not None
            and self.stated > held.limit
        )
        return held if above and isinstance(held, VocLimit) else None


def reactivity_of(product: Product, jurisdiction: Literal["US", "US-CA"], on: date) -> Reactivity | NotKnown:
    """The reactivity of a can against the lowest limit, on a day, of the categories it names for a market.

    Not known where it names none. Source of the lowest limit: 40 CFR 59.504(c).
    """
    stated = product.voc
    entries = [entry for entry in stated.categories if entry.jurisdiction == jurisdiction] if stated is not None else []
    if stated is None or not entries:
        return NotKnown("reactivity", "no category is stated", ("category",), at=("products", product.id, "voc"))
    missing = tuple(name for name in ("reactivity", "factors") if getattr(stated, name) is None)
    limits = [reactivity_limit(jurisdiction, entry.category, on) for entry in entries]
    return Reactivity(stated.reactivity, lowest_limit(limits), missing)
