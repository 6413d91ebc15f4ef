"""When all coats of a system have reached a stage of drying, held against a time counted from the last one. Asked by rules on release."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from specgen.facts.layer.intervals import coldest_air
from specgen.facts.product.drying import Unstated, earliest, longest, spoken, stage_of, time_between
from specgen.model.drying import DryingStage
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Quantity, lower


class Reached(NamedTuple):
    """A layer at a time after the last coat, `waited` after its own: `due` is when its stage is reached at the coldest air.

    `stated_at` is the air the product states `due` for; where that is warmer, `due` is too short at best. `between` is the time
    taken between the one for colder and the one for warmer air; None where none is stated for warmer air, or one for the air itself.
    """

    layer: Layer
    stage: DryingStage
    waited: Quantity
    due: Quantity
    air: Quantity
    stated_at: Quantity
    between: Quantity | None

    @property
    def too_soon(self) -> bool:
        return self.waited < self.due

    @property
    def may_do(self) -> bool:
        """True where the time is too short by the entry for colder air alone, and not between this and the one for warmer air."""
        return self.too_soon and self.between is not None and self.between <= self.waited

    @property
    def warmer_alone(self) -> bool:
        """True where the product states no time for air as cold as the job's."""
        return self.air < self.stated_at

    @property
    def only_after(self) -> str:
        """The time of the stage, with the air it is stated for and that of the job."""
        what = f"{self.layer.product} is {spoken(self.stage)} only after {self.due}"
        if self.stated_at == self.air:
            return f"{what} at {self.air}"
        even = "even at " if self.warmer_alone else "as stated for "
        return f"{what}, {even}{self.stated_at}; the air may be {self.air}"

    @property
    def not_stated(self) -> str:
        """That the time is not known for the air of the job."""
        return f"when {self.layer.product} is {spoken(self.stage)} is not stated for {self.air}, only for {self.stated_at} and warmer"


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
            stated_at = stated.stated_at if isinstance(stated, Unstated) else lower(stated.air)
            stage = DryingStage(stage_of(stated))
            between = time_between(product, stage, air) if stated_at < air else None
            found.append(Reached(layer, stage, waited, longest(stated), air, stated_at, between))
    return tuple(found)


def _plus(time: Quantity, more: Quantity | None) -> Quantity:
    if more is None:
        return time
    total: Fraction = time.number + more.to(time.unit)
    return Quantity.of("duration", total, time.unit)
