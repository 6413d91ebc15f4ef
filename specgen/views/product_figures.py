"""The computed figures of one product: the wet film for the comb, and the area from a can or a litre at a stated film.

There is no coverage without a film, and none without the share of the paint that lands on the part. Called by `data_sheet`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from specgen.model.film import FilmLimits
from specgen.model.product import PackForm, Product, Variant
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.plan.layer_figures import solids_in_can, solids_sprayed
from specgen.standards.citations import Citation
from specgen.standards.tables import table
from specgen.trade.cans import area_per_can, usual_transfer
from specgen.trade.consumption import practical_spreading_rate, spreading_rate, spreading_rate_us
from specgen.trade.film import wet_film
from specgen.trade.given import Given, Source
from specgen.trade.loss import LossShare
from specgen.trade.solids import solids_from_volume
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

_TRANSFER, _LOSS = "transfer_efficiency_aerosol", "loss_ranges"
# The ways of working of the table of losses; its other rows are what the weather and the surface add.
_WAYS = ("brush or roller application", "conventional spray", "airless spray")


@dataclass(frozen=True, slots=True)
class Comb:
    """The wet film that dries to `film`. `variants` names those it holds for, empty for all; `thinner` is what was added."""

    variants: str
    film: Quantity
    thinner: Quantity | None
    wet: Working


@dataclass(frozen=True, slots=True)
class Coverage:
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


@dataclass(frozen=True, slots=True)
class ProductFigures:
    """`workings` holds every figure once, each before those that build on it."""

    combs: tuple[Comb, ...]
    coverage: tuple[Coverage, ...]
    workings: tuple[Working, ...]


def product_figures(product: Product, spec: Spec) -> ProductFigures:
    """All figures the product's data allow; what they do not allow is left out."""
    workings: dict[str, Working] = {}
    coverage = [
        found
        for names, variant in _alike(product, lambda v: (v.fill, _own(v, "solids_in_can")))
        for found in _coverage(product, names, variant, workings)
    ]
    combs = [
        found
        for names, variant in _alike(product, lambda v: (_own(v, "per_pass"), _own(v, "solids_sprayed")))
        for found in _combs(product, names, variant, spec, workings)
    ]
    return ProductFigures(tuple(combs), tuple(coverage), tuple(workings.values()))


def _own(variant: Variant, name: str) -> Quantity | None:
    return getattr(variant.overrides, name) if variant.overrides is not None else None


def _alike(product: Product, key: Callable[[Variant], Any]) -> Iterator[tuple[str, Variant]]:
    """The first of each set of variants that give the same figure, with the names of the set where there are several sets."""
    sets: dict[Any, list[Variant]] = {}
    for variant in product.variants:
        sets.setdefault(key(variant), []).append(variant)
    for alike in sets.values():
        yield ", ".join(variant.name for variant in alike) if len(sets) > 1 else "", alike[0]


def _keep(source: Source | None, workings: dict[str, Working]) -> None:
    if isinstance(source, Working):
        workings.setdefault(source.id, source)


def _name(product: Product, names: str, variant: Variant) -> str:
    return f"{product.id}-{variant.id}" if names else product.id


def _coverage(product: Product, names: str, variant: Variant, workings: dict[str, Working]) -> Iterator[Coverage]:
    solids = solids_in_can(product, variant)
    limit = next((name for name in ("nominal", "max", "min") if getattr(product.film, name) is not None), None)
    if solids is None or limit is None:
        return
    film: Quantity = getattr(product.film, limit)
    at = Given(film, f"products.{product.id}.film.{limit}")
    name = _name(product, names, variant)
    _keep(solids, workings)
    of = _per_can if product.pack.form is PackForm.AEROSOL else _per_litre
    for way, share, least, most, source in of(product, variant, name, solids, at, film, workings):
        for figure in (least, most):
            _keep(figure, workings)
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
    volume = solids_from_volume(f"solids-{name}", Given(fill, origin), solids)
    _keep(volume, workings)
    stated = product.pack.delivered
    all_of_it = Given(Quantity.of("share", 100, "%"), "nothing is stated, so all of the contents")
    delivered = Given(stated, f"{path}.delivered") if stated is not None else all_of_it
    for number, row in enumerate(table(_TRANSFER).rows, 1):
        shares = usual_transfer(row["method"])
        ends = [
            area_per_can(f"area-{name}-{number}-{end}", volume, delivered, share, at)
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
    without_loss = rate(f"spreading-{name}", solids, at)
    _keep(without_loss, workings)
    for number, way in enumerate(_WAYS, 1):
        losses = _losses(way)
        most, least = (
            practical_spreading_rate(f"spreading-{name}-{number}-{end}", without_loss, LossShare(loss), unit)
            for end, loss in zip(("most", "least"), losses, strict=True)
        )
        shares = (_share(losses[0]), _share(losses[1]))
        yield way, shares, most if shares[0] == shares[1] else least, most, table(_LOSS).citation


def _losses(way: str) -> tuple[Given, Given]:
    from specgen.trade.given import from_table

    row = table(_LOSS).row("what", way)
    low, high = (from_table(_LOSS, row, column, "share", "%") for column in ("low_pct", "high_pct"))
    return low, high


def _share(given: Given) -> Quantity:
    if not isinstance(given.value, Quantity):
        raise TypeError("the tables of transfer and loss hold shares")
    return given.value


def _combs(product: Product, names: str, variant: Variant, spec: Spec, workings: dict[str, Working]) -> Iterator[Comb]:
    own = _own(variant, "per_pass")
    path = f"products.{product.id}"
    if own is not None:
        film, origin = own, f"{path}.variants.{variant.id}.overrides.per_pass"
    elif product.film.per_pass is not None:
        film, origin = product.film.per_pass, f"{path}.film.per_pass"
    elif product.pack.form is PackForm.LIQUID and product.film.nominal is not None:
        film, origin = product.film.nominal, f"{path}.film.nominal"
    else:
        return
    # `solids_sprayed` asks for the layer a product lies in; this one stands for the product by itself.
    layer = Layer.model_construct(id=product.id, product=product.id, variant=variant.id, film=FilmLimits())
    solids = solids_sprayed(layer, spec)
    if solids is None:
        return
    _keep(solids, workings)
    mixing = product.application.mixing if product.application is not None else None
    unit = "mil" if film.unit in {"mil", "mils"} else "um"
    for thinner in dict.fromkeys((None, mixing.thinner_max if mixing is not None else None)):
        added = Given(thinner, f"{path}.application.mixing.thinner_max") if thinner is not None else None
        ending = "-thinned" if thinner is not None else ""
        wet = wet_film(f"wet-{_name(product, names, variant)}{ending}", Given(film, origin), solids, added, unit)
        _keep(wet, workings)
        yield Comb(names, film, thinner, wet)
