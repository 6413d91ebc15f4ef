"""EVD014 What a job accepts is what is required of it

Checks
    Each inspection point with a test whose limit is a figure or a rating, against every test by the same method that the job, its systems or their open coats require after the same exposure: the point accepts nothing that the requirement does not. The statistic is held too: where each result has to pass, a mean that passes is less. A point that is for parts may be meant to be milder than a requirement on panels, so this gives a warning.
Why
    A part that passes a mild point is delivered, and is refused by the customer who holds it against his own document.
Passes
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa}]
    jobs.refit.inspection.holds: {id: holds, check: Pull-off, at: completion, frequency: one panel, test: {method: pull_off, standard: ISO 4624, limit: min 5 MPa, statistic: each}, criterion: {text: as tested}, if_failed: Ask.}

    jobs.refit.tests: [{id: pull, method: pull_off, after: {method: nss, duration: 480 h}, limit: min 5 MPa}]
    jobs.refit.inspection.holds: {id: holds, check: Pull-off, at: completion, frequency: one panel, test: {method: pull_off, limit: min 4 MPa}, criterion: {text: as tested}, if_failed: Ask.}
Fails
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa}]
    jobs.refit.inspection.holds: {id: holds, check: Pull-off, at: completion, frequency: one panel, test: {method: pull_off, standard: ISO 4624, limit: min 4 MPa, statistic: each}, criterion: {text: as tested}, if_failed: Ask.}    # at jobs.refit.inspection.holds.test.limit

    systems.chassis.tests: [{id: cut, method: cross_cut, standard: ISO 2409, limit: class 0..1, statistic: each}]
    jobs.refit.inspection.holds: {id: holds, check: Cross-cut, at: completion, frequency: one panel, test: {method: cross_cut, standard: ISO 2409, limit: class 0..2}, criterion: {text: as tested}, if_failed: Ask.}    # at jobs.refit.inspection.holds.test.limit

    jobs.refit.tests: [{id: pull, method: pull_off, limit: min 5 MPa, statistic: each}]
    jobs.refit.inspection.holds: {id: holds, check: Pull-off, at: completion, frequency: one panel, test: {method: pull_off, limit: min 5 MPa, statistic: mean}, criterion: {text: as tested}, if_failed: Ask.}    # at jobs.refit.inspection.holds.test.statistic
To put right
    Accept at the point what is required, or say in the requirement which tests are for panels alone.
"""

from collections.abc import Iterator

from specgen.facts.tests.narrower import as_limit, narrower
from specgen.facts.tests.said import asked_said
from specgen.model.test_required import AskedTest, Statistic
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("EVD014", on=Job, severity=WARNING, source=LOGIC)
def accepted_as_required(job: Job, spec: Spec, on: date) -> Problems:
    required = list(_required(job, spec))
    for point in job.inspection:
        if point.test is None:
            continue
        at = ("inspection", point.id, "test")
        for where, asked in required:
            if not _alike(point.test, asked):
                continue
            if _accepts_more(point.test, asked):
                what = f"the point {point.id} accepts {point.test.limit}; {where} requires {asked_said(asked)}"
                yield Problem((*at, "limit"), what)
            elif asked.statistic is Statistic.EACH and point.test.statistic is Statistic.MEAN:
                what = f"the point {point.id} accepts a mean; {where} requires of each result {asked_said(asked)}"
                yield Problem((*at, "statistic"), what)


def _required(job: Job, spec: Spec) -> Iterator[tuple[str, AskedTest]]:
    yield from ((f"the test {test.id} of the job", test) for test in job.tests)
    for system in spec.systems_of(job):
        yield from ((f"the test {test.id} of {system.id}", test) for test in system.tests)
        for layer in system.layers:
            if layer.required is not None:
                yield from ((f"the test {test.id} of the coat {layer.id}", test) for test in layer.required.tests)


def _alike(point: AskedTest, asked: AskedTest) -> bool:
    """The same method after the same kind of exposure; another standard of it is another scale."""
    exposures = [one.after.method if one.after is not None else None for one in (point, asked)]
    standards = {one.standard for one in (point, asked) if one.standard is not None}
    return (
        point.method is not None
        and point.method == asked.method
        and exposures[0] == exposures[1]
        and len(standards) < 2
    )


def _accepts_more(point: AskedTest, asked: AskedTest) -> bool:
    if point.limit is None or asked.limit is None or point.method is None:
        return False
    here, there = as_limit(point.method, point.limit), as_limit(point.method, asked.limit)
    if here is None or there is None:
        return False
    return narrower(point.method, asked.standard or point.standard or "", here, there) is False
