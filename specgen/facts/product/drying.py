"""How long each stage of drying takes in the air of a job, and when the film may be sanded: rules assess the times that pages print.

A time holds at its own air temperature and in warmer air. What a product states for warmer air alone is not known for the job:
no time is carried over to colder air.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple, TypeVar

from specgen.facts.usual import proportion
from specgen.model.drying import Drying, DryingStage, SandableAfter, Sanding
from specgen.model.product import Product
from specgen.trade.evenly_between import evenly_between
from specgen.units.quantity import Quantity, lower, upper

Entry = TypeVar("Entry", Drying, SandableAfter)

_SPOKEN: dict[DryingStage | Sanding, str] = {
    DryingStage.HANDLING: "dry to handle",
    DryingStage.FULLY_CURED: "fully cured",
}


class Unstated(NamedTuple):
    """A stage or way of sanding that a product states for warmer air than `air` alone: `time` at `stated_at`, the coolest of them."""

    kind: DryingStage | Sanding
    air: Quantity
    stated_at: Quantity
    time: Quantity


def drying_at(product: Product, air: Quantity | None) -> tuple[Drying | Unstated, ...]:
    """One answer a stage: the time stated nearest at or below `air`, else that none is stated for it.

    Every entry where nothing is known of the air. A band of air holds from its lower end.
    """
    return _at(product.drying, lambda entry: entry.stage, air)


def sandable_at(product: Product, air: Quantity | None) -> tuple[SandableAfter | Unstated, ...]:
    """One answer for dry and one for wet sanding, found as a stage of drying is."""
    return _at(product.sandable_after, lambda entry: entry.sanding, air)


def earliest(product: Product, stage: DryingStage, air: Quantity | None) -> Drying | Unstated | None:
    """When a stage is reached in the coldest air of a job; None where the product does not state it at all, or the air is not known."""
    if air is None:
        return None
    return next((found for found in drying_at(product, air) if stage_of(found) is stage), None)


def warmer_rows(product: Product, stage: DryingStage, air: Quantity) -> list[Drying]:
    """The entries of a stage stated for air warmer than `air`, the coolest first."""
    warmer = [entry for entry in product.drying if entry.stage is stage and lower(entry.air) > air]
    return sorted(warmer, key=lambda entry: lower(entry.air))


def time_between(product: Product, stage: DryingStage, air: Quantity) -> Quantity | None:
    """The time to a stage at `air`, taken to fall evenly between the entries beside it; None where none is stated for warmer air."""
    colder, warmer = earliest(product, stage, air), warmer_rows(product, stage, air)
    if colder is None or isinstance(colder, Unstated) or not warmer:
        return None
    cold, warm = ((lower(entry.air), upper(entry.time)) for entry in (colder, warmer[0]))
    return evenly_between(cold, warm, air)


def longest(found: Drying | SandableAfter | Unstated) -> Quantity:
    """The time that is safe to wait: the upper end of a range; of an `Unstated` that of warmer air, which is too short at best."""
    return found.time if isinstance(found, Unstated) else upper(found.time)


def stage_of(found: Drying | Unstated) -> DryingStage | Sanding:
    """The stage an answer speaks of."""
    return found.kind if isinstance(found, Unstated) else found.stage


def spoken(stage: DryingStage | Sanding) -> str:
    """A stage as a sentence says it."""
    return _SPOKEN.get(stage, str(stage))


def _at(
    entries: Sequence[Entry], kind: Callable[[Entry], DryingStage | Sanding], air: Quantity | None
) -> tuple[Entry | Unstated, ...]:
    if air is None:
        return tuple(entries)
    alike: dict[DryingStage | Sanding, list[Entry]] = {}
    for entry in sorted(entries, key=lambda entry: lower(entry.air)):
        alike.setdefault(kind(entry), []).append(entry)
    found: list[Entry | Unstated] = []
    for entry in entries:
        of_kind = alike[kind(entry)]
        cooler = [other for other in of_kind if lower(other.air) <= air]
        if cooler and entry is cooler[-1]:
            found.append(entry)
        elif not cooler and entry is of_kind[0]:
            found.append(Unstated(kind(entry), air, lower(entry.air), upper(entry.time)))
    return tuple(found)


def stages_in_air(product: Product) -> set[DryingStage]:
    """The stages for which a product states a time in air that nobody heats to speed it up."""
    forced = Quantity.of("temperature", proportion("forced"), "degC")
    return {row.stage for row in product.drying if row.air is None or lower(row.air) <= forced}


def cures_in_heat_alone(product: Product) -> bool:
    """True where a product states its full cure, and every time above the air that is heated to speed it up."""
    rows = [row.air for row in product.drying if row.stage is DryingStage.FULLY_CURED]
    forced = Quantity.of("temperature", proportion("forced"), "degC")
    return bool(rows) and all(air is not None and lower(air) > forced for air in rows)
