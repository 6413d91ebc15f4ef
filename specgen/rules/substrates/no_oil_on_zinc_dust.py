"""SUB002 No oil-based paint on zinc-rich primer

Checks
    Each alkyd or epoxy ester that is applied directly over a zinc-rich coat, new or existing.
Why
    Saponification: the zinc dust turns the oil in the binder to soap just as bare zinc does, and the coat peels off the primer.
Passes
    Given a zinc-rich primer on blasted steel
Fails
    Given a zinc-rich primer on blasted steel
    products.base.binder: oil_alkyd    # at systems.cab.layers.base.product

    products.barrier.binder: oil_alkyd
    jobs.refit.items.STEP.old_coats: [{id: under, family: epoxy_2k, thickness: 20 um}, {id: zinc, family: zinc_organic, thickness: 60 um, sound: yes}]    # at systems.chassis.layers.barrier.product    # also OLD013 at jobs.refit.items.STEP.old_coats.zinc

    Given a zinc-rich primer on blasted steel
    products.base.binder: zinc_inorganic
    products.clear.binder: epoxy_ester    # at systems.cab.layers.clear.product

    products.primer.binder: oil_alkyd
    jobs.refit.items.DOOR.old_coats: [{id: zinc, family: zinc_organic, thickness: 60 um, sound: yes}]    # at systems.cab.layers.primer.product    # also OLD013 at jobs.refit.items.DOOR.old_coats.zinc    # also OVR001 at systems.cab.layers.base.product
To put right
    Apply an epoxy tie coat between the two.
"""

from specgen.facts.pairs.families import ZINC_RICH
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import WARNING, Basis, Layer, Problem, Problems, Spec, System, cite, date, rule, table


@rule(
    "SUB002",
    on=System,
    severity=WARNING,
    source=cite("OIL-ON-ZINC-ARTICLE", basis=Basis.SECONDARY),
)
def no_oil_on_zinc_dust(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if spec.product_of(below).binder in ZINC_RICH and (oil := _oil(above, spec)):
            yield Problem(("layers", above.id, "product"), f"{oil} on the zinc-rich {below.id}")
    first = system.layers[0]
    for part in painted_with(system, spec):
        old = part.old_paint[-1] if part.old_paint else None
        if old is not None and old.family in ZINC_RICH and (oil := _oil(first, spec)):
            yield Problem(("layers", first.id, "product"), f"{oil} on the existing zinc-rich coat {old.id}")


def _oil(layer: Layer, spec: Spec) -> str:
    """The family in words where it cures by oxidation, else empty."""
    row = table("binder_families").row("id", spec.product_of(layer).binder)
    return row["name"] if row["cure"] == "oxidative" else ""
