"""A product in the place of one that is not chosen yet: what its coat requires of it, and nothing else.

Called by `Spec.product_of`, so that the rules on films, pairs, substrates and preparation judge by role and generic type. It
stands in none of the lists: no rule on data that a product must have, on hazards, packs or orders is run on it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specgen.model.film import ProductFilm
from specgen.model.product import CuringKind, Pack, PackForm, Product
from specgen.model.requirement import Requirement
from specgen.standards.tables import table

if TYPE_CHECKING:
    from specgen.model.system import Layer

NOT_NAMED = "not-named"

# How the paint of a generic type hardens where the requirement does not say, by the column `cure` of binder_families.
_CURING = {
    "oxidative": CuringKind.OXIDATIVE,
    "physical": CuringKind.PHYSICAL,
    "moisture": CuringKind.MOISTURE,
    "hydrolytic": CuringKind.MOISTURE,
    "released by moisture": CuringKind.BLOCKED_AEROSOL,
    "stoved": CuringKind.STOVED,
}


class StandIn(Product):
    """The product that a coat requires. What the requirement leaves open is not stated here, or is taken as it has to be."""


def stand_in(layer: Layer) -> StandIn:
    """The stand-in of a layer that names no product; of a layer that requires nothing either, one of no generic type."""
    required: Requirement = layer.required if layer.required is not None else Requirement()
    family = required.generic_type or NOT_NAMED
    cure = table("binder_families").row("id", family)["cure"]
    curing = required.curing or _CURING.get(cure, CuringKind.LIQUID_TWO_PACK)
    by_can = layer.method is not None and layer.method.value == PackForm.AEROSOL.value
    form = required.pack or (PackForm.AEROSOL if by_can or "aerosol" in curing.value else PackForm.LIQUID)
    return StandIn.model_construct(
        id=f"{layer.id} (not yet chosen)",
        name=table("binder_families").row("id", family)["name"],
        about=required.text,
        binder=family,
        curing=curing,
        roles=(layer.role,),
        # whoever offers one for bare metal has to show that it is made for that
        direct_to_metal=True,
        variants=(),
        pack=Pack.model_construct(form=form),
        film=ProductFilm.model_construct(),
    )
