"""A specification with every leaf of every kind stated, and two further values for each: built from the model, so that a new leaf is in.

Values come from the field types alone; that they make no sense together does not matter to a comparison.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from specgen.findings import Place
from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.outline import outline, value_type
from specgen.model.project import Project
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import Path
from specgen.units.kinds import KINDS

# What a specification that was read holds. A safety set is no record of it: it is written into the products that take it.
ROOTS = {"project": Project, **LIST_KINDS}

PLAIN = {
    "yes or no": ("no", "yes"),
    "whole number": ("4", "5"),
    "whole number or range of them": ("4", "4..5"),
    "decimal number": ("4", "5"),
    "date": ("2026-03-01", "2026-03-02"),
    "id": ("first", "second"),
    "folder of a range": ("../first", "../second"),
    "file of a picture": ("first.svg", "second.svg"),
    "file kept beside the sources": ("first.pdf", "second.pdf"),
    "SHA-256": ("0" * 64, "1" * 64),
    "result of a test such as 5.2 MPa or class 1": ("4 MPa", "5 MPa"),
    "letter of a mark": ("A", "B"),
    "place on a picture": ("0.25", "0.5"),
    "time of day": ("07:00", "08:00"),
    "day and time": ("2026-03-01 08:00", "2026-03-02 08:00"),
    "colour": ("#0b5c6b", "#f5b800"),
    "code": ("C 1", "C 2"),
    "mixing ratio": ("4:1", "5:1"),
    "line of text": ("one line", "another line"),
    "text": ("one text", "another text"),
    "number of months or years": ("12 months", "13 months"),
    "colour as L*, a* and b* such as 52.10 3.20 -10.40": ("52.10 3.20 -10.40", "51.80 3.40 -9.90"),
}


def samples(kind: Strict) -> tuple[str, str]:
    """Two texts a leaf of the type may hold: the first is less, narrower or simply the one before the other."""
    if kind.name in PLAIN:
        return PLAIN[kind.name]
    words = kind.schema().get("enum")
    if words:
        return str(words[0]), str(words[-1] if len(words) < 2 else words[1])
    named, _, _ = kind.name.partition(" such as")
    quantity = named.removesuffix(" range").removesuffix(" or").replace(" ", "_")
    unit = KINDS[quantity].base
    if named.endswith(" or range"):
        return f"5 {unit}", f"5..6 {unit}"
    return (f"5..6 {unit}", f"4..6 {unit}") if named.endswith(" range") else (f"4 {unit}", f"5 {unit}")


def tree(model: type[Node], key: str) -> dict[str, Any]:
    """Every key of the record with a value: a fresh copy."""
    return dict(pickle.loads(_pickled(model, key)))  # our own, written by the line below


@cache
def _pickled(model: type[Node], key: str) -> bytes:
    return pickle.dumps({entry.name: _value(model, entry, key) for entry in outline(model)})


def _value(model: type[Node], entry: Any, key: str) -> Any:
    if entry.inner is not None and entry.many:
        return (tree(entry.inner, "first"), tree(entry.inner, "second"))
    if entry.inner is not None:
        return tree(entry.inner, key)
    if entry.name == "id":
        return key
    kind = value_type(model.model_fields[entry.name])
    assert kind is not None
    first, second = samples(kind)
    if entry.many:
        return (first,) if first == second else (first, second)
    return first


@dataclass(frozen=True)
class Leaf:
    """One leaf: the root record it belongs to, its path in it, its record and name."""

    root: str
    steps: Path
    model: type[Node]
    name: str
    many: bool

    @property
    def path(self) -> Path:
        return (self.root, *self.steps) if self.root == "project" else (self.root, "first", *self.steps)

    def __str__(self) -> str:
        return ".".join(self.path)


def every_leaf() -> Iterator[Leaf]:
    """All of them but the ids, which name their entries; in the first entry of each list."""
    for root, model in ROOTS.items():
        yield from _leaves(root, model, ())


def _leaves(root: str, model: type[Node], steps: Path) -> Iterator[Leaf]:
    for entry in outline(model):
        below = (*steps, entry.name)
        if entry.inner is not None:
            yield from _leaves(root, entry.inner, (*below, "first") if entry.many else below)
        elif entry.name != "id":
            yield Leaf(root, below, model, entry.name, entry.many)


def built(root: str, whole: dict[str, Any]) -> Spec:
    """The specification that holds one record of a kind, and a project."""
    if root == "project":
        return Spec(Project.model_validate(whole))
    project = _project()
    record = LIST_KINDS[root].model_validate(whole)
    return Spec(project, **{root: {"first": record}})


@cache
def _project() -> Project:
    return Project.model_validate(tree(Project, "first"))


@cache
def stated(root: str) -> Spec:
    """The specification of every leaf of a kind as it stands before a change."""
    return built(root, tree(ROOTS[root], "first"))


def place(path: Path) -> Place:
    """A place that gives its path away."""
    return Place(".".join(path), 1, 1, 1)


def at(whole: dict[str, Any], steps: Path) -> dict[str, Any]:
    """The mapping that holds the last step."""
    held: Any = whole
    for step in steps[:-1]:
        held = held[step] if isinstance(held, dict) else next(entry for entry in held if entry["id"] == step)
    return held
