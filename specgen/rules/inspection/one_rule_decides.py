"""INS004 One acceptance rule takes precedence for each film

Checks
    Inspection points that measure the same film under different acceptance rules: exactly one of them is marked as the one that governs.
Why
    The rules are independent of each other: the same readings can be accepted under one and rejected under the other, and the dispute follows after the work.
Passes
    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: 90-10, nominal: 60 um, max: 80 um, governs: yes}}

    jobs.refit.inspection.again: {id: again, check: Film again, after: base, criterion: {rule: 90-10, nominal: 80 um, max: 110 um}}

    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: own, min: 40 um, max: 80 um, text: every reading}}
Fails
    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: 90-10, nominal: 60 um, max: 80 um}}    # at jobs.refit.inspection.again.criterion.rule

    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: 90-10, nominal: 60 um, max: 80 um, governs: yes}}    # at jobs.refit.inspection.again.criterion.rule
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: no reading outside the limits, governs: yes}

    Given second good
    jobs.rails.inspection.again: {id: again, check: Film again, after: second, criterion: {rule: 90-10, nominal: 9 mil, max: 14 mil}}    # at jobs.rails.inspection.again.criterion.rule
To put right
    Keep one rule, or write governs: yes in the criterion that takes precedence.
"""

from specgen.model.acceptance import InspectionPoint
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("INS004", on=Job, severity=ERROR, source=LOGIC)
def one_rule_decides(job: Job, spec: Spec, on: date) -> Problems:
    by_film: dict[tuple[str | None, str | None], list[InspectionPoint]] = {}
    for point in job.inspection:
        if point.criterion.rule is not None:
            by_film.setdefault((point.after, point.at), []).append(point)
    for points in by_film.values():
        rules = list(dict.fromkeys(str(point.criterion.rule) for point in points))
        deciding = [point for point in points if point.criterion.governs]
        if len(rules) > 1 and len(deciding) != 1:
            said = "none of them is marked as governing" if not deciding else "more than one is marked as governing"
            path = ("inspection", points[-1].id, "criterion", "rule")
            yield Problem(path, f"{' and '.join(rules)} apply to one film, and {said}")
