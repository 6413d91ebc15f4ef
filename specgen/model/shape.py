"""One record from its tree: validated by pydantic, every fault turned into a finding at its place.

Called by `parse`. What validation cannot see (empty values, ids used twice) is looked for in the tree itself.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import islice
from typing import Any

from pydantic import ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from specgen.findings import Finding, Place
from specgen.model import format_1
from specgen.model.cause import cause_of
from specgen.model.faults import SHAPE_FAULTS
from specgen.model.field_types import nearest_of
from specgen.model.node import Node
from specgen.model.walk import Path, inner_record
from specgen.source.places import Places
from specgen.source.reader import FINDING_LIMIT
from specgen.source.tree import Mapping, Scalar, Sequence
from specgen.source.tree import Node as Tree

LIST_LIMIT = 5000
_SHOWN = 60
# a job prints its parts and vehicles on every page that names them, so there are fewer than of anything else
_JOB_LIMITS = {"items": 500, "vehicles": 200}


def shape_finding(fault_id: str, path: Path, place: Place, what: str, remedy: str = "", *, cause: str = "") -> Finding:
    """A finding of the table `faults`, with its own words where it has any; one slip told alike in one record is one cause."""
    row = SHAPE_FAULTS[fault_id]
    address = ".".join(path)
    # entries that lack one key are of one cause, two keys are of two
    one = cause or cause_of(path[:-1] or path, what, {})
    return Finding(row.id, row.severity, place, address, what, row.why, remedy or row.remedy, cause=one)


def read_record(model: type[Node], tree: Tree, path: Path, places: Places) -> tuple[Node | None, list[Finding]]:
    """The record and its faults; no record where a fault leaves it incomplete."""
    # one more than a file lists, so that `parse` sees that there are more
    found = list(islice(_inspect(model, tree, path, places), FINDING_LIMIT + 1))
    if not isinstance(tree, Mapping) or any(f.id != "MOD007" for f in found):
        # Validation still runs, so that all faults of the record come in one run.
        if isinstance(tree, Mapping):
            found.extend(_validate(model, tree, path, places)[1])
        return None, found
    record, faults = _validate(model, tree, path, places)
    return record, found + faults


def is_empty(tree: Tree) -> bool:
    """True for a key with nothing behind it."""
    return isinstance(tree, Scalar) and tree.plain and tree.text == ""


def id_of(tree: Tree) -> str | None:
    """The id an entry of a list states, or None."""
    stated = tree.entries.get("id") if isinstance(tree, Mapping) else None
    return stated.text if isinstance(stated, Scalar) and stated.text else None


def entry_name(tree: Tree, index: int) -> str:
    """How an entry of a list is addressed: by its id, or by its number where it has none."""
    return id_of(tree) or f"[{index}]"


def _validate(model: type[Node], tree: Mapping, path: Path, places: Places) -> tuple[Node | None, list[Finding]]:
    try:
        return model.model_validate(plain(tree)), []
    except ValidationError as fault:
        errors = fault.errors(include_url=False)[: FINDING_LIMIT + 1]
        return None, [_translate(model, error, tree, path, places) for error in errors]


def plain(tree: Tree) -> Any:
    """The tree as pydantic takes it: text, tuples and dicts; empty values are left out."""
    if isinstance(tree, Scalar):
        return tree.text
    if isinstance(tree, Sequence):
        return tuple(plain(item) for item in tree.items)
    return {key: plain(value) for key, value in tree.entries.items() if not is_empty(value)}


def _inspect(model: type[Node], tree: Tree, path: Path, places: Places) -> Iterator[Finding]:
    if not isinstance(tree, Mapping):
        what = f"{path[-1]} must be a group of keys"
        yield shape_finding("MOD004", path, places.place(path), what, _keys_of(model))
        return
    fields = _fields(model)
    for key, value in tree.entries.items():
        info = fields.get(key)
        here = (*path, key)
        if info is None:
            # with a value behind it, validation finds it; without one it is left out before that
            if is_empty(value):
                yield _unknown(model, tree, here, places)
            continue
        inner = inner_record(model, key)
        if is_empty(value):
            if not info.is_required():
                yield shape_finding("MOD007", here, places.key_place(here), f"{key} has no value")
        elif isinstance(value, Sequence):
            yield from _inspect_list(inner, value, here, places)
        elif isinstance(value, Mapping) and inner is not None:
            yield from _inspect(inner, value, here, places)


@cache
def _fields(model: type[Node]) -> dict[str, FieldInfo]:
    return model.model_fields


def _inspect_list(inner: type[Node] | None, tree: Sequence, path: Path, places: Places) -> Iterator[Finding]:
    limit = _JOB_LIMITS.get(path[-1], LIST_LIMIT) if path[0] == "jobs" else LIST_LIMIT
    if len(tree.items) > limit:
        what = f"{path[-1]} has {len(tree.items)} entries; at most {limit} are read"
        yield shape_finding("MOD009", path, places.place(path), what)
    seen: dict[str, str] = {}
    for index, entry in enumerate(tree.items):
        name = entry_name(entry, index)
        if inner is None:
            name = entry.text if isinstance(entry, Scalar) else name
        before = seen.get(name.lower())
        seen.setdefault(name.lower(), name)
        if before is not None:
            what = (
                f"{name} is given twice in {path[-1]}"
                if before == name
                else f"{before} and {name} differ only in capitals"
            )
            where = places.place((*path, f"[{index}]", "id") if inner is not None else (*path, f"[{index}]"))
            yield shape_finding("MOD006", (*path, name), where, what)
        if inner is not None and isinstance(entry, Mapping):
            yield from _inspect(inner, entry, (*path, name), places)


def _translate(model: type[Node], error: ErrorDetails, tree: Mapping, path: Path, places: Places) -> Finding:
    here = (*path, *_named(error["loc"], tree))
    key, called = here[-1], _called(here)
    match error["type"]:
        case "extra_forbidden":
            return _unknown(_owner(model, error["loc"]), _holder(tree, error["loc"]), here, places)
        case "missing":
            owner = _owner(model, error["loc"])
            about = owner.model_fields[key].description or key
            remedy = f"write {key}: {about}"
            if beside := _carried_beside(tree, error["loc"], here, places):
                remedy += f"; or, where an entry carried over is meant, its id: {', '.join(beside)}"
            what = f"{key} is missing in {_called(here[:-1])}"
            return shape_finding("MOD002", here, places.place(here), what, remedy)
        case "too_short":
            return shape_finding("MOD002", here, places.place(here), f"{called} has no entry")
        case "specgen":
            told = error.get("ctx", {})
            new = format_1.new_word(here, str(error["input"]))
            remedy = _renamed(str(error["input"]), new) if new is not None else str(told["remedy"])
            return shape_finding("MOD003", here, places.place(here), f"{called}: {told['what']}", remedy)
        case "model_type":
            remedy = _keys_of(_owner(model, (*error["loc"], "")))
            return shape_finding("MOD004", here, places.place(here), f"{called} must be a group of keys", remedy)
        case "tuple_type":
            inner = inner_record(_owner(model, error["loc"]), key)
            given = error["input"]
            remedy = f"begin each entry with a hyphen; {_keys_of(inner)}" if inner is not None else ""
            if inner is None and isinstance(given, str) and len(given) <= _SHOWN:
                remedy = f"write {key}: [{given}]"
            what = f"{called} must be a list, each entry with a hyphen"
            return shape_finding("MOD004", here, places.place(here), what, remedy)
        case other:
            raise AssertionError(f"pydantic reports {other}, which no field type of ours raises")


def _keys_of(model: type[Node]) -> str:
    """What to write where a group of keys belongs: the keys it must have, else those it may have."""
    needed = [name for name, info in model.model_fields.items() if info.is_required()]
    names = needed or list(model.model_fields)
    return f"write its keys in {{ }} or indented below it: {', '.join(names)}"


def _carried_beside(tree: Mapping, loc: tuple[int | str, ...], path: Path, places: Places) -> list[str]:
    """The other entries of the list that a record carries over from the one it is based on, by their ids."""
    entries = _holder(tree, loc[:-1])
    if not isinstance(entries, Sequence):
        return []
    ids = (id_of(entry) for entry in entries.items)
    return [name for name in ids if name and places.record((*path[:-2], name, "id")) is not None]


def _called(path: Path) -> str:
    """The last step of a path in words: an entry without an id is named by its place in the list."""
    last = path[-1]
    return f"entry {int(last[1:-1]) + 1} of {path[-2]}" if last.startswith("[") else last


def _unknown(owner: type[Node], tree: Tree | None, path: Path, places: Places) -> Finding:
    key = path[-1]
    # a key that the author wrote beside it cannot be the one that was meant; one carried over can
    written = (
        []
        if not isinstance(tree, Mapping)
        else [name for name in tree.entries if places.record((*path[:-1], name)) is None]
    )
    free = [name for name in owner.model_fields if name not in written]
    new = format_1.new_word(path)
    remedy = _renamed(key, new) if new is not None else nearest_of(key, free) if free else ""
    if " " in key:
        # `{says: clean, dry}` is a key `dry` with nothing behind it
        remedy = "if it belongs to the value before it, put that whole value in quotes: a comma between { and } ends it"
    return shape_finding("MOD001", path, places.key_place(path), f"{key} is not a key known here", remedy)


def _renamed(old: str, new: str) -> str:
    return f"write {new}: {old} is its name in source format {format_1.NUMBER}"


def _named(loc: tuple[int | str, ...], tree: Tree) -> Iterator[str]:
    """pydantic's location with the place in a list replaced by the id of the entry."""
    at: Tree | None = tree
    for step in loc:
        if isinstance(step, int) and isinstance(at, Sequence):
            at = at.items[step]
            yield entry_name(at, step)
        else:
            at = at.entries.get(str(step)) if isinstance(at, Mapping) else None
            yield str(step)


def _holder(tree: Tree, loc: tuple[int | str, ...]) -> Tree | None:
    """The group of keys that the last step of a location stands in."""
    at: Tree | None = tree
    for step in loc[:-1]:
        if isinstance(step, int):
            at = at.items[step] if isinstance(at, Sequence) else None
        else:
            at = at.entries.get(step) if isinstance(at, Mapping) else None
    return at


def _owner(model: type[Node], loc: tuple[int | str, ...]) -> type[Node]:
    """The record that holds the last step of a location."""
    for step in loc[:-1]:
        if isinstance(step, str):
            inner = inner_record(model, step)
            model = inner if inner is not None else model
    return model
