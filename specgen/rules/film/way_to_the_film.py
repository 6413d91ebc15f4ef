"""FLM020 Each coat states how its DFT is reached

Checks
    Each coat states its number of cross coats, its number of coats or its target WFT.
Why
    A painter cannot see a DFT; it is reached by counting cross coats and by the comb gauge.
Passes
    without systems.cab.layers.base.passes
    systems.cab.layers.base.wet_target: 80 um
Fails
    without systems.cab.layers.base.passes    # at systems.cab.layers.base.passes

    without systems.cab.layers.primer.passes    # at systems.cab.layers.primer.passes

    Given second good
    without systems.deck.layers.gloss.coats    # at systems.deck.layers.gloss.passes
To put right
    Write passes: with the number of cross coats, or wet_target: with the target WFT.
"""

from specgen.rules.kit import LOGIC, NOTE, Problem, Problems, Spec, System, date, rule


@rule("FLM020", on=System, severity=NOTE, source=LOGIC)
def way_to_the_film(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if layer.passes is None and layer.coats is None and layer.wet_target is None:
            what = f"the coat {layer.id} states neither a number of cross coats or coats nor a target WFT"
            yield Problem(("layers", layer.id, "passes"), what)
