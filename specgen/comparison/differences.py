"""The facts of a comparison: every leaf and every entry that is not the same on both sides. Called by `compare`.

Nothing is judged here. A part that comes or goes is told leaf by leaf; an entry that comes or goes is told once.
"""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from specgen.comparison.changes import Difference, Kind, Owner
from specgen.comparison.match import Paired, pair
from specgen.comparison.policy import INHERITED_PARTS, ORDERED, polarity_of_entry
from specgen.comparison.renames import Named, Renames
from specgen.comparison.same_entry import renames_found
from specgen.comparison.values import written_alike
from specgen.facts.contract.documents import moved
from specgen.model.contract_document import ContractClause
from specgen.model.node import Node
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import Declared, Path, declaration, inner_record

_NOTHING: frozenset[str] = frozenset()


@dataclass(slots=True)
class Facts:
    """What the walk over two specifications finds."""

    differences: list[Difference] = field(default_factory=list)
    not_compared: list[Path] = field(default_factory=list)
    renames: Renames = field(default_factory=dict)


def facts(
    old: Spec, new: Spec, renames: Renames, unread: Set[Path], *, part_of_old: bool = False, part_of_new: bool = False
) -> Facts:
    """`renames` are those declared, by the paths of the old side. Records at the paths `unread` are broken on a side and left out.

    Where only part of a side could be read, a record that is not there may stand in the rest: it is left out too.
    """
    found = Facts()
    held: dict[str, tuple[list[Any], list[Any]]] = {}
    for kind in LIST_KINDS:
        before, after = getattr(old, kind), getattr(new, kind)
        lost = {path[1] for path in unread if path[0] == kind}
        lost |= before.keys() - after.keys() if part_of_new else set()
        lost |= after.keys() - before.keys() if part_of_old else set()
        found.not_compared.extend((kind, key) for key in sorted(lost))
        kept = ([entry for key, entry in side.items() if key not in lost] for side in (before, after))
        held[kind] = (next(kept), next(kept))
    found.renames = renames_found(
        {kind: before for kind, (before, _) in held.items()},
        {kind: after for kind, (_, after) in held.items()},
        (old.project, new.project),
        renames,
    )
    walk = _Walk(found, _moved_only_there(old, new) | _moved_only_there(new, old))
    walk.record(
        _Here((), (), (Owner("project", "", old.project, new.project),)).below("project"), old.project, new.project
    )
    for kind, (before, after) in held.items():
        walk.entries(_Here((), (), ()).below(kind), kind, None, before, after)
    return found


def _moved_only_there(side: Spec, other: Spec) -> dict[int, tuple[ContractClause, Path]]:
    """The clauses that moved on a side and not yet on the other, with the clause that took their place."""
    found: dict[int, tuple[ContractClause, Path]] = {}
    for document in side.contract_documents.values():
        twin = other.contract_documents.get(document.id)
        stayed = {clause.id for clause in twin.clauses if clause.moved_to is None} if twin is not None else set()
        for clause in document.clauses:
            there = moved(clause, side)
            if clause.id in stayed and there.document is not None and there.clause is not None:
                path = ("contract_documents", there.document.id, "clauses", there.clause.id)
                found[id(clause)] = there.clause, path
    return found


def between(
    old: Node | None, new: Node | None, paths: tuple[Path, Path], owner: Owner, renames: Renames
) -> list[Difference]:
    """What differs between two records that stand at `paths`, whatever their ids; `renames` go by the paths of the old side."""
    walk = _Walk(Facts(renames=renames))
    walk.record(_Here(*paths, (owner,)), old, new)
    return walk.found.differences


@dataclass(frozen=True, slots=True)
class _Here:
    """Where the walk is: the paths on both sides, and the records above."""

    old: Path
    new: Path
    owners: tuple[Owner, ...]

    def below(self, name: str) -> _Here:
        return _Here((*self.old, name), (*self.new, name), self.owners)

    def entry(self, name: str, old: Any, new: Any) -> _Here:
        """The entry of the list this stands at."""
        before, after = (old if old is not None else new).id, (new if new is not None else old).id
        return _Here((*self.old, before), (*self.new, after), (*self.owners, Owner(name, after, old, new)))

    def part(self, name: str, old: Node | None, new: Node | None) -> _Here:
        return _Here((*self.old, name), (*self.new, name), (*self.owners, Owner(name, "", old, new)))


@cache
def _fields(model: type[Node]) -> tuple[tuple[str, Declared | None], ...]:
    return tuple((name, declaration(model, name)) for name in model.model_fields)


class _Walk:
    """`places` are the clauses that moved, each with the clause at its new place and its path; `elsewhere` are those clauses."""

    def __init__(self, found: Facts, places: Mapping[int, tuple[ContractClause, Path]] | None = None) -> None:
        self.found = found
        self.places = places or {}
        self.elsewhere = frozenset(id(clause) for clause, _ in self.places.values())
        self.named = Named(found.renames)

    def record(self, here: _Here, old: Node | None, new: Node | None) -> None:
        """Two states of one record; None where it is not there, so that everything in it is not stated."""
        held = new if new is not None else old
        if held is None:
            return
        stated_before = old.model_fields_set if old is not None else _NOTHING
        stated_after = new.model_fields_set if new is not None else _NOTHING
        for name, said in _fields(type(held)):
            before = getattr(old, name) if name in stated_before else None
            after = getattr(new, name) if name in stated_after else None
            # most values are the same, and most of those the very same: a quantity is parsed once a text
            if before is after and (said is not None or before is None):
                continue
            if said is not None and type(before) is str and before == after:
                continue
            if said is not None:
                if name != "id" or here.new == ("project",):
                    self.leaf(here.below(name), type(held), name, said, before, after)
            elif (type(held), name) in INHERITED_PARTS and (before is None or after is None):
                self.inherited(here, name, before, after)
            elif isinstance(before, Node) or isinstance(after, Node):
                self.record(here.part(name, before, after), before, after)
            else:
                self.entries(here.below(name), name, type(held), before or (), after or ())

    def inherited(self, here: _Here, name: str, old: Node | None, new: Node | None) -> None:
        """A part an item gains or loses, against the one of the job that holds where the item has none.

        What the two say alike has changed nothing, and is told as stated newly or no longer so that nothing is passed over.
        """
        job = here.owners[0]
        before = old if old is not None else getattr(job.old, name)
        after = new if new is not None else getattr(job.new, name)
        self.record(here.part(name, before, after), before, after)
        own = old if old is not None else new
        if own is None or before is None or after is None:
            return
        at = here.part(name, old, new)
        for key, said in _fields(type(own)):
            value = getattr(own, key)
            if said is not None and key in own.model_fields_set and getattr(before, key) == getattr(after, key):
                self.leaf(at.below(key), type(own), key, said, *((value, None) if new is None else (None, value)))

    def leaf(self, here: _Here, model: type[Node], name: str, said: Declared, old: Any, new: Any) -> None:
        if written_alike(old, new) or (
            self.named.any and written_alike(self.named.now(here.old, name, said, old), new)
        ):
            return
        info = model.model_fields[name]
        default = None if info.is_required() or info.default == () else info.default
        kind = Kind.ADDED if old is None else Kind.REMOVED if new is None else Kind.CHANGED
        self.found.differences.append(
            Difference(
                kind, here.new, here.old, here.owners, name, said.polarity, said.concern, said.audience,
                info.description or name, old, new, default, said.refers,
            )
        )  # fmt: skip

    def entries(self, here: _Here, name: str, owner: type[Node] | None, old: Any, new: Any) -> None:
        paired = pair(old, new, self.named.in_list(here.old))
        model = LIST_KINDS[name] if owner is None else inner_record(owner, name)
        if model is None:
            raise TypeError(f"{name} holds no records")
        for before, after in paired.pairs:
            at = here.entry(name, before, after)
            if isinstance(before, ContractClause) and (before.moved_to is None) is not (after.moved_to is None):
                self._moved(at, before, after)
                continue
            if before.id != after.id:
                self._entry(Kind.RENAMED, at, name, model, before, after)
            self.record(at, before, after)
        for entry in paired.removed:
            if id(entry) in self.elsewhere:
                continue
            self._entry(Kind.REMOVED, here.entry(name, entry, None), name, model, entry, None)
        for entry in paired.added:
            if id(entry) in self.elsewhere:
                continue
            self._entry(Kind.ADDED, here.entry(name, None, entry), name, model, None, entry)
        if paired.order != paired.new_order and owner is not None and (owner, name) in ORDERED:
            self._order(here, name, owner, model, paired)

    def _moved(self, at: _Here, before: ContractClause, after: ContractClause) -> None:
        """A clause that moved on one side is held against the one at its new place.

        Where that is in no source, what it asks for is taken to be as it was: moved is not gone.
        """
        there, here = self.places.get(id(after)), self.places.get(id(before))
        if there is None and here is None:
            limit = after.limit if before.moved_to is not None else before.limit
            kept = [
                one
                if one.moved_to is None or one.limit is not None or limit is None
                else one.model_copy(update={"limit": limit})
                for one in (before, after)
            ]
            self.record(at, *kept)
            return
        self.record(at.part("moved_to", before.moved_to, after.moved_to), before.moved_to, after.moved_to)
        old, old_path = here if here is not None else (before, at.old)
        new, new_path = there if there is not None else (after, at.new)
        owner = replace(at.owners[-1], old=old, new=new)
        self.record(_Here(old_path, new_path, (*at.owners[:-1], owner)), old, new)

    def _entry(self, kind: Kind, at: _Here, name: str, model: type[Node], old: Any, new: Any) -> None:
        said = declaration(model, "id")
        if said is None:
            raise TypeError(f"an entry of {name} has no id")
        about = model.model_fields["id"].description or name
        self.found.differences.append(
            Difference(
                kind, at.new, at.old, at.owners, name, polarity_of_entry(model), said.concern, said.audience, about, old, new
            )
        )  # fmt: skip

    def _order(self, here: _Here, name: str, owner: type[Node], model: type[Node], paired: Paired) -> None:
        said = declaration(model, "id")
        about = owner.model_fields[name].description or name
        if said is None:
            raise TypeError(f"an entry of {name} has no id")
        self.found.differences.append(
            Difference(
                Kind.REORDERED, here.new, here.old, here.owners, name, polarity_of_entry(model), said.concern, said.audience,
                about, paired.order, paired.new_order,
            )
        )  # fmt: skip
