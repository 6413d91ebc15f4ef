"""The hook shipped for repositories of sources. That pre-commit installs and runs it is proven by `campaigns/try_hook.py`."""

from __future__ import annotations

import re
import shlex
import shutil
from pathlib import Path

import pytest
from pre_commit.clientlib import load_manifest

from specgen.commands import main
from tests.good_spec import GOOD

MANIFEST = Path(__file__).parents[1] / ".pre-commit-hooks.yaml"


def test_manifest_is_one_hook() -> None:
    (hook,) = load_manifest(str(MANIFEST))
    assert (hook["id"], hook["entry"], hook["language"], hook["pass_filenames"]) == (
        "specgen-check",
        "specgen check .",
        "python",
        False,
    )
    touched = {name: bool(re.search(hook["files"], name)) for name in ("job.yaml", "a/b.yml", "a.yaml.txt", "x.md")}
    assert touched == {"job.yaml": True, "a/b.yml": True, "a.yaml.txt": False, "x.md": False}


def test_entry_passes_a_good_folder_and_stops_a_broken_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (hook,) = load_manifest(str(MANIFEST))
    program, *arguments = shlex.split(hook["entry"])
    assert program == "specgen"
    sources = tmp_path / "sources"
    shutil.copytree(GOOD, sources)
    monkeypatch.chdir(sources)
    assert main([*arguments, "--on", "2026-11-25"]) == 0
    assert capsys.readouterr().out == "No findings, assessed as at 2026-11-25.\n"
    file = sources / "project.yaml"
    file.write_text(file.read_text("utf-8").replace("title: Yard", "titel: Yard"), "utf-8")
    assert main(arguments) == 1
    assert capsys.readouterr().out.startswith("project.yaml:2:1: error MOD002 title is missing in project\n")
