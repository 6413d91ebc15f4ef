"""The text report, word for word, and its source line under tabs, wide signs and long lines."""

from __future__ import annotations

import unicodedata
from datetime import date

import pytest

from specgen.findings import Finding, NotJudged, Place, Report, Severity
from specgen.report.as_text import write
from specgen.report.source_line import SCREEN, source_line
from tests.good_spec import ON, checked, good, put

ONE = """\
specs/spec.yaml:30:12: error FLM003 maximum DFT 95 um is above the maximum of the product primer, 80 um
   30 |       max: 95 um
      |            ^^^^^
  at:     systems.cab.layers.primer.film.max
  why:    Below its minimum DFT a product does not protect or hide; above its maximum it runs, traps
          solvent or cracks.
  do:     Stay within the DFT range of the product, or choose another product.
  source: arithmetic and the specification's own data

FLM003 1.
1 error, no warnings and no notes, assessed as at 2026-11-25.
"""


def _finding(**changed: object) -> Finding:
    given: dict[str, object] = {
        "id": "FLM001",
        "severity": Severity.WARNING,
        "place": Place("a.yaml", 2, 6, 11, "max: 60 um"),
        "path": "systems.a.total.max",
        "what": "what is wrong",
        "why": "why it matters",
        "remedy": "what to do",
        "source": "a document",
    }
    return Finding(**{**given, **changed})  # type: ignore[arg-type]  # the test names the fields it changes


def _write(*findings: Finding, prefix: str = "") -> str:
    return write(Report.of(findings), prefix=prefix, on=date(2026, 11, 25))


def test_clean_folder_is_one_line() -> None:
    assert write(checked(good()).report, prefix="specs/", on=ON) == "No findings, assessed as at 2026-11-25.\n"


def test_parts_that_are_not_known_are_left_out() -> None:
    bare = _finding(path="", why="", remedy="", source="", place=Place("a.yaml", 2, 6, 11))
    assert _write(bare) == (
        "a.yaml:2:6: warning FLM001 what is wrong\n\nFLM001 1.\nno errors, 1 warning and no notes, assessed as at 2026-11-25.\n"
    )


def test_names_cannot_steer_a_screen() -> None:
    bare = _finding(path="", why="", remedy="", source="", place=Place("a\x1b[31m.yaml", 2, 6, 11))
    assert _write(bare, prefix="b\n/").splitlines()[0] == "b\ufffd/a\ufffd[31m.yaml:2:6: warning FLM001 what is wrong"


def test_running_text_is_wrapped_and_the_first_line_is_not() -> None:
    long = " ".join(["word"] * 60)
    lines = _write(_finding(what=long, why=long)).splitlines()
    assert lines[0] == f"a.yaml:2:6: warning FLM001 {long}"
    told = lines[lines.index("  at:     systems.a.total.max") + 1 : -5]
    assert told[0].startswith("  why:    word word")
    assert all(line.startswith("          word") for line in told[1:])
    assert [len(line) for line in told] == [99, 99, 99, 39]


def test_counts() -> None:
    found = [_finding(what=str(n), severity=s) for n, s in enumerate([Severity.ERROR] * 2 + [Severity.NOTE] * 3)]
    assert _write(*found).splitlines()[-1] == "2 errors, no warnings and 3 notes, assessed as at 2026-11-25."


def _ranked() -> list[Finding]:
    weights = ((Severity.NOTE, "NOT001"), (Severity.WARNING, "WAR001"), (Severity.ERROR, "ERR001"))
    rest = ((Severity.WARNING, "WAR002"), (Severity.WARNING, "WAR002"))
    return [
        _finding(id=id, severity=weight, place=Place("a.yaml", line, 1, 2), path=f"p.{line}")
        for line, (weight, id) in enumerate((*weights, *rest), 1)
    ]


def _order(text: str) -> list[str]:
    return [line.split(":")[1] for line in text.splitlines() if line.startswith("a.yaml:")]


def test_the_gravest_come_first_and_those_of_one_weight_by_line() -> None:
    assert _order(_write(*_ranked())) == ["3", "2", "4", "5", "1"]


def test_by_file_they_keep_the_order_of_the_lines() -> None:
    text = write(Report.of(_ranked()), prefix="", on=ON, by_file=True)
    assert _order(text) == ["1", "2", "3", "4", "5"]
    assert text.splitlines()[-2] == _write(*_ranked()).splitlines()[-2]


def test_totals_by_rule_stand_above_the_counts() -> None:
    assert _write(*_ranked()).splitlines()[-2] == "ERR001 1, WAR002 2, WAR001 1, NOT001 1."


def test_one_cause_is_told_once_with_every_place() -> None:
    alike = [_finding(cause="c", place=Place("a.yaml", n, 1, 2), path=f"p.{n}") for n in range(1, 16)]
    lines = _write(*alike, _finding(cause="d", place=Place("a.yaml", 20, 1, 2))).splitlines()
    assert _order("\n".join(lines)) == ["1", "20"]
    # twelve are named, and the line is wrapped
    assert lines[2] == "  also:   at 14 more places: " + ", ".join(f"p.{n}" for n in range(2, 14)) + " and 2"
    assert lines[3].strip() == "more"
    assert lines[-2:] == ["FLM001 2.", "no errors, 2 warnings and no notes, assessed as at 2026-11-25."]


def test_at_one_place_the_words_that_differ_are_told() -> None:
    alike = [_finding(cause="c", what=f"precaution {code} is missing") for code in ("P210", "P261", "P280")]
    assert "  also:   for P261, P280" in _write(*alike).splitlines()


def test_findings_without_a_cause_and_of_another_weight_or_remedy_stay_apart() -> None:
    found = [
        _finding(path="p.1"),
        _finding(path="p.2"),
        _finding(path="p.3", cause="c"),
        _finding(path="p.4", cause="c", severity=Severity.ERROR),
        _finding(path="p.5", cause="c", remedy="something else"),
        _finding(path="p.6", cause="c", id="FLM002"),
    ]
    assert len(_order(_write(*found))) == 6


def test_what_was_not_judged_stands_in_a_line_before_the_totals() -> None:
    own = NotJudged(("products.primer",), "for its own faults", in_part=False)
    rest = NotJudged(tuple(f"jobs.j{n}" for n in range(8)), "for products.primer cannot be relied on", in_part=True)
    text = write(Report((_finding(),), (own, rest)), prefix="", on=ON)
    assert " ".join(text.split("\n\n")[-2].split()) == (
        "Not judged, for its own faults: products.primer. Not judged in full, for products.primer cannot be "
        "relied on: jobs.j0, jobs.j1, jobs.j2, jobs.j3, jobs.j4, jobs.j5 and 2 more."
    )


def test_nothing_a_screen_obeys_comes_out() -> None:
    text = _write(_finding(what="a\x1b[31mb\r\nc\u202ed", why="e\x07f", place=Place("a.yaml", 1, 1, 2, "x\x1b[0m")))
    assert "a\ufffd[31mb c\ufffdd" in text
    assert all(sign == "\n" or unicodedata.category(sign) not in {"Cc", "Cf"} for sign in text)


def _caret(text: str, column: int, end_column: int) -> list[str]:
    return source_line(Place("a.yaml", 7, column, end_column, text))


def _columns(text: str) -> int:
    return sum(2 if unicodedata.east_asian_width(sign) in {"W", "F"} else 1 for sign in text)


@pytest.mark.parametrize(
    ("text", "column", "end_column", "expected"),
    [
        ("max: 60 um", 6, 11, ["    7 | max: 60 um", "      |      ^^^^^"]),
        ("max:", 5, 5, ["    7 | max:", "      |     ^"]),
        ("max:", 9, 12, ["    7 | max:", "      |     ^"]),
        ("max: 60 um   ", 1, 4, ["    7 | max: 60 um", "      | ^^^"]),
        ("\tmax: 6", 7, 8, ["    7 |         max: 6", "      |              ^"]),
        ("a:\t6 um", 4, 8, ["    7 | a:      6 um", "      |         ^^^^"]),
        ("日本: 60", 5, 7, ["    7 | 日本: 60", "      |       ^^"]),
        ("a: 日本 x", 4, 6, ["    7 | a: 日本 x", "      |    ^^^^"]),
        ("e\u0301: 60", 5, 7, ["    7 | e\u0301: 60", "      |    ^^"]),
        ("", 1, 2, []),
        ("   ", 1, 2, []),
    ],
    ids=[
        "plain",
        "empty",
        "past the end",
        "blanks behind",
        "tab",
        "tab inside",
        "wide",
        "wide stretch",
        "accent",
        "no text",
        "blanks",
    ],
)
def test_caret_stands_under_the_stretch(text: str, column: int, end_column: int, expected: list[str]) -> None:
    assert _caret(text, column, end_column) == expected


@pytest.mark.parametrize("at", [1, 50, 150, 1000, 1990])
def test_long_line_is_cut_around_the_stretch(at: int) -> None:
    text = "".join(f"{number:<10}" for number in range(200))
    line, carets = _caret(text, at, at + 5)
    assert len(line) <= SCREEN
    assert len(line) > SCREEN - 20
    where = carets.index("^")
    assert carets.count("^") == 5
    assert line[where : where + 5].ljust(5) == text[at - 1 : at + 4]
    assert ("…" in line[:9], line.endswith("…")) == (at >= 50, at < 1900)


def test_stretch_longer_than_the_screen_is_cut_too() -> None:
    line, carets = _caret("x" * 500, 10, 400)
    assert len(line) == SCREEN
    assert len(carets) <= SCREEN
    assert line[carets.index("^")] == "x"


def test_wide_signs_count_twice_where_a_line_is_cut() -> None:
    line, carets = _caret("日" * 300, 200, 201)
    assert _columns(line) <= SCREEN
    assert carets.endswith("^^")
    assert not carets.endswith("^^^")


def test_one_finding_word_for_word() -> None:
    spec = good()
    put(spec, "systems.cab.layers.primer.film.max", "95 um")
    put(spec, "systems.cab.total.max", "195 um")
    put(spec, "jobs.refit.inspection.primer-film.criterion.max", "95 um")
    assert write(checked(spec).report, prefix="specs/", on=ON) == ONE
