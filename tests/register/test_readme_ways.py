"""The ways README names for two who issued at once and for a lost register, run as they stand there."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from specgen.register.chain import all_faults
from specgen.register.folder import histories, history_of
from specgen.register.state import issues
from tests.register.conftest import Desk

ROOT = Path(__file__).resolve().parents[2]
_SECTION = "### Two who issued at once, and a register lost"
TAKE_BACK, BACKUP = re.findall(r"(?s)```console\n(.*?)```", (ROOT / "README.md").read_text("utf-8").split(_SECTION)[1])


@pytest.fixture
def place(desk: Desk, tmp_path: Path) -> Path:
    """A repository whose folder `specs` holds the job MS-214, with one revision issued; `specgen` stands on the path."""
    desk.change("number: MS-001", "number: MS-214")
    desk.revise("MS-214")
    program = tmp_path / "bin/specgen"
    program.parent.mkdir()
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m specgen "$@"\n')
    program.chmod(0o755)
    origin = tmp_path / "origin"
    origin.mkdir()
    shutil.move(desk.folder, origin / "specs")
    _say(origin, "git init -q -b main && git add -A && git commit -q -m first")
    return origin


def _say(place: Path, commands: str) -> subprocess.CompletedProcess[str]:
    who = {"GIT_AUTHOR_NAME": "t", "GIT_AUTHOR_EMAIL": "t@example.org"}
    who |= {name.replace("AUTHOR", "COMMITTER"): value for name, value in who.items()}
    path = f"{place.parent / 'bin'}{os.pathsep}{os.environ['PATH']}"
    return subprocess.run(
        ["bash", "-euo", "pipefail", "-c", commands],
        cwd=place, capture_output=True, text=True, env={**os.environ, **who, "PATH": path, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip


def _issue(clone: Path, minutes: int, reason: str) -> None:
    desk = Desk(clone / "specs")
    desk.minutes = minutes
    desk.revise("MS-214", reason=reason)
    assert _say(clone, f"git add -A && git commit -q -m '{reason}'").returncode == 0


def test_an_issue_is_taken_back_and_made_again(place: Path) -> None:
    clone = place.parent / "clone"
    assert _say(place.parent, f"git clone -q {place} {clone}").returncode == 0
    _issue(place, 10, "by the first")
    _issue(clone, 20, "by the second")
    met = _say(clone, "git fetch -q && git merge -q origin/main")
    assert met.returncode != 0
    conflicts = _say(clone, "git diff --name-only --diff-filter=U").stdout
    assert "specs/register/MS-214/0002/record.json" in conflicts
    done = _say(clone, TAKE_BACK)
    assert done.returncode == 0, done.stderr
    assert "2 records of 1 document, all whole" in done.stdout
    _issue(clone, 30, "by the second, again")
    found = history_of(clone / "specs/register", "MS-214")
    assert [(one.record.revision, one.record.reason) for one in issues(found.kept)][1:] == [
        ("B", "by the first"),
        ("C", "by the second, again"),
    ]
    assert list(all_faults(found)) == []


def test_a_register_is_restored_from_its_backup(place: Path) -> None:
    (place / "backup").mkdir()
    save, receipt, restore, check = BACKUP.splitlines()
    assert _say(place, f"{save}\n{receipt}").returncode == 0
    shutil.rmtree(place / "specs/register")
    assert _say(place, check).returncode != 0
    done = _say(place, f"{restore}\n{check}")
    assert done.returncode == 0, done.stderr
    assert "all whole; against the receipt too." in done.stdout
    # an older backup than the receipt is found out
    _issue(place, 40, "after the backup")
    assert _say(place, receipt).returncode == 0
    shutil.rmtree(place / "specs/register")
    late = _say(place, f"{restore}\n{check}")
    assert (late.returncode, "is gone; the receipt knows it" in late.stdout) == (1, True)
    assert [one.document for one in histories(place / "specs/register")] == ["MS-214"]
