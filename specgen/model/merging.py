"""What a record says and what it carries over from the one it is based on, as one tree. Called by `based_on`.

What is given replaces, groups of keys merge, lists of entries merge by id; a new entry stands at the end, or before the one it names.
Of what stays with its record unless it is named (`passing_on`) nothing is carried over but what `including` names.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.model.node import Node
from specgen.model.passing_on import passes_whole, stays
from specgen.model.shape import id_of, is_empty
from specgen.model.walk import Path, inner_record
from specgen.source.reader import FINDING_LIMIT
from specgen.source.tree import Mapping, Scalar, Sequence
from specgen.source.tree import Node as Tree

BEFORE = "before"
# a number and a title are of one document
NEVER = "document"

Fault = tuple[str, Path, str, str]
"""Id of a fault, where in the record, what, and what to do."""


@dataclass(slots=True)
class Names:
    """What `including` and `without` name; `met` gathers what was there. `without` names from the record on, for what is left out in the
    wrong place nobody misses; `including` may name the last steps alone (`first_aid`)."""

    including: frozenset[Path]
    without: frozenset[Path]
    met: set[Path] = field(default_factory=set)

    def includes(self, path: Path) -> bool:
        found = [path[at:] for at in range(len(path)) if path[at:] in self.including]
        self.met.update(found)
        return bool(found)

    def leaves_out(self, path: Path) -> bool:
        if path not in self.without:
            return False
        self.met.add(path)
        return True


def merged(
    base: Mapping, own: Mapping, model: type[Node], names: Names
) -> tuple[Mapping, tuple[Path, ...], list[Fault]]:
    """The tree, the paths of the base that stayed with it, and what is wrong."""
    taking = _Taking(names)
    kept = taking.group(base, model, (), _Take.DECLARED)
    merging = _Merging()
    return merging.groups(kept, own, model, ()), tuple(taking.left), merging.faults


def combined(base: Mapping, own: Mapping, model: type[Node]) -> tuple[Mapping, list[Fault]]:
    """All of the base with what is stated itself."""
    merging = _Merging()
    return merging.groups(base, own, model, ()), merging.faults


class _Take(Enum):
    DECLARED = 1  # what passes on by its declaration
    ALL = 2  # everything below what was named
    NAMED = 3  # within what stays: nothing but what is named


class _Taking:
    """What of the base is carried over."""

    def __init__(self, names: Names) -> None:
        self._names = names
        self.left: list[Path] = []

    def group(self, tree: Mapping, model: type[Node], path: Path, take: _Take) -> Mapping:
        entries = {}
        for key, held in tree.entries.items():
            kept = self._field(held, model, key, (*path, key), take)
            if kept is not None:
                entries[key] = kept
        return Mapping(entries, {key: tree.keys[key] for key in entries}, tree.mark)

    def _field(self, held: Tree, model: type[Node], key: str, path: Path, take: _Take) -> Tree | None:
        if path == (NEVER,) or self._names.leaves_out(path):
            return None
        inner = inner_record(model, key) if key in model.model_fields else None
        if self._names.includes(path) or (take is _Take.DECLARED and passes_whole(model, key)):
            take = _Take.ALL
        elif take is _Take.DECLARED and key in model.model_fields and stays(model, key):
            self.left.append(path)
            take = _Take.NAMED
        if inner is not None and isinstance(held, Sequence):
            return self._entries(held, inner, path, take)
        if inner is not None and isinstance(held, Mapping):
            kept = self.group(held, inner, path, take)
            return kept if kept.entries or not held.entries else None
        return held if take is not _Take.NAMED or key == "id" else None

    def _entries(self, tree: Sequence, model: type[Node], path: Path, take: _Take) -> Sequence | None:
        items: list[Tree] = []
        for at, entry in enumerate(tree.items):
            here = (*path, id_of(entry) or f"[{at}]")
            if self._names.leaves_out(here):
                continue
            of_it = _Take.ALL if self._names.includes(here) else take
            if not isinstance(entry, Mapping):
                items += [entry] if of_it is not _Take.NAMED else []
                continue
            kept = self.group(entry, model, here, of_it)
            # an entry of which the id alone is left says nothing
            if of_it is not _Take.NAMED or set(kept.entries) - {"id"}:
                items.append(kept)
        return Sequence(tuple(items), tree.mark) if items else None


class _Merging:
    """What is carried over with what the record says itself."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []

    def groups(self, base: Mapping, own: Mapping, model: type[Node], path: Path) -> Mapping:
        entries, keys = dict(base.entries), dict(base.keys)
        for key, held in own.entries.items():
            here, before = (*path, key), base.entries.get(key)
            if before is not None and is_empty(held):
                self._fault("MOD007", here, f"{key} has no value")
                continue
            inner = inner_record(model, key) if key in model.model_fields else None
            keys[key], entries[key] = own.keys[key], held
            if inner is not None and isinstance(held, Mapping) and isinstance(before, Mapping):
                entries[key] = self.groups(before, held, inner, here)
            elif inner is not None and isinstance(held, Sequence):
                there = before.items if isinstance(before, Sequence) else ()
                entries[key] = self._lists(there, held, inner, here)
        return Mapping(entries, keys, own.mark)

    def _lists(self, base: tuple[Tree, ...], own: Sequence, model: type[Node], path: Path) -> Sequence:
        items = list(base)
        places = {name: at for at, item in reversed([*enumerate(base)]) if (name := id_of(item)) is not None}
        merged_ids: set[str] = set()
        inserted: dict[int, list[Tree]] = {}
        appended: list[Tree] = []
        for at, said in enumerate(own.items):
            name = id_of(said)
            here = (*path, name or f"[{at}]")
            before, entry = _stated_before(said)
            # the second of one id is told where the list is read
            if name in places and name not in merged_ids:
                merged_ids.add(name)
                there = items[places[name]]
                both = isinstance(there, Mapping) and isinstance(entry, Mapping)
                items[places[name]] = self.groups(there, entry, model, here) if both else entry  # type: ignore[arg-type]
                if before:
                    self._fault("BAS004", (*here, BEFORE), f"{name} is carried over and keeps its place in {path[-1]}")
            elif before in places:
                inserted.setdefault(places[before], []).append(entry)
            else:
                appended.append(entry)
                if before:
                    remedy = nearest_of(before, list(places), IDS_SHOWN) if places else ""
                    self._fault(
                        "BAS004", (*here, BEFORE), f"{before} is no entry of {path[-1]} that is carried over", remedy
                    )
        whole = [one for at, item in enumerate(items) for one in (*inserted.get(at, ()), item)]
        return Sequence((*whole, *appended), own.mark)

    def _fault(self, id: str, where: Path, what: str, remedy: str = "") -> None:
        # no more than that are listed of a file
        if len(self.faults) <= FINDING_LIMIT:
            self.faults.append((id, where, what, remedy))


def _stated_before(entry: Tree) -> tuple[str, Tree]:
    """The entry a new one goes before, where it says so, and the new one without that."""
    held = entry.entries.get(BEFORE) if isinstance(entry, Mapping) else None
    if not isinstance(entry, Mapping) or not isinstance(held, Scalar):
        return "", entry
    entries = {key: value for key, value in entry.entries.items() if key != BEFORE}
    return held.text, Mapping(entries, {key: entry.keys[key] for key in entries}, entry.mark)
