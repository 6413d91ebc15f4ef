"""A folder of sources read once, its leaves, and what `check` finds after one of them was changed. Called by the campaigns of moves.

A changed record is judged with the jobs it reaches and all that these rest on, which takes a fraction of the time; what seems to be
found nowhere is judged with the whole folder before anybody says so.
"""

from __future__ import annotations

import gc
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from zlib import crc32

from specgen.checking import check_loaded
from specgen.facts.graph import Address, closure, document_closure, document_reach
from specgen.findings import Finding
from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.parse import parse
from specgen.model.pictured import pictured
from specgen.model.shared_range import Taken, taken, with_makers
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import inner_record
from specgen.source.project import Sources
from specgen.source.reader import read_text
from specgen.source.shared_range import read_with_range
from specgen.source.tree import Mapping, Scalar, Sequence
from specgen.source.tree import Node as Tree

ON = date(2026, 11, 25)
Steps = tuple[str | int, ...]
Change = Callable[[Tree], Tree | None]
# by rule, weight and address: a sentence that quotes the figure that was changed tells nothing new
Told = Counter[tuple[str, str, str]]
_REST = 400


@dataclass(frozen=True)
class Leaf:
    """One value of a source: its file and the steps to it, its address, the same without ids, its key, its type and its text."""

    file: int
    steps: Steps
    path: tuple[str, ...]
    pattern: str
    name: str
    kind: Strict
    text: str

    @property
    def record(self) -> Address:
        return self.path[0], self.path[1]

    def __str__(self) -> str:
        return ".".join(self.path)


def is_drawn(words: str, share: float) -> bool:
    """Whether a move is among a share of all, told by its own words alone."""
    return crc32(words.encode()) < share * 2**32


class Folder:
    """The sources of a folder, judged by one day."""

    def __init__(self, folder: Path) -> None:
        self.name = folder.name
        self._sources = _as_one(folder)
        loaded = parse(self._sources)
        spec = loaded.spec
        assert spec is not None, f"{folder} is not whole"
        self.spec: Spec = spec
        self._bases = {path: based.on for path, based in loaded.bases.items()}
        self._before: dict[frozenset[Address], Told] = {}
        self._judged = 0

    def leaves(self) -> Iterator[Leaf]:
        """Every value of products, preparations, systems and jobs that the sources state, but the entries of a plain list."""
        for number, source in enumerate(self._sources.files):
            assert isinstance(source.root, Mapping)
            for kind, model in LIST_KINDS.items():
                held = source.root.entries.get(kind)
                if held is not None:
                    yield from _leaves(model, held, (kind,), (kind,), kind, number)

    def found(self, file: int, steps: Steps, change: Change, record: Address) -> list[Finding]:
        """What is told of the changed folder and was not before; nothing but the folder's own word where that seems to be nothing."""
        sources = self._changed(file, steps, change)
        near = self._near(record)
        return self._new(sources, near) or self._new(sources, None)

    def reshaped(self, reshape: Callable[[Tree], Tree]) -> list[Finding]:
        """What is told of the folder with every file reshaped; compared without addresses, for ids may be other ones."""
        files = []
        for source in self._sources.files:
            assert source.root is not None
            files.append(replace(source, root=reshape(source.root)))
        return self._more(replace(self._sources, files=tuple(files)))

    def rewritten(self, rewrite: Callable[[str], str]) -> list[Finding]:
        """What is told of the folder with every line of every file rewritten and read again."""
        files = []
        for source in self._sources.files:
            raw = "\n".join(rewrite(line) for line in source.lines).encode()
            file, faults = read_text(raw, source.name)
            if faults:
                return list(faults)
            assert file.root is not None
            assert source.root is not None
            files.append(replace(file, root=_as_taken(file.root, source.root)))
        return self._more(replace(self._sources, files=tuple(files)))

    def _more(self, sources: Sources) -> list[Finding]:
        before = Counter((rule, weight) for (rule, weight, _), n in self._told_before(None).items() for _ in range(n))
        new = []
        for finding in self._judge(sources):
            key = (finding.id, str(finding.severity))
            before[key] -= 1
            if before[key] < 0:
                new.append(finding)
        return new

    def _new(self, sources: Sources, near: frozenset[Address] | None) -> list[Finding]:
        before = self._told_before(near)
        seen: Counter[tuple[str, str, str]] = Counter()
        new = []
        for finding in self._judge(_part(sources, near)):
            key = (finding.id, str(finding.severity), finding.path)
            seen[key] += 1
            if seen[key] > before[key]:
                new.append(finding)
        return new

    def _told_before(self, near: frozenset[Address] | None) -> Told:
        key = near if near is not None else frozenset()
        if key not in self._before:
            found = self._judge(_part(self._sources, near))
            self._before[key] = Counter((f.id, str(f.severity), f.path) for f in found)
        return self._before[key]

    def _judge(self, sources: Sources) -> list[Finding]:
        self._judged += 1
        if self._judged % _REST == 0:
            gc.collect()
        return list(check_loaded(parse(sources), ON).report)

    def _changed(self, file: int, steps: Steps, change: Change) -> Sources:
        source = self._sources.files[file]
        assert source.root is not None
        root = _patched(source.root, steps, change)
        files = (*self._sources.files[:file], replace(source, root=root), *self._sources.files[file + 1 :])
        return replace(self._sources, files=files)

    def _near(self, record: Address) -> frozenset[Address]:
        """The record and those based on it, the jobs they reach, and all that these rest on or are based on."""
        spec, near = self.spec, set[Address]()
        for one in (record, *(path for path, bases in self._bases.items() if record in bases)):
            reached = {address for address in document_reach(spec, (one[0], one[1])) if address[0] == "jobs"}
            near |= {*closure(spec, (one[0], one[1])), *document_closure(spec, (one[0], one[1]))}
            for job in reached:
                near |= document_closure(spec, job)
        for path, bases in self._bases.items():
            if path in near:
                for kind, key in bases:
                    near |= closure(spec, (kind, key))
        return frozenset(near)


def _as_one(folder: Path) -> Sources:
    """The sources of a folder, with what it takes of its range as if it stood in it."""
    sources = read_with_range(folder)
    if sources.range is None:
        return sources
    own, _, _ = pictured(sources.files, sources.beside)
    shared = taken(sources, own)
    assert isinstance(shared, Taken), f"{folder} stands on no whole range"
    return Sources(folder, (*with_makers(own, shared.of_maker), *shared.files), ())


def _as_taken(read: Tree, taken: Tree) -> Tree:
    """What was read again, with the keys that the folder takes of its range, and no others."""
    if not isinstance(read, Mapping) or not isinstance(taken, Mapping):
        return read
    entries = {key: _as_taken(read.entries.get(key, held), held) for key, held in taken.entries.items()}
    return replace(read, entries=entries)


def _leaves(
    model: type[Node], tree: Tree, steps: Steps, path: tuple[str, ...], pattern: str, file: int
) -> Iterator[Leaf]:
    if isinstance(tree, Sequence):
        for at, entry in enumerate(tree.items):
            yield from _leaves(model, entry, (*steps, at), (*path, _id(entry) or f"[{at}]"), f"{pattern}.*", file)
        return
    if not isinstance(tree, Mapping):
        return
    for key, value in tree.entries.items():
        if key not in model.model_fields:
            continue  # how a record says what it is based on
        inner, here = inner_record(model, key), f"{pattern}.{key}"
        if inner is not None:
            yield from _leaves(inner, value, (*steps, key), (*path, key), here, file)
        elif isinstance(value, Scalar):
            kind = value_type(model.model_fields[key])
            assert kind is not None
            yield Leaf(file, (*steps, key), (*path, key), here, key, kind, value.text)


def _patched(tree: Tree, steps: Steps, change: Change) -> Tree | None:
    """The tree with the node at the end of the steps changed, or without it where the change gives none."""
    if not steps:
        return change(tree)
    first, rest = steps[0], steps[1:]
    if isinstance(tree, Sequence):
        assert isinstance(first, int)
        below = _patched(tree.items[first], rest, change)
        kept = () if below is None else (below,)
        return replace(tree, items=(*tree.items[:first], *kept, *tree.items[first + 1 :]))
    assert isinstance(tree, Mapping)
    assert isinstance(first, str)
    below = _patched(tree.entries[first], rest, change)
    entries = {key: value for key, value in tree.entries.items() if key != first}
    if below is not None:
        entries = {**tree.entries, first: below}
    return replace(tree, entries=entries, keys={key: tree.keys[key] for key in entries})


def _part(sources: Sources, near: frozenset[Address] | None) -> Sources:
    """The sources cut to some records; all of them for None."""
    if near is None:
        return sources
    files = []
    for source in sources.files:
        assert isinstance(source.root, Mapping)
        entries: dict[str, Tree] = {}
        for kind, held in source.root.entries.items():
            if kind in LIST_KINDS and isinstance(held, Sequence):
                items = tuple(entry for entry in held.items if (kind, _id(entry)) in near)
                if items:
                    entries[kind] = replace(held, items=items)
            else:
                entries[kind] = held
        if entries:
            root = replace(source.root, entries=entries, keys={key: source.root.keys[key] for key in entries})
            files.append(replace(source, root=root))
    return replace(sources, files=tuple(files))


def _id(entry: Tree) -> str:
    named = entry.entries.get("id") if isinstance(entry, Mapping) else None
    return named.text if isinstance(named, Scalar) else ""


def record_models(model: type[Node], way: list[str]) -> list[type[Node]]:
    """The records on the way of keys to a leaf, the outermost first. Raises KeyError where there is no such leaf."""
    found = [model]
    for step in way[:-1]:
        inner = inner_record(found[-1], step)
        if inner is None:
            raise KeyError(step)
        found.append(inner)
    found[-1].model_fields[way[-1]]
    return found
