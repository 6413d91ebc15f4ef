"""Gloves that do not hold against what a product contains. That a glove does hold is never said here.

Called by the rule on gloves and by the lines on protection.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from specgen.facts.product.hazard_facts import epoxy_in, isocyanates_in
from specgen.facts.product.substances import rows_of
from specgen.model.product import Ingredient, PackForm, Product
from specgen.standards.tables import Row, table

# Nobody wears what is named only to be ruled out.
_RULED_OUT = re.compile(
    r"\b(?:no|not|never|without|instead of|nor|avoid|other than|except)\b|[- ]free\b|unsuit|does not|do not", re.I
)
_BOUND = re.compile(r"splash|breakthrough|class [0-9]|level [0-9]|[0-9] ?(?:min|h)\b", re.I)
_CLAUSE = re.compile(r"[;,.()]")


def unfit_gloves(product: Product, gloves: str) -> Iterator[Row]:
    """The rows of the table gloves_unfit that the words of an entry meet, for what the product contains."""
    contents = _contents(product)
    for row in table("gloves_unfit").rows:
        named = any(
            _material(row["material"]).search(part) and not _RULED_OUT.search(part) for part in _CLAUSE.split(gloves)
        )
        bounded = bool(row["unless"]) and bool(_BOUND.search(gloves))
        if named and not bounded and contents & set(row["against"].split(", ")):
            yield row


@cache
def _material(words: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(re.escape(word) for word in words.split(', '))})\b", re.I)


def _contents(product: Product) -> set[str]:
    """What is known or has to be reckoned with; the group of a solvent only where its registry number tells it."""
    found = {"isocyanate"} if isocyanates_in(product) is not False else set()
    if epoxy_in(product) is not False:
        found.add("epoxy")
    classes = product.hazards.classification if product.hazards is not None else ()
    volatile = any(line.kind is not Ingredient.SOLIDS for line in product.composition)
    if volatile or product.pack.form is PackForm.AEROSOL or any(c.hazard_class == "flammable_liquids" for c in classes):
        found.add("solvent")
    for line in product.composition:
        if line.kind is Ingredient.SOLVENT:
            found.update(row["group"] for row in rows_of(line.cas or ""))
    return found
