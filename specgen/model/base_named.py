"""What a record says of the one it is based on: the keys for it, and one that asks, with what is wrong in how it does so. Called by
`based_on`."""

from __future__ import annotations

from specgen.findings import Finding
from specgen.model.declaring import Concern, Polarity, leaf
from specgen.model.field_types import Id, Line
from specgen.model.merging import NEVER
from specgen.model.node import Node
from specgen.model.shape import id_of, is_empty, shape_finding
from specgen.model.spec import LIST_KINDS
from specgen.model.walk import Path
from specgen.source.places import Places
from specgen.source.tree import Mapping, Scalar, Sequence, SourceFile
from specgen.source.tree import Node as Tree


class BasedOn(Node):
    """The keys of any product, preparation, system or job that is based on another."""

    based_on: Id | None = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "record of the same kind (by its id) from which what is not said here is carried over",
    )
    including: tuple[Line, ...] = leaf(
        Polarity.NOTE,
        Concern.DOCUMENT,
        "what is carried over only where it is named, as in hazards, first_aid, claims",
        default=(),
    )
    without: tuple[Line, ...] = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "what is not carried over, as in layers.surfacer", default=()
    )


BASE, INCLUDING, WITHOUT = BasedOn.model_fields


def is_based(entry: Tree) -> bool:
    return isinstance(entry, Mapping) and any(key in entry.entries for key in BasedOn.model_fields)


class Asked:
    """What a record says of the one it is based on."""

    def __init__(self, entry: Mapping, path: Path, places: Places) -> None:
        self.path, self.places, self._entry = path, places, entry
        self.findings: list[Finding] = []
        held = entry.entries.get(BASE)
        self.base = held.text if isinstance(held, Scalar) else ""
        self.unnamed = id_of(entry) is None
        if path[0] not in LIST_KINDS or not is_based(entry):
            return
        if self.unnamed:
            self.fault("MOD002", ("id",), f"id is missing in a record that is based on {self.base or 'another'}")
        elif not self.base:
            says = " and ".join(key for key in BasedOn.model_fields if key in entry.entries)
            self.fault("BAS001", (), f"{path[-1]} says {says}, and names no record it is based on")
        for key in (INCLUDING, WITHOUT):
            held = entry.entries.get(key)
            if held is not None and not isinstance(held, Sequence) and not is_empty(held):
                self.fault("MOD004", (key,), f"{key} must be a list")
        including = set(self.names(INCLUDING))
        for at, name in enumerate(self.names(WITHOUT)):
            if name in including:
                self.fault("BAS003", (WITHOUT, f"[{at}]"), f"{'.'.join(name)} stands under including and under without")
        for at, name in enumerate(self.names(INCLUDING)):
            if name[0] == NEVER:
                what = "a title block belongs to one record and is never carried over"
                self.fault("BAS003", (INCLUDING, f"[{at}]"), what)

    def own(self, tree: Mapping) -> Mapping:
        """The record without what it says of its base."""
        entries = {key: held for key, held in tree.entries.items() if key not in BasedOn.model_fields}
        return Mapping(entries, {key: tree.keys[key] for key in entries}, tree.mark)

    def alone(self, tree: Mapping) -> Places:
        """Where the values of the record stand, once it carries over what others state."""
        kind = self.path[0]
        top = Mapping({kind: Sequence((tree,), tree.mark)}, {kind: tree.mark}, tree.mark)
        return Places(SourceFile(self.places.source.name, self.places.source.lines, top))

    def names(self, key: str) -> tuple[Path, ...]:
        held = self._entry.entries.get(key)
        items = held.items if isinstance(held, Sequence) else ()
        return tuple(tuple(item.text.split(".")) for item in items if isinstance(item, Scalar))

    def fault(self, id: str, below: Path, what: str, remedy: str = "") -> None:
        where = (*self.path, *below)
        self.findings.append(shape_finding(id, where, self.places.place(where), what, remedy))
