"""INS004 One counting rule decides on each film

Checks
    Inspection points that read the same film under different counting rules: exactly one of them is marked as the one that decides.
Why
    The rules are independent of each other: the same readings can pass one and fail the other, and the quarrel comes after the work.
Passes
    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: 90-10, nominal: 50 um, governs: yes}}

    jobs.refit.inspection.again: {id: again, check: Film again, after: base, criterion: {rule: 90-10, nominal: 50 um}}

    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: own, min: 50 um, text: every reading}}
Fails
    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: 90-10, nominal: 50 um}}    # at jobs.refit.inspection.again.criterion.rule

    jobs.refit.inspection.again: {id: again, check: Film again, after: primer, criterion: {rule: 90-10, nominal: 50 um, governs: yes}}    # at jobs.refit.inspection.again.criterion.rule
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: no reading outside the limits, governs: yes}

    Given second good
    jobs.rails.inspection.again: {id: again, check: Film again, after: second, criterion: {rule: 90-10, nominal: 9 mil}}    # at jobs.rails.inspection.again.criterion.rule
To put right
    Keep one rule, or write governs: yes in the criterion that counts.
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
            said = "none of them is said to decide" if not deciding else "more than one is said to decide"
            path = ("inspection", points[-1].id, "criterion", "rule")
            yield Problem(path, f"{' and '.join(rules)} judge one film, and {said}")
