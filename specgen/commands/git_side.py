"""Sources as they stand in a revision of a git repository, as a side of a comparison. Called by `sides`."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from specgen.commands.decision_file import NAMES, DecisionFile, refuse_two
from specgen.commands.outcome import CannotRunError
from specgen.source.at_revision import AtRevision, inside
from specgen.source.characters import printable_name
from specgen.source.git import Git
from specgen.source.project import LARGE, SourceError, Sources
from specgen.source.shared_range import with_range

_FORM = "write git:REVISION:PATH, as in git:HEAD~1:specs"


@dataclass(frozen=True, slots=True)
class FromGit:
    """How the sources of a revision are read, what leads to their files (`HEAD~1:specs/`), and the file of decisions beside them."""

    read: Callable[[], Sources]
    prefix: str
    decisions: DecisionFile | None
    large: bool


def sources_at(spelling: str) -> FromGit:
    """The sources at `REVISION:PATH`: their bytes are fetched, nothing is parsed yet.

    PATH is relative to the current folder. A file stands for the nearest folder above it with a project.yaml.
    Raises CannotDoError.
    """
    revision, colon, path = spelling.partition(":")
    if not colon or not revision or revision.startswith("-") or "\0" in spelling:
        raise CannotRunError(f"git:{spelling} names no revision and path; {_FORM}")
    git = Git(Path())
    here = git.here()
    commit = git.commit(revision)
    folder = _folder(git, commit, inside(here, path), revision)
    at = AtRevision(git, commit, revision, folder)
    fetched = at.fetched()
    held = {name: data for name, data in fetched.files.items() if name in NAMES}
    refuse_two(list(held), f"git:{spelling}")
    decisions: DecisionFile | None = None
    for name, data in held.items():
        if data is None:
            raise CannotRunError(f"{name} is larger than 1 MiB in the revision {printable_name(revision)}")
        decisions = DecisionFile(name, data)
    prefix = f"{printable_name(revision)}:{f'{folder}/' if folder else ''}"
    large = sum(len(data or b"") for data in fetched.files.values()) > LARGE
    return FromGit(lambda: with_range(fetched.read(), at), prefix, decisions, large)


def _folder(git: Git, commit: str, inside: str, revision: str) -> str:
    """The folder of the project that a path stands for; the top of the repository is an empty text."""
    try:
        kind = git.line(["cat-file", "-t", f"{commit}:{inside}"])
    except SourceError:
        raise CannotRunError(f"{inside} is not in the revision {revision}") from None
    if kind == "tree":
        return inside
    above = ["" if str(parent) == "." else str(parent) for parent in PurePosixPath(inside).parents]
    return next((folder for folder in above if _is_project(git, f"{commit}:{folder}")), above[0])


def _is_project(git: Git, tree: str) -> bool:
    return any(name == "project.yaml" for name, _, _ in git.entries(["-z", "-l", "--full-tree", tree]))
