"""PRE008 The steel is prepared as well as its first coat needs

Checks
    The cleanest grade a preparation states, against the least one published for the binder of the first coat on bare steel; harder for a system that claims C5, softer for repaired spots. Zinc-rich paint has a rule of its own. A grade of another series without a published equal is compared over the ladder of common practice, which only warns.
Why
    A primer holds on what is left on the steel: on rust and scale that a hand tool leaves, a good primer fails like a bad one.
Passes
    preparations.sand-steel.steps.sand.grade: SP 11
Fails
    preparations.sand-steel.steps.sand.grade: St 3    # at preparations.sand-steel.steps.sand.grade    # also PRE008 at preparations.sand-steel.steps.sand.grade

    without preparations.sand-steel.steps.sand.grade    # at preparations.sand-steel.steps    # also PRE008 at preparations.sand-steel.steps
To put right
    Prepare to the grade named, or choose a primer made for the grade you can reach.
"""

from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import ERROR, Preparation, Problems, Spec, cite, date, rule
from specgen.rules.preparation.floor import below_floor

ZINC_RICH = {"zinc_organic", "zinc_inorganic"}


@rule(
    "PRE008",
    on=Preparation,
    severity=ERROR,
    source=cite("MIL-HDBK-1110", "6.3.3.1"),
)
def grade_reaches_floor(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        product = spec.product_of(part.system.layers[0])
        if part.is_bare_steel and product.binder not in ZINC_RICH:
            yield from below_floor(
                part, product.binder, f"the product {product.id}", "the primer then stands on rust and scale"
            )
