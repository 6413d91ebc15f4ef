"""The good specifications as plain data, changed for a case and checked. Every case of the suite is a change to one.

`good` is the small one; `second_good` differs from it in kind: two jobs, limits borrowed or tighter than the product's, US units.
`given` is what a rule page may start from: one of them, or a scenario of `scenarios.yaml`, a change to one of them.
"""

from __future__ import annotations

import copy
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import date
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import yaml

from specgen.checking import Checked, check_loaded
from specgen.findings import Finding
from specgen.model.parse import Loaded, parse
from specgen.model.spec import Spec
from specgen.source.beside import read_beside
from specgen.source.project import Sources
from specgen.source.reader import read_text
from specgen.source.tree import Mapping as Mapped
from specgen.source.tree import Mark, Scalar, Sequence, SourceFile

GOOD = Path(__file__).parent / "good"
DEMOS = Path(__file__).parents[1] / "specs_demo"
# a customer's folder, and the range it stands on
DEMO, DEMO_RANGE = DEMOS / "tramway", DEMOS / "range"
SECOND_GOOD = Path(__file__).parent / "second_good"
ON = date(2026, 11, 25)


@cache
def _read(folder: Path) -> str:
    """What a folder holds as JSON: reading that is the quickest way to a fresh copy."""
    whole: dict[str, Any] = {}
    for file in sorted(folder.glob("*.yaml")):
        # BaseLoader leaves every scalar as text, as specgen itself does.
        whole.update(yaml.load(file.read_text("utf-8"), Loader=yaml.CBaseLoader))
    return json.dumps(whole)


def good() -> dict[str, Any]:
    """A fresh copy."""
    return dict(json.loads(_read(GOOD)))


def second_good() -> dict[str, Any]:
    """A fresh copy."""
    return dict(json.loads(_read(SECOND_GOOD)))


def good_with(changes: Mapping[str, Any] | None = None, without: Iterable[str] = ()) -> dict[str, Any]:
    """A fresh copy of the good specification with values taken out, then values set."""
    spec = good()
    for path in without:
        take_out(spec, path)
    for path, value in (changes or {}).items():
        put(spec, path, value)
    return spec


@cache
def scenarios() -> dict[str, Any]:
    """The scenarios by name: `from` another one, `set` values by their paths, and `without` paths."""
    file = Path(__file__).parent / "scenarios.yaml"
    return dict(yaml.load(file.read_text("utf-8"), Loader=yaml.CBaseLoader))


def given(name: str) -> dict[str, Any]:
    """A fresh copy of the scenario of that name, of the good specification for the empty name. Raises KeyError for an unknown one."""
    return dict(json.loads(_given(name)))


@cache
def _given(name: str) -> str:
    if name in {"", "good"}:
        return _read(GOOD)
    if name == "second good":
        return _read(SECOND_GOOD)
    told = scenarios()[name]
    spec = given(told["from"])
    for path in told.get("without", ()):
        take_out(spec, path)
    for path, value in told.get("set", {}).items():
        put(spec, path, value)
    return json.dumps(spec)


def put(spec: dict[str, Any], path: str, value: Any) -> None:
    """Set the value at a path of keys and ids; a text is read as YAML."""
    owner, last = _owner(spec, path)
    new = yaml.load(value, Loader=yaml.CBaseLoader) if isinstance(value, str) else copy.deepcopy(value)
    if isinstance(owner, dict):
        owner[last] = new
    else:
        at = next((i for i, entry in enumerate(owner) if entry["id"] == last), None)
        if at is None:
            owner.append(new)
        else:
            owner[at] = new


def take_out(spec: dict[str, Any], path: str) -> None:
    """Remove the value at a path. Raises KeyError where it is not there."""
    owner, last = _owner(spec, path)
    if isinstance(owner, dict):
        del owner[last]
    else:
        owner.remove(_entry(owner, last))


def checked(spec: dict[str, Any], on: date = ON) -> Checked:
    """The specification written as YAML, read back and checked."""
    return check_loaded(loaded(spec), on)


def _beside(name: str) -> bytes:
    """A picture of the good specification, or of the demo, whose records are put to the same tests."""
    return read_beside(next((folder for folder in (GOOD, DEMO_RANGE) if (folder / name).exists()), DEMO), name)


def loaded(spec: Mapping[str, Any]) -> Loaded:
    """The specification written as YAML, read back and parsed."""
    source, faults = read_back(spec)
    return parse(Sources(GOOD, (source,), tuple(faults), beside=_beside))


def written(spec: Mapping[str, Any]) -> str:
    """The specification as YAML, to the letter as it would be dumped in one go."""
    return "".join(
        _dumped(part)[1] if at else "".join(_dumped(part)) for _, parts in _parts(spec) for at, part in parts
    )


def read_back(spec: Mapping[str, Any]) -> tuple[SourceFile, list[Finding]]:
    """To the letter what reading it as YAML gives; a record that stands in many specifications is read once."""
    lines: list[str] = []
    entries: dict[str, Any] = {}
    keys: dict[str, Mark] = {}
    first, nodes = Mark(1, 1, 1), 1
    for key, parts in _parts(spec):
        for at, part in parts:
            # the key stands once, above the first record
            alone = _read_alone(part, len(lines) - bool(at))
            if alone is None:
                return read_text(written(spec).encode(), "spec.yaml")
            first = first if lines else alone.root.mark
            held, keys[key] = alone.root.entries[key], keys.get(key, alone.root.keys[key])
            before = entries.get(key)
            entries[key] = held if before is None else Sequence((*before.items, *held.items), before.mark)
            lines += alone.lines[bool(at) :]
            nodes += alone.nodes - (3 if at else 1)  # the whole, the key and its list are counted once
    return SourceFile("spec.yaml", tuple(lines), Mapped(entries, keys, first), nodes), []


def _parts(spec: Mapping[str, Any]) -> Iterator[tuple[str, list[tuple[int, str]]]]:
    """What is written by itself, as JSON: each record of a list under the key of the list, and whatever else there is."""
    for key, value in spec.items():
        alone = [[entry] for entry in value] if isinstance(value, list) and value else [value]
        yield key, list(enumerate(json.dumps({key: part}) for part in alone))


@lru_cache(maxsize=5000)
def _dumped(part: str) -> tuple[str, str]:
    """The line of the key, and what is below it."""
    whole = yaml.dump(json.loads(part), Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True, width=100_000)
    first, end, rest = whole.partition("\n")
    return first + end, rest


@lru_cache(maxsize=5000)
def _read_alone(part: str, below: int) -> Any:
    """The file of one part as it is read that many lines further down; None where it is not read without a fault."""
    file, faults = read_text("".join(_dumped(part)).encode(), "spec.yaml")
    return None if faults else replace(file, root=_moved(file.root, below))


def _moved(node: Any, by: int) -> Any:
    if isinstance(node, Scalar):
        return Scalar(node.text, _down(node.mark, by), node.plain)
    if isinstance(node, Sequence):
        return Sequence(tuple(_moved(item, by) for item in node.items), _down(node.mark, by))
    entries = {key: _moved(value, by) for key, value in node.entries.items()}
    return Mapped(entries, {key: _down(mark, by) for key, mark in node.keys.items()}, _down(node.mark, by))


def _down(mark: Mark, by: int) -> Mark:
    return Mark(mark.line + by, mark.column, mark.end_column)


def spec_of(held: Checked | dict[str, Any]) -> Spec:
    """The typed specification, of plain data or of what was checked already."""
    spec = (held.loaded if isinstance(held, Checked) else loaded(held)).spec
    assert spec is not None
    return spec


def found(spec: dict[str, Any], on: date = ON) -> list[tuple[str, str]]:
    """(id, path) of every finding, sorted."""
    return sorted((finding.id, finding.path) for finding in checked(spec, on).report)


def _owner(spec: Any, path: str) -> tuple[Any, str]:
    *way, last = path.split(".")
    for step in way:
        if isinstance(spec, dict):
            if step not in spec:
                spec[step] = {}
            spec = spec[step]
        else:
            spec = _entry(spec, step)
    return spec, last


def _entry(entries: list[Any], key: str) -> Any:
    found = [entry for entry in entries if entry["id"] == key]
    if not found:
        raise KeyError(key)
    return found[0]
