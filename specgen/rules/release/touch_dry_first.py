"""REL006 A coat is touch-dry before the next is applied

Checks
    The minimum overcoating interval of each coat, against the time to touch-dry that its product states for the lowest air temperature of the jobs; a time stated for warmer air alone is too short at best. Coats applied wet on wet are left out: a basecoat, sealer, wash primer or adhesion promoter beneath, a tie coat or mist coat above, the same product again, a product that the one beneath names in its intervals, and where before_next or use says wet on wet.
Why
    A coat that is not touch-dry still has much of its solvent in it: this is trapped beneath the next one, and the film wrinkles, blisters or stays soft.
Passes
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 30 min, air: 15 degC}

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 20..30 min, air: 20 degC}

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 40 min, air: 15 degC}
    systems.cab.layers.primer.before_next: Apply the basecoat wet on wet.

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 40 min, air: 15 degC}
    products.primer.overcoat.base: {id: base, next_coat: base, interval: 30 min..24 h, air: 15 degC}

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 40 min, air: 15 degC}
    systems.cab.layers.base.mist_coat: yes

    products.base.drying: [{id: touch, stage: touch-dry, time: 30 min, air: 15 degC}]

    Given second good
    products.mastic.drying: [{id: touch, stage: touch-dry, time: 8 h, air: 50 degF}]
Fails
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 31 min, air: 15 degC}    # at systems.cab.layers.primer.overcoat_interval

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 20..31 min, air: 20 degC}    # at systems.cab.layers.primer.overcoat_interval

    Given second good
    products.mastic.drying: [{id: touch, stage: touch-dry, time: 8.1 h, air: 50 degF}]    # at systems.deck.layers.second.overcoat_interval
To put right
    Begin the interval when the coat is touch-dry at the lowest air temperature of the job; where the coats are applied wet on wet, say so in before_next.
"""

import re

from specgen.facts.layer.intervals import coldest_air
from specgen.facts.product.drying import Unstated, earliest, longest
from specgen.model.drying import DryingStage
from specgen.rules.kit import PRACTICE, WARNING, Layer, Problem, Problems, Role, Spec, System, date, rule, show

_WET_ON_WET = re.compile(r"\bwet[ -](on|in|into)[ -]wet\b", re.IGNORECASE)
# The next coat goes over these as soon as they have flashed off.
_FLASHES_OFF = {Role.BASECOAT, Role.SEALER, Role.WASH_PRIMER, Role.ADHESION_PROMOTER}


@rule("REL006", on=System, severity=WARNING, source=PRACTICE)
def touch_dry_first(system: System, spec: Spec, on: date) -> Problems:
    air = coldest_air(system, spec)
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        product = spec.product_of(below)
        planned = below.overcoat_interval.low if below.overcoat_interval is not None else None
        found = earliest(product, DryingStage.TOUCH_DRY, air)
        if planned is None or found is None or planned >= longest(found) or _wet_on_wet(system, below, above, spec):
            continue
        at = f"at {found.stated_at} already, and the air may be {air}" if isinstance(found, Unstated) else f"at {air}"
        what = f"{above.id} is applied {show(planned)} after {below.id} at the earliest, but {product.id} is touch-dry only after {show(longest(found))} {at}"
        yield Problem(("layers", below.id, "overcoat_interval"), what)


def _wet_on_wet(system: System, below: Layer, above: Layer, spec: Spec) -> bool:
    named = any(window.next_coat == above.product for window in spec.product_of(below).overcoat)
    said = f"{below.before_next or ''} {system.use or ''}"
    return (
        below.role in _FLASHES_OFF
        or above.tie_coat is True
        or above.mist_coat is True
        or above.product == below.product
        or named
        or _WET_ON_WET.search(said) is not None
    )
