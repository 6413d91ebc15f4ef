"""EVD016 A failure mode is of a coat that the panels have

Checks
    The failure modes of each pull-off in a test report, written in letters: A the substrate, B the first coat, C the second, and so on, Y the glue, Z the dolly; two with a stroke are the bond between them. A coat beyond those of the panels is told. Words are left to the reader.
Why
    The mode says which bond is the weakest; a letter of another system says that panels or modes were mixed up.
Passes
    Given a claim with its report
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ISO 4624, edition: "2023", details: [{id: dolly, value: 20 mm}, {id: tester, value: self-aligning}], results: [{id: P1, value: 7.9 MPa, mode: "A/B 60 %, B 40 %"}, {id: P2, value: 8.4 MPa, mode: "-/Y 100 %"}, {id: P3, value: 7.2 MPa, mode: Cohesive in the primer}]}
Fails
    Given a claim with its report
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ISO 4624, edition: "2023", details: [{id: dolly, value: 20 mm}, {id: tester, value: self-aligning}], results: [{id: P1, value: 7.9 MPa, mode: "B 60 %, B/C 40 %"}, {id: P2, value: 8.4 MPa, mode: "C 100 %"}, {id: P3, value: 7.2 MPa, mode: B 100 %}]}    # at reports.lab-12.tests.pull
To put right
    Compare the letters with the coats of the series, and name the series that was tested.
"""

from specgen.facts.tests.failure_modes import beyond, places_of
from specgen.facts.tests.fit import tests_of
from specgen.model.test_report import LabReport
from specgen.rules.kit import WARNING, Problem, Problems, Spec, cite, date, rule
from specgen.units.locale import counted

_PULL_OFF = "pull_off"


@rule("EVD016", on=LabReport, severity=WARNING, source=cite("ASTM-D4541-TESTERS"))
def failure_modes_known(report: LabReport, spec: Spec, on: date) -> Problems:
    for tested in tests_of(report):
        if tested.done.method != _PULL_OFF:
            continue
        unknown = [place.code for place in places_of(tested.done, tested.series) if beyond(place, tested.series)]
        if unknown:
            coats = len(tested.series.coats)
            what = f"{tested.done.id} of the report {report.id} names the failure modes {', '.join(unknown)}; the panels {tested.series.id} have {coats} {counted('coat', 'coats', coats)}"
            yield Problem(("tests", tested.done.id), what)
