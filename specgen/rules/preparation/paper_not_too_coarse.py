"""PRE006 Aluminium is not sanded with coarse paper

Checks
    Every paper named for aluminium, against the coarsest one allowed.
Why
    Soft metal takes deep scratches that no primer fills and that show through the topcoat.
Passes
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.abrasive: P80, then P180
Fails
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.abrasive: P60, then P120    # at preparations.sand-steel.steps.sand.abrasive

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.dust: {id: dust, do: sand, text: Sand the edges once more., abrasive: "P60, then P100"}    # at preparations.sand-steel.steps.dust.abrasive
To put right
    Start with the coarsest paper the table allows, or a finer one.
"""

from specgen.facts.pairs.papers import papers_in
from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import WARNING, Preparation, Problem, Problems, Spec, cell_citation, date, rule

_SOURCE = cell_citation("substrates", "aluminium", "coarsest_p")


@rule("PRE006", on=Preparation, severity=WARNING, source=_SOURCE)
def paper_not_too_coarse(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        asked = part.asks("coarsest_p")
        if part.material != "aluminium" or asked is None:
            continue
        for step in preparation.steps:
            coarse = [paper for paper in papers_in(step.abrasive) if int(paper) < int(asked[0])]
            if coarse:
                what = f"P{coarse[0]} on {part.name}; the coarsest allowed is P{asked[0]}"
                yield Problem(("steps", step.id, "abrasive"), what)
