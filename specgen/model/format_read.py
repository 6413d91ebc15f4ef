"""Which version of the source format a folder is written in, and its files in the words of the present one. Called by `parse`.

A folder says it by `schema_version` of its project; one that says nothing is of version 1, which was not asked to. Of the last
version but one every word is read; words of the present version in such a folder are told (it was rewritten in part, or its author
forgot to say so) and count all the same, for no word means two things.
"""

from __future__ import annotations

from dataclasses import replace

from specgen.findings import Finding, Place, Severity
from specgen.model import format_1
from specgen.model.project import SCHEMA_VERSION
from specgen.model.shape import shape_finding
from specgen.source.places import Places
from specgen.source.project import Sources
from specgen.source.tree import Mapping, Scalar, SourceFile

_VERSION = ("project", "schema_version")


def brought_up(sources: Sources) -> tuple[tuple[SourceFile, ...], list[Finding]]:
    """The files in the present format, and what there is to say of their version.

    A version this program does not know is an error, and the files are handed on as they are.
    """
    project = _project_file(sources)
    if sources.format == SCHEMA_VERSION:
        # a frozen model says it for the whole
        return tuple(_restated(file) for file in sources.files), []
    if project is None and sources.format is None:
        return sources.files, []
    stated = stated_version(sources)
    version = str(sources.format) if sources.format is not None else stated or str(format_1.NUMBER)
    if version == str(SCHEMA_VERSION):
        return sources.files, []
    if version != str(format_1.NUMBER):
        assert project is not None  # noqa: S101  # the register refuses other versions itself
        return sources.files, [_unknown(project, version)]
    files, findings = [], []
    for file in sources.files:
        if not isinstance(file.root, Mapping):
            files.append(file)
            continue
        renamed = format_1.upgraded(file.root)
        files.append(_restated(replace(file, root=renamed.root)))
        if renamed.newer and sources.format is None:
            findings.append(_mixed(file, renamed.newer, says=stated is not None))
    return tuple(files), findings


def stated_version(sources: Sources) -> str | None:
    """What the project of a folder says its format is, None where it says nothing or there is none."""
    file = _project_file(sources)
    project = _project(file) if file is not None else None
    said = project.entries.get(_VERSION[-1]) if project is not None else None
    return said.text if isinstance(said, Scalar) and said.text else None


def _project_file(sources: Sources) -> SourceFile | None:
    return next((file for file in sources.files if _project(file) is not None), None)


def _project(file: SourceFile) -> Mapping | None:
    held = file.root.entries.get("project") if isinstance(file.root, Mapping) else None
    return held if isinstance(held, Mapping) else None


def _restated(file: SourceFile) -> SourceFile:
    """The file, its project with the version it is in now."""
    project = _project(file)
    if project is None:
        return file
    assert isinstance(file.root, Mapping)  # noqa: S101  # it holds the project
    name = _VERSION[-1]
    mark = project.keys.get(name, project.mark)
    now = Mapping(
        project.entries | {name: Scalar(str(SCHEMA_VERSION), mark, plain=True)},
        project.keys | {name: mark},
        project.mark,
    )
    return replace(file, root=replace(file.root, entries=file.root.entries | {"project": now}))


def _unknown(file: SourceFile, version: str) -> Finding:
    what = f"schema_version is {version[:20]}; this program reads {format_1.NUMBER} and {SCHEMA_VERSION}"
    remedy = f"write schema_version: {SCHEMA_VERSION}, or use the program that wrote the folder"
    return shape_finding("MOD010", _VERSION, Places(file).place(_VERSION), what, remedy)


def _mixed(file: SourceFile, newer: list[format_1.Edit], *, says: bool) -> Finding:
    first = newer[0]
    line = file.lines[first.mark.line - 1] if first.mark.line <= len(file.lines) else ""
    place = Place(file.name, first.mark.line, first.mark.column, first.mark.end_column, line)
    more = f" and {len(newer) - 1} more" if len(newer) > 1 else ""
    state = f"states schema_version: {format_1.NUMBER}" if says else "states no schema_version"
    what = f"{first.new}{more} in this file belongs to source format {SCHEMA_VERSION}, but the project {state}"
    remedy = (
        f"run `specgen upgrade` on the folder, or write schema_version: {SCHEMA_VERSION} "
        f"where no word of format {format_1.NUMBER} is left"
    )
    return replace(shape_finding("MOD010", _VERSION, place, what, remedy), severity=Severity.WARNING)
