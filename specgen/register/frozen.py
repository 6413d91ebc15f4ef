"""A frozen model read back into a specification, with the place of every value in its JSON text. Called by comparing.

The text is JSON as `json_text.written` writes it: every key and every value has a line of its own, so lines are counted, not looked for.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from specgen.model import format_1
from specgen.model.parse import Loaded, parse
from specgen.model.project import SCHEMA_VERSION
from specgen.model.spec import LIST_KINDS
from specgen.register.editions import SALT, WITHHELD
from specgen.register.failure import RegisterError
from specgen.register.folder import history_of, read_kept
from specgen.register.history import Kept
from specgen.register.json_text import parsed, written
from specgen.register.names import MAKER_MODEL
from specgen.register.state import issues
from specgen.source.project import NODES_LIMIT, Sources
from specgen.source.tree import Mapping, Mark, Node, Scalar, Sequence, SourceFile

_DEEPEST = 40
_SHOWN = 2_000


def frozen_sources(register: Path, document: str, revision: str) -> tuple[Sources, str]:
    """The frozen model of a revision as sources to parse, and its name: `MS-001@B`.

    Raises RegisterError where it is not there or was altered.
    """
    kept = issued_revision(register, document, revision)
    name = f"{document}@{kept.record.revision}"
    return sources_of(read_kept(kept, MAKER_MODEL), name), name


def issued_revision(register: Path, document: str, revision: str) -> Kept:
    """The record that issued a revision. Raises RegisterError where the register has none, or does not hold."""
    found = history_of(register, document)
    if found.faults:
        raise RegisterError(f"the register of {document} is damaged, so nothing is taken from it: {found.faults[0]}")
    issued = {kept.record.revision: kept for kept in issues(found.kept)}
    if revision not in issued:
        known = f"there is: {', '.join(issued)}" if issued else "the document is not in this register"
        raise RegisterError(f"there is no {document} {revision}; {known}")
    return issued[revision]


def thawed(data: bytes, name: str) -> Loaded:
    """The specification in the bytes of a frozen model of either edition; what the customer edition withholds is absent."""
    loaded = parse(sources_of(data, name))
    if loaded.spec is None:
        why = loaded.findings[0].what if loaded.findings else "it has no project"
        raise RegisterError(f"{name} cannot be read back: {why}")
    return loaded


def sources_of(data: bytes, name: str) -> Sources:
    """The model as one source file. Raises RegisterError."""
    model = parsed(data, name)
    version = _version(model, name)
    lines = tuple(line[:_SHOWN] for line in written(model).decode("utf-8").splitlines())
    if len(lines) > NODES_LIMIT:
        raise RegisterError(f"{name} holds more than {NODES_LIMIT:,} lines, which no model of this program does")
    counter = _Lines()
    root = counter.node(model, 0, 0)
    if not isinstance(root, Mapping):
        raise RegisterError(f"{name} holds no model")
    wanted = {"project", *LIST_KINDS}
    unknown = set(root.entries) - wanted - {"schema_version", SALT, WITHHELD}
    if unknown:
        raise RegisterError(f"{name} holds {min(unknown)}, which is no part of a model")
    entries = {kind: _listed(kind, node) for kind, node in root.entries.items() if kind in wanted and _holds(node)}
    keys = {kind: root.keys[kind] for kind in entries}
    return Sources(Path(), (SourceFile(name, lines, Mapping(entries, keys, root.mark)),), (), version)


def _version(model: dict[str, Any], name: str) -> int:
    said = model.get("schema_version")
    versions = {str(number): number for number in (format_1.NUMBER, SCHEMA_VERSION)}
    if said not in versions:
        raise RegisterError(
            f"{name} is of version {said} of the source format, this program knows {' and '.join(versions)}; use a newer program"
        )
    return versions[said]


def _holds(node: Node) -> bool:
    return not (isinstance(node, Mapping) and not node.entries)


def _listed(kind: str, node: Node) -> Node:
    """Records by id become the list that a source file has."""
    if kind == "project" or not isinstance(node, Mapping):
        return node
    return Sequence(tuple(node.entries.values()), node.mark)


class _Lines:
    """Counts the lines of the text while its value is walked in the same order."""

    def __init__(self) -> None:
        self.line = 1

    def node(self, value: Any, depth: int, column: int) -> Node:
        """The value that begins on the present line, after `column` signs."""
        if depth > _DEEPEST:
            raise RegisterError("the model is nested too deeply")
        if isinstance(value, dict):
            mark = self._mark(column, 1)
            entries: dict[str, Node] = {}
            keys: dict[str, Mark] = {}
            for key in sorted(value):
                self.line += 1
                shown = len(json.dumps(key, ensure_ascii=False))
                keys[key] = self._mark(depth + 1, shown)
                entries[key] = self.node(value[key], depth + 1, depth + 1 + shown + 2)
            self._close(value)
            return Mapping(entries, keys, mark)
        if isinstance(value, list):
            mark, items = self._mark(column, 1), []
            for entry in value:
                self.line += 1
                items.append(self.node(entry, depth + 1, depth + 1))
            self._close(value)
            return Sequence(tuple(items), mark)
        if not isinstance(value, str):
            raise RegisterError("the model holds a value that is no text")
        return Scalar(value, self._mark(column, len(json.dumps(value, ensure_ascii=False))), plain=False)

    def _mark(self, column: int, length: int) -> Mark:
        return Mark(self.line, column + 1, column + 1 + length)

    def _close(self, held: Iterable[Any]) -> None:
        if held:
            self.line += 1
