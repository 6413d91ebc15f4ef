"""SUB012 No zinc-rich paint on stainless steel

Checks
    The systems on stainless steel: no coat is zinc-rich, organic or silicate.
Why
    Zinc that melts on stainless steel, at a weld or in a fire, runs into the grain boundaries, and the steel cracks. Below that it protects nothing: stainless steel does not rust as carbon steel does.
Passes
    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 3 mm}

    Given a zinc-rich primer on blasted steel
Fails
    products.barrier.binder: zinc_organic
    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 3 mm}    # at systems.chassis.layers.barrier.product
To put right
    Choose an epoxy or a heat-resistant silicone without zinc, and mask stainless steel where its neighbours are primed with zinc.
"""

from specgen.facts.pairs.families import ZINC_RICH
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import MEMORY, WARNING, Problem, Problems, Spec, System, date, rule


@rule("SUB012", on=System, severity=WARNING, source=MEMORY)
def zinc_off_stainless(system: System, spec: Spec, on: date) -> Problems:
    if not any(part.material == "stainless" for part in painted_with(system, spec)):
        return
    for layer in system.layers:
        product = spec.product_of(layer)
        if product.binder in ZINC_RICH:
            what = f"{product.id} is zinc-rich and is applied on stainless steel"
            yield Problem(("layers", layer.id, "product"), what)
