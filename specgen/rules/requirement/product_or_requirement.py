"""REQ001 A coat names its product or requires one

Checks
    Each coat of each system: it names a product, or states what is required of one, and not both; a variant is named with its product only.
Why
    Without either, the painter chooses what is applied; with both, it is open which of the two holds where they differ.
Passes
    without systems.chassis.layers.barrier.product
    without systems.chassis.layers.barrier.variant
    systems.chassis.layers.barrier.required: {generic_type: epoxy_2k}
Fails
    systems.chassis.layers.barrier.required: {generic_type: epoxy_2k}    # at systems.chassis.layers.barrier.required

    without systems.chassis.layers.barrier.variant
    without systems.chassis.layers.barrier.product    # at systems.chassis.layers.barrier.product

    without systems.chassis.layers.barrier.product    # at systems.chassis.layers.barrier.variant
    systems.chassis.layers.barrier.required: {generic_type: epoxy_2k}

    without systems.cab.layers.clear.variant
    without systems.cab.layers.clear.product    # at systems.cab.layers.clear.product
To put right
    Name the product once it is chosen and take the requirement out; until then state the requirement alone.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("REQ001", on=System, severity=ERROR, source=LOGIC)
def product_or_requirement(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        at = ("layers", layer.id)
        if layer.product is None and layer.required is None:
            yield Problem((*at, "product"), f"the coat {layer.id} neither names a product nor states what is required")
        elif layer.product is not None and layer.required is not None:
            what = f"the coat {layer.id} names the product {layer.product} and states what is required of one"
            yield Problem((*at, "required"), what)
        elif layer.product is None and layer.variant is not None:
            what = f"the coat {layer.id} names the variant {layer.variant} of no product"
            yield Problem((*at, "variant"), what, "state colour and gloss among what is required")
