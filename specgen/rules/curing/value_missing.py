"""CUR004 Application values that the curing kind needs are stated

Checks
    The values an applicator needs at the part: shaking, can temperature, distance, overlap, flash and valve for a can; keeping and starting again for a can with blocked hardener, and the humidity it cures in; activation for a capsule can; ratio, stirring, nozzle and start of the clock for a liquid.
Why
    What the sheet does not say, each painter does in his own way.
Passes
    products.primer.application.shake: 3 min
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
To put right
    Write the value from the product's own tests.
"""

from specgen.facts.product.curing import NEEDS_BY_FORM, NEEDS_BY_KIND, states
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("CUR004", on=Product, severity=WARNING, source=LOGIC)
def value_missing(product: Product, spec: Spec, on: date) -> Problems:
    for path in dict.fromkeys((*NEEDS_BY_KIND[product.curing], *NEEDS_BY_FORM[product.pack.form])):
        if not states(product, path):
            yield Problem(path, f"{'.'.join(path)} is not stated, but a product that is {product.curing} needs it")
