"""Every customer leaf of a preparation, a system and a job is printed in the method statement, or named here with the reason.

A case states the leaf in the good specification, and a text that the method statement holds then and did not hold before.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.documents.method_statement.view import method_statement
from specgen.model.declaring import Audience
from specgen.model.job import Job
from specgen.model.preparation import Preparation
from specgen.model.system import System
from specgen.model.walk import declaration, models
from tests.documents.conftest import context
from tests.good_spec import good, put, spec_of

CASES: dict[str, dict[str, Any]] = yaml.load(
    (Path(__file__).parent / "leaves_printed.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader
)
PRINTED = {leaf: case for leaf, case in CASES.items() if "shows" in case}
NOT_PRINTED = {leaf: case["reason"] for leaf, case in CASES.items() if "reason" in case}


def test_every_leaf_is_printed_or_has_a_reason() -> None:
    leaves = {
        f"{model.__name__}.{name}"
        for root in (Preparation, System, Job)
        for model in models(root)
        for name in model.model_fields
        if (said := declaration(model, name)) is not None and said.audience is Audience.CUSTOMER
    }
    told = [
        f"{leaf} has no case in leaves_printed.yaml: say what shows it, or why nothing does"
        for leaf in leaves - set(CASES)
    ]
    told += [f"{leaf} has a case in leaves_printed.yaml and is no leaf" for leaf in set(CASES) - leaves]
    assert not told, "\n".join(sorted(told))
    assert set(PRINTED) | set(NOT_PRINTED) == set(CASES)
    assert not set(PRINTED) & set(NOT_PRINTED)


@pytest.mark.parametrize("leaf", PRINTED)
def test_leaf_is_printed(leaf: str) -> None:
    case = PRINTED[leaf]
    first = case.get("first", {})
    # a figure is not found inside a longer one
    shown = re.compile(rf"(?<![\w.]){re.escape(case['shows'].replace('~', chr(0xA0)))}(?!\w)")
    assert [text for text in _texts(first) if shown.search(text)] == []
    assert [text for text in _texts({**first, **case["put"]}) if shown.search(text)] != []


def _texts(changes: dict[str, str]) -> tuple[str, ...]:
    return _of(tuple(changes.items()))


@cache
def _of(changes: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    spec = good()
    for path, value in changes:
        put(spec, path, value)
    whole = spec_of(spec)
    job = whole.jobs["refit"]
    return tuple(_walk(method_statement(job, context(whole))))


def _walk(value: Any) -> Iterator[str]:
    if dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _walk(getattr(value, field.name))
    elif isinstance(value, tuple):
        for entry in value:
            yield from _walk(entry)
    elif not str(value).startswith("<svg "):
        yield str(value)
