"""EVD005 The dates of a test report are in their order

Checks
    Each report: panels coated, received, tests begun, tests ended and report issued follow one another, none lies after the day of assessment, no panel was coated before its product was formulated, and the tests lasted at least as long as the exposure they state.
Why
    A report that was issued before its tests ended reports something else, and an exposure of 1000 h does not fit into ten days.
Passes
    Given a claim with its report
    reports.lab-12.dates: {prepared: 2026-02-02, received: 2026-02-10, started: 2026-02-10, ended: 2026-03-02, issued: 2026-03-02}

    Given a claim with its report
    reports.lab-12.dates: {started: 2026-02-10, ended: 2026-03-02, issued: 2026-03-12}
Fails
    Given a claim with its report
    reports.lab-12.dates.ended: 2026-02-09    # at reports.lab-12.dates.ended

    Given a claim with its report
    reports.lab-12.dates.issued: 2026-03-01    # at reports.lab-12.dates.issued

    Given a claim with its report
    reports.lab-12.dates.issued: 2027-03-01    # at reports.lab-12.dates.issued

    Given a claim with its report
    reports.lab-12.dates.ended: 2026-02-25    # at reports.lab-12.dates.ended

    Given a claim with its report
    reports.lab-12.series.scribed.coats.coat.formulated: 2026-02-03    # at reports.lab-12.series.scribed.coats.coat.formulated    # also EVD003 at products.barrier.claims.salt.evidence
To put right
    Write the dates as the report has them; where it has them so, ask the laboratory.
"""

from datetime import timedelta
from itertools import pairwise

from specgen.model.test_report import LabReport
from specgen.model.test_required import Exposed
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Range, Spec, date, rule

_DAYS = (
    ("prepared", "the last coat on the panels"),
    ("received", "the receipt of the panels"),
    ("started", "the first day of the tests"),
    ("ended", "the last day of the tests"),
    ("issued", "the issue of the report"),
)


@rule("EVD005", on=LabReport, severity=ERROR, source=LOGIC)
def dates_in_order(report: LabReport, spec: Spec, on: date) -> Problems:
    dates = report.dates
    stated = [(key, name, day) for key, name in _DAYS if (day := getattr(dates, key)) is not None]
    for (_, earlier, before), (key, name, day) in pairwise(stated):
        if day < before:
            yield Problem(("dates", key), f"{name} of {report.id}, {day}, lies before {earlier}, {before}")
    if dates.issued > on:
        what = f"the issue of the report {report.id}, {dates.issued}, lies after {on}, the day of assessment"
        yield Problem(("dates", "issued"), what)
    yield from _long_enough(report)
    if dates.prepared is not None:
        for series in report.series:
            for coat in series.coats:
                if coat.formulated is not None and coat.formulated > dates.prepared:
                    what = f"{coat.product} on the panels {series.id} of {report.id} was formulated on {coat.formulated}, after the panels were coated on {dates.prepared}"
                    yield Problem(("series", series.id, "coats", coat.id, "formulated"), what)


def _long_enough(report: LabReport) -> Problems:
    started, ended = report.dates.started, report.dates.ended
    if started is None or ended is None or ended < started:
        return
    # both days count in full
    room = ended - started + timedelta(days=1)
    for done in report.tests:
        lasted = _lasted(done.after)
        if lasted is not None and lasted > room:
            what = f"the exposure of {done.id} in {report.id} lasted {lasted.days} days at least; between {started} and {ended} there are {room.days}"
            yield Problem(("dates", "ended"), what)
            return


def _lasted(exposed: Exposed | None) -> timedelta | None:
    stated = exposed.duration if exposed is not None else None
    least = stated.low if isinstance(stated, Range) else stated
    return timedelta(days=float(least.to("days"))) if least is not None else None
