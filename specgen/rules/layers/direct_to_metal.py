"""LAY005 The first coat on bare metal is approved direct to metal

Checks
    The first coat of each system: its product states direct_to_metal, where a job applies the system to metal without an existing coating, strips it, or repairs a spot in it down to the metal. Where a repair states no grade its steps reach, so that it may stay in the existing coating, this is a warning.
Why
    A product that is not made for bare metal peels off it or does not protect it from rust.
Passes
    systems.chassis.layers.barrier.role: topcoat

    products.primer.direct_to_metal: no
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]

    products.primer.direct_to_metal: no
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: yes}]
    preparations.sand-steel.steps.sand: {id: sand, do: sand, text: Sand the finish matt., abrasive: P180}
    preparations.sand-steel.steps.feather: {id: feather, do: feather-edge, text: Feather stone chips., abrasive: "P150, then P180"}
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]

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
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}

    products.primer.direct_to_metal: no    # warning at systems.cab.layers.primer.product
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    jobs.refit.items.DOOR.preparation: blend
    preparations.blend: {id: blend, title: Blend, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: sand, do: sand, text: Sand the scratch out., abrasive: P400}], coat_within: 4 h}    # also PRE008 at preparations.blend.steps

    products.primer.direct_to_metal: no    # at systems.cab.layers.primer.product
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    preparations.sand-steel.steps.sand: {id: sand, do: strip, text: Strip.}    # also PRE008 at preparations.sand-steel.steps    # also PRE008 at preparations.sand-steel.steps
To put right
    Start with a primer for that metal, or state the sound existing coating that the system is applied to; for a repair that stays in the existing coating, leave the bare metal out and say so.
"""

from collections.abc import Iterator

from specgen.facts.job.stack import old_paint_goes
from specgen.facts.pairs.parts import reaches_the_part
from specgen.facts.placing import items_painted_with
from specgen.rules.kit import ERROR, LOGIC, WARNING, Problem, Problems, Spec, System, date, rule, table


@rule("LAY005", on=System, severity=ERROR, source=LOGIC)
def direct_to_metal(system: System, spec: Spec, on: date) -> Problems:
    first = system.layers[0] if system.layers else None
    if first is None or spec.product_of(first).direct_to_metal:
        return
    certain = {sure: bare for bare, sure in reversed(list(_bare_metal_items(system, spec)))}
    if certain:
        said = f"the product {first.product} is not stated as direct to metal, but is the first coat on"
        sure = True in certain
        yield Problem(("layers", first.id, "product"), f"{said} {certain[sure]}", severity=None if sure else WARNING)


def _bare_metal_items(system: System, spec: Spec) -> Iterator[tuple[str, bool]]:
    """Each metal part that the first coat meets, and whether that is certain: a spot without a grade may stay in old paint."""
    for job, item in items_painted_with(system, spec):
        substrate, preparation = spec.substrate_of(job, item), spec.preparation_of(job, item)
        stays = bool(item.old_coats) and not old_paint_goes(job, item, spec)
        if substrate is None or (stays and not reaches_the_part(item, preparation)):
            continue
        material = table("materials").row("id", substrate.material)
        if material["kind"] != "metal":
            continue
        spot = "a repaired spot of " if stays else ""
        graded = preparation is not None and any(step.grade for step in preparation.steps)
        yield f"{spot}{material['name']} of the item {item.id} in the job {job.id}", graded or not stays
