"""How packs of a product are reckoned: cans by the solids they bring to the part, tins by their litres.

Called by `quantities`.
"""

from __future__ import annotations

from collections.abc import Callable

from specgen.model.job import Job
from specgen.model.product import PackForm, Product, Variant
from specgen.trade.cans import cans
from specgen.trade.consumption import Demand, litres, packs
from specgen.trade.given import Given, Source
from specgen.trade.known import NotKnown
from specgen.trade.loss import Loss, LossShare, Surplus
from specgen.trade.solids import solids_from_volume
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

Need = Callable[[str, list[Demand]], Working]
"""From the id of a working and its demands to the number of packs."""

_ALL_OF_IT = Given(Quantity.of("share", 100, "%"), "not stated, so the whole contents")
_LOSS = "application loss"
_NOTHING_LANDS = "with this loss no paint reaches the part"


def contents_of(product: Product, variant: Variant | None) -> Given | NotKnown:
    """The contents of a pack as a volume, the variant's own or the product's; an empty pack is a fault."""
    why = "an empty pack covers no area"
    if variant is not None and variant.fill is not None:
        return _more_than_nothing(variant.fill, f"products.{product.id}.variants.{variant.id}.fill", why)
    if product.pack.fill is not None:
        return _more_than_nothing(product.pack.fill, f"products.{product.id}.pack.fill", why)
    at = ("products", product.id, "pack", "fill")
    return NotKnown("contents of a pack", "the contents of the pack are not stated", ("contents of a pack",), at=at)


def loss_on_the_way(job: Job, product: Product) -> Given | Loss | NotKnown:
    """For cans the transfer efficiency in percent; for a liquid its loss as stated, else what the efficiency leaves.

    A fault where nothing lands on the part.
    """
    stated = job.consumption
    path = f"jobs.{job.id}.consumption"
    if stated is not None and product.pack.form is PackForm.LIQUID and stated.loss_share is not None:
        landing = _more_than_nothing(_rest_of(stated.loss_share), f"{path}.loss_share", _NOTHING_LANDS)
        return landing if isinstance(landing, NotKnown) else LossShare(Given(stated.loss_share, landing.origin))
    if stated is not None and product.pack.form is PackForm.LIQUID and stated.loss_surplus is not None:
        return Surplus(Given(stated.loss_surplus, f"{path}.loss_surplus"))
    if stated is None or stated.transfer_efficiency is None:
        at = ("jobs", job.id, "consumption", "transfer_efficiency")
        return NotKnown(_LOSS, "the transfer efficiency of the job is not stated", ("transfer efficiency",), at=at)
    efficiency = _more_than_nothing(stated.transfer_efficiency, f"{path}.transfer_efficiency", _NOTHING_LANDS)
    if product.pack.form is PackForm.AEROSOL or isinstance(efficiency, NotKnown):
        return efficiency
    return LossShare(Given(_rest_of(stated.transfer_efficiency), efficiency.origin))


def need_of_cans(
    supporting: list[Working], product: Product, name: str, contents: Given, solids: Source, efficiency: Given
) -> Need | NotKnown:
    """Cans by their solids; the solids of one can are added to `supporting`. A can that gives nothing off is a fault."""
    volume = solids_from_volume(f"solids.{name}", contents, solids)
    supporting.append(volume)
    delivered = _delivered(product, "a can that dispenses nothing covers no area")
    if isinstance(delivered, NotKnown):
        return delivered
    return lambda key, demands: cans(key, demands, volume, delivered, efficiency)


def need_of_tins(
    supporting: list[Working], product: Product, contents: Given, solids: Source, loss: Loss
) -> Need | NotKnown:
    """Tins by their litres, each of which is added to `supporting`. A tin that nothing comes out of is a fault."""
    delivered = _delivered(product, "a tin of which nothing can be used covers no area")
    if isinstance(delivered, NotKnown):
        return delivered
    share = delivered

    def need(key: str, demands: list[Demand]) -> Working:
        amount = litres(f"litres-for-{key}", demands, solids, loss)
        supporting.append(amount)
        return packs(key, amount, contents, share)

    return need


def _delivered(product: Product, why: str) -> Given | NotKnown:
    if product.pack.dispensed is None:
        return _ALL_OF_IT
    return _more_than_nothing(product.pack.dispensed, f"products.{product.id}.pack.dispensed", why)


def _rest_of(share: Quantity) -> Quantity:
    return Quantity.of("share", 100 - share.to("%"), "%")


def _more_than_nothing(value: Quantity, path: str, why: str) -> Given | NotKnown:
    """The value with its origin; a fault where it is zero, for a figure would be divided by it."""
    if value.base == 0:
        return NotKnown("packs", why, at=tuple(path.split(".")))
    return Given(value, path)
