"""Sources as they stand in a revision of a git repository, read into memory. Called by `sides`.

git is asked for a list of files and for their bytes, nothing else: no file is written, no hook, filter or converter runs, nothing
is fetched. The bounds are those of a folder.
"""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator, Sequence
from pathlib import Path, PurePosixPath

from specgen.commands.outcome import CannotRunError
from specgen.findings import Finding
from specgen.report.lines import one_line
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.project import FILES_LIMIT, TOTAL_LIMIT, VERDICTS, Sources
from specgen.source.reader import read_text
from specgen.source.tree import SourceFile

_SECONDS = 60
_ENDINGS = (".yaml", ".yml")
_ASK = (
    "git",
    "-c",
    "core.hooksPath=/dev/null",
    "-c",
    "core.fsmonitor=false",
    "-c",
    "protocol.allow=never",
    "--no-pager",
)
_QUIET = {
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_NO_REPLACE_OBJECTS": "1",
}
_FORM = "write git:REVISION:PATH, as in git:HEAD~1:specs"


def sources_at(spelling: str) -> tuple[Sources, str]:
    """The sources at `REVISION:PATH`, and what leads to their files: `HEAD~1:specs/`.

    PATH is relative to the current folder. A file stands for the nearest folder above it with a project.yaml.
    Raises CannotRunError.
    """
    revision, colon, path = spelling.partition(":")
    if not colon or not revision or revision.startswith("-") or "\0" in spelling:
        raise CannotRunError(f"git:{spelling} names no revision and path; {_FORM}")
    commit = _line(["rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"], revision)
    inside = _inside(_line(["rev-parse", "--show-prefix"], revision), path)
    folder, listed = _folder(commit, inside, revision)
    files, findings = [], list[Finding]()
    for name, blob in listed:
        source, faults = _read(blob, name)
        files.append(source)
        findings += faults
    return Sources(
        Path(), tuple(files), tuple(findings)
    ), f"{printable_name(revision)}:{f'{folder}/' if folder else ''}"


def _inside(prefix: str, path: str) -> str:
    """The path from the top of the repository; leading out of it is refused."""
    steps: list[str] = []
    for step in PurePosixPath(prefix, path.replace("\\", "/")).parts:
        if step == "..":
            if not steps:
                raise CannotRunError(f"the path {path} leads out of the repository")
            steps.pop()
        elif step == "/":
            raise CannotRunError(f"the path {path} is absolute; write it from the current folder")
        else:
            steps.append(step)
    return "/".join(steps)


def _folder(commit: str, inside: str, revision: str) -> tuple[str, list[tuple[str, str]]]:
    """The folder of the project, and name and blob of each source in it, in sorted order."""
    every = list(_tree(commit))
    names = {path for path, _, _ in every}
    folder = inside
    if inside in names:
        above = [str(parent) for parent in PurePosixPath(inside).parents]
        found = (place for place in above if f"{place}/project.yaml".removeprefix("./") in names)
        folder = next(found, above[0]).removeprefix(".")
    under = f"{folder}/" if folder else ""
    if folder and not any(path.startswith(under) for path in names):
        raise CannotRunError(f"{inside} is not in the revision {revision}")
    listed = [(path.removeprefix(under), blob, size) for path, blob, size in every if _is_source(path, under)]
    if len(listed) > FILES_LIMIT or sum(min(size, FILE_LIMIT + 1) for _, _, size in listed) > TOTAL_LIMIT:
        raise CannotRunError(
            f"{inside or 'the repository'} holds more than can be read; name the folder of the sources"
        )
    return folder, sorted((name, blob) for name, blob, _ in listed)


def _is_source(path: str, under: str) -> bool:
    name = path.removeprefix(under)
    hidden = any(step.startswith(".") for step in name.split("/"))
    return path.startswith(under) and name.lower().endswith(_ENDINGS) and not hidden and name != VERDICTS


def _tree(commit: str) -> Iterator[tuple[str, str, int]]:
    """Path, blob and size of every ordinary file of the revision."""
    for entry in _run(["ls-tree", "-r", "-z", "-l", "--full-tree", commit]).split(b"\0"):
        about, tab, path = entry.partition(b"\t")
        if tab:
            mode, kind, blob, size = about.split()
            # a link or another repository inside this one is no source
            if kind == b"blob" and mode in (b"100644", b"100755"):
                yield path.decode("utf-8", "replace"), blob.decode(), int(size)


def _read(blob: str, name: str) -> tuple[SourceFile, list[Finding]]:
    return read_text(_run(["cat-file", "blob", blob])[: FILE_LIMIT + 1], name)


def _line(arguments: Sequence[str], revision: str) -> str:
    try:
        return _run(arguments).decode("utf-8", "replace").rstrip("\n")
    except CannotRunError as reason:
        if "--verify" in arguments and "not a git repository" not in str(reason):
            raise CannotRunError(f"git knows no revision {revision!r} here") from None
        raise


def _run(arguments: Sequence[str]) -> bytes:
    try:
        done = subprocess.run(
            [*_ASK, *arguments], capture_output=True, check=False, timeout=_SECONDS, stdin=subprocess.DEVNULL,
            env={**os.environ, **_QUIET, "LC_ALL": "C"},
        )  # fmt: skip
    except FileNotFoundError:
        raise CannotRunError("git is not installed here") from None
    except (OSError, subprocess.TimeoutExpired) as error:
        raise CannotRunError(f"git did not answer: {one_line(str(error))[:200]}") from None
    if done.returncode:
        said = one_line(done.stderr.decode("utf-8", "replace")).removeprefix("fatal: ")[:200]
        raise CannotRunError(f"git says: {said or 'no'}")
    return done.stdout
