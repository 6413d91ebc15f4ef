"""LAY009 Successive coats differ in colour

Checks
    Two successive coats, neither of them a clearcoat, do not have the same number of the same colour standard, nor, in a tank lining and on parts immersed in service, are they one variant of one product. Two coats of a basecoat or topcoat of one colour are not judged. In such linings and on such parts it is a warning.
Why
    Where a coat has the colour of the one beneath, missed areas cannot be seen.
Passes
    products.base.variants.standard.colour: {standard: house card, number: "8"}

    products.base.variants.standard.colour: {standard: other card, number: "7"}

    products.base.variants.standard.colour: {standard: house card, number: "8"}
    products.clear.variants.standard.colour: {standard: house card, number: "8"}

    Given second good
    systems.touch.layers.ground.role: topcoat
    systems.touch.layers.ground.variant: white
Fails
    products.base.variants.standard.colour: {standard: house card, number: "7"}    # note at systems.cab.layers.base.variant

    Given second good
    products.gloss.variants.white: {id: white, name: white, order_number: SA-310, colour: {standard: sample card, number: "120"}}    # note at systems.deck.layers.gloss.variant

    Given second good
    systems.deck.layers.second.variant: red    # note at systems.deck.layers.second.variant

    Given a tank under water with a holiday test
    systems.deck.layers.second.variant: red    # warning at systems.deck.layers.second.variant
To put right
    Choose another colour for one of the two.
"""

from specgen.facts.job.exposure import environment_of
from specgen.facts.placing import items_painted_with
from specgen.model.environment import EnvironmentKind
from specgen.model.product import Variant
from specgen.rules.kit import (
    NOTE,
    WARNING,
    Concern,
    Layer,
    Problem,
    Problems,
    Role,
    Spec,
    System,
    cite,
    date,
    rule,
)

_COLOUR = {Role.BASECOAT, Role.TOPCOAT}


@rule("LAY009", on=System, severity=WARNING, concern=Concern.FILM, source=cite("IMO-PSPC"))
def colours_differ(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        old, new = spec.variant_of(below), spec.variant_of(above)
        if old is None or new is None or above.role is Role.CLEARCOAT:
            continue
        wet = _under_water(system, spec)
        alike = _alike(below, old, above, new, wet=wet)
        if alike:
            what = f"{above.id} has the same colour as {below.id}, {alike}"
            yield Problem(("layers", above.id, "variant"), what, severity=None if wet else NOTE)


def _alike(below: Layer, old: Variant, above: Layer, new: Variant, *, wet: bool) -> str:
    """The colour that two coats share, in words; empty where they differ, or nothing tells."""
    if below.role in _COLOUR and above.role in _COLOUR:
        return ""
    if old.colour is not None and new.colour is not None:
        same = (old.colour.standard, old.colour.number) == (new.colour.standard, new.colour.number)
        return f"{new.colour.number} of {new.colour.standard}" if same else ""
    return f"{new.name} of {above.product}" if wet and below.product == above.product and old is new else ""


def _under_water(system: System, spec: Spec) -> bool:
    if any(layer.role is Role.TANK_LINING for layer in system.layers):
        return True
    found = (environment_of(job, item) for job, item in items_painted_with(system, spec))
    return any(held is not None and held.kind is EnvironmentKind.IMMERSION for held in found)
