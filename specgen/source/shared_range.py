"""The shared range of a project: another folder, or a revision of it in git, that holds products, preparations and systems for several.

Called by the parser of a folder and by the sides of a comparison. Nothing outside the two folders is read, and nothing through a
link. Where a range cannot be used that is a finding at the key that names it, and none of it is read.
"""

from __future__ import annotations

import os
import posixpath
import re
import stat
from dataclasses import replace
from pathlib import Path, PurePosixPath

from specgen.findings import Place
from specgen.source.at_revision import AtRevision, inside
from specgen.source.beside import NotRead, read_beside
from specgen.source.characters import printable_name
from specgen.source.git import Git
from specgen.source.places import Places
from specgen.source.project import Bounds, SourceError, Sources, read_project
from specgen.source.range_faults import range_fault
from specgen.source.tree import Mapping, Scalar, SourceFile

LOCK = "range.lock"
"""Beside the project source: what of the range was taken in."""
KEY = ("project", "range")
_GIT = "git:"
_REVISION = re.compile(r"[A-Za-z0-9][A-Za-z0-9._/~^@{}-]{0,199}")
_STEP = re.compile(r'[^\x00-\x1f\x7f<>:"\\|?*]+')


def spelled(text: str) -> tuple[str, str]:
    """Revision, empty for none, and way of `../range` or `git:REVISION:../range`. Raises ValueError with what is wrong."""
    revision, way = "", text
    if text.startswith(_GIT):
        revision, colon, way = text.removeprefix(_GIT).partition(":")
        if not colon or not _REVISION.fullmatch(revision):
            raise ValueError("names no revision and folder, as in git:v1:../range")
    if not way or way.startswith("/") or not all(_STEP.fullmatch(step) for step in way.rstrip("/").split("/")):
        raise ValueError("is no way from this folder to another, as in ../range")
    return revision, posixpath.normpath(way)


def read_with_range(folder: Path) -> Sources:
    """The sources of a folder with the range its project names. Raises SourceError where the folder cannot be read."""
    return with_range(read_project(folder, bounds=(bounds := Bounds())), folder, bounds)


def with_range(sources: Sources, home: Path | AtRevision, bounds: Bounds | None = None) -> Sources:
    """Sources that were read, with their range; `home` is where they stand, `bounds` counts what was read of them."""
    found = _stated(sources.files)
    if found is None:
        # a list, or text without a sign, is told where the project is read; what stands in the range is not missed as well
        return replace(sources, lost="the range") if _is_named(sources.files) else sources
    text, place = found
    try:
        revision, way = spelled(text)
    except ValueError:
        # told where the project is read
        return replace(sources, lost=printable_name(text) or "the range")
    try:
        if isinstance(home, Path):
            read = _from_disk(home, revision, way, bounds or Bounds())
        else:
            read = _from_git(home, revision, way, bounds or Bounds())
        _refuse_half(read)
    except _Refused as refused:
        finding = range_fault(refused.fault, refused.what, place)
        # what stands in a range within the folder was read with it, and is nobody's until the two are parted
        sources = _without(sources, f"{way}/")
    except SourceError as reason:
        finding = range_fault("RNG001", f"the range {printable_name(text)} cannot be read: {reason}", place)
    else:
        watched = isinstance(home, Path)
        return replace(sources, range=read, watched=watched, lock=_lock(home) if isinstance(home, Path) else None)
    return replace(sources, lost=printable_name(text), findings=(*sources.findings, finding))


def _without(sources: Sources, below: str) -> Sources:
    """Sources without the files of a folder below, and without what was found in them."""
    return replace(
        sources,
        files=tuple(file for file in sources.files if not file.name.startswith(below)),
        findings=tuple(finding for finding in sources.findings if not finding.place.file.startswith(below)),
    )


class _Refused(Exception):  # noqa: N818  # reads as what happened
    def __init__(self, fault: str, what: str) -> None:
        super().__init__(what)
        self.fault, self.what = fault, what


def stated_in(file: SourceFile) -> Scalar | None:
    """The value of `range` where a file holds the project and it has one."""
    project = file.root.entries.get(KEY[0]) if isinstance(file.root, Mapping) else None
    held = project.entries.get(KEY[1]) if isinstance(project, Mapping) else None
    return held if isinstance(held, Scalar) and held.text else None


def _stated(files: tuple[SourceFile, ...]) -> tuple[str, Place] | None:
    for file in files:
        if (held := stated_in(file)) is not None:
            return held.text, Places(file).place(KEY)
    return None


def _is_named(files: tuple[SourceFile, ...]) -> bool:
    """True where a range is named as none can be; a key with nothing behind it names none."""
    projects = (file.root.entries.get(KEY[0]) for file in files if isinstance(file.root, Mapping))
    held = [
        project.entries[KEY[1]] for project in projects if isinstance(project, Mapping) and KEY[1] in project.entries
    ]
    return any(not isinstance(one, Scalar) or not one.plain for one in held)


def _from_disk(folder: Path, revision: str, way: str, bounds: Bounds) -> Sources:
    root = folder.resolve()
    target = Path(posixpath.normpath(root / way))
    _refuse_nested(root.as_posix(), target.as_posix(), way)
    if revision:
        git = Git(root)
        there = inside(git.here(), way)
        at = AtRevision(git, git.commit(revision), revision, there)
        return _at_revision(at, f"{way}@{printable_name(revision)}/", target, bounds)
    steps = [target, *target.parents]
    for step in reversed(steps[: steps.index(next(one for one in steps if one in (root, *root.parents)))]):
        _refuse_odd(step, way)
    return read_project(target, f"{way}/", bounds)


def _refuse_odd(step: Path, way: str) -> None:
    try:
        mode = os.lstat(step).st_mode
    except (OSError, ValueError) as error:
        why = "there is no such folder" if isinstance(error, FileNotFoundError | NotADirectoryError) else str(error)
        raise _Refused("RNG001", f"the range {way} cannot be read: {why}") from None
    if stat.S_ISLNK(mode):
        raise _Refused("RNG001", f"the range {way} is reached through a link")
    if not stat.S_ISDIR(mode):
        raise _Refused("RNG001", f"the range {way} is a file; name the folder it stands in")


def _from_git(home: AtRevision, revision: str, way: str, bounds: Bounds) -> Sources:
    """The range of sources that stand in a revision: of the same one, if no other is named."""
    folder = inside(home.folder, way)
    _refuse_nested(f"/{home.folder}".rstrip("/"), f"/{folder}".rstrip("/"), way)
    if revision:
        at = AtRevision(home.git, home.git.commit(revision), revision, folder)
        return _at_revision(at, f"{way}@{printable_name(revision)}/", Path(way), bounds)
    return _at_revision(replace(home, folder=folder), f"{way}/", Path(way), bounds)


def _at_revision(at: AtRevision, before: str, folder: Path, bounds: Bounds) -> Sources:
    try:
        at.git.line(["cat-file", "-e", f"{at.commit}:{at.folder}"])
    except SourceError:
        raise SourceError(f"{at.folder or 'the folder'} is not in the revision {printable_name(at.revision)}") from None
    return replace(at.fetched().read(before, bounds), folder=folder)


def _refuse_nested(own: str, range_: str, way: str) -> None:
    here, there = PurePosixPath(own or "/"), PurePosixPath(range_ or "/")
    if here == there:
        raise _Refused("RNG002", f"the range {way} is the folder of the project itself")
    if here in there.parents:
        raise _Refused("RNG002", f"the range {way} lies in the folder of the project")
    if there in here.parents:
        raise _Refused("RNG002", f"the folder of the project lies in the range {way}")


def _refuse_half(read: Sources) -> None:
    """A range that is no project of its own, or stands on another one."""
    held = [file for file in read.files if isinstance(file.root, Mapping) and KEY[0] in file.root.entries]
    if len(held) != 1:
        what = "no project source" if not held else f"{len(held)} project sources"
        raise _Refused("RNG003", f"the range has {what}")
    if any(stated_in(file) is not None for file in held):
        raise _Refused("RNG003", "the range stands on a range itself")


def _lock(folder: Path) -> bytes | NotRead | None:
    if not os.path.lexists(folder / LOCK):
        return None
    try:
        return read_beside(folder, LOCK)
    except NotRead as refused:
        return refused
