"""What the README shows is what the program says: its finding, its commands, its shell blocks."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from specgen.commands import main
from specgen.commands.arguments import COMMANDS

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
# The first film of the demo's first system is the primer's; its product allows 85 um.
ASKED, TOO_MUCH = "film: {min: 40 um, nominal: 56 um, max: 80 um}", "film: {min: 40 um, nominal: 56 um, max: 90 um}"
BLOCK = re.compile(r"(?s)```text\n(.*?)\n```")


def test_finding_is_the_real_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], request: pytest.FixtureRequest
) -> None:
    shutil.copytree(ROOT / "specs_demo", tmp_path / "specs_demo")
    systems = tmp_path / "specs_demo/range/systems.yaml"
    systems.write_text(systems.read_text("utf-8").replace(ASKED, TOO_MUCH, 1), "utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(["check", "specs_demo", "--on", "2026-11-25"]) == 1
    said = capsys.readouterr().out.strip()
    # Only the error is shown; the notes of the demo are its own.
    finding = next(part for part in said.split("\n\n") if " error FLM003 " in part)
    if request.config.getoption("--update-golden"):
        README.write_text(BLOCK.sub(lambda _: f"```text\n{finding}\n```", README.read_text("utf-8"), count=1), "utf-8")
    shown = BLOCK.search(README.read_text("utf-8"))
    assert shown is not None
    assert shown[1] == finding


def test_every_command_has_its_line() -> None:
    listed = re.findall(r"(?m)^\| `specgen ([\w-]+)", README.read_text("utf-8"))
    assert sorted(set(listed)) == sorted(COMMANDS)


def test_set_up_is_two_lines_and_the_gate_runs_them() -> None:
    (block,) = re.findall(r"(?s)```sh\n(.*?)```", README.read_text("utf-8"))
    lines = block.splitlines()
    assert lines == [".ci/setup", ".ci/tests"]
    assert all(os.access(ROOT / line, os.X_OK) for line in lines)
    gate = (ROOT / ".ci/run").read_text("utf-8")
    (taken,) = re.findall(r"(?m)^line\(\) \{ (.*); \}$", gate)
    for number, line in enumerate(lines, start=1):
        assert f'bash -euo pipefail -c "$(line {number})"' in gate
        told = subprocess.run(
            ["bash", "-c", taken, "bash", str(number)], cwd=ROOT, capture_output=True, text=True, check=True
        )
        assert told.stdout == f"{line}\n"
