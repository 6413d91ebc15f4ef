"""EVD008 A test report says what a report has to say

Checks
    Each report: where the tests were done, first and last day of the tests, who authorised it; of each series the number of panels, the preparation, the DFT measured, the batch of each coat and the cure; of each test the standard and its edition, the details in table test_details (dolly and tester of a pull-off, the scribe of a creep, the spacing of a cross-cut, the liquid), and of a pull-off how each place failed.
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
    without reports.lab-12.tests.creep.details
    without reports.lab-12.series.scribed.scribe    # at reports.lab-12

    Given a claim with its report
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ISO 4624, edition: "2023", results: [{id: P1, value: 7.9 MPa}, {id: P2, value: 8.4 MPa, mode: B 100 %}, {id: P3, value: 7.2 MPa, mode: B 100 %}]}    # at reports.lab-12

    Given a claim with its report
    without reports.lab-12.tests.creep.edition    # at reports.lab-12    # also EVD003 at products.barrier.claims.salt.evidence
To put right
    State it as the report has it, or ask the laboratory for a report that has it.
"""

from collections.abc import Iterator, Mapping

from specgen.model.test_report import DoneTest, LabReport, PanelSeries
from specgen.rules.kit import WARNING, Problem, Problems, Spec, cite, date, rule, table
from specgen.standards.citations import Basis

_PULL_OFF = "pull_off"


@rule("EVD008", on=LabReport, severity=WARNING, source=cite("ISO-IEC-17025", "7.8.2.1", Basis.PUBLISHED))
def report_is_whole(report: LabReport, spec: Spec, on: date) -> Problems:
    lacking = [*_of_report(report)]
    for series in report.series:
        lacking += [f"{what} of the panels {series.id}" for what in _of_panels(series)]
    for done in report.tests:
        if done.standard is None or done.edition is None:
            lacking.append(f"the standard of {done.id} with its edition")
        lacking += [f"{what} of {done.id}" for what in _of_test(done, {one.id: one for one in report.series})]
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


def _of_test(done: DoneTest, panels: Mapping[str, PanelSeries]) -> Iterator[str]:
    """What the results say nothing without; a scribe may stand with the panels."""
    series = panels.get(done.series)
    stated = {detail.id for detail in (*done.details, *(done.after.details if done.after is not None else ()))}
    if series is not None and series.scribe is not None:
        stated.add("scribe")
    for row in table("test_details").rows:
        if (
            row["method"] in {done.method, done.after.method if done.after is not None else ""}
            and row["detail"] not in stated
        ):
            yield row["said"]
    if done.method == _PULL_OFF and any(one.mode is None for one in done.results):
        yield "how each place failed"


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
