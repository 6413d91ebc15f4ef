"""VOC005 A thinned product stays within its VOC limit

Checks
    Each coat with thinner: the VOC content of product and thinner together, against the limit of every category the product names. Where the VOC content of the thinner is not stated, this is noted. A stated content that counts the thinner already is counted higher here than it is, so this is a warning.
Why
    The limit holds for the product as it is applied, and a tenth of thinner takes a coating that just meets it past it.
Passes
    systems.chassis.layers.barrier.thinner: 5 %
    products.barrier.application.mixing.thinner_voc: 860 g/L

    systems.chassis.layers.barrier.thinner: 0 %
Fails
    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.voc.content: 530 g/L
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}
    products.barrier.application.mixing.thinner_voc: 860 g/L    # warning at systems.chassis.layers.barrier.thinner

    systems.chassis.layers.barrier.thinner: 5 %    # note at systems.chassis.layers.barrier.thinner
To put right
    Add less thinner, take one with less VOC, or choose a product for this viscosity; state the VOC content of the thinner under mixing.
"""

from specgen.facts.product.thinned import thinned_voc
from specgen.facts.product.voc_limits import limit_of
from specgen.model.product import PackForm
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Problem, Problems, Quantity, Spec, System, date, rule
from specgen.trade.known import NotKnown
from specgen.trade.voc_limit import VocLimit


@rule("VOC005", on=System, severity=WARNING, source=PRACTICE)
def thinned_within_limit(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        product = spec.product_of(layer)
        if layer.thinner is None or layer.thinner.base == 0 or product.pack.form is PackForm.AEROSOL:
            continue
        laws = set(spec.project.jurisdictions) & {"EU", "GB"}
        entries = [e for e in product.voc.categories if e.jurisdiction in laws] if product.voc is not None else []
        if not entries:
            continue
        at = ("layers", layer.id, "thinner")
        mixed = thinned_voc(product, layer.thinner, f"systems.{system.id}.layers.{layer.id}.thinner")
        if isinstance(mixed, NotKnown):
            what = f"the VOC content of {product.id} with {layer.thinner} thinner cannot be assessed; {mixed.why}"
            yield Problem(at, what, severity=NOTE)
            continue
        for entry in entries:
            held = limit_of(product, entry, on)
            limit = held.limit if isinstance(held, VocLimit) else None
            if isinstance(held, VocLimit) and isinstance(limit, Quantity) and mixed.quantity > limit:
                what = (
                    f"{product.id} with {layer.thinner} thinner has a VOC content of {mixed.printed()}, "
                    f"above the limit of category {entry.category}, {limit}"
                )
                yield Problem(at, what, source=held.source)
