"""OVR004 Zinc silicate is overcoated with a mist coat first, and never with zinc silicate

Checks
    Each coat applied directly over zinc silicate: it is not zinc silicate itself, and it begins with a mist coat or a tie coat where the tables require one.
Why
    Zinc silicate does not adhere to itself. It is porous: air and solvent escape from it through a full wet coat and leave it full of pinholes.
Passes
    products.primer.binder: zinc_inorganic
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 3 mm
    products.base.binder: acrylic_1k
    systems.cab.layers.base.mist_coat: yes

    Given second good
Fails
    products.primer.binder: zinc_inorganic
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 3 mm
    products.base.binder: acrylic_1k    # warning at systems.cab.layers.base.mist_coat

    products.primer.binder: zinc_inorganic
    products.base.binder: zinc_inorganic    # at systems.cab.layers.base.product    # also SUB004 at preparations.sand-steel.steps.sand.grade

    Given second good
    products.mastic.binder: zinc_inorganic    # at systems.deck.layers.second.product    # also OVR002 at systems.deck.layers.gloss.product    # also SUB003 note at systems.deck.layers.first.product    # also SUB004 at preparations.abrade.steps.sand.grade    # also USU001 at products.mastic.film.max
To put right
    Begin with a mist coat of about a quarter of a normal coat, let it flash off, then apply the full coat; repair bare spots in zinc silicate with zinc-rich epoxy.
"""

from specgen.facts.pairs.layers import layer_pairs
from specgen.facts.pairs.overcoat import overcoating
from specgen.rules.kit import ERROR, WARNING, Problem, Problems, Spec, System, date, rule, table

_ZINC = "zinc_inorganic"


@rule(
    "OVR004",
    on=System,
    severity=ERROR,
    source=overcoating(_ZINC, _ZINC).citation,
)
def zinc_silicate(system: System, spec: Spec, on: date) -> Problems:
    mist = table("mist_coat").rows[0]
    for pair in layer_pairs(system, spec):
        if pair.verdict.old != _ZINC:
            continue
        if pair.verdict.new == _ZINC:
            yield Problem(("layers", pair.above.id, "product"), f"{pair.above.id} is zinc silicate over zinc silicate")
        elif ("mist_coat",) in pair.verdict.needs and not (pair.above.mist_coat or pair.above.tie_coat):
            what = f"{pair.above.id} is applied over zinc silicate without a mist coat (published: {mist['share_of_coat']} of a normal coat)"
            source = table("mist_coat").row_citation(mist)
            yield Problem(("layers", pair.above.id, "mist_coat"), what, severity=WARNING, source=source)
