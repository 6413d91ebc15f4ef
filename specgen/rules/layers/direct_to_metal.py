"""LAY005 The first coat on bare metal is approved direct to metal

Checks
    The first coat of each system: its product states direct_to_metal, where a job applies the system to metal without an existing coating, or strips it.
Why
    A product that is not made for bare metal peels off it or does not protect it from rust.
Passes
    systems.chassis.layers.barrier.role: topcoat

    products.primer.direct_to_metal: no
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]

    products.primer.direct_to_metal: no
    jobs.refit.items.DOOR.substrate: {material: grp}
    jobs.refit.inspection.primer-film.gauge: {principle: ultrasonic}
Fails
    products.primer.direct_to_metal: no    # at systems.cab.layers.primer.product

    Given second good
    products.touch-up.direct_to_metal: no    # at systems.touch.layers.ground.product

    products.primer.direct_to_metal: no    # at systems.cab.layers.primer.product
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    jobs.refit.items.STEP.system: cab

    products.primer.direct_to_metal: no    # at systems.cab.layers.primer.product
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    preparations.sand-steel.steps.sand: {id: sand, do: strip, text: Strip.}    # also PRE008 at preparations.sand-steel.steps    # also PRE008 at preparations.sand-steel.steps
To put right
    Start with a primer for that metal, or state the sound existing coating that the system is applied to.
"""

from collections.abc import Iterator

from specgen.facts.job.stack import old_paint_goes
from specgen.facts.placing import items_painted_with
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule, table


@rule("LAY005", on=System, severity=ERROR, source=LOGIC)
def direct_to_metal(system: System, spec: Spec, on: date) -> Problems:
    first = system.layers[0] if system.layers else None
    if first is None or spec.product_of(first).direct_to_metal:
        return
    bare = next(_bare_metal_items(system, spec), None)
    if bare is not None:
        what = f"the product {first.product} is not stated as direct to metal, but is the first coat on {bare}"
        yield Problem(("layers", first.id, "product"), what)


def _bare_metal_items(system: System, spec: Spec) -> Iterator[str]:
    for job, item in items_painted_with(system, spec):
        substrate = spec.substrate_of(job, item)
        if substrate is None or (item.old_coats and not old_paint_goes(job, item, spec)):
            continue
        material = table("materials").row("id", substrate.material)
        if material["kind"] == "metal":
            yield f"{material['name']} of the item {item.id} in the job {job.id}"
