"""SUB013 What is immersed is coated with binders that stand immersion

Checks
    Each coat of a system on a part that is immersed in service, or that claims immersion, against the table immersion_unfit: generic types that water attacks, swells or passes through, and zinc-rich paint as the last coat. Fuel is not assessed.
Why
    Oil in the binder turns to soap in water, one-pack films swell, and bare zinc is used up: blisters, then rust, within months and inside a full tank.
Passes
    jobs.refit.items.STEP.environment: {kind: immersion, category: Im1}
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    systems.chassis.layers.barrier.stripe_coat: {when: before, where: welds}

    products.barrier.binder: epoxy_ester
    jobs.refit.items.STEP.environment: {kind: immersion, medium: fuel}
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    systems.chassis.layers.barrier.stripe_coat: {when: before, where: welds}
Fails
    products.barrier.binder: epoxy_ester
    jobs.refit.items.STEP.environment: {kind: immersion, category: Im1}    # at systems.chassis.layers.barrier.product
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    systems.chassis.layers.barrier.stripe_coat: {when: before, where: welds}

    products.barrier.binder: zinc_organic
    jobs.refit.items.STEP.environment: {kind: immersion, medium: waste-water}    # at systems.chassis.layers.barrier.product
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    systems.chassis.layers.barrier.stripe_coat: {when: before, where: welds}
To put right
    Choose an epoxy, a vinyl ester or another binder that its manufacturer names for the water it meets.
"""

from specgen.facts.job.exposure import environment_of
from specgen.facts.pairs.families import binder_family
from specgen.facts.placing import items_painted_with
from specgen.model.environment import EnvironmentKind, Medium
from specgen.rules.kit import MEMORY, WARNING, Problem, Problems, Spec, System, date, rule, table


@rule("SUB013", on=System, severity=WARNING, source=MEMORY)
def immersed_coats(system: System, spec: Spec, on: date) -> Problems:
    if not _immersed(system, spec):
        return
    unfit = {row["family"]: row for row in table("immersion_unfit").rows}
    for layer in system.layers:
        product = spec.product_of(layer)
        row = unfit.get(product.binder)
        if row is None or (row["where"] == "last" and layer is not system.layers[-1]):
            continue
        last = " as the last coat" if row["where"] == "last" else ""
        what = f"{product.id} ({binder_family(product.binder)['name']}) is immersed in service{last}: {row['why']}"
        source = table("immersion_unfit").row_citation(row)
        yield Problem(("layers", layer.id, "product"), what, source=source)


def _immersed(system: System, spec: Spec) -> bool:
    if system.category is not None and system.category.immersion is not None:
        return True
    held = (environment_of(job, item) for job, item in items_painted_with(system, spec))
    return any(e is not None and e.kind is EnvironmentKind.IMMERSION and e.medium is not Medium.FUEL for e in held)
