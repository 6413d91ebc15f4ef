"""When the next coat may be applied, and what is done if the maximum is exceeded: rules assess the interval that pages print.

The product below states overcoating intervals for products above, each at an air temperature. For the product above its own
entries apply, else those for `itself`, else those for `any`; of these the one nearest at or below the coldest air of the job.
Asked by rules on intervals and layers, by the method statement and by the job card.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple, Protocol, TypeVar

from specgen.facts.placing import jobs_painted_with
from specgen.model.drying import OvercoatWindow
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.trade.evenly_between import evenly_between
from specgen.units.quantity import Quantity, Range, lower


class _AtAir(Protocol):
    @property
    def air(self) -> Quantity | Range: ...


Entry = TypeVar("Entry", bound=_AtAir)


class Interval(NamedTuple):
    """The interval between two layers at one air. `window` is the product's, None where it states none for the product above.

    `late` is what is done if the maximum is exceeded: as the system states it, else the product; empty for neither.
    `late_allowed`: the coat below is abraded in any case, or the one above begins with a tie coat, so there is no maximum.
    """

    window: OvercoatWindow | None
    late: str
    late_allowed: bool

    @property
    def allowed(self) -> Range | None:
        """The interval that the product allows, without its maximum where the next coat may be late."""
        if self.window is None:
            return None
        window = self.window.interval
        return Range(window.kind, window.low, None) if self.late_allowed else window


def interval(below: Layer, above: Layer, spec: Spec, air: Quantity | None) -> Interval:
    """The interval in force between two layers where the air is `air` at its coldest; None where nothing is known of the air."""
    stated = windows_for(below, above, spec)
    window = at_or_below(stated, air) if stated else None
    late = below.if_exceeded or (window.if_exceeded if window is not None else None) or ""
    return Interval(window, late, late_allowed(below, above))


def windows_for(below: Layer, above: Layer, spec: Spec) -> tuple[OvercoatWindow, ...]:
    """The intervals for the product above, from cold to warm: its own entries, else those for `itself`, else for `any`."""
    stated = spec.product_of(below).overcoat
    for name in (above.product, *(["itself"] if above.product == below.product else []), "any"):
        found = [window for window in stated if window.next_coat == name]
        if found:
            return tuple(sorted(found, key=lambda window: window.air))
    return ()


def late_allowed(below: Layer, above: Layer) -> bool:
    """True where the next coat adheres however late: the one below is abraded in any case, or it begins with a tie coat."""
    return below.abraded_with is not None or above.tie_coat is True


def at_or_below(entries: Sequence[Entry], air: Quantity | None) -> Entry:
    """Of entries from cold to warm the nearest at or below an air temperature, else the coldest; that one too without an air."""
    cooler = [entry for entry in entries if air is not None and lower(entry.air) <= air]
    return cooler[-1] if cooler else entries[0]


def at_or_above(windows: Sequence[OvercoatWindow], air: Quantity) -> OvercoatWindow | None:
    """The interval nearest at or above an air temperature; None where all are for cooler air."""
    return next((window for window in windows if window.air >= air), None)


def least_between(windows: Sequence[OvercoatWindow], air: Quantity) -> Quantity | None:
    """The minimum at `air`, taken to fall evenly from colder to warmer air; None where it is not stated for both."""
    colder, warmer = at_or_below(windows, air), at_or_above(windows, air)
    if (
        warmer is None
        or not colder.air < air < warmer.air
        or colder.interval.low is None
        or warmer.interval.low is None
    ):
        return None
    return evenly_between((colder.air, colder.interval.low), (warmer.air, warmer.interval.low), air)


def warmest_of(job: Job) -> Quantity | None:
    """The warmest air a job allows; None where it states none."""
    return job.climate.air.high if job.climate is not None and job.climate.air is not None else None


def air_of(job: Job) -> Quantity | None:
    """The coldest air a job allows; None where it states none."""
    return job.climate.air.low if job.climate is not None and job.climate.air is not None else None


def airs_of(system: System, spec: Spec) -> tuple[Quantity | None, ...]:
    """The coldest air of each job with the system, from cold to warm, None first; None alone where there is no such job."""
    airs = dict.fromkeys(air_of(job) for job in jobs_painted_with(system, spec))
    stated = sorted(air for air in airs if air is not None)
    return (None, *stated) if None in airs or not stated else tuple(stated)


def coldest_air(system: System, spec: Spec) -> Quantity | None:
    """The coldest air of any job with the system; None where no such job states one."""
    return min((air for air in airs_of(system, spec) if air is not None), default=None)


def warmest_air(system: System, spec: Spec) -> Quantity | None:
    """The warmest air of any job with the system; None where no such job states one."""
    return max(_warmest(system, spec), default=None)


def _warmest(system: System, spec: Spec) -> Iterator[Quantity]:
    for job in jobs_painted_with(system, spec):
        if (warmest := warmest_of(job)) is not None:
            yield warmest
