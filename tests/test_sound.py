"""Sound specifications in the manner of published ones: no error, and no warning that `tests/sound/may_warn.yaml` does not give a reason for; and faults put into them."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest
import yaml

from specgen.checking import check
from specgen.findings import Severity

SOUND = Path(__file__).parent / "sound"
ON = date(2026, 11, 26)
FOLDERS = sorted(folder.name for folder in SOUND.iterdir() if folder.is_dir())


def _may_warn() -> dict[str, dict[tuple[str, str], str]]:
    told = yaml.load((SOUND / "may_warn.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)
    return {name: {(rule, path): reason for rule, path, reason in entries} for name, entries in told.items()}


@pytest.mark.parametrize("name", FOLDERS)
def test_sound(name: str) -> None:
    found = [finding for finding in check(SOUND / name, ON).report if finding.severity is not Severity.NOTE]
    assert [(finding.id, finding.path, finding.what) for finding in found if finding.severity is Severity.ERROR] == []
    assert {(finding.id, finding.path) for finding in found} == set(_may_warn().get(name, {}))


def _faults() -> list[dict[str, Any]]:
    faults: list[dict[str, Any]] = yaml.load((SOUND / "faults.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)
    return faults


@pytest.mark.parametrize("told", _faults(), ids=lambda told: told["fault"])
def test_a_fault_put_in_is_found(told: dict[str, Any], tmp_path: Path) -> None:
    folder = tmp_path / "folder"
    copytree(SOUND / told["folder"], folder)
    for change in told["change"]:
        text = (folder / change["file"]).read_text("utf-8")
        assert text.count(change["take"]) == 1
        (folder / change["file"]).write_text(text.replace(change["take"], change["put"]), "utf-8")
    found = {(finding.id, finding.path, str(finding.severity)) for finding in check(folder, ON).report}
    assert told["raises"]
    assert {tuple(raised) for raised in told["raises"]} <= found


def test_every_warning_allowed_has_a_reason_and_a_folder() -> None:
    assert len(FOLDERS) >= 10
    assert set(_may_warn()) <= set(FOLDERS)
    assert all(reason for entries in _may_warn().values() for reason in entries.values())
