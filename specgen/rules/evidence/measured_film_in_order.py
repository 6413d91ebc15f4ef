"""EVD015 The film measured on the panels of a report is in its order

Checks
    Each coat of each series of panels of a report, and each series in total: the lowest DFT is not above the mean, nor the mean above the highest, nor the lowest above the highest.
Why
    A mean outside its own readings is a slip of the pen, and a claim that rests on it is made for a film that nobody tested.
Passes
    Given a claim with its report
    reports.lab-12.series.scribed.coats.coat.film_max: 82 um

    Given a claim with its report
    without reports.lab-12.series.scribed.coats.coat.film_min
Fails
    Given a claim with its report
    reports.lab-12.series.scribed.coats.coat.film_max: 81 um    # at reports.lab-12.series.scribed.coats.coat.film_max

    Given a claim with its report
    reports.lab-12.series.scribed.coats.coat.film_min: 83 um    # at reports.lab-12.series.scribed.coats.coat.film_min

    Given a claim with its report
    reports.lab-12.series.scribed.film_min: 90 um
    reports.lab-12.series.scribed.film_max: 80 um    # at reports.lab-12.series.scribed.film_max
To put right
    Write the figures as the report has them; where it has them so, ask the laboratory.
"""

from specgen.model.test_report import LabReport, PanelCoat, PanelSeries
from specgen.rules.kit import ERROR, LOGIC, Path, Problem, Problems, Spec, date, rule


@rule("EVD015", on=LabReport, severity=ERROR, source=LOGIC)
def measured_film_in_order(report: LabReport, spec: Spec, on: date) -> Problems:
    for series in report.series:
        at: Path = ("series", series.id)
        yield from _out_of_order(series, at, f"the panels {series.id} of {report.id}")
        for coat in series.coats:
            yield from _out_of_order(
                coat, (*at, "coats", coat.id), f"{coat.id} on the panels {series.id} of {report.id}"
            )


def _out_of_order(measured: PanelSeries | PanelCoat, at: Path, where: str) -> Problems:
    low, mean, high = measured.film_min, measured.film, measured.film_max
    if low is not None and mean is not None and low > mean:
        yield Problem((*at, "film_min"), f"the lowest DFT of {where}, {low}, is above the mean, {mean}")
    if high is not None and mean is not None and high < mean:
        yield Problem((*at, "film_max"), f"the highest DFT of {where}, {high}, is below the mean, {mean}")
    elif high is not None and mean is None and low is not None and high < low:
        yield Problem((*at, "film_max"), f"the highest DFT of {where}, {high}, is below the lowest, {low}")
