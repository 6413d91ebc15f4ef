"""VOC005 A thinned product stays within its VOC limit

Checks
    Each coat with thinner: the VOC content of product and thinner together, against the limit of every category the product names. Where the VOC content of the thinner is not stated, this is noted, unless even the lightest organic solvent takes the product past its limit (table thinner_voc_least); for a waterborne product, and a thinner that is called water or exempt or by the name of an exempt solvent (table voc_exempt_us), nothing is assumed. A stated content that counts the thinner already is counted higher here than it is, so this is a warning.
Why
    The limit holds for the product as it is applied, and a tenth of thinner takes a coating that just meets it past it.
Passes
    systems.chassis.layers.barrier.thinner: 5 %
    products.barrier.application.mixing.thinner_voc: 860 g/L

    systems.chassis.layers.barrier.thinner: 0 %
Fails
    systems.chassis.layers.barrier.thinner: 5 %    # note at systems.chassis.layers.barrier.thinner
    products.barrier.voc: {content: 535 g/L, categories: [{id: eu, jurisdiction: EU, category: c(i)}]}
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}

    systems.chassis.layers.barrier.thinner: 10 %    # note at systems.chassis.layers.barrier.thinner
    products.barrier.application.mixing.thinner: Acetone EX-900
    products.barrier.voc: {content: 539 g/L, categories: [{id: eu, jurisdiction: EU, category: c(i)}]}
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}

    systems.chassis.layers.barrier.thinner: 10 %    # note at systems.chassis.layers.barrier.thinner
    products.barrier.application.mixing.thinner: water
    products.barrier.voc: {content: 539 g/L, categories: [{id: eu, jurisdiction: EU, category: c(i)}]}
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}

    systems.chassis.layers.barrier.thinner: 10 %    # warning at systems.chassis.layers.barrier.thinner
    products.barrier.voc: {content: 539 g/L, categories: [{id: eu, jurisdiction: EU, category: c(i)}]}
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}

    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.voc.content: 530 g/L
    products.barrier.solids: {in_can: 47 %, sprayed: 47 %}
    products.barrier.application.mixing.thinner_voc: 860 g/L    # warning at systems.chassis.layers.barrier.thinner

    systems.chassis.layers.barrier.thinner: 5 %    # note at systems.chassis.layers.barrier.thinner
To put right
    Add less thinner, take one with less VOC, or choose a product for this viscosity; state the VOC content of the thinner under mixing.
"""

from collections.abc import Iterator

from specgen.facts.product.thinned import least_thinned_voc, thinned_voc
from specgen.facts.product.voc_limits import limit_of
from specgen.model.product import PackForm, VocCategory
from specgen.rules.kit import (
    NOTE,
    PRACTICE,
    WARNING,
    Citation,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    System,
    date,
    rule,
)
from specgen.trade.known import NotKnown
from specgen.trade.voc_limit import VocLimit
from specgen.trade.working import Working


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
            least = least_thinned_voc(product, layer.thinner, f"systems.{system.id}.layers.{layer.id}.thinner")
            above = list(_above(product, entries, layer.thinner, least, on, "at least ")) if least is not None else []
            for what, source in above:
                yield Problem(at, f"{what}: no organic thinner is lighter", source=source)
            if above:
                continue
            what = f"the VOC content of {product.id} with {layer.thinner} thinner cannot be assessed; {mixed.why}"
            yield Problem(at, what, severity=NOTE)
            continue
        for what, source in _above(product, entries, layer.thinner, mixed, on):
            yield Problem(at, what, source=source)


def _above(
    product: Product, entries: list[VocCategory], thinner: Quantity, mixed: Working, on: date, at_least: str = ""
) -> Iterator[tuple[str, Citation]]:
    """What is said of each category whose limit the mixture is above, and by whom the limit is set."""
    for entry in entries:
        held = limit_of(product, entry, on)
        limit = held.limit if isinstance(held, VocLimit) else None
        if isinstance(held, VocLimit) and isinstance(limit, Quantity) and mixed.quantity > limit:
            what = (
                f"{product.id} with {thinner} thinner has a VOC content of {at_least}{mixed.printed()}, "
                f"above the limit of category {entry.category}, {limit}"
            )
            yield what, held.source
