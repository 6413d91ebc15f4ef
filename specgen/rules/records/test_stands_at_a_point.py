"""REC007 A test made on the work stands at an inspection point

Checks
    Tests required by a job and by its systems that the applicator or the customer makes: an inspection point of the job makes a test by the same method, or, for a test in words, names its standard.
Why
    What is tested on panels is shown by reports. What is tested on the work is made by nobody unless the inspection plan says when, on which part and who takes part.
Passes
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, by: applicator}]
    jobs.refit.inspection.look.test: {method: pull_off, standard: ISO 4624, limit: min 5 MPa}

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, by: independent-laboratory}]

    systems.cab.tests: [{id: cut, method: cross_cut, standard: ISO 2409, limit: class 0..1, by: applicator, obligation: for-information}]

    jobs.refit.tests: [{id: cut, test: "Cross-cut, ISO 2409", limit: class 0 or 1, by: applicator}]
    jobs.refit.inspection.look.method: Cross-cut to ISO 2409 on one part of ten
Fails
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, by: applicator}]    # at jobs.refit.tests.pull

    systems.cab.tests: [{id: cut, method: cross_cut, standard: ISO 2409, limit: class 0..1, by: customer}]    # at systems.cab.tests.cut

    jobs.refit.tests: [{id: cut, test: "Cross-cut, ISO 2409", limit: class 0 or 1, by: applicator}]    # at jobs.refit.tests.cut

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, by: applicator}]    # at jobs.refit.tests.pull
    jobs.refit.inspection.look.test: {method: cross_cut, standard: ISO 2409, limit: class 0..1}
To put right
    Add an inspection point with this test, at its coat or at completion, with how many and who takes part; or say who makes the test on panels.
"""

import re

from specgen.facts.job.looked_for import words_of
from specgen.facts.tests.shown import made_on_the_work
from specgen.model.acceptance import InspectionPoint
from specgen.model.test_required import RequiredTest
from specgen.rules.kit import LOGIC, WARNING, Job, Path, Problem, Problems, Spec, date, rule

_STANDARD = re.compile(r"\b(?:ISO|EN|ASTM|SSPC|NACE|AMPP|DIN)[ -]*(?:[A-Z]{0,2} ?)?\d+(?:-\d+)?")


@rule("REC007", on=Job, severity=WARNING, source=LOGIC)
def test_stands_at_a_point(job: Job, spec: Spec, on: date) -> Problems:
    required: list[tuple[Path, RequiredTest]] = [(("jobs", job.id, "tests", test.id), test) for test in job.tests]
    for system in spec.systems_of(job):
        required += [(("systems", system.id, "tests", test.id), test) for test in system.tests]
    for path, test in required:
        if made_on_the_work(test) and not any(_makes(point, test) for point in job.inspection):
            made = test.standard or test.method or test.test
            what = f"{test.id} ({made}) is made on the work, and no inspection point of {job.id} makes it"
            yield Problem(path, what, absolute=True)


def _makes(point: InspectionPoint, test: RequiredTest) -> bool:
    if point.test is not None and point.test.method is not None and point.test.method == test.method:
        return True
    words = f"{words_of(point)} {point.test.test if point.test is not None else ''}"
    if test.method is None:
        named = _STANDARD.findall(test.test or "")
        return not named or any(_same(one, words) for one in named)
    return test.standard is not None and _same(test.standard, words)


def _same(standard: str, words: str) -> bool:
    return standard.replace(" ", "").casefold() in words.replace(" ", "").casefold()
