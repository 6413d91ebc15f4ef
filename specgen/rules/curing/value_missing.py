"""CUR004 Application values required by the curing type are stated

Checks
    The values a painter needs at the part: shaking, can temperature, distance, overlap, flash-off time and valve for a can; putting away and restarting for a can with blocked hardener, and the humidity in which it cures; activation for a capsule can; mixing ratio by volume or by mass, stirring, nozzle and start of the pot life for a liquid; no nozzle where every stated method of the product, or every coat of it, is without a spray gun.
Why
    What the data sheet does not state, each painter does differently.
Passes
    products.primer.application.shake: 3 min

    Given second good
    without products.gloss.application.nozzle
    products.gloss.application.methods: [brush, roller]

    Given second good
    without products.gloss.application.nozzle
    products.gloss.application.methods: [brush, airless]
    systems.deck.layers.gloss.method: brush

    Given second good
    without products.gloss.application.mixing.ratio_by_volume
    products.gloss.application.mixing.ratio_by_mass: "100:12"
Fails
    without products.primer.application.shake    # at products.primer.application.shake

    without products.primer.climate.humidity    # at products.primer.climate.humidity

    without products.barrier.application.mixing.stir    # at products.barrier.application.mixing.stir

    Given second good
    without products.touch-up.application.distance    # at products.touch-up.application.distance

    without products.clear.application.restart    # at products.clear.application.restart

    Given second good
    without products.gloss.application.nozzle    # at products.gloss.application.nozzle
    without products.gloss.application.mixing.ratio_by_volume    # at products.gloss.application.mixing.ratio_by_volume

    Given second good
    without products.gloss.application.nozzle    # at products.gloss.application.nozzle
    products.gloss.application.methods: [brush, airless]
To put right
    Write the value from the product's own tests.
"""

from specgen.facts.placing import coats_of
from specgen.facts.product.curing import NOZZLE, needs, states
from specgen.model.application import BY_HAND
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("CUR004", on=Product, severity=WARNING, source=LOGIC)
def value_missing(product: Product, spec: Spec, on: date) -> Problems:
    coats = coats_of(product, spec)
    by_hand = bool(coats) and all(layer.method in BY_HAND for layer in coats)
    for path in needs(product):
        if path == NOZZLE and by_hand:
            continue
        if not states(product, path):
            what = f"{'.'.join(path)} is required for the curing type {product.curing} but is not stated"
            yield Problem(path, what)
