"""The good specification as plain data, changed for a case and checked. Every case of the suite is a change to it."""

from __future__ import annotations

import copy
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from specgen.checking import Checked, check_loaded
from specgen.model.parse import parse
from specgen.source.project import Sources
from specgen.source.reader import read_text

GOOD = Path(__file__).parent / "good"
ON = date(2026, 11, 25)


@cache
def _good() -> dict[str, Any]:
    whole: dict[str, Any] = {}
    for file in sorted(GOOD.glob("*.yaml")):
        # BaseLoader leaves every scalar as text, as specgen itself does.
        whole.update(yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader))
    return whole


def good() -> dict[str, Any]:
    """A fresh copy."""
    return copy.deepcopy(_good())


def put(spec: dict[str, Any], path: str, value: str) -> None:
    """Set the value at a path of keys and ids; the value is YAML."""
    owner, last = _owner(spec, path)
    new = yaml.load(value, Loader=yaml.BaseLoader)
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
    raw = yaml.dump(spec, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True, width=100_000).encode()
    source, faults = read_text(raw, "spec.yaml")
    return check_loaded(parse(Sources(GOOD, (source,), tuple(faults))), on)


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
