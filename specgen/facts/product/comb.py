"""The wet film to read on the comb for a film of the product. Called by `product_figures`."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.facts.layer.figures import solids_sprayed
from specgen.facts.layer.film import film_of_variant
from specgen.facts.product.variants import keep, subject
from specgen.model.product import PackForm, Product, Variant
from specgen.trade.film import wet_film
from specgen.trade.given import Given
from specgen.trade.known import NotKnown
from specgen.trade.working import Working
from specgen.units.quantity import Quantity


class Comb(NamedTuple):
    """The wet film that dries to `film`. `variants` are the names it holds for, empty for all."""

    variants: str
    film: Quantity
    thinner: Quantity | None
    wet: Working


def combs(product: Product, names: str, variant: Variant, workings: dict[str, Working]) -> Iterator[Comb]:
    """The wet film of a pass, plain and at the most thinner; of a nominal coat for a liquid that states no pass.

    None where film or solids are not known.
    """
    path = f"products.{product.id}"
    of_pass = film_of_variant(product, variant, "per_pass")
    if of_pass is not None:
        film = of_pass.given
    elif product.pack.form is PackForm.LIQUID and product.film.nominal is not None:
        film = Given(product.film.nominal, f"{path}.film.nominal")
    else:
        return
    solids = solids_sprayed(product, variant)
    if isinstance(solids, NotKnown):
        return
    keep(solids, workings)
    mixing = product.application.mixing if product.application is not None else None
    unit = "mil" if film.quantity.unit in {"mil", "mils"} else "um"
    for thinner in dict.fromkeys((None, mixing.thinner_max if mixing is not None else None)):
        added = Given(thinner, f"{path}.application.mixing.thinner_max") if thinner is not None else None
        ending = "/thinned" if thinner is not None else ""
        wet = wet_film(f"wet.{subject(product, names, variant)}{ending}", film, solids, added, unit)
        keep(wet, workings)
        yield Comb(names, film.quantity, thinner, wet)
