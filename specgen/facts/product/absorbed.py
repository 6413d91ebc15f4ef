"""Whether a product holds what is absorbed through the skin, as lists of exposure limits note it.

Called by the dangers of a product, by the rule on gloves and by the lines of a data sheet.
"""

from __future__ import annotations

from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.product import Product
from specgen.standards.citations import Citation
from specgen.trade.codes import firmest
from specgen.trade.exposure import isocyanate_skin_noted, skin_noted


def absorbed(product: Product) -> Citation | None:
    """On whose word something in it, or let off by it in curing, is absorbed through the skin; None where no list says so."""
    released = product.hazards.cure_release_cas if product.hazards is not None else None
    numbers = (*(line.cas for line in product.composition), released)
    noted = [skin_noted(cas) for cas in numbers if cas]
    if isocyanates_in(product):
        noted.append(isocyanate_skin_noted())
    found = [source for source in noted if source is not None]
    return firmest(found) if found else None
