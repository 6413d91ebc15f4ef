"""EVD008 A test report says what a report has to say

Checks
    Each report: where the tests were done, first and last day of the tests, who authorised it; of each series the number of panels, the preparation, the DFT measured, the batch of each coat and the cure; of each test the standard and its edition.
Why
    What a report leaves out nobody can hold against a claim, and a customer's laboratory cannot repeat it.
Passes
    Given a claim with its report
    reports.lab-12.deviations: Panels of 2 mm instead of 3 mm.
Fails
    Given a claim with its report
    without reports.lab-12.signed_by    # at reports.lab-12

    Given a claim with its report
    without reports.lab-12.series.scribed.cure    # at reports.lab-12

    Given a claim with its report
    without reports.lab-12.tests.creep.edition    # at reports.lab-12    # also EVD003 at products.barrier.claims.salt.evidence
To put right
    State it as the report has it, or ask the laboratory for a report that has it.
"""

from collections.abc import Iterator

from specgen.model.test_report import LabReport, PanelSeries
from specgen.rules.kit import WARNING, Problem, Problems, Spec, cite, date, rule
from specgen.standards.citations import Basis


@rule("EVD008", on=LabReport, severity=WARNING, source=cite("ISO-IEC-17025", "7.8.2.1", Basis.PUBLISHED))
def report_is_whole(report: LabReport, spec: Spec, on: date) -> Problems:
    lacking = [*_of_report(report)]
    for series in report.series:
        lacking += [f"{what} of the panels {series.id}" for what in _of_panels(series)]
    for done in report.tests:
        if done.standard is None or done.edition is None:
            lacking.append(f"the standard of {done.id} with its edition")
    if lacking:
        yield Problem((), f"the report {report.id} does not state {'; '.join(lacking)}")


def _of_report(report: LabReport) -> Iterator[str]:
    stated = (
        ("where the tests were done", report.laboratory.address),
        ("the first day of the tests", report.dates.started),
        ("the last day of the tests", report.dates.ended),
        ("who authorised it", report.signed_by),
    )
    yield from (what for what, value in stated if value is None)


def _of_panels(series: PanelSeries) -> Iterator[str]:
    stated = (
        ("the number", series.panels),
        ("the preparation", series.grade or series.preparation),
        ("the cure", series.cure),
    )
    yield from (what for what, value in stated if value is None)
    if series.film is None and any(coat.film is None for coat in series.coats):
        yield "the DFT measured"
    if not series.control and any(coat.batch is None for coat in series.coats):
        yield "the batch of each coat"
