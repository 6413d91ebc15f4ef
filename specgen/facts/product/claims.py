"""What a coverage claim takes and what a pack holds, for the rules on claims."""

from __future__ import annotations

from fractions import Fraction

from specgen.facts.layer.figures import solids_in_can
from specgen.model.product import Product
from specgen.trade.given import Given, rounding_of
from specgen.trade.known import NotKnown
from specgen.trade.solids import solids_from_volume
from specgen.trade.working import Working
from specgen.units.quantity import Quantity


def solids_in_pack(product: Product) -> Working | NotKnown:
    """The volume in mL of dry solids in one pack of the product, taken as it stands: an empty pack holds nothing."""
    path, share = ("products", product.id, "pack", "fill"), solids_in_can(product, None)
    if isinstance(share, NotKnown):
        return share
    if product.pack.fill is None:
        return NotKnown("solids in a pack", "the contents of the pack are not stated", ("contents of a pack",), at=path)
    contents = Given(product.pack.fill, ".".join(path))
    return solids_from_volume(f"solids-in-pack-{product.id}", contents, share)


def dry_volume(area: Quantity, film: Quantity) -> Fraction:
    """The volume in mL of a film on an area, each taken at the least it may have been rounded from.

    1 mL on 1 m2 is 1 um.
    """
    least_area = Quantity.of("area", area.number - rounding_of(area), area.unit)
    least_film = Quantity.of("thickness", film.number - rounding_of(film), film.unit)
    return least_area.to("m2") * least_film.to("um")
