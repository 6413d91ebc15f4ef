"""Figures of a single layer: its solids and the wet film of a pass.

Volume solids come from the variant, else from the product, else they are worked out from the composition: what the
maker has measured goes before what is computed. Of a range, or a figure with its tolerance, the middle counts. Called by
`quantities` and by rules.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from specgen.facts.layer.film import film_limit
from specgen.model.product import PackForm, Product, Variant
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.trade.film import wet_film
from specgen.trade.given import Given, Source
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.passes import film_per_coat
from specgen.trade.solids import Component, propellant_free_volume_solids, volume_solids
from specgen.trade.working import Working
from specgen.units.quantity import Quantity, Range, middle

_SOLIDS = "volume solids"


def solids_in_can(product: Product, variant: Variant | None) -> Given | Working | NotKnown:
    """Volume solids in percent of the contents of the pack, for quantities; of a variant as it states them anew.

    A fault where they are zero or the composition does not allow them.
    """
    path = f"products.{product.id}"
    own = variant.overrides.solids_in_can if variant is not None and variant.overrides is not None else None
    if own is not None and variant is not None:
        return _stated(own, f"{path}.variants.{variant.id}.overrides.solids_in_can")
    if product.solids is not None and product.solids.in_can is not None:
        return _stated(product.solids.in_can, f"{path}.solids.in_can")
    if product.composition:
        return computed_solids(product, f"solids-in-can.{product.id}", volume_solids)
    return _not_stated(product, "in_can")


def solids_sprayed(product: Product, variant: Variant | None) -> Given | Working | NotKnown:
    """Volume solids in percent of what lies on the part, propellant gone, for the comb.

    A fault where they are zero or the composition does not allow them.
    """
    path = f"products.{product.id}"
    own = variant.overrides.solids_sprayed if variant is not None and variant.overrides is not None else None
    if own is not None and variant is not None:
        return _stated(own, f"{path}.variants.{variant.id}.overrides.solids_sprayed")
    if product.solids is not None and product.solids.sprayed is not None:
        return _stated(product.solids.sprayed, f"{path}.solids.sprayed")
    if product.pack.form is PackForm.LIQUID:
        return solids_in_can(product, variant)
    if product.composition:
        return computed_solids(product, f"solids-sprayed.{product.id}", propellant_free_volume_solids)
    return _not_stated(product, "sprayed")


def computed_solids(
    product: Product, key: str, formula: Callable[[str, list[Component]], Working]
) -> Working | NotKnown:
    """Volume solids in percent by `formula` from the composition; a fault where the composition does not allow them."""
    at = ("products", product.id, "composition")
    solids = worked_out(_SOLIDS, lambda: formula(key, _components(product)), at)
    if isinstance(solids, Working) and solids.number == 0:
        return NotKnown(_SOLIDS, "the composition contains no solids", at=at)
    return solids


def _stated(stated: Quantity | Range, path: str) -> Given | NotKnown:
    solids = middle(stated)
    if solids.base == 0:
        return NotKnown(_SOLIDS, "volume solids are zero; they must be above zero", at=tuple(path.split(".")))
    return Given(solids, path)


def _not_stated(product: Product, name: str) -> NotKnown:
    at = ("products", product.id, "solids", name)
    return NotKnown(_SOLIDS, "neither volume solids nor a composition is stated", (_SOLIDS,), at=at)


def wet_target(
    system: System, layer: Layer, spec: Spec, solids: Source | None, *, thinnest: bool = False
) -> tuple[list[Working], Working | None]:
    """The wet film of one pass (of one coat where no passes are stated) and the workings it builds on.

    Of a range of passes or coats the fewest are taken, so that it is the thickest film; `thinnest` asks for that of the most,
    and None where there is one number or no upper limit. None where the layer states its own wet target, or where film or
    solids are unknown.
    """
    nominal = film_limit(system, layer, spec, "nominal")
    if layer.wet_target is not None or nominal is None or solids is None:
        return [], None
    path = f"systems.{system.id}.layers.{layer.id}"
    film: Source = nominal.given
    supporting: list[Working] = []
    parts = ("passes", layer.passes) if layer.passes and layer.passes.low else ("coats", layer.coats)
    number = parts[1].high if thinnest and parts[1] is not None else parts[1].low if parts[1] is not None else None
    if thinnest and (parts[1] is None or number is None or parts[1].one is not None):
        return [], None
    which = "-thinnest" if thinnest else ""
    if number is not None and number > 1:
        count = Given(Fraction(number), f"{path}.{parts[0]}")
        share = film_per_coat(f"film{which}.{system.id}.{layer.id}", film, count, passes=parts[0] == "passes")
        supporting.append(share)
        film = share
    thinner = Given(layer.thinner, f"{path}.thinner") if layer.thinner is not None else None
    unit = "mil" if nominal.value.unit in {"mil", "mils"} else "um"
    return supporting, wet_film(f"wet{which}.{system.id}.{layer.id}", film, solids, thinner, unit)


def _components(product: Product) -> list[Component]:
    path = f"products.{product.id}.composition"
    return [
        Component(
            line.name,
            Given(line.mass_share, f"{path}.{line.id}.mass_share", "maker"),
            Given(line.density, f"{path}.{line.id}.density", "maker"),
            line.kind.value,
        )
        for line in product.composition
    ]
