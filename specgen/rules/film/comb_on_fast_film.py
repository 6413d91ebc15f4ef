"""FLM019 No comb on a film that flashes off at once

Checks
    A wet target stated for a layer whose binder gives off its solvent within seconds.
Why
    Before the comb is out of the film the film has shrunk; the reading is too low and the painter adds paint.
Passes
    systems.cab.layers.base.wet_target: 43 um

    Given second good
    systems.deck.layers.first.wet_target: 6 mil
Fails
    products.base.binder: nitrocellulose
    systems.cab.layers.base.wet_target: 43 um    # at systems.cab.layers.base.wet_target

    Given second good
    products.touch-up.binder: vinyl
    systems.touch.layers.ground.wet_target: 1.4 mil    # at systems.touch.layers.ground.wet_target    # also PRE008 at preparations.sand.steps.sand.grade

    products.primer.binder: zinc_inorganic
    systems.cab.layers.primer.wet_target: 50 um    # at systems.cab.layers.primer.wet_target    # also SUB004 at preparations.sand-steel.steps.sand.grade
To put right
    Steer such a coat by its passes and by weighed panels, and leave the wet target out.
"""

from specgen.rules.kit import WARNING, Problem, Problems, Spec, System, date, rule, table


@rule("FLM019", on=System, severity=WARNING, source=table("comb_unfit_binders").citation)
def comb_on_fast_film(system: System, spec: Spec, on: date) -> Problems:
    unfit = {row["id"] for row in table("comb_unfit_binders").rows}
    for layer in system.layers:
        if layer.wet_target is not None and spec.product_of(layer).binder in unfit:
            what = f"a comb is asked for on {layer.id}, but {layer.product} flashes off before it can be read"
            yield Problem(("layers", layer.id, "wet_target"), what)
