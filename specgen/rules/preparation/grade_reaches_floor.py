"""PRE008 The steel is prepared to the grade its first coat requires

Checks
    The cleanest grade a preparation states, against the minimum that the product of the first coat states for bare steel, or else the one published for its binder; stricter for immersion and for corrosivity C5 or CX, of the job or claimed by the system; less strict for repaired spots. Steel beneath existing coats that are not sound is laid bare and counts too; there the published minimum gives a warning, the product's own an error. Zinc-rich paint has a rule of its own. A grade of another series without a published equivalent is compared over the ladder of common practice, which only gives a warning; a grade of local work, as P St 2, is the grade it is named for against the product's own.
Why
    A primer adheres only as well as what is left on the steel: over the rust and scale that hand tools leave, a good primer fails like a poor one.
Passes
    preparations.sand-steel.steps.sand.grade: SP 11

    Given second good
    preparations.blast.steps.blast.grade: SP 6

    products.primer.least_grade: St 3
    products.barrier.least_grade: St 2
    preparations.sand-steel.steps.sand.grade: St 3

    Given second good
    systems.deck.category: {corrosivity: C5, durability: high, evidence: own report}
    preparations.blast.steps.blast.grade: SP 10
    preparations.abrade.edge_radius: 2 mm
    preparations.abrade.steps.sand: {id: sand, do: blast, text: Blast., grade: SP 10, medium: garnet, profile: 1..1.5 mil, profile_method: ISO 8503-5}

    Given second good
    jobs.rails.environment: {kind: immersion, category: Im1}
    preparations.abrade.salt_limit: 20 mg/m2
    preparations.abrade.steps.salt: {id: salt, do: test, text: Measure soluble salts.}
    preparations.abrade.edge_radius: 2 mm
    preparations.abrade.steps.sand: {id: sand, do: blast, text: Blast., grade: SP 10, medium: garnet, profile: 1..1.5 mil, profile_method: ISO 8503-5}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}

    products.primer.least_grade: St 3
    preparations.sand-steel.steps.sand.grade: St 3
    products.barrier.least_grade: St 3
    jobs.refit.items.STEP.old_coats: [{id: old, family: epoxy_2k, thickness: 80 um, sound: yes, rub: resistant}]

    products.primer.least_grade: St 3
    products.barrier.least_grade: St 3
    preparations.sand-steel.steps.sand.grade: P St 3
Fails
    products.primer.least_grade: St 3
    products.barrier.least_grade: St 2
    preparations.sand-steel.steps.sand.grade: P St 2    # at preparations.sand-steel.steps.sand.grade

    products.barrier.least_grade: Sa 2 1/2    # at preparations.sand-steel.steps.sand.grade    # also OLD008 at jobs.refit.items.STEP.old_coats.old.sound    # also PRE008 at preparations.sand-steel.steps.sand.grade
    preparations.sand-steel.steps.sand.grade: St 3
    jobs.refit.items.STEP.old_coats: [{id: old, family: epoxy_2k, thickness: 80 um, sound: no, rub: resistant}]

    preparations.sand-steel.steps.sand.grade: St 3    # at preparations.sand-steel.steps.sand.grade    # also PRE008 warning at preparations.sand-steel.steps.sand.grade

    products.primer.least_grade: St 3
    products.barrier.least_grade: St 2
    preparations.sand-steel.steps.sand.grade: St 2    # at preparations.sand-steel.steps.sand.grade

    products.barrier.least_grade: Sa 2 1/2    # warning at preparations.sand-steel.steps.sand.grade

    without preparations.sand-steel.steps.sand.grade    # note at preparations.sand-steel.steps    # also PRE008 note at preparations.sand-steel.steps

    Given second good
    preparations.blast.steps.blast.grade: SP 7    # at preparations.blast.steps.blast.grade

    Given second good
    systems.deck.category: {corrosivity: C5, durability: high, evidence: own report}
    preparations.abrade.edge_radius: 2 mm
    preparations.blast.steps.blast.grade: SP 6    # at preparations.blast.steps.blast.grade
    preparations.abrade.steps.sand: {id: sand, do: blast, text: Blast., grade: SP 10, medium: garnet, profile: 1..1.5 mil, profile_method: ISO 8503-5}

    Given second good
    without preparations.blast.steps.blast.grade    # note at preparations.blast.steps

    Given second good
    jobs.rails.environment: {kind: immersion, category: Im1}
    preparations.abrade.salt_limit: 20 mg/m2
    preparations.abrade.steps.salt: {id: salt, do: test, text: Measure soluble salts.}
    preparations.abrade.edge_radius: 2 mm
    preparations.blast.steps.blast.grade: SP 6    # at preparations.blast.steps.blast.grade
    preparations.abrade.steps.sand: {id: sand, do: blast, text: Blast., grade: SP 10, medium: garnet, profile: 1..1.5 mil, profile_method: ISO 8503-5}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: atmosphere, category: CX}    # also PRE024 at systems.deck.layers.first.stripe_coat
    preparations.blast.steps.blast.grade: SP 6    # at preparations.blast.steps.blast.grade
To put right
    Prepare to the grade named, or choose a primer made for the grade that can be achieved, and state its least_grade.
"""

from specgen.facts.pairs.families import ZINC_RICH
from specgen.facts.pairs.floor import missed_floor
from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import ERROR, NOTE, WARNING, Preparation, Problem, Problems, Spec, cite, date, rule
from specgen.trade.known import NotKnown

# What to do where the grade cannot be assessed.
_STATE = "write the grade of the working step, as in Sa 2 1/2"
_COMPARABLE = "name a grade of the series SSPC or ISO 8501-1"


@rule(
    "PRE008",
    on=Preparation,
    severity=ERROR,
    source=cite("MIL-HDBK-1110", "6.3.3.1"),
)
def grade_reaches_floor(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        product = spec.product_of(part.system.layers[0])
        if not part.lays_steel_bare or product.binder in ZINC_RICH:
            continue
        missed = missed_floor(part, product)
        if isinstance(missed, NotKnown):
            remedy = _STATE if missed.missing else _COMPARABLE
            yield Problem(missed.at, f"cannot be assessed: {missed.why}", remedy, NOTE, absolute=True)
        elif missed is not None:
            below = f"{missed.step.grade} on {part.name} beneath the product {product.id}{missed.paint}"
            what = f"{below}: {missed.least}; the primer is then applied over rust and scale"
            own = product.least_grade is not None
            # a product that is not chosen yet may be one made for that grade
            chosen = part.system.layers[0].product is not None
            weight = ERROR if chosen and missed.certain and (own or part.is_bare_steel) else WARNING
            yield Problem(missed.path, what, missed.remedy, weight, missed.source, absolute=True)
