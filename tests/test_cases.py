"""Whole folders that were judged wrongly once: each finding that `tests/cases/must_raise.yaml` names has to be there."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
import yaml

from specgen.checking import check

CASES = Path(__file__).parent / "cases"
ON = date(2026, 11, 26)


def _named() -> dict[str, list[tuple[str, str]]]:
    told = yaml.load((CASES / "must_raise.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)
    return {name: [(rule, path) for rule, path in findings] for name, findings in told.items()}


def test_every_folder_is_named() -> None:
    assert sorted(_named()) == sorted(folder.name for folder in CASES.iterdir() if folder.is_dir())


@pytest.mark.parametrize("name", sorted(_named()))
def test_what_has_to_be_found_is_found(name: str) -> None:
    found = {(finding.id, finding.path) for finding in check(CASES / name, ON).report}
    assert _named()[name], "a case names what it has to raise"
    assert set(_named()[name]) <= found
