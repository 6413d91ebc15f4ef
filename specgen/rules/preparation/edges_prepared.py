"""PRE015 Edges are prepared for severe corrosivity

Checks
    Bare steel beneath a system that claims C4 or C5: its preparation states a preparation grade of welds and edges to ISO 8501-3, or a minimum edge radius.
Why
    Wet paint draws back from a sharp edge, and rust starts there first.
Passes
    preparations.sand-steel.edge_grade: P2
    systems.chassis.category: {corrosivity: C4, durability: low, evidence: own report}

    Given second good
    preparations.abrade.edge_radius: 2 mm
    systems.deck.category: {corrosivity: C4, durability: low, evidence: own report}

    systems.chassis.category: {corrosivity: C3, durability: low, evidence: own report}
Fails
    systems.chassis.category: {corrosivity: C4, durability: low, evidence: own report}    # at preparations.sand-steel.edge_grade

    systems.cab.category: {corrosivity: C5, durability: low, evidence: own report}    # at preparations.sand-steel.edge_grade
    systems.chassis.category: {corrosivity: C3, durability: low, evidence: own report}    # also PRE008 at preparations.sand-steel.steps.sand.grade    # also INS021 at jobs.refit.inspection
To put right
    Write edge_grade: P2 or edge_radius: 2 mm, and stripe-coat the edges by brush before the first coat.
"""

from specgen.facts.pairs.parts import prepared_with
from specgen.model.system import Corrosivity
from specgen.rules.kit import NOTE, Preparation, Problem, Problems, Spec, date, rule, table

_USES = table("steel_defect_uses")
_HARD = {Corrosivity.C4, Corrosivity.C5}


@rule(
    "PRE015",
    on=Preparation,
    severity=NOTE,
    source=_USES.row_citation(_USES.row("grade", "P2")),
)
def edges_prepared(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if preparation.edge_grade is not None or preparation.edge_radius is not None:
        return
    for part in prepared_with(preparation, spec):
        claim = part.system.category
        if part.is_bare_steel and claim is not None and (claim.corrosivity in _HARD or claim.immersion is not None):
            what = f"{part.system.id} claims {claim.immersion or claim.corrosivity}, but neither an edge grade nor an edge radius is stated"
            yield Problem(("edge_grade",), what)
