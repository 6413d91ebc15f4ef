"""SUB013 What is immersed is coated with binders that stand immersion

Checks
    Each coat of a system on a part that is immersed in service, or that claims immersion, against the table immersion_unfit: generic types that water attacks, swells or passes through, and zinc-rich paint as the last coat; in fuel zinc-rich paint in any coat, and nothing else.
Why
    Oil in the binder turns to soap in water, one-pack films swell, and bare zinc is used up; fuel takes up zinc, which fouls engines: blisters, then rust, within months and inside a full tank.
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
    jobs.refit.items.STEP.environment: {kind: immersion, medium: fuel}    # at systems.chassis.layers.barrier.product
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
    media = _media(system, spec)
    unfit = [row for row in table("immersion_unfit").rows if row["medium"] in media]
    for layer in system.layers:
        product = spec.product_of(layer)
        rows = (row for row in unfit if row["family"] == product.binder)
        row = next((row for row in rows if row["where"] == "any" or layer is system.layers[-1]), None)
        if row is None:
            continue
        last = " as the last coat" if row["where"] == "last" else ""
        what = f"{product.id} ({binder_family(product.binder)['name']}) is immersed in service{last}: {row['why']}"
        source = table("immersion_unfit").row_citation(row)
        yield Problem(("layers", layer.id, "product"), what, source=source)


def _media(system: System, spec: Spec) -> set[str]:
    """Water and fuel, where parts of the system are immersed in them."""
    held = [environment_of(job, item) for job, item in items_painted_with(system, spec)]
    media = {
        "fuel" if one.medium is Medium.FUEL else "water"
        for one in held
        if one is not None and one.kind is EnvironmentKind.IMMERSION
    }
    claimed = system.category is not None and system.category.immersion is not None
    return media | ({"water"} if claimed else set())
