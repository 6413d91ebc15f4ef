"""LAY013 A durability is claimed for a category

Checks
    Each category claim of a system: it states a corrosivity category, an immersion category, or both.
Why
    Years of durability mean nothing without the environment they are claimed for.
Passes
    Given second good
    systems.touch.category: {corrosivity: C2, durability: low, evidence: report 7}
    systems.deck.category: {immersion: Im2, durability: high, evidence: report 7}
    preparations.blast.edge_grade: P3
    without jobs.rails.items.LOCKER
Fails
    systems.cab.category: {durability: high}    # at systems.cab.category    # also FLM012 note at systems.cab.category    # also INS021 at jobs.refit.inspection

    Given second good
    systems.touch.category: {durability: low, evidence: report 8}    # at systems.touch.category
To put right
    Write corrosivity: C1 to CX, or immersion: Im1 to Im4.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("LAY013", on=System, severity=ERROR, source=LOGIC)
def claim_names_category(system: System, spec: Spec, on: date) -> Problems:
    claim = system.category
    if claim is not None and claim.corrosivity is None and claim.immersion is None:
        yield Problem(("category",), f"{system.id} claims a durability, but no corrosivity or immersion category")
