"""Pictures that sources name: each is read, prepared, and its SHA-256 put behind its name. Called by `parse`, before records are read.

From then on the picture is part of the value that names it: what is compared, approved and frozen changes with it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache

from specgen.findings import Finding
from specgen.model.field_types import PICTURE_FILE
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.shape import entry_name, shape_finding
from specgen.model.spec import KINDS
from specgen.model.walk import Path, inner_record
from specgen.pictures.prepared import Prepared, prepared
from specgen.pictures.raster import pixels
from specgen.pictures.refused import NotAPicture
from specgen.source.beside import Beside, NotRead
from specgen.source.places import Places
from specgen.source.tree import Mapping as Group
from specgen.source.tree import Node as Tree
from specgen.source.tree import Scalar, Sequence, SourceFile

MOST = 200
MOST_PIXELS_TOGETHER = 300_000_000
_LOGO = ("project", "logo")


def pictured(
    files: Iterable[SourceFile], read: Beside | None
) -> tuple[tuple[SourceFile, ...], dict[str, Prepared], list[Finding]]:
    """The files, the pictures by the value that names them, and what is wrong with them."""
    if read is None:
        return tuple(files), {}, []
    walk = _Walk(read)
    done = tuple(walk.file(file) for file in files)
    return done, walk.pictures, walk.findings


@cache
def _leads(model: type[Node]) -> Mapping[str, type[Node] | None]:
    """The keys of a record below which a picture may be named, with the record they hold; None for the name itself."""
    found: dict[str, type[Node] | None] = {}
    for name, info in model.model_fields.items():
        inner = inner_record(model, name)
        if inner is None:
            if value_type(info) is PICTURE_FILE:
                found[name] = None
        elif _leads(inner):
            found[name] = inner
    return found


@dataclass(slots=True)
class _Walk:
    read: Beside
    pictures: dict[str, Prepared] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    _pixels: int = 0
    _known: dict[str, Prepared | NotRead | NotAPicture] = field(default_factory=dict)

    def file(self, file: SourceFile) -> SourceFile:
        if not isinstance(file.root, Group):
            return file
        places, entries = Places(file), dict(file.root.entries)
        for kind, model in KINDS.items():
            if kind in entries and _leads(model):
                entries[kind] = self._below(entries[kind], model, (kind,), places)
        return replace(file, root=replace(file.root, entries=entries))

    def _below(self, tree: Tree, model: type[Node], path: Path, places: Places) -> Tree:
        if isinstance(tree, Sequence):
            items = (
                self._below(item, model, (*path, entry_name(item, at)), places) for at, item in enumerate(tree.items)
            )
            return replace(tree, items=tuple(items))
        if not isinstance(tree, Group):
            return tree
        entries = dict(tree.entries)
        for name, inner in _leads(model).items():
            here, held = (*path, name), entries.get(name)
            if held is not None and inner is not None:
                entries[name] = self._below(held, inner, here, places)
            elif isinstance(held, Scalar):
                entries[name] = self._named(held, here, places)
        return replace(tree, entries=entries)

    def _named(self, stated: Scalar, path: Path, places: Places) -> Scalar:
        name = stated.text
        try:
            PICTURE_FILE.parse(name)
        except ValueError:
            # told where the record is read
            return stated
        found = self._picture(name)
        if not isinstance(found, Prepared):
            self._fault("MOD011", path, places, f"{name}: {found.what}", found.remedy)
            return stated
        if found.white and path == _LOGO:
            self._fault("MOD012", path, places, f"nothing of {name} shows on white paper")
        value = f"{name} sha256:{found.digest}"
        self.pictures[value] = found
        return stated._replace(text=value)

    def _picture(self, name: str) -> Prepared | NotRead | NotAPicture:
        if name not in self._known:
            try:
                if len(self._known) >= MOST:
                    raise NotRead(f"the folder names more than {MOST} pictures", "divide the folder")
                data = self.read(name)
                self._pixels += pixels(data)
                if self._pixels > MOST_PIXELS_TOGETHER:
                    raise NotRead(
                        f"the pictures of the folder have more than {MOST_PIXELS_TOGETHER // 1_000_000} million pixels together",
                        "save them smaller: a page shows some four million at most",
                    )
                self._known[name] = prepared(name, data)
            except (NotRead, NotAPicture) as refused:
                self._known[name] = refused
        return self._known[name]

    def _fault(self, id: str, path: Path, places: Places, what: str, remedy: str = "") -> None:
        self.findings.append(shape_finding(id, path, places.place(path), what, remedy))
