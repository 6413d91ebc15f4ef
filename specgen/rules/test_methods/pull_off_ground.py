"""TST021 A pull-off is tested by the standard for its ground

Checks
    Each pull-off that is asked, claimed or reported to ASTM D7234: its panels, the parts of its job or the parts its system goes on are no metal. ASTM D4541 is for metal and allows other rigid grounds.
Why
    ASTM D7234 is the test on concrete: other dollies, and a cut around them that steel does not allow. What it would give on metal nobody can compare.
Passes
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ASTM D4541, condition: {substrate: wood}, limit: min 3 MPa, statistic: each}]

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ASTM D7234, condition: {substrate: wood}, limit: min 3 MPa, statistic: each}]
Fails
    jobs.refit.tests: [{id: pull, method: pull_off, standard: ASTM D7234, limit: min 5 MPa, statistic: each}]    # at jobs.refit.tests.pull.standard

    Given a claim with its report
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ASTM D7234, edition: "22", details: [{id: dolly, value: 20 mm}, {id: tester, value: self-aligning}], results: [{id: P1, value: 7.9 MPa, mode: B 100 %}, {id: P2, value: 8.4 MPa, mode: B 100 %}, {id: P3, value: 7.2 MPa, mode: B 100 %}]}    # at reports.lab-12.tests.pull.standard
To put right
    Ask for ISO 4624 or ASTM D4541, with dolly and tester.
"""

from specgen.facts.placing import items_painted_with
from specgen.facts.tests.fit import tests_of
from specgen.facts.tests.spoken import asked_tests
from specgen.facts.tests.standards import standards_in
from specgen.model.test_report import LabReport
from specgen.rules.kit import WARNING, Job, Node, Path, Problem, Problems, Spec, System, cite, date, rule, table

_ON_CONCRETE, _METAL = "ASTM D7234", "metal"


@rule("TST021", on=Node, severity=WARNING, source=cite("ASTM-D4541"))
def pull_off_ground(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        condition = asked.test.condition
        if condition is not None and condition.substrate is not None:
            yield from _told(asked.path, asked.test.standard, {condition.substrate})
        else:
            yield from _told(asked.path, asked.test.standard, _grounds(subject, spec))
    if isinstance(subject, LabReport):
        for tested in tests_of(subject):
            yield from _told(("tests", tested.done.id), tested.done.standard, {tested.series.substrate})


def _told(path: Path, standard: str | None, grounds: set[str]) -> Problems:
    if not any(named.standard == _ON_CONCRETE for named in standards_in(standard or "")):
        return
    rows = [table("materials").row("id", ground) for ground in sorted(grounds)]
    if rows and all(row["kind"] == _METAL for row in rows):
        what = f"{_ON_CONCRETE} is the pull-off test on concrete, and this is {', '.join(row['name'] for row in rows)}"
        yield Problem((*path, "standard"), what)


def _grounds(subject: Node, spec: Spec) -> set[str]:
    """What the parts are of that the record is for."""
    if isinstance(subject, Job):
        placed = [(subject, item) for item in subject.items]
    else:
        placed = list(items_painted_with(subject, spec)) if isinstance(subject, System) else []
    found = [spec.substrate_of(job, item) for job, item in placed]
    return {substrate.material for substrate in found if substrate is not None}
