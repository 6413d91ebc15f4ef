"""How long a coat waits for the next one in air of one temperature and humidity, and when a film reaches a stage of drying.

Between two stated temperatures a time runs evenly in its logarithm. A time to wait holds in warmer air as well, a maximum in
colder; the other way nothing is carried over. Where the hardener is released by water the time is also carried over from the
air and film it was stated for: an estimate, that lengthens a wait and never shortens one. Asked by the command on climate and
by the schedule.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from specgen.facts.layer.film import film_limit
from specgen.facts.layer.intervals import late_allowed, windows_for
from specgen.facts.placing import jobs_painted_with
from specgen.facts.product.curing import cured_by_moisture
from specgen.model.drying import Drying, DryingStage, MoistureCure, OvercoatWindow, SandableAfter, Sanding
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.standards.tables import table
from specgen.trade.given import Given
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.moist_air import Air, absolute_humidity, vapour_pressure
from specgen.trade.moisture_cure import carried_over, through_the_film, vapour_for_wait, waiting_time, water_demand
from specgen.trade.times_between import Node, between
from specgen.trade.working import Working
from specgen.units.quantity import Quantity, lower, upper

_NOTHING_STATED = "an interval"


class Wait(NamedTuple):
    """What is known of the interval between two coats in one air.

    `shortest` and `longest` as stated by product and system together at that temperature; `longest` is None where there is no
    maximum. `estimate` is what the water takes, where that can be estimated: for a coat whose hardener is released by water.
    """

    below: Layer
    above: Layer
    shortest: Quantity | NotKnown
    longest: Quantity | NotKnown | None
    estimate: Working | NotKnown | None
    workings: tuple[Working, ...] = ()

    @property
    def wait(self) -> Quantity | NotKnown:
        """The time to plan with: never below what is stated, longer where the estimate says so, never above what is stated."""
        if isinstance(self.shortest, NotKnown) or not isinstance(self.estimate, Working):
            return self.shortest
        longer = max(self.shortest, self.estimate.quantity)
        return min(longer, self.longest) if isinstance(self.longest, Quantity) else longer


def water_for(wait: Wait, air: Quantity, humidity: Quantity) -> Working | None:
    """The absolute humidity at that temperature with which the stated minimum is enough, by the estimate; None where it is anyhow."""
    if not isinstance(wait.estimate, Working) or isinstance(wait.shortest, NotKnown):
        return None
    if wait.estimate.quantity <= wait.shortest:
        return None
    id = wait.estimate.id
    here = vapour_pressure(f"{id}.vapour", Air(air, humidity))
    needed = vapour_for_wait(f"{id}.needed", wait.estimate, here, wait.shortest)
    return absolute_humidity(f"{id}.needed_water", needed, air)


def waits(system: System, spec: Spec, air: Quantity, humidity: Quantity | None) -> tuple[Wait, ...]:
    """One answer for each pair of coats of the system, from the substrate outwards."""
    pairs = pairwise(system.layers)
    return tuple(wait_between(system, below, above, spec, air, humidity) for below, above in pairs)


def driest_wait(system: System, below: Layer, above: Layer, spec: Spec) -> tuple[str, Wait] | None:
    """The longest wait by the estimate in the coldest and driest air of any job with the system, with that air in words."""
    found: list[tuple[str, Wait]] = []
    for job in jobs_painted_with(system, spec):
        climate = job.climate
        air = climate.air.low if climate is not None and climate.air is not None else None
        humidity = climate.humidity.low if climate is not None and climate.humidity is not None else None
        if air is not None and humidity is not None:
            found.append((f"{air} and {humidity}", wait_between(system, below, above, spec, air, humidity)))
    told = [(air, wait) for air, wait in found if isinstance(wait.estimate, Working)]
    return max(
        told, key=lambda entry: entry[1].estimate.number if isinstance(entry[1].estimate, Working) else 0, default=None
    )


def wait_between(
    system: System, below: Layer, above: Layer, spec: Spec, air: Quantity, humidity: Quantity | None
) -> Wait:
    """The interval between two coats where the air is `air`, with `humidity` where that is known."""
    windows = windows_for(below, above, spec)
    id = f"systems.{system.id}.layers.{below.id}"
    shortest = _at(f"{id}.shortest", "minimum overcoating interval", windows, air, lambda w: w.interval.low)
    longest = _at(
        f"{id}.longest", "maximum overcoating interval", windows, air, lambda w: w.interval.high, shorter_when_warm=True
    )
    workings = tuple(found for found in (shortest, longest) if isinstance(found, Working))
    own = below.overcoat_interval
    least = _quantity(shortest)
    most: Quantity | NotKnown | None = _quantity(longest)
    if own is not None and own.low is not None and isinstance(least, Quantity):
        least = max(least, own.low)
    if windows and all(window.interval.high is None for window in windows):
        most = None if own is None else own.high
    if late_allowed(below, above):
        most = None
    elif own is not None and own.high is not None:
        most = min(most, own.high) if isinstance(most, Quantity) else own.high
    estimate = _water(id, system, below, windows, spec, air, humidity)
    return Wait(below, above, least, most, estimate, workings)


def reaches(product: Product, stage: DryingStage, air: Quantity) -> Quantity | NotKnown:
    """When a film of the product reaches a stage in air of one temperature."""
    stated = [entry for entry in product.drying if entry.stage is stage]
    found = _at(f"products.{product.id}.{stage}", f"time until {stage}", stated, air, lambda entry: upper(entry.time))
    return _quantity(found)


def sandable_in(product: Product, air: Quantity) -> Quantity | NotKnown:
    """When a film of the product may be dry-sanded in air of one temperature."""
    stated = [entry for entry in product.sandable_after if entry.sanding is Sanding.DRY]
    return _quantity(
        _at(f"products.{product.id}.sandable", "time before sanding", stated, air, lambda e: upper(e.time))
    )


def _quantity(found: Working | Quantity | NotKnown | None) -> Quantity | NotKnown:
    if isinstance(found, Working):
        return found.quantity
    return NotKnown(_NOTHING_STATED, "the product states none", ("overcoating interval",)) if found is None else found


def _at(
    id: str,
    name: str,
    entries: Sequence[OvercoatWindow] | Sequence[Drying] | Sequence[SandableAfter],
    air: Quantity,
    time: Callable[..., Quantity | None],
    *,
    shorter_when_warm: bool = False,
) -> Working | Quantity | NotKnown:
    """The time at `air`: as stated for it, else between the stated temperatures beside it, else not known.

    A time to wait holds in warmer air too, so that stated for the warmest stands past it; a time that must not be passed
    (`shorter_when_warm`) holds in colder air.
    """
    missing = (f"{name} at {air}",)
    nodes = [(entry, stated) for entry in entries if (stated := time(entry)) is not None]
    if not nodes:
        return NotKnown(name, "the product states none", missing)
    for entry, stated in nodes:
        if lower(entry.air) <= air <= upper(entry.air):
            return stated
    if shorter_when_warm:
        end, stated = min(nodes, key=lambda node: lower(node[0].air))
        if air < lower(end.air):
            return stated
    else:
        end, stated = max(nodes, key=lambda node: lower(node[0].air))
        if air > lower(end.air):
            return stated
    known = [Node(Given(lower(entry.air)), Given(stated)) for entry, stated in nodes]
    return worked_out(name, lambda: between(id, name, known, Given(air)), missing=missing)


def _water(
    id: str,
    system: System,
    below: Layer,
    windows: Sequence[OvercoatWindow],
    spec: Spec,
    air: Quantity,
    humidity: Quantity | None,
) -> Working | NotKnown | None:
    """How long the water for the coat below takes; None where its cure needs none."""
    product = spec.product_of(below)
    if not cured_by_moisture(product):
        return None
    name = "time for the water"
    film = film_limit(system, below, spec, "nominal") or film_limit(system, below, spec, "max")
    if humidity is None or film is None:
        missing = ("relative humidity",) if humidity is None else ("nominal DFT",)
        return NotKnown(name, f"the {missing[0]} is not known", missing)
    measured = [
        _Measured(stated.interval.low, stated.film, stated.air, stated.humidity)
        for stated in windows
        if stated.humidity is not None and stated.film is not None and stated.interval.low is not None
    ]
    if measured:
        near = min(measured, key=lambda one: abs(one.air.base - air.base))
        return worked_out(name, lambda: _carried(id, near, film.value, air, humidity))
    if product.moisture_cure is not None:
        return _modelled(id, product, product.moisture_cure, film.value, air, humidity)
    return NotKnown(name, "no interval is stated with its humidity and film", ("overcoat.humidity", "overcoat.film"))


class _Measured(NamedTuple):
    """A minimum interval with all it was stated for."""

    time: Quantity
    film: Quantity
    air: Quantity
    humidity: Quantity


def _carried(id: str, stated: _Measured, film: Quantity, air: Quantity, humidity: Quantity) -> Working:
    there = vapour_pressure(f"{id}.vapour_stated", Air(stated.air, stated.humidity))
    here = vapour_pressure(f"{id}.vapour", Air(air, humidity))
    return carried_over(f"{id}.water", stated.time, stated.film, there, film, here)


def _modelled(
    id: str, product: Product, cure: MoistureCure, film: Quantity, air: Quantity, humidity: Quantity
) -> Working | NotKnown:
    held = {name: getattr(cure, name) for name in ("dry_density", "resin_share", "equivalent_weight")}
    missing = tuple(f"moisture_cure.{name}" for name, stated in held.items() if stated is None)
    if missing:
        return NotKnown("time for the water", "the manufacturer's figures are not all stated", missing)

    def work_out() -> Working:
        density, resin, weight = (
            Given(stated, f"products.{product.id}.moisture_cure.{name}", "maker") for name, stated in held.items()
        )
        ratio = cure.hardener_ratio if cure.hardener_ratio is not None else 1
        one = cure.one_for_one is True
        demand = water_demand(f"{id}.demand", film, density, resin, ratio, weight, one_for_one=one)
        vapour = vapour_pressure(f"{id}.vapour", Air(air, humidity))
        polyurethane = table("binder_families").row("id", product.binder)["isocyanate"] == "yes"
        share = cure.taken_in_flight
        water = through_the_film(f"{id}.film", demand, film, vapour, polyurethane=polyurethane, in_flight=share)
        return waiting_time(f"{id}.water", water)

    return worked_out("time for the water", work_out)
