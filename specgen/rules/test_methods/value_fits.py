"""TST004 A value of a test is one of its method

Checks
    Limits and floors of the tests that are asked or claimed, results and uncertainties in test reports: the unit measures what the method measures, a rating is on the scale of the standard that is named or of the method, and a limit does not run the scale the wrong way. A limit in words is left to the reader, unless it looks like a value and is none.
Why
    A limit in millimetres for a pull-off, class 6 of a scale that ends at 5, or `min class 1` where 0 is best: nothing can be tested against it, or everything passes.
Passes
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, floor: 4 MPa, statistic: mean}]

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, limit: class 0..1, statistic: each}, {id: rust, method: rust_grade, standard: ASTM D610, limit: min 8, statistic: each}]

    jobs.refit.tests: [{id: look, method: blistering, standard: ISO 4628-2, limit: no blisters that the eye sees, statistic: each}]
Fails
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 mm, statistic: mean}]    # at jobs.refit.tests.pull.limit

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, limit: class 0..6, statistic: each}]    # at jobs.refit.tests.cut.limit

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, limit: min class 1, statistic: each}]    # at jobs.refit.tests.cut.limit

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ASTM D3359, variant: method B, limit: max 4B, statistic: each}]    # at jobs.refit.tests.cut.limit

    jobs.refit.tests: [{id: grip, method: x_cut, standard: ASTM D3359, variant: method A, limit: min 6A, statistic: each}]    # warning at jobs.refit.tests.grip.limit

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 Mpa, statistic: mean}]    # warning at jobs.refit.tests.pull.limit

    Given a claim with its report
    reports.lab-12.tests.creep.results.P1.value: 1.4 MPa    # at reports.lab-12.tests.creep.results.P1.value    # also EVD010 at products.barrier.claims.salt.test.limit
To put right
    Write number and unit, or the rating, as the report or the standard gives it.
"""

import re

from specgen.facts.tests.spoken import asked_tests
from specgen.facts.tests.values import Misfit, fits, limit_fits
from specgen.model.test_report import LabReport
from specgen.model.test_value import read_limit, read_result
from specgen.rules.kit import ERROR, LOGIC, WARNING, Node, Path, Problem, Problems, Spec, date, rule

_LIKE_A_VALUE = re.compile(r"(?:min|max) \S+ ?\S*|-?\d[\w.]*( \S+)?|\S+ ?\.\. ?\S+( \S+)?")


@rule("TST004", on=Node, severity=ERROR, source=LOGIC)
def value_fits(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        if asked.test.method is not None and asked.test.limit is not None:
            standard = f"{asked.test.standard or ''} {asked.test.variant or ''}"
            yield from _limit((*asked.path, "limit"), asked.test.method, asked.test.limit, standard)
            if asked.test.floor is not None:
                yield from _told(
                    (*asked.path, "floor"), fits(asked.test.method, read_result(asked.test.floor), standard)
                )
    if isinstance(subject, LabReport):
        for done in subject.tests:
            at = ("tests", done.id)
            for one in done.results:
                yield from _told(
                    (*at, "results", one.id, "value"), fits(done.method, read_result(one.value), done.standard or "")
                )


def _limit(path: Path, method: str, text: str, standard: str) -> Problems:
    try:
        limit = read_limit(text)
    except ValueError as fault:
        if _LIKE_A_VALUE.fullmatch(text):
            yield Problem(path, f"the limit '{text}' is not read as a value: {fault}", severity=WARNING)
        return
    yield from _told(path, next(limit_fits(method, limit, standard), None))


def _told(path: Path, misfit: Misfit | None) -> Problems:
    if misfit is not None:
        weight = ERROR if misfit.source.basis.confirmed else WARNING
        yield Problem(path, misfit.said, severity=weight, source=misfit.source)
