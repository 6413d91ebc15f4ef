"""FLM019 No comb gauge on a fast-flashing film

Checks
    A target WFT stated for a coat whose binder loses its solvent within seconds.
Why
    The film shrinks before the comb gauge can be read: the reading is too low and the painter applies more paint.
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
    Control such a coat by its number of cross coats and by weighed panels, and leave out wet_target.
"""

from specgen.rules.kit import WARNING, Problem, Problems, Spec, System, date, rule, table


@rule("FLM019", on=System, severity=WARNING, source=table("comb_unfit_binders").citation)
def comb_on_fast_film(system: System, spec: Spec, on: date) -> Problems:
    unfit = {row["id"] for row in table("comb_unfit_binders").rows}
    for layer in system.layers:
        if layer.wet_target is not None and spec.product_of(layer).binder in unfit:
            what = f"a target WFT is stated for {layer.id}, but {spec.product_of(layer).id} flashes off before a comb gauge can be read"
            yield Problem(("layers", layer.id, "wet_target"), what)
