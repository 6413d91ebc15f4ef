"""SUB007 A flexible part has flexible coats

Checks
    Parts declared flexible: brittle body filler on them gives a warning; whether their other coats are flexible is not stated in the sources, so they cannot be assessed.
Why
    A rigid coat on a flexible part cracks at the first knock, and the cracks run to the edge.
Passes
    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 1.5 mm, flexible: no}
Fails
    jobs.refit.items.STEP.substrate: {material: grp, thickness: 3 mm, flexible: yes}    # note at systems.chassis.layers

    Given a body filler under a primer
    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 1.5 mm, flexible: yes}    # at systems.chassis.layers.fill.product

    Given second good
    jobs.lids.items.FRAME.substrate.flexible: yes    # note at systems.deck.layers
To put right
    Use products that their manufacturers state for flexible parts, and treat a doubtful part as flexible.
"""

from specgen.facts.pairs.families import BODY_FILLER
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import NOTE, WARNING, Problem, Problems, Spec, System, cell_citation, date, rule

_SOURCE = cell_citation("substrates", "plastic", "key")


@rule("SUB007", on=System, severity=WARNING, source=_SOURCE)
def flexible_part(system: System, spec: Spec, on: date) -> Problems:
    for part in painted_with(system, spec):
        if not part.substrate.flexible:
            continue
        brittle = [layer for layer in system.layers if spec.product_of(layer).binder == BODY_FILLER]
        for layer in brittle:
            yield Problem(("layers", layer.id, "product"), f"body filler on flexible {part.name}")
        if not brittle:
            what = f"cannot be assessed: whether the coats of {system.id} are flexible enough for {part.name} is not stated"
            yield Problem(("layers",), what, severity=NOTE)
