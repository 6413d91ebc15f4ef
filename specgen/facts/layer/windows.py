"""Which stated overcoat window holds for a layer, and the air a system is laid in. Called by the rules on windows and layers."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.facts.placing import jobs_painted_with
from specgen.model.product import OvercoatWindow
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Quantity, Range


def windows_for(below: Layer, above: Layer, spec: Spec) -> tuple[OvercoatWindow, ...]:
    """The windows for the product above, from cold to warm: its own entries, else those for `itself`, else for `any`."""
    stated = spec.product_of(below).overcoat
    for name in (above.product, *(["itself"] if above.product == below.product else []), "any"):
        found = [window for window in stated if window.by == name]
        if found:
            return tuple(sorted(found, key=lambda window: window.air))
    return ()


def at_or_below(windows: tuple[OvercoatWindow, ...], air: Quantity | None) -> OvercoatWindow:
    """The window nearest at or below an air temperature, else the coldest; the coldest too where no air is stated."""
    cooler = [window for window in windows if air is not None and window.air <= air]
    return cooler[-1] if cooler else windows[0]


def at_or_above(windows: tuple[OvercoatWindow, ...], air: Quantity) -> OvercoatWindow | None:
    """The window nearest at or above an air temperature; None where all are for cooler air."""
    return next((window for window in windows if window.air >= air), None)


def coldest_air(system: System, spec: Spec) -> Quantity | None:
    """The coldest air of any job with the system; None where no such job states one."""
    lows = [air.low for air in _airs(system, spec) if air.low is not None]
    return min(lows, default=None)


def warmest_air(system: System, spec: Spec) -> Quantity | None:
    """The warmest air of any job with the system; None where no such job states one."""
    highs = [air.high for air in _airs(system, spec) if air.high is not None]
    return max(highs, default=None)


def _airs(system: System, spec: Spec) -> Iterator[Range]:
    for job in jobs_painted_with(system, spec):
        if job.climate is not None and job.climate.air is not None:
            yield job.climate.air
