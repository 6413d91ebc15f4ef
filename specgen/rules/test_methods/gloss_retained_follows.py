"""TST019 Gloss retained follows from the gloss before and after

Checks
    Each result of gloss retained in a test report: it states the gloss before the exposure and after it, and the share is one that these two can round to.
Why
    Of 81 % nobody can tell whether a high-gloss or a satin coat kept it; and a share of other panels is no result of this one.
Passes
    Given a claim with its report
    reports.lab-12.tests.shine: {id: shine, series: scribed, method: gloss_retained, standard: ISO 2813, edition: "2014", details: [{id: angle, value: 60 degrees}], after: {method: xenon_iso, standard: ISO 16474-2, edition: "2013", duration: 400 h}, results: [{id: P1, value: 82 %, gloss_before: 38 GU, gloss_after: 31 GU}, {id: P2, value: 81 %, gloss_before: 36 GU, gloss_after: 29 GU}, {id: P3, value: 79.2 %, gloss_before: 38 GU, gloss_after: 31 GU}]}
Fails
    Given a claim with its report
    reports.lab-12.tests.shine: {id: shine, series: scribed, method: gloss_retained, standard: ISO 2813, edition: "2014", details: [{id: angle, value: 60 degrees}], after: {method: xenon_iso, standard: ISO 16474-2, edition: "2013", duration: 400 h}, results: [{id: P1, value: 82 %, gloss_before: 38 GU, gloss_after: 31 GU}, {id: P2, value: 81 %, gloss_before: 36 GU, gloss_after: 29 GU}, {id: P3, value: 90 %, gloss_before: 38 GU, gloss_after: 31 GU}]}    # at reports.lab-12.tests.shine.results.P3.value

    Given a claim with its report
    reports.lab-12.tests.shine: {id: shine, series: scribed, method: gloss_retained, standard: ISO 2813, edition: "2014", details: [{id: angle, value: 60 degrees}], after: {method: xenon_iso, standard: ISO 16474-2, edition: "2013", duration: 400 h}, results: [{id: P1, value: 82 %}, {id: P2, value: 81 %}, {id: P3, value: 81 %}]}    # note at reports.lab-12.tests.shine
To put right
    Copy gloss before and after from the report of the laboratory, panel by panel, or ask it for them.
"""

from specgen.facts.tests.gloss_stated import GLOSS_RETAINED, followed, without_values
from specgen.model.test_report import LabReport
from specgen.rules.kit import LOGIC, NOTE, WARNING, Problem, Problems, Spec, date, rule


@rule("TST019", on=LabReport, severity=WARNING, source=LOGIC)
def gloss_retained_follows(report: LabReport, spec: Spec, on: date) -> Problems:
    for done in report.tests:
        if done.method != GLOSS_RETAINED:
            continue
        lacking = without_values(done)
        if lacking:
            what = f"{done.id} of the report {report.id} states gloss retained without the gloss before and after: {', '.join(lacking)}"
            yield Problem(("tests", done.id), what, severity=NOTE)
        for one in done.results:
            follows = followed(one)
            if follows is not None:
                what = f"{one.value} of gloss retained does not follow from {one.gloss_before} before and {one.gloss_after} after, which give {follows}"
                yield Problem(("tests", done.id, "results", one.id, "value"), what)
