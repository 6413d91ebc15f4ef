"""PRE006 Aluminium is not cut with coarse paper

Checks
    Every paper named for aluminium against the coarsest one it takes.
Why
    Soft metal takes deep scratches that no primer fills and that show through the top coat.
Passes
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.abrasive: P80, then P180
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
Fails
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.sand.abrasive: P60, then P120    # at preparations.sand-steel.steps.sand.abrasive
To put right
    Begin with the coarsest paper the table allows, or a finer one.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.preparation import Preparation
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.rules.preparation.papers import papers_in
from specgen.rules.preparation.parts import prepared_with
from specgen.standards.tables import cell_citation

_SOURCE = cell_citation("substrates", "aluminium", "coarsest_p")


@rule("PRE006", on=Preparation, severity=Severity.WARNING, concern=Concern.PREPARATION, source=_SOURCE)
def paper_not_too_coarse(preparation: Preparation, spec: Spec) -> Iterator[Problem]:
    for part in prepared_with(preparation, spec):
        asked = part.asks("coarsest_p")
        if part.material != "aluminium" or asked is None:
            continue
        for step in preparation.steps:
            coarse = [paper for paper in papers_in(step.abrasive) if int(paper) < int(asked[0])]
            if coarse:
                what = f"P{coarse[0]} on {part.name}; P{asked[0]} is the coarsest it takes"
                yield Problem(("steps", step.id, "abrasive"), what)
