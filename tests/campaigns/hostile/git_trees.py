"""Revisions of a git repository that anyone may have pushed, as a side of a comparison. Called by `hostile_files`."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Callable
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[3]
_WHO = {
    f"GIT_{who}_{what}": said
    for who in ("AUTHOR", "COMMITTER")
    for what, said in (("NAME", "x"), ("EMAIL", "x"), ("DATE", "1700000000 +0000"))
}


def _git(place: Path, *arguments: str, said: bytes = b"") -> str:
    done = subprocess.run(
        ["git", *arguments], cwd=place, input=said, capture_output=True, check=True, env={**os.environ, **_WHO}
    )
    return done.stdout.decode().strip()


def _blob(place: Path, data: bytes) -> str:
    return _git(place, "hash-object", "-w", "--stdin", said=data)


def _tree(place: Path, entries: list[tuple[str, str, str]]) -> str:
    """A tree of mode, object and name, as they are: git is not asked whether it likes them."""
    raw = b"".join(mode.encode() + b" " + name.encode() + b"\0" + bytes.fromhex(held) for mode, held, name in entries)
    return _git(place, "hash-object", "-w", "-t", "tree", "--literally", "--stdin", said=raw)


def _project(place: Path) -> tuple[str, str, str]:
    return "100644", _blob(place, (_ROOT / "tests/good/project.yaml").read_bytes()), "project.yaml"


def _one_under_ten_names(place: Path) -> str:
    held = _blob(place, b" " * (700 * 1024 * 1024))
    return _tree(place, [*(("100644", held, f"a{n}.yaml") for n in range(10)), _project(place)])


def _doubling(place: Path) -> str:
    """Thirty floors of two folders each, which are one: a thousand million files."""
    tree = _tree(place, [("100644", _blob(place, b"a: b\n"), "a.yaml")])
    for _ in range(30):
        tree = _tree(place, [("40000", tree, "a"), ("40000", tree, "b")])
    return _tree(place, [("40000", tree, "a"), _project(place)])


def _million_names(place: Path) -> str:
    held = _blob(place, b"a: b\n")
    return _tree(place, [*(("100644", held, f"a{n:07}.yaml") for n in range(1_000_000)), _project(place)])


def _steps_up(place: Path) -> str:
    held = _blob(place, b"a: b\n")
    return _tree(
        place,
        [("100644", held, name) for name in ("../../a.yaml", "..", "a\n\x1b[31mb.yaml", ".git")] + [_project(place)],
    )


def _links(place: Path) -> str:
    return _tree(place, [("120000", _blob(place, b"/etc/passwd"), "a.yaml"), _project(place)])


def _five_thousand_full(place: Path) -> str:
    held = _blob(place, b"k: [" + b"a, " * 240 + b"a]\n")
    return _tree(place, [*(("100644", held, f"a{n:07}.yaml") for n in range(4_990)), _project(place)])


def _deep(place: Path) -> str:
    tree = _tree(place, [("100644", _blob(place, b"a: b\n"), "a.yaml")])
    for _ in range(300):
        tree = _tree(place, [("40000", tree, "d" * 200)])
    return _tree(place, [("40000", tree, "d"), _project(place)])


def _one(make: Callable[[Path], str]) -> Callable[[Path], list[list[str]]]:
    def case(place: Path) -> list[list[str]]:
        _git(place, "init", "-q")
        _git(place, "tag", "bad", _git(place, "commit-tree", make(place), "-m", "x"))
        return [["compare", "git:bad:", str(_ROOT / "tests/good")]]

    return case


CASES = {
    name.__name__.strip("_").replace("_", " "): _one(name)
    for name in (_one_under_ten_names, _doubling, _million_names, _steps_up, _links, _five_thousand_full, _deep)
}
