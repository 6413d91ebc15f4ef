"""FIL008 Body filler is not applied over solvent-sensitive paint

Checks
    Each coat of polyester body filler applied directly over a coat, or an existing coat, that dissolves in solvent, that dries by oxidation, or that is waterborne acrylic.
Why
    The styrene in the body filler wrinkles such paint, and the edge of the repair lifts beneath the colour coat.
Passes
    Given a body filler under a primer

    Given a body filler under a primer
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound, lead: no, chromate: no}]
Fails
    Given a body filler under a primer
    jobs.refit.items.STEP.old_coats: [{id: house, family: oil_alkyd, thickness: 60 um, condition: sound, lead: no, chromate: no}]    # at systems.chassis.layers.fill

    Given a body filler under a primer
    jobs.refit.items.STEP.old_coats: [{id: house, family: acrylic_wb, thickness: 60 um, condition: sound, lead: no, chromate: no}]    # at systems.chassis.layers.fill

    Given a body filler under a primer
    jobs.refit.items.STEP.old_coats: [{id: under, family: epoxy_2k, thickness: 30 um, lead: no, chromate: no}, {id: house, family: acrylic_1k, thickness: 40 um, lead: no, chromate: no}]    # at systems.chassis.layers.fill

    products.primer.binder: acrylic_1k
    products.base.binder: polyester_putty    # at systems.cab.layers.base    # also FIL010 at systems.cab.layers.base    # also FIL011 at systems.cab.layers.base.overcoat_interval    # also FIL012 at jobs.refit.climate.air
To put right
    Sand back to metal or to a sound two-pack coat before filling.
"""

from specgen.facts.pairs.acids import stacked
from specgen.facts.pairs.families import BODY_FILLER, ETCHING
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule, table


@rule("FIL008", on=System, severity=WARNING, source=PRACTICE)
def filler_on_soft(system: System, spec: Spec, on: date) -> Problems:
    for below, layer in stacked(system):
        path = ("layers", layer.id)
        if spec.product_of(layer).binder != BODY_FILLER:
            continue
        if below is not None and (soft := _soft(spec.product_of(below).binder)):
            yield Problem(path, f"the body filler {layer.id} is applied directly over {below.id} ({soft})")
        for part in painted_with(system, spec) if below is None else ():
            # around a mended spot the filler runs out on the coat that stays
            old = part.old_paint[-1] if part.old_paint else None
            if old is not None and old.family is not None and (soft := _soft(old.family)):
                yield Problem(
                    path, f"the body filler {layer.id} is applied directly over the existing coat {old.id} ({soft})"
                )


def _soft(family: str) -> str:
    """The family in words where styrene wrinkles it, else empty; wash and etch primers have a rule of their own."""
    row = table("binder_families").row("id", family)
    soft = row["cured_rub"] == "soluble" or row["cure"] == "oxidative" or family == "acrylic_wb"
    return row["name"] if soft and family not in ETCHING else ""
