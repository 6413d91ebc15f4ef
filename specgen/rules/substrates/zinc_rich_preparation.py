"""SUB004 Steel beneath zinc-rich paint is blast-cleaned

Checks
    The cleanest grade a preparation states beneath a zinc-rich first coat, against the published minimums and the common practice of Sa 2 1/2, which only gives a warning.
Why
    On rust or scale the zinc has no contact with the steel, and rust creeps beneath it from every scratch.
Passes
    products.barrier.binder: zinc_organic
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 3 mm

    Given a zinc-rich primer on blasted steel
    preparations.sand-steel.steps.sand.grade: Sa 3
Fails
    products.barrier.binder: zinc_organic
    jobs.refit.items.STEP.preparation: hand
    preparations.hand: {id: hand, title: Hand tools, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: scrape, do: hand-tool, text: Scrape and brush., grade: St 2}], coat_within: 4 h}    # at preparations.hand.steps.scrape.grade

    products.barrier.binder: zinc_organic
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}    # warning at preparations.sand-steel.steps.sand.grade
    jobs.refit.substrate.thickness: 3 mm

    Given a zinc-rich primer on blasted steel
    preparations.sand-steel.steps.sand.grade: SP 7    # at preparations.sand-steel.steps.sand.grade    # also PRE008 at preparations.sand-steel.steps.sand.grade

    products.barrier.binder: zinc_organic
    jobs.refit.items.STEP.substrate: {material: old_paint, condition: "Sound finish with rusted spots."}
    jobs.refit.items.STEP.old_coats: [{id: old, family: epoxy_2k, thickness: 80 um, condition: Sound, rub: resistant, cured: "yes", sound: "yes"}]
    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 100 mm, lap: 50 mm}
    jobs.refit.items.STEP.preparation: hand
    preparations.hand: {id: hand, title: Hand tools, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: scrape, do: hand-tool, text: Scrape and brush., grade: St 2}, {id: feather, do: feather-edge, text: Feather., abrasive: "P80, then P120, then P180"}], coat_within: 4 h}    # warning at preparations.hand.steps.scrape.grade    # also SUB003 note at systems.chassis.layers.barrier.product

    Given a zinc-rich primer on blasted steel
    without preparations.sand-steel.steps.sand.grade    # note at preparations.sand-steel.steps    # also PRE008 at preparations.sand-steel.steps
To put right
    Blast-clean to Sa 2 1/2, or choose an epoxy primer for what tools can achieve.
"""

from specgen.facts.pairs.families import ZINC_RICH
from specgen.facts.pairs.floor import missed_floor
from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import ERROR, NOTE, WARNING, Concern, Preparation, Problem, Problems, Spec, cite, date, rule
from specgen.trade.known import NotKnown

# What to do where the grade cannot be judged.
_STATE = "write the grade of the working step, as in Sa 2 1/2"
_COMPARABLE = "name a grade of the series SSPC or ISO 8501-1"


@rule(
    "SUB004",
    on=Preparation,
    severity=ERROR,
    concern=Concern.PREPARATION,
    source=cite("MIL-HDBK-1110", "6.3.3.1"),
)
def zinc_rich_preparation(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        product = spec.product_of(part.system.layers[0])
        if not part.lays_steel_bare or product.binder not in ZINC_RICH:
            continue
        missed = missed_floor(part, product)
        if isinstance(missed, NotKnown):
            remedy = _STATE if missed.missing else _COMPARABLE
            yield Problem(missed.at, f"cannot be assessed: {missed.why}", remedy, NOTE, absolute=True)
        elif missed is not None:
            below = f"{missed.step.grade} on {part.name} beneath the product {product.id}{missed.paint}"
            what = f"{below}: {missed.least}; the zinc then has no contact with the steel"
            weight = ERROR if missed.certain and part.kind == "metal" else WARNING
            yield Problem(missed.path, what, missed.remedy, weight, missed.source, absolute=True)
