"""EVD007 No report is evidence for itself

Checks
    Each report: its number is that of no document of the folder, no other report has it, and it repeats neither its own results nor, through others, those of itself. A claim names the report that has the results, and none that repeats them.
Why
    A data sheet that cites a data sheet cites nothing; two reports that repeat each other are no report.
Passes
    Given a claim with its report
    reports.lab-12.number: "12/2027"
Fails
    Given a claim with its report
    reports.lab-12.number: MS-001    # at reports.lab-12.number

    Given a claim with its report
    reports.lab-12.repeats: "12/2026"    # at reports.lab-12.repeats

    Given a claim with its report
    reports.lab-12.repeats: "9/2024"    # at products.barrier.claims.salt.evidence.report

    Given a comparison of two coatings
    reports.lab-13: {id: lab-13, number: "12/2026", title: Copy, laboratory: {name: Laboratory Tarn}, dates: {issued: 2026-04-01}, series: [{id: one, substrate: steel_blasted, coats: [{id: coat, product: barrier}]}], tests: [{id: creep, series: one, method: scribe_creep, results: [{id: P1, value: 1 mm}]}]}    # at reports.lab-13.number    # also EVD008 at reports.lab-13
To put right
    Name the report of the laboratory that did the test, by its own number.
"""

from specgen.facts.tests.numbers import documents_by_number, reports_by_number
from specgen.model.test_report import LabReport
from specgen.rules.kit import ERROR, LOGIC, Node, Problem, Problems, Product, Spec, date, rule


@rule("EVD007", on=Node, severity=ERROR, source=LOGIC)
def no_evidence_for_itself(record: Node, spec: Spec, on: date) -> Problems:
    if isinstance(record, Product):
        for claim in record.claims:
            named = claim.evidence
            repeated = spec.reports[named.report].repeats if named is not None else None
            if named is not None and repeated is not None and repeated != spec.reports[named.report].number:
                what = f"the report {named.report} behind the claim {claim.id} of {record.id} repeats results of {repeated}"
                yield Problem(("claims", claim.id, "evidence", "report"), what, "name the report that has them")
    elif isinstance(record, LabReport):
        documents = documents_by_number(spec)
        if record.number in documents:
            what = f"the report {record.id} has the number of the {documents[record.number]}, which rests on it"
            yield Problem(("number",), what)
        first = reports_by_number(spec)[record.number].id
        if first != record.id:
            yield Problem(("number",), f"the reports {first} and {record.id} have one number, {record.number}")
        elif _comes_back(record, spec):
            yield Problem(("repeats",), f"the report {record.id} repeats results that are its own")


def _comes_back(report: LabReport, spec: Spec) -> bool:
    by_number = reports_by_number(spec)
    seen: set[str] = set()
    here: LabReport | None = report
    while here is not None and here.repeats is not None and here.repeats not in seen:
        if here.repeats == report.number:
            return True
        seen.add(here.repeats)
        here = by_number.get(here.repeats)
    return False
