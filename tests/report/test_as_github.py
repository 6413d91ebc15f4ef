"""Annotations: the words of the build server, and everything that would break out of them escaped."""

from __future__ import annotations

import pytest

from specgen.findings import Finding, NotJudged, Place, Report, Severity
from specgen.report.as_github import write
from tests.good_spec import ON


def _line(severity: Severity, place: Place, what: str, why: str = "", remedy: str = "") -> str:
    report = Report.of([Finding("FLM002", severity, place, "a.b", what, why, remedy)])
    return write(report, prefix="specs/", on=ON).splitlines()[0]


@pytest.mark.parametrize(
    ("severity", "word"), [(Severity.ERROR, "error"), (Severity.WARNING, "warning"), (Severity.NOTE, "notice")]
)
def test_severity(severity: Severity, word: str) -> None:
    expected = f"::{word} file=specs/a.yaml,line=2,col=6,endColumn=10,title=FLM002::what"
    assert _line(severity, Place("a.yaml", 2, 6, 11), "what") == expected


def test_message_holds_why_and_what_to_do() -> None:
    line = _line(Severity.NOTE, Place("a.yaml", 2, 6, 11), "what", "why", "do")
    assert line.endswith("::what%0Awhy%0Ado")


def test_one_cause_is_one_command_that_names_every_place() -> None:
    found = [
        Finding("FLM002", Severity.NOTE, Place("a.yaml", n, 1, 2), f"a.b{n}", "what", cause="c") for n in (1, 2, 3)
    ]
    first, last = write(Report.of(found), prefix="", on=ON).splitlines()
    assert (
        first == "::notice file=a.yaml,line=1,col=1,endColumn=1,title=FLM002::what%0Aalso at 2 more places: a.b2, a.b3"
    )
    assert last.startswith("no errors, no warnings and 1 note,")


def test_what_was_not_judged_is_a_plain_line() -> None:
    gap = NotJudged(("products.primer",), "for its own faults", in_part=False)
    assert write(Report((), (gap,)), prefix="", on=ON).splitlines()[0] == (
        "Not judged, for its own faults: products.primer."
    )


def test_escaping() -> None:
    line = _line(Severity.ERROR, Place("a,b:c%.yaml", 2, 6, 6), "50 %\r\n::error::x, y")
    assert line == ("::error file=specs/a%2Cb%3Ac%25.yaml,line=2,col=6,endColumn=6,title=FLM002::50 %25 ::error::x, y")


def test_names_cannot_steer_a_screen() -> None:
    line = _line(Severity.NOTE, Place("a\x1b[31m\n.yaml", 2, 6, 11), "what")
    assert line == "::notice file=specs/a\ufffd[31m\ufffd.yaml,line=2,col=6,endColumn=10,title=FLM002::what"


def test_last_line_counts_and_is_no_command() -> None:
    assert write(Report(), prefix="", on=ON) == "no errors, no warnings and no notes, assessed as at 2026-11-25.\n"
