"""The reactivity a can states for a market, against the lowest limit of the categories it names there.

Called by the rules of this folder, one a market.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from typing import Literal

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.rules.declare import Problem
from specgen.trade.known import NotKnown
from specgen.trade.voc_limit import lowest_limit, reactivity_limit
from specgen.units.rounding import plain_text


def reactivity_within(
    product: Product, jurisdiction: Literal["US", "US-CA"], market: str, day: date
) -> Iterator[Problem]:
    """What is missing or above its limit on a day; `market` is the jurisdiction in words."""
    stated = product.voc
    entries = [entry for entry in stated.categories if entry.jurisdiction == jurisdiction] if stated is not None else []
    if stated is None or not entries:
        what = f"the can {product.id} states no category for {market}, so its limit cannot be judged"
        yield Problem(("voc",), what, severity=Severity.NOTE)
        return
    if stated.reactivity is None:
        yield Problem(("voc", "reactivity"), f"the can {product.id} states no reactivity for {market}")
    if stated.factors is None:
        yield Problem(("voc", "factors"), f"the reactivity of {product.id} does not name its set of factors")
    limit = lowest_limit([reactivity_limit(jurisdiction, entry.category, day) for entry in entries])
    if isinstance(limit, NotKnown):
        what = f"the reactivity of {product.id} cannot be judged: {limit.why}"
        yield Problem(("voc", "categories"), what, severity=Severity.NOTE)
    elif stated.reactivity is not None and isinstance(limit.limit, Fraction) and stated.reactivity > limit.limit:
        shown = f"{plain_text(stated.reactivity)} {limit.unit}"
        what = f"{shown} of {product.id} is above the {plain_text(limit.limit)} {limit.unit} of {limit.name}"
        yield Problem(("voc", "reactivity"), what, source=limit.source)
