"""Reads one folder: every YAML file below it.

Called by `shared_range`, which adds the range that a project names, and by commands that go through the own files alone. A project
is bounded, stays inside its folder, and is read in sorted order, so that the same folder gives the same findings on every machine.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TypeVar

from specgen.findings import CannotDoError, Finding, Place, Severity
from specgen.source.beside import Beside, NotRead, read_beside
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.faults import fault
from specgen.source.reader import read_file
from specgen.source.tree import SourceFile

FILES_LIMIT = 5_000
TOTAL_LIMIT = 64 * FILE_LIMIT
# bytes of sources that are worth a process of their own
LARGE = FILE_LIMIT // 2
# a thousand jobs of ten items and forty steps are a million; each takes some 400 bytes with its place, record and findings
NODES_LIMIT = 1_250_000
# folders that hold mostly other things are left before a wrong argument (`/`) is walked to its end
_VISITS_LIMIT = 200_000
_YAML = re.compile(r"\.ya?ml$", re.IGNORECASE)
_PROJECT_FILES = ("project.yaml", "project.yml")
# beside the sources and none of them: what persons have said of a change
DECISIONS = "decisions.yaml"
# what source format 1 called the same file
OLD_DECISIONS = "verdicts.yaml"
# beside them too: who stands behind the ids of the records
PEOPLE = "people.yaml"
BESIDE = (DECISIONS, OLD_DECISIONS, PEOPLE)
"""Files beside the sources that are no source."""


class SourceError(CannotDoError):
    """The folder or file named on the command line cannot be used; the message is for the user (exit code 2)."""


@dataclass(frozen=True, slots=True)
class Sources:
    """The files of a project in sorted order, and what was wrong with reading them, in that order.

    `format` is the version of the source format where it is known otherwise than by the project source. `beside` reads a picture
    that a source names; a frozen model has none, for it states what each of them was. `range` is the shared range that the
    project names, its files called by the way there (`../range/primers.yaml`); where it could not be read it is `lost`, and named
    there. `raw` gives the bytes of a file that does not stand on the disk, `lock` those of the file that says what of the range was
    taken in; None where there is none, or (with `watched` not set) where nobody asks. `before` goes before the names of the files.
    """

    folder: Path
    files: tuple[SourceFile, ...]
    findings: tuple[Finding, ...]
    format: int | None = None
    beside: Beside | None = None
    range: Sources | None = None
    lost: str = ""
    raw: Beside | None = None
    lock: bytes | NotRead | None = None
    watched: bool = False
    before: str = ""

    @property
    def unread(self) -> tuple[str, ...]:
        """Names of files and folders that were not read to their end, in sorted order: what is missing may stand in them."""
        whole = {file.name for file in self.files if file.root is not None}
        found = {f.place.file for f in self.findings if f.severity is Severity.ERROR} - whole
        of_range = self.range.unread if self.range is not None else ()
        return tuple(sorted({*found, *of_range, *((self.lost,) if self.lost else ())}))


@dataclass(slots=True)
class Bounds:
    """What has been read so far of all that belongs to one project, held against what is read at most."""

    files: int = 0
    total: int = 0
    nodes: int = 0

    def refused(self, name: str, size: int) -> Finding | None:
        """The finding that ends the reading before a file of this size, if it does."""
        if self.files >= FILES_LIMIT:
            what = f"The folder contains more than {FILES_LIMIT:,} files; from this one on they are not read."
            return fault("SRC039", what, Place(name, 1, 1, 1))
        self.files += 1
        self.total += size
        if self.total > TOTAL_LIMIT:
            what = f"The files together pass {TOTAL_LIMIT // FILE_LIMIT} MiB; from this one on they are not read."
            return fault("SRC040", what, Place(name, 1, 1, 1))
        return None

    def too_much(self, source: SourceFile) -> Finding | None:
        """The finding that leaves out a file that was read, if there is too much in it together with the others."""
        self.nodes += source.nodes
        if self.nodes > NODES_LIMIT:
            what = f"The files together contain more than {NODES_LIMIT:,} keys and values; from this one on they are not read."
            return fault("SRC044", what, Place(source.name, 1, 1, 1))
        return None


def find_project(path: Path) -> Path:
    """The folder a path belongs to: itself, or for a file the nearest one above with a `project.yaml` (else its own).

    Raises SourceError if nothing stands at the path, or several projects do.
    """
    try:
        if path.is_dir():
            if several := projects_in(path):
                named = ", ".join(printable_name(str(one)) for one in several)
                raise SourceError(f"{path} holds several projects; name one of them: {named}")
            return path
        if not path.exists():
            raise SourceError(f"{path}: there is no such file or folder.")
        parent = path.absolute().parent
        for folder in (parent, *parent.parents):
            if any((folder / name).is_file() for name in _PROJECT_FILES):
                return folder
        return parent
    except (OSError, ValueError) as error:
        raise SourceError(f"{path} cannot be opened: {_reason(error)}.") from error


def projects_in(path: Path) -> tuple[Path, ...]:
    """The projects in folders right below one that is no project itself; none where there are fewer than two, for one project may
    have its files in folders as it likes."""
    if _is_project(path):
        return ()
    found = tuple(folder for folder in _folders_in(path) if _is_project(folder))
    return found if len(found) > 1 else ()


def beyond_projects(path: Path) -> tuple[Path, ...]:
    """The folders beside those of `projects_in` that hold several projects of their own, which nobody goes through with them."""
    return tuple(folder for folder in _folders_in(path) if projects_in(folder)) if projects_in(path) else ()


def _is_project(folder: Path) -> bool:
    try:
        return any((folder / name).is_file() for name in _PROJECT_FILES)
    except (OSError, ValueError):
        return False


def _folders_in(path: Path) -> tuple[Path, ...]:
    """The folders right below, in sorted order, links and names that begin with a full stop left out."""
    try:
        with os.scandir(path) as listing:
            below = sorted(one.name for one in listing if one.is_dir(follow_symlinks=False) and one.name[:1] != ".")
    except (OSError, ValueError):
        return ()
    return tuple(path / name for name in below)


def read_project(folder: Path, before: str = "", bounds: Bounds | None = None) -> Sources:
    """Every `*.yaml` and `*.yml` below the folder but for names that begin with a full stop; `before` goes before their names.

    Links inside the folder are followed to files, not to folders (those are met in their own place), and no file is
    read twice. Raises SourceError if the folder is missing or cannot be read.
    """
    try:
        if not folder.is_dir():
            raise SourceError(f"{folder}: there is no such folder.")
        inside = folder.resolve()
        with os.scandir(folder):
            pass
    except (OSError, ValueError) as error:
        raise SourceError(f"{folder} cannot be opened: {_reason(error)}.") from error
    findings: list[Finding] = []
    found = sorted(_walk(folder, inside, before, findings))
    # a file is read under its own name rather than under that of a link to it
    claimed = {path.resolve() for _, path, link in found if not link}
    distinct: list[tuple[str, Path]] = []
    for name, path, link in found:
        if link:
            if path.resolve() in claimed:
                continue
            claimed.add(path.resolve())
        distinct.append((name, path))
    files = read_within(distinct, _size, read_file, bounds or Bounds(), findings)
    return Sources(folder, files, tuple(findings), beside=partial(read_beside, folder), before=before)


Held = TypeVar("Held")


def read_within(
    found: Iterable[tuple[str, Held]],
    size: Callable[[Held], int],
    read: Callable[[Held, str], tuple[SourceFile, list[Finding]]],
    bounds: Bounds,
    findings: list[Finding],
) -> tuple[SourceFile, ...]:
    """The files in order as far as the bounds go; `findings` takes what is wrong with them."""
    files: list[SourceFile] = []
    for name, held in found:
        if (refused := bounds.refused(name, size(held))) is not None:
            findings.append(refused)
            break
        source, faults = read(held, name)
        if (refused := bounds.too_much(source)) is not None:
            findings.append(refused)
            break
        files.append(source)
        findings += faults
    return tuple(files)


def is_large(folder: Path) -> bool:
    """True where reading takes longer than starting another process for it."""
    total = 0
    for _, path, _ in _walk(folder, folder.resolve(), "", []):
        total += _size(path)
        if total > LARGE:
            return True
    return False


def _walk(folder: Path, inside: Path, before: str, findings: list[Finding]) -> Iterator[tuple[str, Path, bool]]:
    """Name, path, and whether it is a link, of every YAML file; what cannot be entered is noted."""
    waiting = [(before, folder)]
    visits = 0
    while waiting:
        prefix, here = waiting.pop()
        try:
            with os.scandir(here) as listing:
                entries = sorted(listing, key=lambda e: e.name)
        except OSError as error:
            what = f"The folder cannot be opened: {_reason(error)}."
            findings.append(fault("SRC002", what, Place(printable_name(prefix.rstrip("/")), 1, 1, 1)))
            continue
        for entry in entries:
            visits += 1
            name, path = prefix + entry.name, Path(entry.path)
            if visits > _VISITS_LIMIT:
                what = f"The folder contains more than {_VISITS_LIMIT:,} files of any kind."
                findings.append(fault("SRC039", what, Place(printable_name(name), 1, 1, 1)))
                return
            if entry.name.startswith(".") or (prefix == before and entry.name in BESIDE):
                continue
            link = entry.is_symlink()
            if _is_folder(entry):
                if not link:
                    waiting.append((name + "/", path))
                elif not _stays(path, inside):
                    findings.append(_leads_out(name))
            elif _YAML.search(entry.name):
                if name != printable_name(name):
                    what = "The name of the file contains characters that cannot be printed."
                    findings.append(fault("SRC043", what, Place(printable_name(name), 1, 1, 1)))
                elif link and not _stays(path, inside):
                    findings.append(_leads_out(name))
                else:
                    yield name, path, link


def _is_folder(entry: os.DirEntry[str]) -> bool:
    try:
        return entry.is_dir()
    except OSError:
        # a link that leads round in a circle
        return False


def _leads_out(name: str) -> Finding:
    return fault("SRC038", "The link points outside the folder, or to nothing.", Place(printable_name(name), 1, 1, 1))


def _stays(path: Path, inside: Path) -> bool:
    try:
        return path.resolve().is_relative_to(inside)
    except (OSError, RuntimeError):
        # links that lead round in a circle lead nowhere inside
        return False


def _size(path: Path) -> int:
    try:
        return min(path.stat().st_size, FILE_LIMIT + 1)
    except OSError:
        return 0


def _reason(error: Exception) -> str:
    return getattr(error, "strerror", None) or str(error)
