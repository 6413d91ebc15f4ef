"""What a coverage claim takes and what a pack holds, for the rules on claims."""

from __future__ import annotations

from fractions import Fraction

from specgen.facts.faults import FaultyValueError
from specgen.facts.layer.figures import solids_in_can
from specgen.model.product import Product
from specgen.trade.given import Given, rounding_of
from specgen.trade.solids import solids_from_volume
from specgen.trade.working import Working
from specgen.units.quantity import Quantity


def solids_in_pack(product: Product) -> Working | None:
    """The volume of dry solids in one pack of the product; None where its contents or its solids are not known."""
    try:
        share = solids_in_can(product, None)
    except FaultyValueError:
        return None
    if share is None or product.pack.fill is None:
        return None
    contents = Given(product.pack.fill, f"products.{product.id}.pack.fill")
    return solids_from_volume(f"solids-in-pack-{product.id}", contents, share)


def dry_volume(area: Quantity, film: Quantity) -> Fraction:
    """The volume in mL of a film on an area, each taken at the least it may have been rounded from.

    1 mL on 1 m2 is 1 um.
    """
    least_area = Quantity.of("area", area.number - rounding_of(area), area.unit)
    least_film = Quantity.of("thickness", film.number - rounding_of(film), film.unit)
    return least_area.to("m2") * least_film.to("um")
