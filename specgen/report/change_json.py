"""What changed for other programs, under keys that stay; `change.schema.json` beside this module describes them. Called by `compare`.

A change of the meaning of a key, or the loss of one, raises `SCHEMA_VERSION`; a new key does not.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from importlib import resources
from typing import Any

from specgen.comparison.changes import Change, Comparison, Decision, FigureMoved, FindingMoved, Rounding
from specgen.comparison.sentences import sentence, whole_text
from specgen.comparison.tally import counted
from specgen.findings import Finding, Place
from specgen.model.declaring import Audience
from specgen.rules.titles import title_of
from specgen.source.characters import printable
from specgen.units.rounding import plain_text

SCHEMA_VERSION = 4


@cache
def schema() -> dict[str, Any]:
    """The JSON Schema of what `write` gives."""
    whole: dict[str, Any] = json.loads(resources.files(__package__).joinpath("change.schema.json").read_text("utf-8"))
    return whole


def write(found: Comparison, *, old: str, new: str) -> str:
    """JSON text. `old` and `new` are the sides as the user named them; files are relative to their folders.

    Addresses and places in the sources are for the maker: a customer is told numbers of documents and of changes instead.
    """
    changes, makers = found.changes, found.audience is Audience.MAKER
    numbers = found.numbers()
    whole = {
        "schema_version": SCHEMA_VERSION,
        "old": printable(old),
        "new": printable(new),
        "counts": {concern.value: dict(numbers) for concern, numbers in counted(changes).items()},
        "changes": [{"number": at, **_change(change, makers=makers)} for at, change in enumerate(changes, start=1)],
        "figures": [_figure(entry, numbers, makers=makers) for entry in found.figures],
        "findings": [_finding(entry, makers=makers) for entry in found.findings],
        "tables": [{"name": entry.name, "kind": entry.kind.value} for entry in found.tables],
        "not_compared": list(found.not_compared) if makers else len(found.not_compared),
        "unread_files": [
            {"side": side} | ({"file": printable(file)} if makers else {}) for side, file in found.unread_files
        ],
        "unused_decisions": [_decision(entry) for entry in found.unused_decisions],
        "withheld": found.withheld,
    }
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _change(change: Change, *, makers: bool) -> dict[str, Any]:
    fact = change.difference
    # an entry of the maker's is here for the maker alone
    everything = fact.audience is Audience.MAKER
    values = {
        side: printable(whole_text(value, everything=everything)) if value is not None else None
        for side, value in (("old", fact.old), ("new", fact.new))
    }
    whole = {
        "path": change.path,
        "kind": fact.kind.value,
        "effect": change.effect.value,
        "weighed": change.weighed.value,
        "open": change.is_open,
        "concern": change.concern.value,
        "polarity": fact.polarity.value,
        "says": printable(sentence(change)),
        **values,
        "old_place": _place(change.old_place),
        "new_place": _place(change.new_place),
        "note": change.note,
        "rounding": [_rounding(entry) for entry in change.rounding],
        "fingerprint": change.fingerprint,
        "decision": _decision(change.decision) if change.decision is not None else None,
        "reaches": [{"document": job.number, "items": list(job.items)} for job in change.reaches],
        "through": list(fact.through) if fact.through is not None else None,
        "follows": [_change(echo, makers=makers) for echo in change.follows],
        "alike": [_change(other, makers=makers) for other in change.alike],
    }
    return whole if makers else _without(whole, "path", "old_place", "new_place", "through")


def _without(whole: dict[str, Any], *keys: str) -> dict[str, Any]:
    return {key: value for key, value in whole.items() if key not in keys}


def _place(place: Place | None) -> dict[str, Any] | None:
    if place is None:
        return None
    return {"file": place.file, "line": place.line, "column": place.column, "end_column": place.end_column}


def _rounding(entry: Rounding) -> dict[str, Any]:
    return {
        "by_rounding": entry.by_rounding,
        "in_old_unit": f"{plain_text(entry.in_old_unit)} {entry.old_unit}",
        "in_new_unit": f"{plain_text(entry.in_new_unit)} {entry.new_unit}",
        "percent": plain_text(entry.percent) if entry.percent is not None else None,
    }


def _decision(entry: Decision) -> dict[str, Any]:
    said = {"fingerprint": entry.fingerprint, "decision": entry.answer.value, "who": entry.who, "reason": entry.reason}
    return {key: printable(text) for key, text in said.items()} | {"on": entry.on.isoformat()}


def _figure(entry: FigureMoved, numbers: Mapping[str, int], *, makers: bool) -> dict[str, Any]:
    whole = {
        "id": entry.id,
        "name": entry.name,
        "of": entry.of,
        "old": entry.old or None,
        "new": entry.new or None,
        "jobs": list(entry.jobs),
        "products": list(entry.products),
        "where": list(entry.where),
        "causes": list(entry.causes),
        "from_changes": sorted({numbers[cause] for cause in entry.causes if cause in numbers}),
        "makers_cause": entry.makers_cause,
    }
    return whole if makers else _without(whole, "id", "jobs", "products", "causes")


def _finding(entry: FindingMoved, *, makers: bool) -> dict[str, Any]:
    return {"old": _side(entry.old, makers=makers), "new": _side(entry.new, makers=makers)}


def _side(finding: Finding | None, *, makers: bool) -> dict[str, Any] | None:
    if finding is None:
        return None
    if not makers:
        # a customer is told which rule speaks, not its words on this value
        return {"id": finding.id, "severity": finding.severity.value, "title": title_of(finding.id)}
    said = {"id": finding.id, "severity": finding.severity.value, "path": finding.path, "what": finding.what}
    return {key: printable(text) for key, text in said.items()} | {"place": _place(finding.place)}
