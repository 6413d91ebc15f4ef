"""EVD013 A statement of conformity names its decision rule

Checks
    Each test of each report that states a limit, and so says whether the panels conform: it names its decision rule. With the uncertainty stated, a mean that lies nearer to the limit than that is told: it passes or fails by chance. A claim whose result lies so is told at the claim.
Why
    At the limit simple acceptance is wrong every second time. Who carries that risk is agreed before the test.
Passes
    Given a claim with its report
    reports.lab-12.tests.creep.limit: max 2 mm
    reports.lab-12.tests.creep.decision: simple
Fails
    Given a claim with its report
    reports.lab-12.tests.creep.limit: max 2 mm    # at reports.lab-12.tests.creep.decision

    Given a claim with its report
    reports.lab-12.tests.creep.uncertainty: 0.7 mm    # at products.barrier.claims.salt.evidence
To put right
    State the decision rule of the report (simple, guarded or non-binary); claim a value that the result keeps clear of by its uncertainty.
"""

from specgen.facts.tests.evidence import evidence_of
from specgen.facts.tests.outcome import Outcome, judged
from specgen.model.test_report import LabReport
from specgen.rules.kit import WARNING, Node, Problem, Problems, Product, Spec, cite, date, rule
from specgen.standards.citations import Basis


@rule("EVD013", on=Node, severity=WARNING, source=cite("ILAC-G8", "", Basis.PUBLISHED))
def decision_stated(record: Node, spec: Spec, on: date) -> Problems:
    if isinstance(record, LabReport):
        for done in record.tests:
            if done.limit is None:
                continue
            if done.decision is None:
                what = f"{done.id} of the report {record.id} is held against {done.limit} without a decision rule"
                yield Problem(("tests", done.id, "decision"), what)
            found = judged(done, done)
            if found.inside_guard:
                what = f"the mean of {done.id} in {record.id} lies nearer to {done.limit} than its uncertainty, {done.uncertainty}"
                yield Problem(("tests", done.id, "uncertainty"), what)
    elif isinstance(record, Product):
        for claim in record.claims:
            found_claim = evidence_of(spec, record.id, claim.id)
            held = found_claim.judged
            if held is not None and held.inside_guard and held.outcome is Outcome.MEETS and found_claim.stands:
                what = f"the result behind the claim {claim.id} of {record.id} lies nearer to the limit claimed than its uncertainty"
                yield Problem(("claims", claim.id, "evidence"), what)
