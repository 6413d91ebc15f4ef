"""The blind rounds: specifications written without a look at the rules, put together from `range.yaml` and a `round_N.yaml`."""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from specgen.findings import Finding, Severity
from tests.good_spec import checked, put, take_out

HERE = Path(__file__).parent
ROUNDS = (
    "round_1",
    "round_2",
    "round_3",
    "round_4",
    "round_5",
    "round_6",
    "round_7",
    "round_8",
    "round_9",
    "round_10",
    "round_11",
    "round_12",
    "round_13",
    "round_14",
    "round_15",
    "round_16",
    "round_17",
    "round_18",
    "round_19",
    "round_20",
    "round_21",
    "round_22",
    "round_23",
    "round_24",
    "round_25",
    "round_26",
    "round_27",
    "round_28",
    "round_29",
    "round_30",
    "round_31",
    "round_32",
)  # those that were measured; a later one joins when it was


@cache
def _read(name: str) -> dict[str, Any]:
    return dict(yaml.load((HERE / f"{name}.yaml").read_text("utf-8"), Loader=yaml.CBaseLoader))


def sound(name: str, of_round: str) -> dict[str, Any]:
    """A sound specification: its own systems and jobs, and of the range only the project, products and preparations they use.

    Of the fourth round on it may be a change to a sound one of the round `of`.
    """
    own = copy.deepcopy(_read(of_round)["sound"][name])
    if "from" in own:
        return _changed(sound(own["from"], own["of"]), own)
    spec = {"project": copy.deepcopy(_read("range")["projects"][own["project"]])}
    spec["products"] = [_product(key) for key in _used(own, "product")]
    spec["preparations"] = [_preparation(key) for key in _used(own, "preparation")]
    return spec | {"systems": own["systems"], "jobs": own["jobs"]}


def faulty(name: str, of_round: str) -> dict[str, Any]:
    """A sound specification with the one change that makes it faulty."""
    case = _read(of_round)["faults"][name]
    return _changed(sound(case["from"], case.get("of", of_round)), case)


def _changed(spec: dict[str, Any], case: dict[str, Any]) -> dict[str, Any]:
    """A specification changed in place; products and preparations of the range that the change names come with it."""
    for path in case.get("without", ()):
        take_out(spec, path)
    for path, value in case.get("set", {}).items():
        put(spec, path, value)
    held = {one["id"] for kind in ("products", "preparations") for one in spec[kind]}
    spec["products"] += [_product(key) for key in _used({"systems": spec["systems"]}, "product") if key not in held]
    spec["preparations"] += [
        _preparation(key) for key in _used({"jobs": spec["jobs"]}, "preparation") if key not in held
    ]
    return spec


def sound_names() -> list[tuple[str, str]]:
    return [(of_round, name) for of_round in ROUNDS for name in _read(of_round)["sound"]]


def fault_names() -> list[tuple[str, str]]:
    return [(of_round, name) for of_round in ROUNDS for name in _read(of_round)["faults"]]


def new_findings(name: str, of_round: str) -> list[Finding]:
    """What the change brought."""
    case = _read(of_round)["faults"][name]
    base = sound_report(case["from"], case.get("of", of_round))
    before = {(finding.id, finding.path, finding.severity) for finding in base}
    return [
        finding
        for finding in report(faulty(name, of_round))
        if (finding.id, finding.path, finding.severity) not in before
    ]


def meant(finding: Finding, name: str, of_round: str) -> bool:
    """Whether the finding says what was written down beforehand, with at least that weight."""
    case = _read(of_round)["faults"][name]
    grave_enough = finding.severity is Severity.ERROR or (
        case["severity"] == "warning" and finding.severity is Severity.WARNING
    )
    return grave_enough and re.search(case["says"], finding.what, re.IGNORECASE) is not None


@cache
def sound_report(name: str, of_round: str) -> tuple[Finding, ...]:
    """On a sound one, which several faults start from."""
    return tuple(report(sound(name, of_round)))


def report(spec: dict[str, Any]) -> list[Finding]:
    return list(checked(spec).report)


def _product(key: str) -> dict[str, Any]:
    library = _read("range")
    product = {"id": key} | copy.deepcopy(library["products"][key])
    hazards = product["hazards"]
    product["hazards"] = copy.deepcopy(library["hazards"][hazards.pop("like")]) | hazards
    return product


def _preparation(key: str) -> dict[str, Any]:
    return {"id": key} | copy.deepcopy(_read("range")["preparations"][key])


def _used(node: Any, key: str) -> list[str]:
    return list(dict.fromkeys(_values(node, key)))


def _values(node: Any, key: str) -> Iterator[str]:
    if isinstance(node, list):
        for entry in node:
            yield from _values(entry, key)
    elif isinstance(node, dict):
        for name, value in node.items():
            if name == key:
                yield value
            else:
                yield from _values(value, key)
