"""EVD002 What a report and its claims name is in the report

Checks
    Each test of each report is of a series of panels that the report describes. Each claim and each test of an offer that names a report names tests of that report.
Why
    A result without its panels says nothing of a coating, and a claim that points to no test points to nothing.
Passes
    Given a claim with its report
    reports.lab-12.tests.creep.series: scribed
Fails
    Given a claim with its report
    reports.lab-12.tests.creep.series: other    # at reports.lab-12.tests.creep.series    # also EVD002 at products.barrier.claims.salt.evidence.test

    Given a claim with its report
    products.barrier.claims.salt.evidence.test: rust    # at products.barrier.claims.salt.evidence.test

    Given a claim with its report
    products.barrier.claims.salt.evidence.than: rust    # at products.barrier.claims.salt.evidence.than
To put right
    Name the panels and the test by their ids in the report.
"""

from collections.abc import Iterator

from specgen.facts.tests.fit import tests_of
from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.model.offer import Offer
from specgen.model.product import Evidence
from specgen.model.test_report import LabReport
from specgen.rules.kit import ERROR, LOGIC, Node, Path, Problem, Problems, Product, Spec, date, rule


@rule("EVD002", on=Node, severity=ERROR, source=LOGIC)
def names_are_there(record: Node, spec: Spec, on: date) -> Problems:
    if isinstance(record, LabReport):
        known = [series.id for series in record.series]
        for done in record.tests:
            if done.series not in known:
                what = f"{done.series} is no series of panels of the report {record.id}"
                yield Problem(("tests", done.id, "series"), what, nearest_of(done.series, known, IDS_SHOWN))
    elif isinstance(record, Product | Offer):
        for path, named in _named(record):
            tests = [tested.done.id for tested in tests_of(spec.reports[named.report])]
            for key, test in (("test", named.test), ("than", named.than)):
                if test is not None and test not in tests:
                    what = f"the report {named.report} has no test {test} with its panels"
                    remedy = nearest_of(test, tests, IDS_SHOWN) if tests else ""
                    yield Problem((*path, key), what, remedy)


def _named(record: Product | Offer) -> Iterator[tuple[Path, Evidence]]:
    stated: list[tuple[Path, Evidence | None]]
    if isinstance(record, Product):
        stated = [(("claims", claim.id), claim.evidence) for claim in record.claims]
    else:
        stated = [
            (("layers", coat.id, "tests", test.id), test.evidence) for coat in record.layers for test in coat.tests
        ]
    for path, evidence in stated:
        if evidence is not None:
            yield (*path, "evidence"), evidence
