"""When all coats of a system have reached a stage of drying, held against a time counted from the last one. Asked by rules on release."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from specgen.facts.layer.intervals import coldest_air
from specgen.facts.product.drying import Unstated, earliest, longest
from specgen.model.product import DryingStage
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Reached:
    """A layer at a time after the last coat, `waited` after its own: `due` is when its stage is reached at the coldest air.

    `stated_at`: the product states the stage for this air and warmer alone, so that `due` is too short at best.
    """

    layer: Layer
    stage: DryingStage
    waited: Quantity
    due: Quantity
    air: Quantity
    stated_at: Quantity | None

    @property
    def too_soon(self) -> bool:
        return self.waited < self.due


def reached(system: System, spec: Spec, after: Quantity, stages: tuple[DryingStage, ...]) -> tuple[Reached, ...]:
    """One answer a layer, the last first, by the first of `stages` its product states; none for a layer that states none of them.

    Empty where no job with the system states its air.
    """
    air, waited = coldest_air(system, spec), after
    found: list[Reached] = []
    for layer in reversed(system.layers):
        if layer is not system.layers[-1]:
            waited = _plus(waited, layer.overcoat_interval.low if layer.overcoat_interval is not None else None)
        product = spec.product_of(layer)
        stated = next((one for stage in stages if (one := earliest(product, stage, air)) is not None), None)
        if stated is not None and air is not None:
            stage = stated.kind if isinstance(stated, Unstated) else stated.stage
            warmer = stated.stated_at if isinstance(stated, Unstated) else None
            found.append(Reached(layer, DryingStage(stage), waited, longest(stated), air, warmer))
    return tuple(found)


def _plus(time: Quantity, more: Quantity | None) -> Quantity:
    if more is None:
        return time
    total: Fraction = time.number + more.to(time.unit)
    return Quantity.of("duration", total, time.unit)
