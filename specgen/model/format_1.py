"""Source format 1: what format 2 calls otherwise, and the way there and back. Called by `parse`, `frozen`, `upgrade` and `decisions`.

The two formats say the same in other words, so the way there is a renaming at known places and loses nothing. What format 1 does
not know stays as it is: a folder of which only some files are rewritten reads as what it was.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, NamedTuple

from specgen.model.walk import Path
from specgen.source.tree import Mapping as Group
from specgen.source.tree import Mark, Node, Scalar, Sequence

NUMBER = 1
_ANY = "*"

# where, in the keys of format 1; the old key; the new one
KEYS = (
    ("project.roles.*", "duty", "responsibility"),
    ("products.*.pack", "delivered", "dispensed"),
    ("products.*.overcoat.*", "by", "next_coat"),
    ("products.*.overcoat.*", "window", "interval"),
    ("products.*.overcoat.*", "if_late", "if_exceeded"),
    ("products.*.application", "panel_temperature", "surface_temperature"),
    ("products.*.application.activation", "act", "action"),
    ("products.*.hazards", "released", "cure_releases"),
    ("products.*.hazards", "medical_provision", "health_surveillance"),
    ("products.*.hazards.safety_data_sheet", "obtain", "available_from"),
    ("products.*.hazards.first_aid.*", "act", "action"),
    ("products.*.claims.*", "says", "text"),
    ("systems.*.layers.*", "least_after", "remaining_min"),
    ("systems.*.layers.*", "hold", "overcoat_interval"),
    ("systems.*.layers.*", "if_late", "if_exceeded"),
    ("jobs.*", "air", "ventilation"),
    ("jobs.*.substrate", "mixed_with", "attached_metals"),
    ("jobs.*.items.*.substrate", "mixed_with", "attached_metals"),
    ("jobs.*.inspection.*", "often", "frequency"),
    ("jobs.*.inspection.*.criterion", "decides", "governs"),
)
_ROLES = {"filler": "surfacer", "base-coat": "basecoat", "top-coat": "topcoat", "clear": "clearcoat"}
_TASKS = {"preparing": "surface-preparation", "clearing-up": "clean-up"}
# where the value stands; the old value and the new one
VALUES: tuple[tuple[str, Mapping[str, str]], ...] = (
    ("products.*.roles.*", _ROLES),
    ("products.*.drying.*.stage", {"dust-dry": "dust-free", "dry-through": "through-dry", "full-cure": "fully-cured"}),
    ("products.*.hazards.protection.*.task", _TASKS),
    ("products.*.hazards.cautions.*.task", _TASKS),
    ("products.*.coverage.*.losses", {"left-out": "excluded"}),
    ("systems.*.layers.*.role", _ROLES),
    ("jobs.*.inspection.*.at", {"while-applying": "during-application", "finished": "completion"}),
)
# where the address of another value stands
_ADDRESSES = ("jobs.*.waivers.*.path",)
# the same of the file of decisions, which stands beside the sources
_DECISION_KEYS = (("", "verdicts", "decisions"), ("verdicts.*", "verdict", "decision"))
_DECISION_ADDRESSES = ("renames.*.old",)


@dataclass(slots=True)
class _Spot:
    """What is called otherwise at one place of the sources, and below it."""

    keys: dict[str, str] = field(default_factory=dict)
    values: Mapping[str, str] = field(default_factory=dict)
    address: bool = False
    below: dict[str, _Spot] = field(default_factory=dict)

    def step(self, name: str) -> _Spot | None:
        return self.below.get(name) or self.below.get(_ANY)


class Edit(NamedTuple):
    """One word of a source file that format 2 writes otherwise; `key` is False for a value."""

    mark: Mark
    old: str
    new: str
    key: bool


@dataclass(slots=True)
class Renamed:
    """A tree in the words of format 2, what had to be changed for it, and which words of format 2 stood there already."""

    root: Group
    edits: list[Edit]
    newer: list[Edit]


def upgraded(root: Group) -> Renamed:
    """The tree of one file of format 1 in the words of format 2; marks stay where they were."""
    return _upgraded(root, _spots())


def decisions_upgraded(root: Group) -> Renamed:
    """The same of the file of decisions."""
    return _upgraded(root, _spots_of(_DECISION_KEYS, (), _DECISION_ADDRESSES))


def _upgraded(root: Group, spots: _Spot) -> Renamed:
    done = Renamed(root, [], [])
    found = _node(root, spots, done)
    assert isinstance(found, Group)  # noqa: S101  # a group stays one
    done.root = found
    return done


def new_address(path: str) -> str:
    """The address of a value, `systems.cab.layers.top.hold`, in the words of format 2."""
    spot: _Spot | None = _spots()
    steps = []
    for step in path.split("."):
        steps.append(spot.keys.get(step, step) if spot is not None else step)
        spot = spot.step(step) if spot is not None else None
    return ".".join(steps)


def new_word(path: Path, text: str | None = None) -> str | None:
    """What format 2 calls the key a path ends in, or the value `text` that stands there; None where nothing was renamed."""
    spot = _spot_at(path if text is not None else path[:-1])
    if spot is None:
        return None
    return spot.values.get(text) if text is not None else spot.keys.get(path[-1])


def restored(model: dict[str, Any]) -> dict[str, Any]:
    """A canonical model (records by id under their kind) in the words of format 1."""
    return _restored(model, _spots())  # type: ignore[no-any-return]  # a mapping stays one


@cache
def _spots() -> _Spot:
    return _spots_of(KEYS, VALUES, _ADDRESSES)


def _spots_of(
    renamed: Iterable[tuple[str, str, str]], values: Iterable[tuple[str, Mapping[str, str]]], addresses: Iterable[str]
) -> _Spot:
    top = _Spot()
    for where, old, new in renamed:
        _at(top, where).keys[old] = new
    for where, words in values:
        _at(top, where).values = words
    for where in addresses:
        _at(top, where).address = True
    return top


def _at(spot: _Spot, where: str) -> _Spot:
    for step in filter(None, where.split(".")):
        spot = spot.below.setdefault(step, _Spot())
    return spot


def _spot_at(path: Path) -> _Spot | None:
    spot: _Spot | None = _spots()
    for step in path:
        spot = spot.step(step) if spot is not None else None
    return spot


def _node(node: Node, spot: _Spot, done: Renamed) -> Node:
    if isinstance(node, Scalar):
        return _scalar(node, spot, done)
    if isinstance(node, Sequence):
        entry = spot.below.get(_ANY)
        return node if entry is None else Sequence(tuple(_node(item, entry, done) for item in node.items), node.mark)
    return _group(node, spot, done)


def _group(node: Group, spot: _Spot, done: Renamed) -> Group:
    newer = set(spot.keys.values())
    entries: dict[str, Node] = {}
    keys: dict[str, Mark] = {}
    for key, value in node.entries.items():
        mark, name = node.keys[key], spot.keys.get(key, key)
        if name != key and name in node.entries:
            # both stand there: which of them counts is for the author to say
            name = key
        elif name != key:
            done.edits.append(Edit(mark, key, name, key=True))
        elif key in newer:
            done.newer.append(Edit(mark, key, key, key=True))
        below = spot.step(_old(spot, key))
        entries[name] = value if below is None else _node(value, below, done)
        keys[name] = mark
    return Group(entries, keys, node.mark)


def _scalar(node: Scalar, spot: _Spot, done: Renamed) -> Scalar:
    name = new_address(node.text) if spot.address else spot.values.get(node.text, node.text)
    if name != node.text:
        done.edits.append(Edit(node.mark, node.text, name, key=False))
        return Scalar(name, node.mark, node.plain)
    if node.text in spot.values.values():
        done.newer.append(Edit(node.mark, node.text, node.text, key=False))
    return node


def _old(spot: _Spot, key: str) -> str:
    return next((old for old, new in spot.keys.items() if new == key), key)


def _restored(value: Any, spot: _Spot) -> Any:
    if isinstance(value, dict):
        first = {_old(spot, key): held for key, held in value.items()}
        return {
            key: held if (below := spot.step(key)) is None else _restored(held, below) for key, held in first.items()
        }
    if isinstance(value, list):
        entry = spot.below.get(_ANY)
        return value if entry is None else [_restored(held, entry) for held in value]
    if spot.address:
        return _old_address(value)
    return next((old for old, new in spot.values.items() if new == value), value)


def _old_address(path: str) -> str:
    spot: _Spot | None = _spots()
    steps: list[str] = []
    for step in path.split("."):
        old = _old(spot, step) if spot is not None else step
        steps.append(old)
        spot = spot.step(old) if spot is not None else None
    return ".".join(steps)
