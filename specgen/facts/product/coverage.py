"""What a can or a litre covers, worked out at a stated film and for a stated way of working.

Called by `product_figures`. There is no coverage without a film, and none without the share that lands on the part.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.facts.layer.figures import solids_in_can
from specgen.facts.product.variants import keep, subject
from specgen.model.product import PackForm, Product, Variant
from specgen.standards.citations import Citation
from specgen.standards.tables import table
from specgen.trade.cans import area_per_can, usual_transfer
from specgen.trade.consumption import practical_spreading_rate, spreading_rate, spreading_rate_us
from specgen.trade.given import Given, Source, from_table
from specgen.trade.known import NotKnown
from specgen.trade.loss import LossShare
from specgen.trade.solids import solids_from_volume
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

_TRANSFER, _LOSS = "transfer_efficiency_aerosol", "loss_ranges"
# The ways of working of the table of losses; its other rows are what the weather and the surface add.
_WAYS = ("brush or roller application", "conventional spray", "airless spray")


class Coverage(NamedTuple):
    """What a can or a litre covers at `film` (its name among the limits in `limit`), worked in one way.

    `least` and `most` are the two ends of what is usual; `share` is what lands of a can, or what is lost of a litre.
    """

    variants: str
    limit: str
    film: Quantity
    way: str
    share: tuple[Quantity, Quantity]
    least: Working
    most: Working
    source: Citation


def coverage(product: Product, names: str, variant: Variant, workings: dict[str, Working]) -> Iterator[Coverage]:
    """One entry a way of working. Every figure is put among `workings` before those that build on it.

    None where solids or film are not known. Raises WorkingError for a film of nothing.
    """
    solids = solids_in_can(product, variant)
    limit = next((name for name in ("nominal", "max", "min") if getattr(product.film, name) is not None), None)
    if isinstance(solids, NotKnown) or limit is None:
        return
    film: Quantity = getattr(product.film, limit)
    at = Given(film, f"products.{product.id}.film.{limit}")
    name = subject(product, names, variant)
    keep(solids, workings)
    of = _per_can if product.pack.form is PackForm.AEROSOL else _per_litre
    for way, share, least, most, source in of(product, variant, name, solids, at, film, workings):
        for figure in (least, most):
            keep(figure, workings)
        yield Coverage(names, limit, film, way, share, least, most, source)


_Ends = tuple[str, tuple[Quantity, Quantity], Working, Working, Citation]


def _per_can(
    product: Product,
    variant: Variant,
    name: str,
    solids: Source,
    at: Given,
    film: Quantity,
    workings: dict[str, Working],
) -> Iterator[_Ends]:
    path = f"products.{product.id}.pack"
    fill, origin = product.pack.fill, f"{path}.fill"
    if variant.fill is not None:
        fill, origin = variant.fill, f"products.{product.id}.variants.{variant.id}.fill"
    if fill is None:
        return
    volume = solids_from_volume(f"solids.{name}", Given(fill, origin), solids)
    keep(volume, workings)
    stated = product.pack.dispensed
    all_of_it = Given(Quantity.of("share", 100, "%"), "not stated, so the whole contents")
    delivered = Given(stated, f"{path}.dispensed") if stated is not None else all_of_it
    for number, row in enumerate(table(_TRANSFER).rows, 1):
        shares = usual_transfer(row["method"])
        ends = [
            area_per_can(f"area.{name}/{number}-{end}", volume, delivered, share, at)
            for end, share in zip(("least", "most"), shares, strict=True)
        ]
        yield row["method"], (_share(shares[0]), _share(shares[1])), ends[0], ends[1], table(_TRANSFER).citation


def _per_litre(
    product: Product,
    variant: Variant,
    name: str,
    solids: Source,
    at: Given,
    film: Quantity,
    workings: dict[str, Working],
) -> Iterator[_Ends]:
    american = film.unit in {"mil", "mils"}
    unit, rate = ("ft2/gal", spreading_rate_us) if american else ("m2/L", spreading_rate)
    without_loss = rate(f"spreading.{name}", solids, at)
    keep(without_loss, workings)
    for number, way in enumerate(_WAYS, 1):
        losses = _losses(way)
        most, least = (
            practical_spreading_rate(f"spreading.{name}/{number}-{end}", without_loss, LossShare(loss), unit)
            for end, loss in zip(("most", "least"), losses, strict=True)
        )
        shares = (_share(losses[0]), _share(losses[1]))
        yield way, shares, most if shares[0] == shares[1] else least, most, table(_LOSS).citation


def _losses(way: str) -> tuple[Given, Given]:
    row = table(_LOSS).row("what", way)
    low, high = (from_table(_LOSS, row, column, "share", "%") for column in ("low_pct", "high_pct"))
    return low, high


def _share(given: Given) -> Quantity:
    if not isinstance(given.value, Quantity):
        raise TypeError("the tables of transfer and loss hold shares")
    return given.value
