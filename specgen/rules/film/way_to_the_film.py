"""FLM020 Each coat says how its film is reached

Checks
    Each layer states its passes, its coats or the wet film to aim at.
Why
    A sprayer cannot see a dry film; passes and comb are how it is reached.
Passes
    without systems.cab.layers.base.passes
    systems.cab.layers.base.wet_target: 80 um
Fails
    without systems.cab.layers.base.passes    # at systems.cab.layers.base.passes

    without systems.cab.layers.primer.passes    # at systems.cab.layers.primer.passes

    Given second good
    without systems.deck.layers.gloss.coats    # at systems.deck.layers.gloss.passes
To put right
    Write passes: with the number of cross coats, or wet_target: with the wet film for the comb.
"""

from specgen.rules.kit import LOGIC, NOTE, Problem, Problems, Spec, System, date, rule


@rule("FLM020", on=System, severity=NOTE, source=LOGIC)
def way_to_the_film(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if layer.passes is None and layer.coats is None and layer.wet_target is None:
            what = f"the coat {layer.id} does not say in how many passes its film is laid"
            yield Problem(("layers", layer.id, "passes"), what)
