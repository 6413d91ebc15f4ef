"""A record that is based on another: what it does not say itself it carries over, each value with the place where it stands.

Called by `parse`, which from then on sees the resolved tree alone: rules, comparison, documents and frozen models know of no base.
How the two become one is told in `merging`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from specgen.findings import Finding
from specgen.model.base_named import BASE, INCLUDING, WITHOUT, Asked, is_based
from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.model.hazards import Hazards
from specgen.model.job import ItemCoat
from specgen.model.merging import NEVER, Names, combined, merged
from specgen.model.product import ApplicationClimate
from specgen.model.safety_sets import SETS, SafetySet
from specgen.model.shape import id_of, is_empty, plain
from specgen.model.spec import KINDS, LIST_KINDS
from specgen.model.system import System
from specgen.model.walk import Path
from specgen.source.faults import fault
from specgen.source.places import Places
from specgen.source.project import NODES_LIMIT
from specgen.source.tree import FarMark, Mapping, Scalar, Sequence, SourceFile
from specgen.source.tree import Node as Tree

MOST_STEPS = 4
# of a project, for jobs that state none
CLIMATE = "climate"
# of a product
MOST_SETS = 20
# of an item: what differs there from its system
COATS = "coats"
# systems that items make by their coats; each is judged like one that is written out
MOST_COLOURED = 1_000
# of a circle
SHOWN = 6


@dataclass(frozen=True, slots=True)
class Resolved:
    """A record with what it carries over: its tree, where its values stand, the records it is based on, the nearest first, and the
    paths within it that stayed with the nearest. `is_whole` is False where what it is based on cannot be told."""

    tree: Mapping
    places: Places
    bases: tuple[Path, ...] = ()
    left: tuple[Path, ...] = ()
    is_whole: bool = True


def record_named(record: Path) -> str:
    """A record that values are carried over from, as sentences name it."""
    return "the project" if record[0] == "project" else record[1]


class Bases:
    """The records of all files that others may be based on. `unread` says that some file was not read to its end."""

    def __init__(self, files: Iterable[SourceFile], *, unread: bool) -> None:
        self.findings: list[Finding] = []
        self._unread = unread
        self._known: dict[str, dict[str, tuple[Mapping, SourceFile]]] = {kind: {} for kind in KINDS}
        self._depths: dict[str, dict[str, int | tuple[str, ...]]] = {kind: {} for kind in LIST_KINDS}
        self._done: dict[int, Resolved] = {}
        self._far: dict[Path, tuple[Mapping, int]] = {}
        self._nodes = 0
        self._full = False
        self._colours: dict[tuple[str, str], str] = {}
        self._stems: dict[str, int] = {}
        # systems that items of jobs made by their coats
        self.coloured: list[Resolved] = []
        self._climate: tuple[Mapping, SourceFile] | None = None
        for file in files:
            self._nodes += file.nodes
            project = file.root.entries.get("project") if isinstance(file.root, Mapping) else None
            climate = project.entries.get(CLIMATE) if isinstance(project, Mapping) else None
            if isinstance(climate, Mapping) and self._climate is None:
                self._climate = climate, file
            for kind, known in self._known.items():
                held = file.root.entries.get(kind) if isinstance(file.root, Mapping) else None
                for entry in held.items if isinstance(held, Sequence) else ():
                    if isinstance(entry, Mapping) and (name := id_of(entry)) is not None:
                        known.setdefault(name, (entry, file))

    def resolved(self, entry: Mapping, path: Path, places: Places) -> Resolved:
        """The record with what it carries over; what is wrong with how it says so goes to `findings`."""
        # the trees outlive this, so the identity of one is a safe key
        if id(entry) in self._done:
            return self._done[id(entry)]
        if id_of(entry) is None and not is_based(entry):
            # it is not whole in any case
            return Resolved(entry, places)
        asked = Asked(entry, path, places)
        tree = self._with_sets(asked, entry) if path[0] == "products" else entry
        found = Resolved(tree, places if tree is entry else asked.alone(tree))
        if path[0] in LIST_KINDS and is_based(tree):
            found = self._based(asked, asked.own(tree))
        if path[0] == "jobs" and found.is_whole:
            found = self._in_colours(asked, self._in_climate(asked, found))
        if found.tree is not entry:
            self._done[id(entry)] = found
        self.findings += asked.findings
        return found

    def _with_sets(self, asked: Asked, entry: Mapping) -> Mapping:
        """A product with the entries of the safety sets it names; an entry of its own goes before one of a set with the same id."""
        hazards = entry.entries.get("hazards")
        named = hazards.entries.get(SETS) if isinstance(hazards, Mapping) else None
        if not isinstance(hazards, Mapping) or named is None or is_empty(named):
            return entry
        entries = {key: held for key, held in hazards.entries.items() if key != SETS}
        own = Mapping(entries, {key: hazards.keys[key] for key in entries}, hazards.mark)
        whole = Mapping({}, {}, hazards.mark)
        if not isinstance(named, Sequence):
            asked.fault("MOD004", ("hazards", SETS), f"{SETS} must be a list of ids")
        elif len(named.items) > MOST_SETS:
            what = f"{SETS} has {len(named.items)} entries; at most {MOST_SETS} are read"
            asked.fault("MOD009", ("hazards", SETS), what, "name fewer sets that hold more")
        for at, name in enumerate(_items(named)[:MOST_SETS]):
            here = ("hazards", SETS, f"[{at}]")
            known = self._known[SETS].get(name.text) if isinstance(name, Scalar) else None
            if not isinstance(name, Scalar) or known is None:
                if not self._unread:
                    what = f"{name.text if isinstance(name, Scalar) else 'a group'} is not the id of any set in {SETS}"
                    ids = list(self._known[SETS])
                    asked.fault("MOD005", here, what, nearest_of(what.split()[0], ids, IDS_SHOWN) if ids else "")
                continue
            tree, file = known
            taken, size = self._far_of((SETS, name.text), Resolved(tree, Places(file)))
            if not self._fits(asked, (*asked.path, *here), size):
                break
            for block in SafetySet.model_fields:
                twice = _ids(whole.entries.get(block)) & _ids(taken.entries.get(block))
                if twice:
                    asked.fault("BAS005", here, f"{min(twice)} of {block} stands in two of the sets that are named")
            lists = {key: held for key, held in taken.entries.items() if key != "id"}
            whole, _ = combined(whole, Mapping(lists, {key: taken.keys[key] for key in lists}, taken.mark), Hazards)
        both, faults = combined(whole, own, Hazards)
        for id, where, what, remedy in faults:
            asked.fault(id, ("hazards", *where), what, remedy)
        return Mapping(entry.entries | {"hazards": both}, entry.keys, entry.mark)

    def _in_climate(self, asked: Asked, found: Resolved) -> Resolved:
        """A job with the ambient conditions of the project, as far as it states none itself."""
        if self._climate is None:
            return found
        taken, size = self._far_of(("project", CLIMATE), Resolved(self._climate[0], Places(self._climate[1])))
        own = found.tree.entries.get(CLIMATE)
        if (own is not None and not isinstance(own, Mapping)) or not self._fits(asked, asked.path, size):
            return found
        both = taken if own is None else combined(taken, own, ApplicationClimate)[0]
        key = found.tree.keys.get(CLIMATE, taken.mark)
        tree = Mapping(found.tree.entries | {CLIMATE: both}, found.tree.keys | {CLIMATE: key}, found.tree.mark)
        return replace(found, tree=tree, places=asked.alone(tree))

    def _in_colours(self, asked: Asked, found: Resolved) -> Resolved:
        """A job of which items have other variants or films: each has a system of its own, based on the one it names."""
        items = found.tree.entries.get("items")
        if not isinstance(items, Sequence) or not any(COATS in _entries(item) for item in items.items):
            return found
        job_system = found.tree.entries.get("system")
        done: list[Tree] = []
        for at, item in enumerate(items.items):
            if not isinstance(item, Mapping) or COATS not in item.entries:
                done.append(item)
                continue
            here = ("items", id_of(item) or f"[{at}]", COATS)
            named = item.entries.get("system", job_system)
            chosen = named.text if isinstance(named, Scalar) else ""
            key = self._coloured(asked, chosen, item.entries[COATS], here)
            entries = {name: held for name, held in item.entries.items() if name != COATS}
            keys = {name: item.keys[name] for name in entries}
            if key:
                mark = item.keys[COATS]
                entries["system"], keys["system"] = Scalar(key, mark, plain=True), mark
            done.append(Mapping(entries, keys, item.mark))
        tree = Mapping(
            found.tree.entries | {"items": Sequence(tuple(done), items.mark)}, found.tree.keys, found.tree.mark
        )
        return replace(found, tree=tree, places=asked.alone(tree))

    def _coloured(self, asked: Asked, system: str, said: Tree, here: Path) -> str:
        """The id of a system that is another but for what the coats say; empty, with a finding, where there is none."""
        if system not in self._known["systems"]:
            if not system:
                asked.fault("BAS006", here, "coats are given for an item that has no system")
            # a system that is nowhere is told where it is named
            return ""
        content = (system, repr(plain(said)))
        if content in self._colours:
            return self._colours[content]
        if len(self._colours) >= MOST_COLOURED:
            if len(self._colours) == MOST_COLOURED:
                what = f"with this item the {COATS} of items make more than {MOST_COLOURED:,} systems; no more are read"
                asked.fault("MOD009", here, what, "divide the jobs over several folders on one range")
                self._colours[content] = ""
            return ""
        raw, file = self._known["systems"][system]
        base = self.resolved(raw, ("systems", system), Places(file))
        taken, size = self._far_of(("systems", system), base)
        if not base.is_whole or not self._fits(asked, (*asked.path, *here), size):
            return ""
        coats = _items(said)
        faults = len(asked.findings)
        if not coats:
            asked.fault("MOD004", here, f"{COATS} must be a list, each entry with a hyphen")
        known = [name for layer in _items(base.tree.entries.get("layers")) if (name := id_of(layer)) is not None]
        self._coats_known(asked, system, coats, known, here)
        if len(asked.findings) > faults:
            return ""
        variants = [held.text for coat in coats if isinstance(held := _entries(coat).get("variant"), Scalar)]
        key = self._coloured_id("-".join((system, *(variants or [id_of(coat) or "" for coat in coats])))[:60])
        mark = FarMark.of(said.mark, asked.places.source, asked.path)
        only = {"id": Scalar(key, mark, plain=True), "layers": far(said, asked.places.source, asked.path, [])}
        tree, _ = combined(taken, Mapping(only, dict.fromkeys(only, mark), mark), System)
        left = {name: held for name, held in tree.entries.items() if name != NEVER}
        tree = Mapping(left, {name: tree.keys[name] for name in left}, mark)
        places = Asked(tree, ("systems", key), asked.places).alone(tree)
        self._colours[content] = key
        self.coloured.append(Resolved(tree, places, (("systems", system), *base.bases)))
        return key

    def _coats_known(self, asked: Asked, system: str, coats: tuple[Tree, ...], known: list[str], here: Path) -> None:
        """What an item says of coats is of coats of its system, and of nothing but variant and film."""
        ids = frozenset(known)
        for at, coat in enumerate(coats):
            name = id_of(coat)
            where = (*here, name or f"[{at}]")
            if name not in ids:
                what = f"{name or 'an entry without an id'} is no coat of the system {system}"
                asked.fault("BAS006", where, what, nearest_of(name or "", known, IDS_SHOWN) if known else "")
            for other in _entries(coat):
                if other not in ItemCoat.model_fields:
                    asked.fault("BAS006", (*where, other), f"{other} of a coat is the same on all items of its system")

    def _coloured_id(self, stem: str) -> str:
        """An id that no system has: the stem, else the stem with the next number."""
        while True:
            number = self._stems[stem] = self._stems.get(stem, 0) + 1
            key = stem if number == 1 else f"{stem}-{number}"
            if key not in self._known["systems"]:
                return key

    def _fits(self, asked: Asked, where: Path, size: int) -> bool:
        """False, once with a finding, where what is carried over would be more than is read at all."""
        if not self._full and self._nodes + size <= NODES_LIMIT:
            self._nodes += size
            return True
        if not self._full:
            self._full = True
            what = (
                f"With what records carry over from others the files contain more than {NODES_LIMIT:,} keys and values; "
                "from this one on, nothing more is carried over."
            )
            asked.findings.append(fault("SRC044", what, asked.places.place(where)))
        return False

    def _based(self, asked: Asked, own: Mapping) -> Resolved:
        kind = asked.path[0]
        alone = Resolved(own, asked.places, is_whole=False)
        base = self._base(asked)
        if base is None or not base[1].is_whole:
            return alone
        target, found = base
        taken, size = self._far_of(target, found)
        if not self._fits(asked, (*asked.path, BASE), size):
            return alone
        names = Names(frozenset(asked.names(INCLUDING)), frozenset(asked.names(WITHOUT)))
        tree, left, faults = merged(taken, own, LIST_KINDS[kind], names)
        for key in (INCLUDING, WITHOUT):
            for at, name in enumerate(asked.names(key)):
                if name not in names.met and name[0] != NEVER:
                    asked.fault("BAS003", (key, f"[{at}]"), f"{'.'.join(name)} names nothing that {target[1]} states")
        for id, where, what, remedy in faults:
            asked.fault(id, where, what, remedy)
        return Resolved(tree, asked.alone(tree), (target, *found.bases), left)

    def _base(self, asked: Asked) -> tuple[Path, Resolved] | None:
        """Where the base stands, and what it is with all it carries over itself; None where it is of no use."""
        (kind, name), base = asked.path, asked.base
        if not base or asked.unnamed:
            return None
        if base not in self._known[kind]:
            if not self._unread:
                asked.fault("BAS001", (BASE,), *self._unknown(kind, base))
            return None
        beneath = self._beneath(kind, name)
        if isinstance(beneath, tuple):
            # one of them tells it for all, and for what leads there
            if name == min(beneath):
                at = beneath.index(name)
                shown = [*beneath[at:], *beneath[:at], name]
                told = " is based on ".join(shown if len(shown) <= SHOWN else [*shown[:SHOWN], "others and so on"])
                asked.fault("BAS002", (BASE,), f"no record is at the beginning: {told}")
            return None
        if beneath > MOST_STEPS:
            # nor is what rests on a record that rests on too many told again
            if beneath == MOST_STEPS + 1:
                what = (
                    f"{name} rests on {beneath} records, each based on the next; {MOST_STEPS} at most can be followed"
                )
                asked.fault("BAS002", (BASE,), what)
            return None
        tree, file = self._known[kind][base]
        return (kind, base), self.resolved(tree, (kind, base), Places(file))

    def _beneath(self, kind: str, name: str) -> int | tuple[str, ...]:
        """How many records a record rests on, each based on the next; the names of the circle where they lead into one."""
        done = self._depths[kind]
        walked: dict[str, None] = {}
        at = name
        while at and at not in done and at not in walked:
            walked[at] = None
            known = self._known[kind].get(at)
            held = known[0].entries.get(BASE) if known is not None else None
            at = held.text if isinstance(held, Scalar) else ""
        order = list(walked)
        found: int | tuple[str, ...] = done[at] if at in done else tuple(order[order.index(at) :]) if at else -1
        for one in reversed(order):
            found = found + 1 if isinstance(found, int) else found
            done[one] = found
        return done[name]

    def _unknown(self, kind: str, name: str) -> tuple[str, str]:
        other = next((other for other, known in self._known.items() if name in known), "")
        if other:
            return f"{name} stands in {other}, and a record is based on one of its own kind, {kind}", ""
        known = list(self._known[kind])
        return f"{name} is not the id of any source in {kind}", nearest_of(name, known, IDS_SHOWN)

    def _far_of(self, path: Path, found: Resolved) -> tuple[Mapping, int]:
        """The tree of a base, each value with where it stands, and how many there are; made once for all that are based on it."""
        if path not in self._far:
            counted: list[int] = []
            tree = far(found.tree, found.places.source, path, counted)
            assert isinstance(tree, Mapping)  # noqa: S101  # a group stays one
            self._far[path] = tree, len(counted)
        return self._far[path]


def far(tree: Tree, source: SourceFile, record: Path, counted: list[int]) -> Tree:
    """The tree, each value with where it stands; `counted` grows by one with each."""
    mark = FarMark.of(tree.mark, source, record)
    counted.append(1)
    if isinstance(tree, Scalar):
        return tree._replace(mark=mark)
    if isinstance(tree, Sequence):
        return Sequence(tuple(far(item, source, record, counted) for item in tree.items), mark)
    entries = {key: far(held, source, record, counted) for key, held in tree.entries.items()}
    return Mapping(entries, {key: FarMark.of(at, source, record) for key, at in tree.keys.items()}, mark)


def _entries(tree: Tree) -> dict[str, Tree]:
    return tree.entries if isinstance(tree, Mapping) else {}


def _items(tree: Tree | None) -> tuple[Tree, ...]:
    return tree.items if isinstance(tree, Sequence) else ()


def _ids(tree: Tree | None) -> set[str]:
    return {name for item in tree.items if (name := id_of(item))} if isinstance(tree, Sequence) else set()
