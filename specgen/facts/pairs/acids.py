"""Coats and treatments that leave acid, and what lies under a layer. Called by the rules of this folder."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.facts.pairs.families import ETCHING, binder_family
from specgen.facts.pairs.parts import leaves_acid, painted_with
from specgen.model.product import Role
from specgen.model.spec import Spec
from specgen.model.system import Layer, System

CLOSING = {Role.PRIMER, Role.SURFACER, Role.SEALER, Role.INTERMEDIATE}


def stacked(system: System) -> Iterator[tuple[Layer | None, Layer]]:
    """Each layer with the one below it, None below the first."""
    return zip((None, *system.layers), system.layers, strict=False)


def etching_primer(layer: Layer, spec: Spec) -> str:
    """`the one-pack etch primer etch`: a wash or etch primer by its kind and its id."""
    return f"the {binder_family(spec.product_of(layer).binder)['name']} {layer.id}"


def acid_below(below: Layer | None, system: System, spec: Spec) -> Iterator[tuple[str, bool]]:
    """What acid a layer is applied over, in words; False beside it where nothing says whether acid is left."""
    if below is not None:
        if spec.product_of(below).binder in ETCHING:
            yield etching_primer(below, spec), True
        return
    for part in painted_with(system, spec):
        left = leaves_acid(part.preparation)
        if left is None:
            yield f"metal converted by {part.preparation.id}", False
        elif left:
            yield f"metal with acid left by {part.preparation.id}", True
