"""Sound specifications in the manner of published ones: no error, and no warning that `tests/sound/may_warn.yaml` does not give a reason for."""

from __future__ import annotations

from datetime import date
from pathlib import Path

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


def test_every_warning_allowed_has_a_reason_and_a_folder() -> None:
    assert len(FOLDERS) >= 10
    assert set(_may_warn()) <= set(FOLDERS)
    assert all(reason for entries in _may_warn().values() for reason in entries.values())
