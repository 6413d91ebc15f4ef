"""The sources of a folder rewritten in the present version of the source format. Called by `specgen upgrade`; nothing is written here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.findings import CannotDoError, Finding, Severity
from specgen.model import format_1
from specgen.model.format_read import brought_up, stated_version
from specgen.model.project import SCHEMA_VERSION
from specgen.source.project import Sources
from specgen.source.reader import read_text
from specgen.source.rewriting import NotThereError, Replacement, replaced, same_text
from specgen.source.tree import Mapping, Mark, Node, Scalar, SourceFile

_NAME = "schema_version"


class CannotUpgradeError(CannotDoError):
    """The folder cannot be rewritten by a program; the message says where and what to do."""


@dataclass(frozen=True, slots=True)
class Rewritten:
    """One file in the present format, and how many words of it were replaced."""

    name: str
    data: bytes
    words: int


def rewritten(sources: Sources, raw: dict[str, bytes]) -> list[Rewritten]:
    """The files that change, that of the project last; none where the folder is in the present format already.

    `raw` holds the bytes each file was read from. Raises CannotUpgradeError for sources that cannot be read, that state another
    version, or in which a word cannot be replaced where it stands.
    """
    files, faults = brought_up(sources)
    broken = [finding for finding in (*sources.findings, *faults) if finding.severity is Severity.ERROR]
    if broken:
        raise CannotUpgradeError(f"{_line(broken[0])}; put this right first, nothing was rewritten")
    if stated_version(sources) == str(SCHEMA_VERSION):
        return []
    if stated_version(sources) is None and not any(_projects(file) for file in sources.files):
        raise CannotUpgradeError("no file of the folder has a project source, which says what version it is written in")
    changed = [
        done
        for old, new in zip(sources.files, files, strict=True)
        if isinstance(old.root, Mapping) and (done := _file(old, old.root, new, raw[old.name])) is not None
    ]
    # whoever is stopped in between leaves a folder that says what it was, and reads as that
    return sorted(changed, key=lambda one: any(_projects(file) for file in files if file.name == one.name))


def decisions_rewritten(name: str, raw: bytes) -> Rewritten | None:
    """The file of decisions in the present format, None where it is. Raises CannotUpgradeError where it cannot be read."""
    old, faults = read_text(raw, name)
    if _errors(faults):
        raise CannotUpgradeError(f"{_line(faults[0])}; put this right first, nothing was rewritten")
    if not isinstance(old.root, Mapping):
        return None
    renamed = format_1.decisions_upgraded(old.root)
    words = [Replacement(edit.mark, edit.old, edit.new) for edit in renamed.edits]
    return _checked(old, renamed.root, raw, words, []) if words else None


def _file(old: SourceFile, root: Mapping, new: SourceFile, raw: bytes) -> Rewritten | None:
    words = [Replacement(edit.mark, edit.old, edit.new) for edit in format_1.upgraded(root).edits]
    project = _projects(old)
    for version in _version(project, "\r\n" if b"\r\n" in raw else "\n"):
        if not words and not version:
            return None
        if new.root is not None and (done := _checked(old, new.root, raw, words, version)) is not None:
            return done
    raise CannotUpgradeError(
        f"{old.name}: schema_version cannot be put into the project; write schema_version: {format_1.NUMBER} there yourself, "
        f"then upgrade again; nothing was rewritten"
    )


def _checked(
    old: SourceFile, new: Node, raw: bytes, words: list[Replacement], more: list[Replacement]
) -> Rewritten | None:
    """The file with its words replaced, None where that does not read as `new`. Raises CannotUpgradeError."""
    try:
        data = replaced(raw, [*words, *more])
    except NotThereError as lost:
        mark: Mark = lost.args[0]
        raise CannotUpgradeError(
            f"{old.name}:{mark.line}:{mark.column}: this word runs over several lines or is written by codes; "
            f"write it plainly, then upgrade again; nothing was rewritten"
        ) from None
    read, faults = read_text(data, old.name)
    same = read.root is not None and same_text(read.root, new) and not _errors(faults)
    return Rewritten(old.name, data, len(words)) if same else None


def _version(project: Mapping | None, end: str) -> Iterator[list[Replacement]]:
    """The ways to have the project say its version, of which one reads as it should."""
    if project is None:
        yield []
        return
    said = project.entries.get(_NAME)
    if isinstance(said, Scalar) and said.text:
        yield [Replacement(said.mark, said.text, str(SCHEMA_VERSION))]
        return
    first = next(iter(project.keys.values()), project.mark)
    indent = " " * (first.column - 1)
    yield [Replacement(first, "", f"{_NAME}: {SCHEMA_VERSION}{end}{indent}")]
    yield [Replacement(first, "", f"{_NAME}: {SCHEMA_VERSION}, ")]


def _projects(file: SourceFile) -> Mapping | None:
    held = file.root.entries.get("project") if isinstance(file.root, Mapping) else None
    return held if isinstance(held, Mapping) else None


def _errors(findings: list[Finding]) -> bool:
    return any(finding.severity is Severity.ERROR for finding in findings)


def _line(finding: Finding) -> str:
    return f"{finding.place}: {finding.id} {finding.what}"
