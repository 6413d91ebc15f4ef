"""SUB003 Zinc-rich paint is applied directly to steel

Checks
    Each zinc-rich coat: first on bare metal, or on another zinc-rich coat. Over any other coat, new or existing, it is refused; on a repaired spot it is noted that it stays on the bare metal, unless the existing coating around it is masked.
Why
    Zinc dust protects only where it touches the steel. Over paint it is an expensive grey primer.
Passes
    Given a zinc-rich primer on blasted steel

    Given a zinc-rich primer on blasted steel
    jobs.refit.items.DOOR.old_coats: [{id: zinc, family: zinc_organic, thickness: 40 um, sound: yes}]
    jobs.refit.items.DOOR.preparation: scuff
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Wipe., acceptance: A white cloth stays white.}, {id: scuff, do: sand, text: Scuff., abrasive: P180}], coat_within: 4 h}
Fails
    products.barrier.binder: zinc_organic
    systems.chassis.layers: [{id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4, overcoat_interval: 30 min..24 h}, {id: zinc, role: primer, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1}]    # at systems.chassis.layers.zinc.product

    products.barrier.binder: zinc_organic    # at systems.chassis.layers.barrier.product
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    preparations.sand-steel.steps.sand.abrasive: P180

    Given a zinc-rich primer on blasted steel
    jobs.refit.items.DOOR.old_coats: [{id: grey, family: epoxy_2k, thickness: 40 um, sound: yes}]    # note at systems.cab.layers.primer.product
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    preparations.sand-steel.steps.feather: {id: feather, do: feather-edge, text: Feather the edges., abrasive: "P150, then P180"}

    Given a zinc-rich primer on blasted steel
    products.clear.binder: zinc_organic    # at systems.cab.layers.clear.product    # also HAZ023 at products.clear.hazards.supplemental

    Given a zinc-rich primer on blasted steel
    jobs.refit.items.STEP.system: cab
    jobs.refit.items.STEP.old_coats: [{id: zinc, family: zinc_organic, thickness: 20 um}, {id: grey, family: epoxy_2k, thickness: 40 um, sound: yes}]    # at systems.cab.layers.primer.product
    jobs.refit.items.STEP.preparation: scuff
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Wipe., acceptance: A white cloth stays white.}, {id: scuff, do: sand, text: Scuff., abrasive: P180}], coat_within: 4 h}
To put right
    Apply the zinc-rich coat first, on blast-cleaned steel, or leave it out.
"""

from specgen.facts.pairs.families import NOT_NAMED, ZINC_RICH, paint_name
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import ERROR, NOTE, Problem, Problems, Spec, System, date, rule, table

_MECHANISMS = table("mechanisms")
_CONTACT = _MECHANISMS.row_citation(_MECHANISMS.row("id", "no_metal_contact"))


@rule("SUB003", on=System, severity=ERROR, source=_CONTACT)
def zinc_rich_on_steel(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if spec.product_of(above).binder in ZINC_RICH and spec.product_of(below).binder not in {*ZINC_RICH, NOT_NAMED}:
            under = paint_name(spec.product_of(below).binder)
            what = (
                f"the zinc-rich coat {above.id} is applied over {under} ({below.id}) and has no contact with the steel"
            )
            yield Problem(("layers", above.id, "product"), what)
    first = system.layers[0]
    if spec.product_of(first).binder not in ZINC_RICH:
        return
    for part in painted_with(system, spec):
        old = part.old_paint[-1] if part.old_paint else None
        if old is None or old.family in ZINC_RICH or (part.is_bare and part.masks):
            continue
        path = ("layers", first.id, "product")
        if part.is_bare:
            what = f"the zinc-rich coat {first.id} is for the bare spot, but no step masks the existing coat {old.id} around it"
            yield Problem(
                path, what, "keep it to the bare metal: mask the existing coating, or coat the spot alone", NOTE
            )
        else:
            what = f"the zinc-rich coat {first.id} is applied over the existing coat {old.id} and has no contact with the steel"
            yield Problem(path, what)
