"""Prove the hook of `.pre-commit-hooks.yaml` as a user gets it: installed by pre-commit from a repository, run on a folder.

    .venv/bin/python tests/campaigns/try_hook.py

It needs the network, for pre-commit installs the package with its dependencies. The tree as it stands is copied into a repository of
its own, so nothing here is committed. Ends with 0 where the good folder passes and the broken one is refused with its finding.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
WHO = {f"GIT_{role}_{what}": "campaign" for role in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}


def _git(folder: Path, *arguments: str) -> str:
    done = subprocess.run(
        ["git", *arguments], cwd=folder, env={**os.environ, **WHO}, capture_output=True, text=True, check=True
    )
    return done.stdout


def _repository(folder: Path) -> None:
    _git(folder, "init", "--quiet")
    _git(folder, "add", "--all")
    _git(folder, "commit", "--quiet", "--message", "as it stands")


def _tool(place: Path) -> Path:
    tool = place / "tool"
    for name in _git(ROOT, "ls-files", "--cached", "--others", "--exclude-standard").splitlines():
        if (ROOT / name).is_file():
            (tool / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(ROOT / name, tool / name)
    _repository(tool)
    return tool


def _tried(tool: Path, sources: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "pre_commit", "try-repo", str(tool), "specgen-check", "--all-files", "--verbose"]
    return subprocess.run(command, cwd=sources, capture_output=True, text=True, check=False)


def main() -> int:
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        os.environ["PRE_COMMIT_HOME"] = str(place / "cache")
        tool = _tool(place)
        sources = place / "sources"
        shutil.copytree(ROOT / "tests/good", sources)
        _repository(sources)
        good = _tried(tool, sources)
        file = sources / "project.yaml"
        file.write_text(file.read_text("utf-8").replace("title: Yard", "titel: Yard"), "utf-8")
        broken = _tried(tool, sources)
    passed = good.returncode == 0 and "No findings" in good.stdout
    refused = broken.returncode == 1 and "project.yaml:" in broken.stdout and "MOD001" in broken.stdout
    print(good.stdout, good.stderr, broken.stdout, broken.stderr, sep="\n")
    print(
        f"good folder {'passes' if passed else 'FAILS'}, broken folder {'is refused' if refused else 'IS NOT REFUSED'}"
    )
    return 0 if passed and refused else 1


if __name__ == "__main__":
    sys.exit(main())
