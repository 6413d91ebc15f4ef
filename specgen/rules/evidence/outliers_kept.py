"""EVD012 A result that lies far out is shown and kept

Checks
    Each test of each report with five results or more: one that lies farther from the mean than chance would put it (Grubbs, two-sided at 5 %) is named. A result that is not counted although it does not lie far out is named too; its cause is printed with it.
Why
    The result that does not fit is often the one that tells most. Left out without a word it makes a coating look even where it is not.
Passes
    Given a claim with its report
    reports.lab-12.tests.creep.results: [{id: P1, value: 1.4 mm}, {id: P2, value: 1.1 mm}, {id: P3, value: 1.6 mm}, {id: P4, value: 1.3 mm}, {id: P5, value: 1.7 mm}]
Fails
    Given a claim with its report
    reports.lab-12.tests.creep.results: [{id: P1, value: 1.4 mm}, {id: P2, value: 1.5 mm}, {id: P3, value: 1.4 mm}, {id: P4, value: 1.5 mm}, {id: P5, value: 2.6 mm}]    # note at reports.lab-12.tests.creep.results.P5

    Given a claim with its report
    reports.lab-12.tests.creep.results: [{id: P1, value: 1.4 mm}, {id: P2, value: 1.5 mm}, {id: P3, value: 1.4 mm}, {id: P4, value: 1.5 mm}, {id: P5, value: 1.7 mm, excluded: Did not fit.}]    # at reports.lab-12.tests.creep.results.P5.excluded
To put right
    Ask the laboratory for the cause; count the result unless there is one, and have the test repeated where there is.
"""

from specgen.facts.tests.outcome import results_of
from specgen.model.test_report import DoneTest, LabReport, SpecimenResult
from specgen.rules.kit import NOTE, WARNING, Problem, Problems, Spec, date, rule, table

_GRUBBS = table("grubbs")


@rule("EVD012", on=LabReport, severity=WARNING, source=_GRUBBS.citation)
def outliers_kept(report: LabReport, spec: Spec, on: date) -> Problems:
    for done in report.tests:
        results = results_of(done)
        at = ("tests", done.id, "results")
        if results.far_out:
            what = f"the result {results.far_out} of {done.id} in {report.id} lies farther out than chance would put it; it is counted"
            yield Problem((*at, results.far_out), what, severity=NOTE)
        for one in results.left_out:
            if not _lies_far_out(done, one):
                what = f"the result {one.id} of {done.id} in {report.id} is not counted ({one.excluded}); among the others it does not lie far out"
                yield Problem((*at, one.id, "excluded"), what)


def _lies_far_out(done: DoneTest, left_out: SpecimenResult) -> bool:
    """True where the result would lie far out if it were counted."""
    counted = [one for one in done.results if one.excluded is None or one.id == left_out.id]
    whole = tuple(one.model_copy(update={"excluded": None}) for one in counted)
    return results_of(done.model_copy(update={"results": whole})).far_out == left_out.id
