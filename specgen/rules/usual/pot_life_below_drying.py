"""USU018 The pot life is shorter than the times the film takes

Checks
    The pot life of a liquid two-pack at each temperature it is stated for: longer than the induction time, and not longer than the time to fully cured at that temperature. Of a product that is nearly free of solvent it is not longer than the time to dry-to-handle or through-dry either, for in the pot it warms up and sets faster than in the film.
Why
    Hours for minutes is the usual slip. Paint that is sprayed past its pot life does not wet the steel, and a full pot of solvent-free epoxy smokes and may burn.
Passes
    products.barrier.application.mixing.induction: 20 min

    products.barrier.solids: {in_can: 94 %, sprayed: 94 %}
    products.barrier.voc.content: 120 g/L
    products.barrier.pot_life: {time: 15 h, air: 20 degC, volume: 1 L}

    products.barrier.solids: {in_can: 95 %, sprayed: 95 %}
    products.barrier.voc.content: 110 g/L
    products.barrier.pot_life: {time: 14 h, air: 20 degC, volume: 1 L}
Fails
    products.barrier.application.mixing.induction: 30 min    # at products.barrier.application.mixing.induction
    products.barrier.pot_life: {time: 30 min, air: 20 degC, volume: 1 L}

    products.barrier.solids: {in_can: 95 %, sprayed: 95 %}
    products.barrier.voc.content: 110 g/L
    products.barrier.pot_life: {time: 14.1 h, air: 20 degC, volume: 1 L}    # warning at products.barrier.pot_life.time

    Given second good
    products.gloss.drying: [{id: cured, stage: fully-cured, time: 5 h, air: 68 degF}]    # also REL003 note at systems.deck.handle_after    # also REL004 note at systems.deck.service_after
    products.gloss.pot_life: {time: 6 h, air: 68 degF, volume: 1 L}    # warning at products.gloss.pot_life.time
To put right
    Check number and unit of both times against the product's own tests.
"""

from specgen.facts.product.drying import earliest, longest, spoken, stage_of
from specgen.facts.usual import proportion
from specgen.model.drying import DryingStage, PotLife, PotLifeAt
from specgen.model.product import CuringKind
from specgen.rules.kit import ERROR, LOGIC, PRACTICE, WARNING, Path, Problem, Problems, Product, Spec, date, rule
from specgen.units.quantity import lower, upper

_SETS = (DryingStage.HANDLING, DryingStage.THROUGH)


@rule("USU018", on=Product, severity=ERROR, source=LOGIC)
def pot_life_below_drying(product: Product, spec: Spec, on: date) -> Problems:
    life = product.pot_life
    if life is None or product.curing is not CuringKind.LIQUID_TWO_PACK:
        return
    mixing = product.application.mixing if product.application is not None else None
    if mixing is not None and mixing.induction is not None and mixing.induction >= upper(life.time):
        what = f"induction time {mixing.induction}; the pot life is over after {life.time}"
        yield Problem(("application", "mixing", "induction"), what)
    yield from _against_film(product, life, ("pot_life",))
    for entry in life.other_temperatures:
        yield from _against_film(product, entry, ("pot_life", "other_temperatures", entry.id))


def _against_film(product: Product, life: PotLife | PotLifeAt, path: Path) -> Problems:
    stages = (*(_SETS if _solvent_free(product) else ()), DryingStage.FULLY_CURED)
    for stage in stages:
        found = earliest(product, stage, lower(life.air))
        if found is not None and lower(life.time) > longest(found):
            what = f"pot life {life.time} at {life.air}; the film is {spoken(stage_of(found))} after {longest(found)}"
            yield Problem((*path, "time"), what, severity=WARNING, source=PRACTICE)
            return


def _solvent_free(product: Product) -> bool:
    solids = product.solids.in_can if product.solids is not None else None
    return solids is not None and lower(solids).to("%") >= proportion("solvent_free")
