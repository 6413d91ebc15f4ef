"""Which film holds for a layer: the limit it states itself, else the one its product states; asked by rules and pages alike.

Least and most film are borrowed from the product. The nominal film is not: what a product is usually laid at is not what this
system aims at. What one pass gives and where a colour hides are figures of the variant before those of the product.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.facts.product.variants import own
from specgen.model.product import Product, Variant
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.given import Given
from specgen.units.quantity import Quantity

Limit = Literal["min", "nominal", "max"]
Stands = Literal["layer", "variant", "product"]
_BORROWED: frozenset[Limit] = frozenset({"min", "max"})


class Film(NamedTuple):
    """A dry film in force. `path` is its address from the top of the sources, `stated_by` whose word it is."""

    value: Quantity
    path: Path
    stated_by: Stands

    @property
    def borrowed(self) -> bool:
        """True where the layer does not state it itself."""
        return self.stated_by != "layer"

    @property
    def given(self) -> Given:
        """The film as a formula takes it, with its place."""
        return Given(self.value, ".".join(self.path))

    @property
    def lender(self) -> str:
        """` of the product primer`, to be put behind the figure or the name of the limit; empty where the layer states it itself."""
        return f" of the product {self.path[1]}" if self.borrowed else ""


def film_limit(system: System, layer: Layer, spec: Spec, limit: Limit) -> Film | None:
    """The least, nominal or most dry film that holds for a layer; None where neither layer nor product states it."""
    stated: Quantity | None = getattr(layer.film, limit)
    if stated is not None:
        return Film(stated, ("systems", system.id, "layers", layer.id, "film", limit), "layer")
    product = spec.product_of(layer)
    lent: Quantity | None = getattr(product.film, limit)
    if lent is None or limit not in _BORROWED:
        return None
    return Film(lent, ("products", product.id, "film", limit), "product")


def has_film_limits(system: System, layer: Layer, spec: Spec) -> bool:
    """True where a least or most film holds for a layer."""
    return any(film_limit(system, layer, spec, limit) is not None for limit in _BORROWED)


def planned_film(system: System, layer: Layer, spec: Spec) -> Film | None:
    """The film paint is ordered for: the nominal one, else the most, so that it never runs short, else the least."""
    limits: tuple[Limit, ...] = ("nominal", "max", "min")
    return next((film for name in limits if (film := film_limit(system, layer, spec, name)) is not None), None)


def expected_film(system: System, layer: Layer, spec: Spec) -> Quantity | None:
    """The film a layer will have, for sums with old paint: its nominal, else what lies between its limits.

    Between the limits the middle of the layer's own is taken, then the product's nominal where it lies inside, then the
    middle of those in force. None where nothing tells.
    """
    nominal, least, most = (
        film_limit(system, layer, spec, "nominal"),
        film_limit(system, layer, spec, "min"),
        film_limit(system, layer, spec, "max"),
    )
    if nominal is not None:
        return nominal.value
    between = (
        (least.value.to("um") + most.value.to("um")) / Fraction(2) if least is not None and most is not None else None
    )
    own_limits = layer.film.min is not None and layer.film.max is not None
    usual = spec.product_of(layer).film.nominal
    if usual is not None and not own_limits and _inside(usual, least, most):
        return usual
    return Quantity.of("thickness", between, "um") if between is not None else None


def _inside(film: Quantity, least: Film | None, most: Film | None) -> bool:
    return (least is None or least.value <= film) and (most is None or film <= most.value)


def film_of_variant(product: Product, variant: Variant | None, figure: Literal["per_pass", "hiding"]) -> Film | None:
    """What one pass gives, or where the colour hides: of the variant, else of the product; None where neither states it."""
    stated = own(variant, figure) if variant is not None else None
    if variant is not None and stated is not None:
        path = ("products", product.id, "variants", variant.id, "overrides", figure)
        return Film(stated, path, "variant")
    of_product: Quantity | None = getattr(product.film, figure)
    return Film(of_product, ("products", product.id, "film", figure), "product") if of_product is not None else None
