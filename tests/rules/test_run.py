"""A rule that crashes is an error finding at its record, and what rests on unconfirmed ground is refused as an error."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest

from specgen.findings import Finding, Place, Severity
from specgen.model.declaring import Concern
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, Rule, all_rules, rule
from specgen.rules.most_findings import severest
from specgen.rules.run import run_rules
from specgen.standards.citations import LOGIC, MEMORY, PRACTICE
from tests.good_spec import ON, checked, good


def _crash(subject: Job, spec: Spec, on: date) -> Iterator[Problem]:
    yield Problem(("scope",), "found before the crash")
    raise ZeroDivisionError("no film")


def test_crash_is_a_finding_and_keeps_what_was_found() -> None:
    docstring = all_rules()[0].docstring
    crashing = Rule("TST001", Job, Severity.NOTE, Concern.DOCUMENT, LOGIC, True, _crash, docstring)
    loaded = checked(good()).loaded
    first, second = run_rules(loaded, ON, [crashing])
    assert (first.id, first.path, first.what) == ("TST001", "jobs.refit.scope", "found before the crash")
    assert (second.id, second.severity, second.path) == ("RUN001", Severity.ERROR, "jobs.refit")
    assert second.what == "the rule TST001 stopped with ZeroDivisionError: no film"


def test_the_severest_are_listed_and_the_others_counted() -> None:
    def finding(number: int, severity: Severity) -> Finding:
        return Finding("TST001", severity, Place("a.yaml", number, 1, 2), "", "")

    notes = [finding(number, Severity.NOTE) for number in range(1, 2_000)]
    errors = [finding(number, Severity.ERROR) for number in range(3_000, 3_011)]
    assert severest([*notes, errors[0]]) == [*notes, errors[0]]
    kept = severest([*notes, *errors])
    assert kept[:-1] == [*errors, *notes[:1_989]]
    assert (kept[-1].id, kept[-1].severity, kept[-1].place.line) == ("RUN002", Severity.NOTE, 1_990)
    assert kept[-1].what == "10 more findings are not listed, 0 of them errors"


@pytest.mark.parametrize("ground", [PRACTICE, MEMORY])
def test_an_error_never_rests_on_unconfirmed_ground(ground: object) -> None:
    with pytest.raises(TypeError, match="an error cannot rest on"):
        rule("TST002", on=Job, severity=Severity.ERROR, concern=Concern.DOCUMENT, source=ground)
