"""EVD011 A test was done on enough panels or places

Checks
    Each test of each report: it has as many results as its method asks for at the least, those that are not counted left out. Control panels and the other side of a comparison count by themselves. A test that is asked or claimed and states a number of specimens is held against that number.
Why
    One panel shows that panel. How far results scatter is part of the result.
Passes
    Given a claim with its report
    reports.lab-12.tests.creep.results.P4: {id: P4, value: 1.2 mm}
Fails
    Given a claim with its report
    reports.lab-12.tests.creep.results: [{id: P1, value: 1.4 mm}, {id: P2, value: 1.1 mm}]    # at reports.lab-12.tests.creep.results

    Given a claim with its report
    products.barrier.claims.salt.test.specimens: "4"    # at products.barrier.claims.salt.test.specimens
To put right
    Have more panels tested, or state with the claim how few there were.
"""

from specgen.facts.tests.evidence import evidence_of
from specgen.facts.tests.outcome import number_counted
from specgen.facts.tests.values import method_row
from specgen.model.test_report import DoneTest, LabReport
from specgen.rules.kit import WARNING, Node, Problem, Problems, Product, Spec, date, rule, table
from specgen.units.locale import counted

_METHODS = table("test_methods")


@rule("EVD011", on=Node, severity=WARNING, source=_METHODS.citation)
def enough_specimens(record: Node, spec: Spec, on: date) -> Problems:
    if isinstance(record, LabReport):
        for done in record.tests:
            number, least = number_counted(done), _least(done)
            if number < least:
                what = f"{done.id} of the report {record.id} has {number} {counted('result', 'results', number)}; the method asks for {least}"
                yield Problem(("tests", done.id, "results"), what)
    elif isinstance(record, Product):
        for claim in record.claims:
            tested = evidence_of(spec, record.id, claim.id).tested
            asked = claim.test.specimens if claim.test is not None else None
            if tested is not None and asked is not None and (number := number_counted(tested.done)) < asked:
                what = f"the claim {claim.id} of {record.id} states {asked} specimens; {tested.done.id} of the report {tested.report.id} has {number}"
                yield Problem(("claims", claim.id, "test", "specimens"), what)


def _least(done: DoneTest) -> int:
    """The larger of what the method and the exposure before it ask for."""
    methods = [done.method, *([done.after.method] if done.after is not None else [])]
    return max(int(method_row(method)["least"] or 1) for method in methods)
