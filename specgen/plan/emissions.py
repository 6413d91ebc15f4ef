"""VOC content of a product from its composition. Called by the rules on emissions and by the maker's documents."""

from __future__ import annotations

from specgen.model.product import Ingredient, Product
from specgen.trade.emissions import Part, voc_eu
from specgen.trade.given import Given
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

_WATER = "7732-18-5"


def voc_of(product: Product, density: Quantity) -> Working:
    """VOC content in g/L as the EU counts it, propellant included; every solvent counts, water is taken out.

    Raises WorkingError where nothing in the composition evaporates.
    """
    path = f"products.{product.id}"
    parts = []
    for line in product.composition:
        share = Given(line.mass_share, f"{path}.composition.{line.id}.mass_share", "maker")
        if line.kind is Ingredient.SOLIDS:
            parts.append(Part(line.name, share, "solids"))
        elif line.cas == _WATER:
            own = Given(line.density, f"{path}.composition.{line.id}.density", "maker")
            parts.append(Part(line.name, share, "water", own))
        else:
            parts.append(Part(line.name, share, "voc"))
    return voc_eu(f"voc.{product.id}", parts, Given(density, f"{path}.voc.density"))
