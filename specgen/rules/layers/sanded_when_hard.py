"""LAY014 A coat is sanded no sooner than its product allows

Checks
    Each coat that is abraded before the next one, and each action for a missed overcoating interval that abrades it, against the time after which its product allows sanding at the coldest air of the job: the next coat, and with it the sanding, may not begin sooner, and a remedy that abrades is of no use while the film may not yet be sanded.
Why
    A film that is still soft clogs the paper and tears: the scratches close up under the next coat and show again weeks later, and the dust of an uncured film does harm.
Passes
    products.primer.sandable_after: [{id: dry, sanding: dry, time: 3 h, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.primer.overcoat_interval: 3 h..24 h

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 12 h, air: 15 degC}, {id: wet, sanding: wet, time: 4 h, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P800 wet
    systems.cab.layers.primer.overcoat_interval: 4 h..24 h

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 24 h, air: 15 degC}]
Fails
    products.primer.sandable_after: [{id: dry, sanding: dry, time: 3 h, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.primer.overcoat_interval: 2.9 h..24 h    # at systems.cab.layers.primer.overcoat_interval

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 36 h, air: 15 degC}]    # warning at systems.cab.layers.primer.overcoat_interval

    Given second good
    products.mastic.sandable_after: [{id: warm, sanding: dry, time: 6 h, air: 77 degF}, {id: cool, sanding: dry, time: 16 h, air: 50 degF}]    # at systems.deck.layers.second.overcoat_interval
To put right
    Begin the interval no sooner than the product may be sanded; or leave the sanding out, or state the time for wet sanding where it is shorter.
"""

from collections.abc import Iterator

from specgen.facts.layer.intervals import airs_of, interval
from specgen.facts.pairs.answers import dulled, says_sanding
from specgen.facts.product.drying import sandable_at
from specgen.model.product import Sanding
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    WARNING,
    Layer,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    System,
    date,
    rule,
)
from specgen.units.quantity import lower


@rule("LAY014", on=System, severity=ERROR, source=LOGIC)
def sanded_when_hard(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        product, path = spec.product_of(below), ("layers", below.id, "overcoat_interval")
        planned = below.overcoat_interval
        if planned is None or not product.sandable_after:
            continue
        for air in airs_of(system, spec):
            first = _sandable(below, product, air)
            if first is None:
                continue
            cold = f" in air of {air}" if air is not None else ""
            said = f"{product.id} may be sanded from {first} on{cold}"
            held = interval(below, above, spec, air)
            if dulled(below) and planned.low is not None and planned.low < first:
                yield Problem(path, f"{below.id} is abraded before {above.id} from {planned.low} on, but {said}")
                break
            if says_sanding(held.late) and planned.high is not None and planned.high < first:
                what = f"past {planned.high} the remedy for {below.id} is to abrade it, but {said}"
                yield Problem(path, what, severity=WARNING)
                break


def _sandable(layer: Layer, product: Product, air: Quantity | None) -> Quantity | None:
    """The soonest a coat may be sanded, wet where its text says so; None where the product states nothing for that."""
    wet = any("wet" in (text or "").lower() for text in (layer.abraded_with, layer.before_next))
    return min(_times(product, air, Sanding.WET if wet else Sanding.DRY), default=None)


def _times(product: Product, air: Quantity | None, way: Sanding) -> Iterator[Quantity]:
    yield from (lower(entry.time) for entry in sandable_at(product, air) if entry.sanding is way)
