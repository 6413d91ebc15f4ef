"""Sources as they stand in a revision of a git repository, read into memory. Called by `sides`.

git is asked for a list of files and for their bytes, nothing else: no file is written, no hook, filter or converter runs, nothing
is fetched. The bounds are those of a folder.
"""

from __future__ import annotations

import os
import subprocess
import tempfile
import threading
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from specgen.commands.decision_file import NAMES, DecisionFile, refuse_two
from specgen.commands.outcome import CannotRunError
from specgen.findings import Finding
from specgen.pictures.prepared import ENDINGS
from specgen.report.lines import one_line
from specgen.source.beside import LARGEST, Beside, not_there, too_large_beside
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.project import FILES_LIMIT, LARGE, NODES_LIMIT, TOTAL_LIMIT, Sources, too_many_values
from specgen.source.reader import read_text, too_large

_SECONDS = 60
# bytes of a list of files: half a million of them, of any kind
_LISTED_LIMIT = 32 * 1024 * 1024
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


@dataclass(frozen=True, slots=True)
class AtRevision:
    """How the sources of a revision are read, what leads to their files (`HEAD~1:specs/`), and the file of decisions beside them."""

    read: Callable[[], Sources]
    prefix: str
    decisions: DecisionFile | None
    large: bool


def sources_at(spelling: str) -> AtRevision:
    """The sources at `REVISION:PATH`: their bytes are fetched, nothing is parsed yet.

    PATH is relative to the current folder. A file stands for the nearest folder above it with a project.yaml.
    Raises CannotRunError.
    """
    revision, colon, path = spelling.partition(":")
    if not colon or not revision or revision.startswith("-") or "\0" in spelling:
        raise CannotRunError(f"git:{spelling} names no revision and path; {_FORM}")
    here = _line(["rev-parse", "--show-prefix"])
    try:
        commit = _line(["rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"])
    except CannotRunError:
        raise CannotRunError(f"git knows no revision {revision!r} here") from None
    folder = _folder(commit, _inside(here, path), revision)
    everything = sorted(_listed(f"{commit}:{folder}"))
    pictures = {name: (blob, size) for name, blob, size in everything if _is_picture(name)}
    listed = [one for one in everything if not _is_picture(one[0])]
    if len(listed) > FILES_LIMIT or sum(min(size, FILE_LIMIT + 1) for _, _, size in listed) > TOTAL_LIMIT:
        raise CannotRunError(
            f"{folder or 'the repository'} holds more than can be read; name the folder of the sources"
        )
    refuse_two([name for name, _, _ in listed if name in NAMES], f"git:{spelling}")
    # what is past the bound is never asked for: git would hand over all of it
    held = _contents({blob for _, blob, size in listed if size <= FILE_LIMIT})
    decisions: DecisionFile | None = None
    files: list[tuple[str, bytes | None]] = []
    for name, blob, _ in listed:
        if name not in NAMES:
            files.append((name, held.get(blob)))
        elif blob not in held:
            raise CannotRunError(f"{name} is larger than 1 MiB in the revision {printable_name(revision)}")
        else:
            decisions = DecisionFile(name, held[blob])
    prefix = f"{printable_name(revision)}:{f'{folder}/' if folder else ''}"
    large = sum(len(raw or b"") for _, raw in files) > LARGE
    return AtRevision(lambda: _parsed(files, _pictures(pictures)), prefix, decisions, large)


def _is_picture(name: str) -> bool:
    return name.rpartition(".")[2].lower() in ENDINGS


def _pictures(listed: Mapping[str, tuple[str, int]]) -> Beside:
    """A picture is fetched when a source names it."""

    def read(name: str) -> bytes:
        if name not in listed:
            raise not_there()
        blob, size = listed[name]
        if size > LARGEST:
            raise too_large_beside()
        return _contents([blob])[blob]

    return read


def _parsed(named: Sequence[tuple[str, bytes | None]], beside: Beside) -> Sources:
    """The files with their names; None for one that is too large to be fetched."""
    files, findings, nodes = [], list[Finding](), 0
    for name, raw in named:
        source, faults = read_text(raw, name) if raw is not None else too_large(name)
        nodes += source.nodes
        if nodes > NODES_LIMIT:
            findings.append(too_many_values(name))
            break
        files.append(source)
        findings += faults
    return Sources(Path(), tuple(files), tuple(findings), beside=beside)


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


def _folder(commit: str, inside: str, revision: str) -> str:
    """The folder of the project that a path stands for; the top of the repository is an empty text."""
    try:
        kind = _line(["cat-file", "-t", f"{commit}:{inside}"])
    except CannotRunError:
        raise CannotRunError(f"{inside} is not in the revision {revision}") from None
    if kind == "tree":
        return inside
    above = ["" if str(parent) == "." else str(parent) for parent in PurePosixPath(inside).parents]
    return next((folder for folder in above if _is_project(f"{commit}:{folder}")), above[0])


def _is_project(tree: str) -> bool:
    return any(name == "project.yaml" for name, _, _ in _entries(["ls-tree", "-z", "-l", "--full-tree", tree]))


def _listed(tree: str) -> Iterator[tuple[str, str, int]]:
    """Name, blob and size of every source and picture below a folder, by the same rules as on the disk, and of the file of decisions."""
    for name, blob, size in _entries(["ls-tree", "-r", "-z", "-l", "--full-tree", tree]):
        hidden = any(step.startswith(".") for step in name.split("/"))
        if (name.lower().endswith(_ENDINGS) or _is_picture(name)) and not hidden:
            yield name, blob, size


def _entries(arguments: Sequence[str]) -> Iterator[tuple[str, str, int]]:
    """Name, blob and size of the ordinary files that `ls-tree` lists."""
    for entry in _run(arguments).split(b"\0"):
        about, tab, name = entry.partition(b"\t")
        if tab:
            mode, kind, blob, size = about.split()
            # a link, or another repository inside this one, is no source
            if kind == b"blob" and mode in (b"100644", b"100755"):
                yield printable_name(name.decode("utf-8", "replace")), blob.decode(), int(size) if size.isdigit() else 0


def _contents(blobs: Collection[str]) -> dict[str, bytes]:
    """The bytes of each blob, asked for in one go and each once, however many names it has. Raises CannotRunError."""
    asked = "".join(f"{blob}\n" for blob in blobs).encode()
    answer, at, held = _run(["cat-file", "--batch"], asked, 2 * TOTAL_LIMIT), 0, {}
    for blob in blobs:
        head = answer.find(b"\n", at)
        about = answer[at:head].split() if head >= 0 else []
        if len(about) != 3 or about[1] != b"blob":
            raise CannotRunError(f"git cannot read the object {blob} of this repository; `git fsck` says what is wrong")
        size = int(about[2])
        held[blob] = answer[head + 1 : head + 1 + size]
        at = head + 1 + size + 1
    return held


def _line(arguments: Sequence[str]) -> str:
    return _run(arguments).decode("utf-8", "replace").rstrip("\n")


def _run(arguments: Sequence[str], said: bytes = b"", most: int = _LISTED_LIMIT) -> bytes:
    """What git answers, read no further than `most`: a tree that names itself twice lists more files than any memory holds."""
    with tempfile.TemporaryFile() as asked, tempfile.TemporaryFile() as complaints:
        asked.write(said)
        asked.seek(0)
        try:
            git = subprocess.Popen(
                [*_ASK, *arguments], stdin=asked, stdout=subprocess.PIPE, stderr=complaints,
                env={**os.environ, **_QUIET, "LC_ALL": "C"},
            )  # fmt: skip
        except FileNotFoundError:
            raise CannotRunError("git is not installed here") from None
        except (OSError, ValueError) as error:
            raise CannotRunError(f"git did not answer: {one_line(str(error))[:200]}") from None
        late = threading.Timer(_SECONDS, git.kill)
        late.start()
        try:
            answer = git.stdout.read(most + 1) if git.stdout is not None else b""
            if len(answer) > most:
                raise CannotRunError("git lists more than can be read; name the folder of the sources")
            code = git.wait()
        finally:
            given_up = not late.is_alive()
            late.cancel()
            git.kill()
            git.communicate()
        if given_up:
            raise CannotRunError(f"git did not answer within {_SECONDS} s")
        if code:
            complaints.seek(0)
            complaint = one_line(complaints.read(2_000).decode("utf-8", "replace")).removeprefix("fatal: ")[:200]
            raise CannotRunError(f"git says: {complaint or 'no'}")
        return answer
