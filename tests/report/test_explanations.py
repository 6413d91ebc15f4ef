"""Every id a finding can carry has a page, and a page says all there is to say."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import specgen
from specgen.assessing import faults as reading_faults
from specgen.assessing.faults import READING_FAULTS
from specgen.findings import Severity
from specgen.model.faults import SHAPE_FAULTS
from specgen.report.explanations import explanations
from specgen.report.printed_table import printed_table
from specgen.rules import waivers
from specgen.rules.declare import all_rules
from specgen.source.faults import FAULTS
from specgen.source.range_faults import RANGE_FAULTS
from specgen.standards.tables import table, table_names
from tests.good_spec import checked, good, put

_WAIVER = "{id: w, rule: %s, path: %s, reason: r, by: b, until: %s}"


def test_every_id_has_a_page() -> None:
    known = {
        *(rule.id for rule in all_rules()),
        *FAULTS,
        *RANGE_FAULTS,
        *SHAPE_FAULTS,
        *READING_FAULTS,
        *waivers.FAULTS,
        "RUN001",
        "RUN002",
    }
    assert set(explanations()) == known
    assert list(explanations()) == sorted(known)


def test_every_id_named_in_the_code_has_a_page() -> None:
    package = Path(specgen.__file__).parent
    named = {
        found
        for file in package.rglob("*.py")
        for found in re.findall(r'"([A-Z]{3}[0-9]{3})"', file.read_text("utf-8"))
        if not re.match(r"GHS|EUH", found)
    }
    assert sorted(named - set(explanations())) == []


@pytest.mark.parametrize("rule", all_rules(), ids=[rule.id for rule in all_rules()])
def test_page_of_a_rule(rule: object) -> None:
    page = explanations()[rule.id]  # type: ignore[attr-defined]  # a Rule; pytest hands it on as any object
    headings = [heading.split(" (")[0] for heading, _ in page.parts]
    assert headings == ["Checks", "Why", "Passes", "Fails", "To put right", "Severity", "Source"]
    assert all(said.strip() for _, said in page.parts)
    text = page.text()
    assert text.startswith(f"{page.id} {page.title}\n\nChecks\n    ")
    assert text.endswith("\n")


def test_page_of_a_reading_fault_word_for_word() -> None:
    assert explanations()["SRC017"].text() == (
        "SRC017 The same key twice\n\n"
        "Why\n    Only one of the two can apply, and which one is not stated.\n\n"
        "Example\n    dft: 60 um\n    dft: 80 um   keep one of them\n\n"
        "To put right\n    Delete one of the two lines, or correct the name of one key.\n\n"
        "Severity\n    error: the document must not be issued, and nobody can waive it\n"
    )


@pytest.mark.parametrize(
    ("fault", "rule", "path", "until", "change"),
    [
        ("WVR001", "FLM002", "systems.cab", "2027-01-01", ("project.title", "x")),
        ("WVR002", "FLM002", "systems.cab", "2026-01-01", ("project.title", "x")),
        (
            "WVR003",
            "HAZ003",
            "products.primer.hazards.safety_data_sheet",
            "2027-01-01",
            ("products.primer.hazards", "{}"),
        ),
    ],
)
def test_severity_of_a_waiver_fault_is_that_of_its_finding(
    fault: str, rule: str, path: str, until: str, change: tuple[str, str]
) -> None:
    spec = good()
    put(spec, *change)
    put(spec, "jobs.refit.waivers", "[" + _WAIVER % (rule, path, until) + "]")
    severities = [f.severity for f in checked(spec).report if f.id == fault]
    assert severities == [explanations()[fault].severity]


def test_severity_line() -> None:
    said = {severity: set() for severity in Severity}  # type: dict[Severity, set[str]]
    for page in explanations().values():
        said[page.severity].add(dict(page.parts)["Severity"])
    assert said[Severity.NOTE] == {"note: for information"}
    assert said[Severity.ERROR] == {
        "error: the document must not be issued, and nobody can waive it",
        "error: the document must not be issued, and nobody can waive it, not even where it warns",
        "that of the severest finding left out",
    }
    assert said[Severity.WARNING] == {
        "warning: it may be issued, with a recorded waiver",
        "warning: it may be issued, but no waiver sets it aside",
    }


@pytest.mark.parametrize("name", table_names())
def test_table_is_printed_whole(name: str) -> None:
    found = table(name)
    lines = printed_table(found).splitlines()
    assert lines[0] == f"{found.title} (table:{name})"
    assert f"basis     {found.basis}" in lines
    assert len(lines) - lines.index(next(line for line in lines if set(line) <= {"-", " "} and line)) - 1 == len(
        found.rows
    )
    assert all(
        cell in line for row, line in zip(found.rows, lines[-len(found.rows) :], strict=True) for cell in row.values()
    )


def test_table_word_for_word() -> None:
    assert printed_table(table("film_per_cross_coat")) == (
        "Dry film of one normal cross coat (table:film_per_cross_coat)\n\n"
        "basis     common practice, no source\n\n"
        "coat                                        low_um  high_um\n"
        "------------------------------------------  ------  -------\n"
        "cross coat from a can                       8       20\n"
        "cross coat of basecoat from a can           4       20\n"
        "cross coat of adhesion promoter from a can  2       10\n"
        "cross coat of surfacer from a can           8       35\n"
        "cross coat of zinc-rich paint from a can    8       35\n"
    )


def test_no_two_faults_of_readings_share_an_id() -> None:
    source = Path(str(reading_faults.__file__)).read_text("utf-8")
    stated = re.findall(r'ReadingFault\(\n\s+"(RDG[0-9]{3})"', source)
    assert sorted(stated) == sorted(READING_FAULTS)
