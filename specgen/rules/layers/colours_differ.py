"""LAY009 Successive coats differ in colour

Checks
    Coats whose variants state a colour: two successive coats, neither of them a clearcoat, do not have the same number of the same colour standard.
Why
    Where a coat has the colour of the one beneath, missed areas cannot be seen.
Passes
    products.base.variants.standard.colour: {standard: house card, number: "8"}

    products.base.variants.standard.colour: {standard: other card, number: "7"}

    products.base.variants.standard.colour: {standard: house card, number: "8"}
    products.clear.variants.standard.colour: {standard: house card, number: "8"}
Fails
    products.base.variants.standard.colour: {standard: house card, number: "7"}    # at systems.cab.layers.base.variant

    Given second good
    products.gloss.variants.white: {id: white, name: white, order_number: SA-310, colour: {standard: sample card, number: "120"}}    # at systems.deck.layers.gloss.variant

    Given second good
    systems.deck.layers.second.variant: red    # at systems.deck.layers.second.variant
To put right
    Choose another colour for one of the two.
"""

from specgen.rules.kit import NOTE, Concern, Problem, Problems, Role, Spec, System, cite, date, rule


@rule("LAY009", on=System, severity=NOTE, concern=Concern.FILM, source=cite("IMO-PSPC"))
def colours_differ(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        old, new = spec.variant_of(below), spec.variant_of(above)
        if old is None or new is None or old.colour is None or new.colour is None or above.role is Role.CLEARCOAT:
            continue
        if (old.colour.standard, old.colour.number) == (new.colour.standard, new.colour.number):
            what = f"{above.id} has the same colour as {below.id}, {new.colour.number} of {new.colour.standard}"
            yield Problem(("layers", above.id, "variant"), what)
