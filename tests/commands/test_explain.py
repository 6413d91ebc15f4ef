"""`specgen explain`: a page, the list of them, a table, and what is nearest to a slip."""

from __future__ import annotations

import re

import pytest

from specgen.commands import main
from specgen.report.explanations import explanations


@pytest.mark.parametrize("asked", ["FLM002", "flm002", "SRC017", "MOD003", "WVR001", "RUN001"])
def test_page(asked: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", asked]) == 0
    assert capsys.readouterr() == (explanations()[asked.upper()].text(), "")


def test_list(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "--list"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) == len(explanations())
    assert all(re.fullmatch(r"[A-Z]{3}[0-9]{3}  (error  |warning|note   )  \S.*", line) for line in lines)
    assert "FLM002  warning  A film with a lower limit has an upper one" in lines
    assert lines == sorted(lines)


def test_table(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "table:materials"]) == 0
    assert capsys.readouterr().out.startswith("Materials of parts (table:materials)\n")


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("FLM02", "there is no page for 'FLM02'; nearest: FLM0"),
        ("nothing", "there is no page for 'nothing'; `specgen explain --list` lists them"),
        ("table:material", "there is no table 'material'; nearest: table:materials"),
        ("table:../documents", "there is no table '../documents'; "),
        ("table:", "there is no table ''; tables: "),
    ],
)
def test_unknown(asked: str, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", asked]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.startswith(f"specgen: {said}")
    assert printed.err.count("\n") == 1
