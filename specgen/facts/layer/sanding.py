"""Whether a coat is sanded before the next, in which way, and when its film may be: rules and readings assess the time pages print."""

from __future__ import annotations

import re

from specgen.facts.product.drying import Unstated, sandable_at
from specgen.model.drying import SandableAfter, Sanding
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.units.quantity import Quantity

_WET = re.compile(r"\b(wet|water)\b", re.IGNORECASE)


def sanded(layer: Layer) -> bool:
    """True where the coat is sanded before the next one."""
    return layer.abraded_with is not None or layer.sanding_removes is not None


def way_of_sanding(layer: Layer) -> Sanding:
    """Wet where the words of the coat say so."""
    return Sanding.WET if _WET.search(f"{layer.abraded_with or ''} {layer.before_next or ''}") else Sanding.DRY


def sandable_from(layer: Layer, spec: Spec, air: Quantity) -> SandableAfter | Unstated | None:
    """When a coat that is sanded may be, in the way it is; None where its product states nothing of that way."""
    way = way_of_sanding(layer)
    for found in sandable_at(spec.product_of(layer), air):
        if (found.kind if isinstance(found, Unstated) else found.sanding) is way:
            return found
    return None
