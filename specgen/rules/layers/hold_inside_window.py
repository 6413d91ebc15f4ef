"""LAY006 The wait between two coats is inside the overcoat window

Checks
    The hold of each layer that is covered, against the overcoat window its product states for the product above. A window holds for its air temperature: the hold must not end the wait sooner than the window at the nearest temperature at or below the coldest air of any job with the system, nor later.
Why
    Too soon, solvent is trapped and the coat below lifts; too late, the next coat finds nothing to grip.
Passes
    systems.cab.layers.primer.hold: 45 min..12 h
Fails
    systems.cab.layers.primer.hold: 15 min..24 h    # at systems.cab.layers.primer.hold

    systems.cab.layers.primer.hold: 30 min..48 h    # at systems.cab.layers.primer.hold

    systems.cab.layers.primer.hold: min 30 min    # at systems.cab.layers.primer.hold
To put right
    Stay inside the window of the data sheet; where the work cannot, abrade before the next coat and say so.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import OvercoatWindow
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import LOGIC


@rule("LAY006", on=System, severity=Severity.ERROR, concern=Concern.COMPATIBILITY, source=LOGIC)
def hold_inside_window(system: System, spec: Spec) -> Iterator[Problem]:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.hold is None:
            continue
        window = _window(below, above, spec)
        if window is None:
            what = f"the product {below.product} states no overcoat window for {above.product}, so the hold cannot be judged"
            yield Problem(("layers", below.id, "hold"), what, severity=Severity.NOTE)
        elif not window.window.holds_all_of(below.hold):
            what = f"hold {below.hold} is not inside the window {window.window} of {below.product} at {window.air}"
            yield Problem(("layers", below.id, "hold"), what)


def _window(below: Layer, above: Layer, spec: Spec) -> OvercoatWindow | None:
    """The window for the product above: its own entry first, then `itself`, then `any`."""
    windows = spec.product_of(below).overcoat
    names = [above.product, *(["itself"] if above.product == below.product else []), "any"]
    return next((w for name in names for w in windows if w.by == name), None)
