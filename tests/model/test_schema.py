"""The JSON Schema: good sources pass it as a YAML 1.2 editor reads them, slips of the pen do not, and it keeps up with the model."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from pydantic_core import PydanticCustomError
from ruamel.yaml import YAML

from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.schema import BASED, DIALECT, schema
from specgen.model.spec import KINDS, LIST_KINDS, SINGULAR
from specgen.model.walk import models
from specgen.source.project import PEOPLE
from specgen.units.kinds import KINDS as KINDS_OF_QUANTITY

_ROOT = Path(__file__).parents[2]
FILES = sorted([*(_ROOT / "tests" / "good").glob("*.yaml"), *(_ROOT / "specs_demo").rglob("*.yaml")])
# names of persons stand beside the sources and are none of them
FILES = [file for file in FILES if file.name != PEOPLE]


def _as_editor(text: str) -> Any:
    """As a YAML 1.2 editor reads it. The core schema has no dates; the reader used here knows them, so they are put back."""
    reader = YAML(typ="safe", pure=True)
    reader.version = (1, 2)
    return _dates_as_text(reader.load(text))


def _dates_as_text(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _dates_as_text(held) for key, held in value.items()}
    if isinstance(value, list):
        return [_dates_as_text(held) for held in value]
    return value.isoformat() if isinstance(value, date) else value


@cache
def _schema(kind: str) -> dict[str, Any]:
    return schema(kind)


@cache
def _validator(kind: str) -> Draft202012Validator:
    return Draft202012Validator(_schema(kind))


def _errors(kind: str, document: Any) -> list[str]:
    found = _validator(kind).iter_errors(document)
    return sorted(error.message for error in found)


@pytest.mark.parametrize("kind", SINGULAR)
def test_schema_is_one(kind: str) -> None:
    written = schema(kind)
    Draft202012Validator.check_schema(written)
    assert written["$schema"] == DIALECT
    assert list(written["properties"]) == list(KINDS)
    assert written["required"] == [SINGULAR[kind]]
    assert "specgen-leaf" not in str(written)


@pytest.mark.parametrize("kind", SINGULAR)
def test_schema_holds_every_record_and_key_of_the_model(kind: str) -> None:
    defs = schema(kind)["$defs"]
    held = {model.__name__: model for model in models(KINDS[SINGULAR[kind]])}
    assert set(defs) - {BASED} == set(held)
    assert (BASED in defs) == (SINGULAR[kind] in LIST_KINDS)
    for name, model in held.items():
        written = defs[name]
        assert list(written["properties"]) == list(model.model_fields)
        # one of several may be asked for: the maker, or the range that names it
        asked = [*written.get("required", ()), *written.get("anyOf", [{"required": ()}])[0]["required"]]
        assert asked == [n for n, info in model.model_fields.items() if info.is_required()]
        assert written["additionalProperties"] is False
        assert all(entry["description"] for entry in written["properties"].values())


def test_unknown_kind() -> None:
    with pytest.raises(KeyError):
        schema("products")


@pytest.mark.parametrize("file", FILES, ids=[file.relative_to(_ROOT).as_posix() for file in FILES])
def test_good_source_is_valid(file: Path) -> None:
    document = _as_editor(file.read_text("utf-8"))
    kinds = [kind for kind, block in SINGULAR.items() if block in document]
    assert kinds
    assert [_errors(kind, document) for kind in kinds] == [[] for _ in kinds]


@pytest.mark.parametrize("kind", SINGULAR)
def test_default_is_valid_by_its_own_schema(kind: str) -> None:
    written = schema(kind)
    for record in written["$defs"].values():
        for entry in record["properties"].values():
            if "default" in entry:
                whole = {**entry, "$defs": written["$defs"]}
                assert Draft202012Validator(whole).is_valid(entry["default"])


_PREPARATION = "preparations: [{id: p, title: T, steps: [{id: s, do: wash, text: T%s}]}]"

VALID = [
    ("preparation", _PREPARATION % ""),
    ("preparation", _PREPARATION % ", abrasive: 3"),
    ("preparation", _PREPARATION % ", grade: "),
    (
        "preparation",
        "preparations: [{id: p, based_on: q, including: [title], without: [steps.s], steps: [{id: t, before: u}]}]",
    ),
    ("preparation", "preparations: [{id: p, title: 12, steps: [], coat_within: 4 h}]"),
    ("preparation", "preparations: [{id: p, title: yes, steps: []}]\njobs: [{}]\nproducts:\n"),
    ("project", "project: {id: a, title: A, maker: {name: M}, customer: {name: 7}, jurisdictions: [EU, 840]}"),
    ("project", "project: {id: a, title: A, maker: {name: M}, customer: {name: C}, page_size: , numbering: }"),
]

BROKEN = [
    ("nothing", "preparation", "{}"),
    ("list at the margin", "preparation", "[]"),
    ("kind in the singular", "preparation", "preparations: []\npreparation: []"),
    ("another kind only", "preparation", "jobs: []"),
    ("group for a list", "preparation", "preparations: {p: {title: T}}"),
    ("unknown key", "preparation", _PREPARATION % ", gread: St 3"),
    ("unknown key of the entry", "preparation", "preparations: [{id: p, titel: T, title: T, steps: []}]"),
    ("missing key", "preparation", "preparations: [{id: p, steps: []}]"),
    ("empty value that must be there", "preparation", "preparations: [{id: p, title: , steps: []}]"),
    ("unknown key of one based on another", "preparation", "preparations: [{id: p, based_on: q, titel: T}]"),
    ("nothing it is based on", "preparation", "preparations: [{id: p, title: T, steps: [], without: [steps.s]}]"),
    ("missing list", "preparation", "preparations: [{id: p, title: T}]"),
    ("text for a list", "preparation", "preparations: [{id: p, title: T, steps: wash}]"),
    ("text among entries", "preparation", "preparations: [{id: p, title: T, steps: [wash]}]"),
    ("list for a text", "preparation", "preparations: [{id: p, title: [T], steps: []}]"),
    ("word not in the list", "preparation", "preparations: [{id: p, title: T, steps: [{id: s, do: rinse, text: T}]}]"),
    ("bare number", "preparation", "preparations: [{id: p, title: T, steps: [], coat_within: 4}]"),
    ("no blank", "preparation", "preparations: [{id: p, title: T, steps: [], coat_within: 4h}]"),
    ("wrong unit", "preparation", "preparations: [{id: p, title: T, steps: [], coat_within: 4 um}]"),
    ("id with a slash", "preparation", "preparations: [{id: a/b, title: T, steps: []}]"),
    ("id that is a number", "preparation", "preparations: [{id: 7, title: T, steps: []}]"),
    ("group of text for a part", "project", "project: {id: a, title: A, maker: M, customer: {name: C}}"),
    (
        "unknown page size",
        "project",
        "project: {id: a, title: A, maker: {name: M}, customer: {name: C}, page_size: A5}",
    ),
    ("list for the project", "project", "project: [{id: a}]"),
    (
        "text for codes",
        "project",
        "project: {id: a, title: A, maker: {name: M}, customer: {name: C}, jurisdictions: EU}",
    ),
    (
        "list among codes",
        "project",
        "project: {id: a, title: A, maker: {name: M}, customer: {name: C}, jurisdictions: [[EU]]}",
    ),
]


@pytest.mark.parametrize(("kind", "text"), VALID)
def test_sound_document_is_valid(kind: str, text: str) -> None:
    assert _errors(kind, _as_editor(text)) == []


@pytest.mark.parametrize(("kind", "text"), [case[1:] for case in BROKEN], ids=[case[0] for case in BROKEN])
def test_broken_document_is_not_valid(kind: str, text: str) -> None:
    assert len(_errors(kind, _as_editor(text))) == 1


_LEAVES = [
    ("product", "Product", "direct_to_metal", ["yes", "no"], ["Yes", "on", True, False, 1, None]),
    ("product", "Product", "binder", ["epoxy_2k"], ["epoxy", "", 1]),
    ("product", "Product", "roles", [["primer"], []], [["glaze"], "primer", None]),
    ("product", "Pack", "fill", ["400 mL", "0.5 L", None], ["400", 400, "400 um", "400mL"]),
    ("product", "Drying", "air", ["20 degC", "-5 degC"], ["20", 20, "20 C"]),
    (
        "product",
        "OvercoatWindow",
        "interval",
        ["30 min..24 h", "min 30 min", "5..10 min"],
        ["30 min", "> 30 min", "5..10"],
    ),
    ("product", "Mixing", "ratio_by_volume", ["4:1", "1.5:1:1", None], ["4", 4, "4-1"]),
    ("product", "Product", "shelf_life", ["24 months", "1 year", None], ["24", "2 weeks"]),
    ("product", "SafetyDataSheet", "date", ["2026-02-01", None], ["1.2.2026", 20260201]),
    ("product", "Hazards", "statements", [["H222", 222], [], None], ["H222", [None], [[]]]),
    ("job", "Item", "count", [0, 4], [-1, 1.5, "four", None]),
    ("job", "Job", "vehicles", [["T-01", 7], None], [7, "T-01"]),
    ("job", "InspectionPoint", "hold_point", ["yes", "no", None], ["true", True]),
]


@pytest.mark.parametrize(("kind", "record", "key", "good", "bad"), _LEAVES, ids=[f"{c[1]}.{c[2]}" for c in _LEAVES])
def test_values_of_a_leaf(kind: str, record: str, key: str, good: list[Any], bad: list[Any]) -> None:
    validator = Draft202012Validator(schema(kind)["$defs"][record]["properties"][key])
    assert [value for value in good if not validator.is_valid(value)] == []
    assert [value for value in bad if validator.is_valid(value)] == []


_TYPES = sorted(
    {
        (kind, model.__name__, name)
        for kind, block in SINGULAR.items()
        for model in models(KINDS[block])
        for name, info in model.model_fields.items()
        if value_type(info) is not None
    }
)


@cache
def _records(kind: str) -> dict[str, type[Node]]:
    return {model.__name__: model for model in models(KINDS[SINGULAR[kind]])}


def _of_leaf(kind: str, record: str, key: str) -> tuple[Strict, dict[str, Any]]:
    found = value_type(_records(kind)[record].model_fields[key])
    assert found is not None
    return found, dict(found.schema())


def _takes(leaf: Strict, text: str) -> bool:
    try:
        leaf._read(text)
    except PydanticCustomError:
        return False
    return True


def test_examples_are_taken_by_parser_and_schema_and_reach_the_editor() -> None:
    with_example = 0
    for kind, record, key in _TYPES:
        leaf, written = _of_leaf(kind, record, key)
        for example in leaf.samples:
            assert _takes(leaf, str(example)), (record, key, example)
            assert Draft202012Validator(written).is_valid(example), (record, key, example)
        shown = str(_schema(kind)["$defs"][record]["properties"][key])
        if leaf.samples:
            with_example += 1
            assert str(list(leaf.samples)) in shown, (record, key)
        else:
            # free words, an id, a whole number, or a list that is shown in full
            assert leaf.quantity == "", (record, key)
    assert with_example > len(_TYPES) / 4


def test_quantity_in_every_unit_is_taken_by_parser_and_schema_alike() -> None:
    seen = {(leaf.quantity, leaf.name): leaf for leaf, _ in (_of_leaf(*place) for place in _TYPES) if leaf.quantity}
    for (quantity, _), leaf in seen.items():
        validator = Draft202012Validator(dict(leaf.schema()))
        # amounts of each sort that lie within the bounds of the kind
        for amount in ("40 {}", "0.5 {}", "1 {}"):
            for form in (
                amount,
                f"min {amount}",
                amount.replace("40", "40..41").replace("0.5", "0.5..0.6"),
                f"about {amount}",
            ):
                for unit in (*KINDS_OF_QUANTITY[quantity].units, "furlong", ""):
                    text = form.format(unit)
                    if _takes(leaf, text):
                        assert validator.is_valid(text), text
                    if unit in {"furlong", ""} or form.startswith("about"):
                        assert not validator.is_valid(text), text
