"""Specifications that name no product: sound ones check without error or warning, faults in them are told, and what depends on the choice is told as that."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest
import yaml

from specgen.checking import Checked, check
from specgen.findings import Severity
from specgen.printing.documents import Refused, print_documents

PERFORMANCE = Path(__file__).parent / "performance"
ON = date(2026, 11, 26)
FOOTBRIDGE = "footbridge"


def _changed(tmp_path: Path, name: str, *changes: tuple[str, str]) -> Checked:
    folder = tmp_path / name
    copytree(PERFORMANCE / name, folder)
    for take, put in changes:
        file = next(one for one in sorted(folder.glob("*.yaml")) if take in one.read_text("utf-8"))
        text = file.read_text("utf-8")
        assert text.count(take) == 1
        file.write_text(text.replace(take, put), "utf-8")
    return check(folder, ON)


def _told(checked: Checked, rule: str) -> set[tuple[str, str]]:
    return {(str(found.severity), found.what.partition(":")[0]) for found in checked.report if found.id == rule}


def test_a_specification_of_families_is_sound() -> None:
    assert [found for found in check(PERFORMANCE / FOOTBRIDGE, ON).report if found.severity is not Severity.NOTE] == []


def _faults() -> list[dict[str, Any]]:
    return list(yaml.load((PERFORMANCE / "faults.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader))


@pytest.mark.parametrize("told", _faults(), ids=lambda told: told["fault"])
def test_a_fault_put_in_is_found(told: dict[str, Any], tmp_path: Path) -> None:
    changes = [(change["take"], change["put"]) for change in told["change"]]
    found = {(f.id, f.path, str(f.severity)) for f in _changed(tmp_path, told["folder"], *changes).report}
    assert told["raises"]
    assert {tuple(raised) for raised in told["raises"]} <= found


VINYL = (
    "generic_type: zinc_organic, solids: min 55 %",
    "generic_type: vinyl, alternatives: [{id: zinc, generic_type: zinc_organic}]",
)
LESS_CLEAN = ("Blast clean to Sa 2 1/2., grade: Sa 2 1/2", "Blast clean to Sa 2., grade: Sa 2")


def test_an_error_of_one_choice_alone_is_a_warning_that_names_it(tmp_path: Path) -> None:
    one = _changed(tmp_path, FOOTBRIDGE, VINYL)
    assert _told(one, "OVR001") == {("warning", "with the first requirement of the coat zinc")}
    assert one.report.count(Severity.ERROR) == 0


def test_where_no_choice_is_possible_the_errors_stay(tmp_path: Path) -> None:
    none = _changed(tmp_path, FOOTBRIDGE, VINYL, LESS_CLEAN)
    assert _told(none, "OVR001") == {("error", "with the first requirement of the coat zinc")}
    assert _told(none, "SUB004") == {("error", "with the alternative zinc of the coat zinc")}


def test_what_is_found_with_every_choice_is_told_once_and_names_none(tmp_path: Path) -> None:
    close = _changed(tmp_path, FOOTBRIDGE, ("dew_point_margin: min 3 K", "dew_point_margin: min 1 K"))
    assert _told(close, "CLI004") == {
        ("error", "the surface is kept min 1 K above the dew point; the general minimum is 3 K")
    }


def test_it_prints_as_a_performance_specification_and_nothing_that_needs_products() -> None:
    checked = check(PERFORMANCE / FOOTBRIDGE, ON)
    printed = print_documents(checked, formats=["html", "csv"])
    assert list(printed) == ["GW-7-performance-specification.html"]
    page = printed["GW-7-performance-specification.html"].decode()
    assert "According to the safety data sheet of the product chosen" in page
    assert "What the supplier must prove" in page
    with pytest.raises(Refused, match="before the products are chosen"):
        print_documents(checked, documents=["hazard-card"])
