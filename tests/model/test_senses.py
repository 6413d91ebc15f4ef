"""The model itself: every leaf is declared, every entry has an id, and no value is read but by a strict type of our own."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from functools import cache
from typing import Any, get_origin

import pytest
from pydantic import BaseModel, ConfigDict, ValidationError, create_model

from specgen.model import field_types
from specgen.model.declaring import PATH, Audience
from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.product import PackForm
from specgen.model.spec import KINDS
from specgen.model.walk import declaration, inner_record, models
from specgen.units.count import Count
from specgen.units.quantity import CalendarSpan

MODELS = sorted({model for root in KINDS.values() for model in models(root)}, key=lambda model: model.__name__)
FIELDS = [(model, name) for model in MODELS for name in model.model_fields]

# A new field type is a decision: what an author may write, and how it is compared and printed.
TYPES_IN_USE = [
    "absolute humidity range such as 40..60 g/m3",
    "air flow such as 40 m3/h",
    "area such as 40 m2",
    "code",
    "colour as L*, a* and b* such as 52.10 3.20 -10.40",
    "colour",
    "date",
    "day and time",
    "decimal number",
    "density such as 1 g/mL",
    "duration or range such as 40..60 min",
    "duration range such as 40..60 min",
    "duration such as 40 min",
    "SHA-256",
    "file kept beside the sources",
    "file of a picture",
    "folder of a range",
    "gloss such as 40 GU",
    "gloss range such as 40..60 GU",
    "heat such as 40 kJ/g",
    "humidity range such as 40..60 %",
    "humidity such as 40 %",
    "id of the table binder_families",
    "id of the table cleanliness_tests",
    "id of the table exposure_categories",
    "id of the table galvanized_states",
    "id of the table hazard_classes",
    "id of the table materials",
    "id of the table preparation_grades",
    "id of the table preparation_media",
    "id of the table profile_methods",
    "id of the table rust_grades",
    "id of the table steel_defect_grades",
    "id of the table test_methods",
    "id",
    "length range such as 40..60 mm",
    "length such as 40 mm",
    "letter of a mark",
    "line of text",
    "mass such as 40 g",
    "mixing ratio",
    "molar mass such as 40 g/mol",
    "number of months or years",
    "percentage such as 40 %",
    "place on a picture",
    "pressure such as 40 bar",
    "release rate such as 40 g/h",
    "result of a test such as 5.2 MPa or class 1",
    "room volume such as 40 m3",
    "share or range such as 40..60 %",
    "share such as 40 %",
    "share range such as 40..60 %",
    "spreading rate such as 40 m2/L",
    "surface density such as 40 mg/m2",
    "temperature difference range such as 40..60 K",
    "temperature or range such as 40..60 degC",
    "temperature range such as 40..60 degC",
    "temperature such as 40 degC",
    "text",
    "thickness or range such as 40..60 um",
    "thickness range such as 40..60 um",
    "thickness such as 40 um",
    "time of day",
    "voc content such as 40 g/L",
    "voltage such as 40 V",
    "volume such as 40 mL",
    "whole number or range of them",
    "whole number",
    "word of the list",
    "yes or no",
]


def _ids(fields: list[tuple[type[Node], str]]) -> list[str]:
    return [f"{model.__name__}.{name}" for model, name in fields]


@pytest.mark.parametrize(("model", "name"), FIELDS, ids=_ids(FIELDS))
def test_field_is_a_declared_leaf_or_holds_records(model: type[Node], name: str) -> None:
    info = model.model_fields[name]
    said = declaration(model, name)
    inner = inner_record(model, name)
    field = f"{model.__name__}.{name}"
    if inner is None:
        assert said is not None, f"{field} has no leaf(...) declaration: see DEVELOPERS.md, A field"
        assert value_type(info) is not None, f"{field} has a type that is not of specgen/model/field_types.py"
    else:
        assert said is None, f"{field} holds records, so it is part(...) or entries(...) and no leaf(...)"
    assert info.description, f"{field} does not say what it is about, which an editor shows"
    if inner is not None and get_origin(info.annotation) is tuple:
        assert inner.model_fields["id"].is_required()
        # an optional list that is absent is empty, never None
        assert info.is_required() or info.default == ()


def test_field_types_in_use() -> None:
    names = {kind.name for model, name in FIELDS if (kind := value_type(model.model_fields[name])) is not None}
    unlike = sorted(names ^ set(TYPES_IN_USE))
    assert not unlike, f"field types that no field has, or that TYPES_IN_USE of this test does not name: {unlike}"


@pytest.mark.parametrize("model", MODELS, ids=[model.__name__ for model in MODELS])
def test_record_is_frozen_and_knows_no_other_key(model: type[Node]) -> None:
    assert model.model_config["frozen"] is True
    assert model.model_config["extra"] == "forbid"
    assert model.model_config["strict"] is True
    assert model.__doc__


def test_reference_leads_to_a_kind_of_source() -> None:
    refers = {said.refers for model, name in FIELDS if (said := declaration(model, name)) is not None and said.refers}
    assert refers == {"reports", "products", "preparations", "systems", "contract_documents", "jobs", PATH}


def test_leaves_of_the_maker() -> None:
    held = {
        f"{model.__name__}.{name}"
        for model, name in FIELDS
        if (said := declaration(model, name)) is not None and said.audience is Audience.MAKER
    }
    composition = {f"Component.{name}" for name in ("id", "name", "cas", "kind", "mass_share", "density")}
    classes = {
        f"ComponentClass.{name}"
        for name in ("id", "hazard_class", "category", "statement", "m_factor", "limit", "limit_source")
    }
    contents = {"Component.flammable", "CombustionHeat.heat", "CombustionHeat.source", "Isocyanates.monomer"}
    contents |= {"Hazards.cure_release_cas", "Hazards.cure_release_share", "Component.adds_up"}
    contents |= {
        f"MoistureCure.{name}"
        for name in (
            *("equivalent_weight", "hardener_ratio", "one_for_one", "resin_share", "dry_density", "taken_in_flight"),
            *("free_water", "can_equivalents", "can_contents", "release_allowed"),
        )
    }
    files = {f"ReportFile.{name}" for name in ("id", "file", "sha256")}
    holders = {f"Holder.{name}" for name in ("id", "name", "documents")}
    unlike = sorted(held ^ (composition | classes | contents | holders | files | {"Project.range"}))
    assert not unlike, f"leaves declared the maker's and not named here, or named and not declared: {unlike}"


# per field type: what is read, and what is refused
_TEXTS: dict[str, tuple[dict[str, Any], list[str]]] = {
    "YesNo": ({"yes": True, "no": False}, ["on", "off", "true", "false", "y", "n", "1", "0", "Yes", "NO", "", " yes"]),
    "WholeNumber": (
        {"0": 0, "4": 4, "999999999": 999_999_999},
        ["-1", "+1", "1.0", "1_000", "007", "0x10", "0o17", "1e3", "1700006400", "no", "", "٣", "1 000", "inf", "½"],
    ),
    "CountRange": (
        {"2": Count(2, 2), "2..3": Count(2, 3), "min 2": Count(2, None), "0": Count(0, 0)},
        ["2-3", "3..2", "2...3", "2 .. 3", "max 3", "2 to 3", "2 or 3", "1.5", "02", "", "min  2", "2..", "..3"],
    ),
    "ThicknessOrRange": (
        {"120 um": "120 um", "100..150 um": "100..150 um", "5 +- 1 mil": "4..6 mil", "min 4 mil": "min 4 mil"},
        ["120", "150..100 um", "120 um..", "5 +- 0 mil", "5 mil +- 20 um", "5 +-1 mil", "5+-1 mil", "1 ± 2 mil"],
    ),
    "DecimalNumber": (
        {"1.25": Fraction(5, 4), "-3": Fraction(-3), "007": Fraction(7)},
        ["1e400", "1e3", "nan", "inf", "1_000", "1,5", ".5", "5.", "1:30", "", "1" * 13],
    ),
    "IsoDate": (
        {"2026-03-31": date(2026, 3, 31), "2024-02-29": date(2024, 2, 29)},
        [
            "2026-02-30",
            "2025-02-29",
            "1700006400",
            "20260331",
            "2026-3-1",
            "31.03.2026",
            "2026-W13-2",
            "0000-01-01",
            "",
        ],
    ),
    "Id": (
        {"a": "a", "A-1_b": "A-1_b", "no": "no", "a" * 64: "a" * 64},
        ["", "1a", "a b", "a.b", "..", "../a", "a/b", "a\\b", "größe", "a" * 65, "-a", "a\n", "a\u200b"],
    ),
    "Code": (
        {"P 120": "P 120", "7": "7", "P410+P412": "P410+P412", "no": "no", "1_000": "1_000"},
        ["", " a", "a ", "a*", "a\nb", "é", "a" * 61, "<b>", "a\u200b"],
    ),
    "PictureFile": (
        {"logo.svg": "logo.svg", "a/b c.JPG": "a/b c.JPG", "ä.png sha256:" + "0a" * 32: "ä.png sha256:" + "0a" * 32},
        [
            "",
            "logo",
            "a.gif",
            "../a.png",
            "/a.png",
            "a//b.png",
            "a\\b.png",
            "C:a.png",
            "a.png sha256:12",
            "a\n.png",
            ".a.png",
        ],
    ),
    "MarkLetter": ({"A": "A", "AB": "AB", "12": "12"}, ["", "a", "ABC", "A1", "Ä", "123", "A\n"]),
    "Position": (
        {"0": Fraction(0), "1": Fraction(1), "0.25": Fraction(1, 4), "1.0": Fraction(1)},
        ["", "1.01", "-0.1", ".5", "50 %", "0.12345", "2", "00.5"],
    ),
    "Colour": ({"#0b5c6b": "#0b5c6b", "#F5B800": "#f5b800"}, ["", "0b5c6b", "#fff", "teal", "#0b5c6g", "#0b5c6b "]),
    "Ratio": (
        {"4:1": (Fraction(4), Fraction(1)), "1.5:1:0.2": (Fraction(3, 2), Fraction(1), Fraction(1, 5))},
        ["4", "4-1", "4:0", "4:1:1:1", "-4:1", "4 : 1", "", "4:1e3", "1_0:1"],
    ),
    "Line": (
        {"no": "no", " a b ": "a b", "<b>{{ x }}</b>": "<b>{{ x }}</b>", "1_000": "1_000"},
        ["", "   ", "a\nb", "a\x07", "a\u200bb", "a\u202eb", "a\ue000", "x" * 81, "a " * 101],
    ),
    "Text": ({"a\nb": "a\nb", "off": "off"}, ["", "\n", "a\x1bb", "a\u200db", "x" * 81, "a " * 1001]),
    "Span": (
        {"24 months": CalendarSpan(24, ""), "2 years": CalendarSpan(24, ""), "1 month": CalendarSpan(1, "")},
        ["0 months", "2 weeks", "24", "months", "1.5 years", "-1 month", "24months", "1_0 months", "99999 months"],
    ),
    "Thickness": (
        {"40 um": "40 um", "2 mil": "2 mil", "1.50 mm": "1.50 mm"},
        [
            "40",
            "40um",
            "40 kg",
            "1e400 um",
            "1_000 um",
            "4,5 um",
            "-1 um",
            "nan um",
            "40..60 um",
            "min 40 um",
            "",
            "no",
        ],
    ),
    "Share": ({"0 %": "0 %", "100 %": "100 %"}, ["101 %", "-1 %", "50", "50%", "0.5", "50 %RH"]),
    "Temperature": ({"-40 degC": "-40 degC", "68 °F": "68 °F"}, ["-274 degC", "20", "20 C", "293 K", "20 C"]),
    "TemperatureDifferenceRange": ({"min 3 K": "min 3 K"}, ["3 K", "min -3 K", "min 3", "> 3 K", "3..", "min 3 um"]),
    "TemperatureRange": (
        {"10..30 degC": "10..30 degC", "max 30 degC": "max 30 degC"},
        ["30..10 degC", "20 degC", "10-30 degC", "10..30", "10...30 degC", "min 10..30 degC", "10..1e400 degC", ""],
    ),
}

_READ = [(name, text, value) for name, (good, _) in _TEXTS.items() for text, value in good.items()]
_REFUSED = [(name, text) for name, (_, bad) in _TEXTS.items() for text in bad]
# what pydantic alone would gladly turn into a value
_NO_TEXT: list[Any] = [None, True, False, 0, 1, 1.5, 1_700_006_400, b"40 um", date(2026, 1, 1), Fraction(1), [], {}, ()]


@cache
def _holder(name: str) -> type[BaseModel]:
    annotation = getattr(field_types, name)
    return create_model("Holder", __config__=ConfigDict(strict=True), value=(annotation, ...))


@pytest.mark.parametrize(("name", "text", "value"), _READ)
def test_text_is_read(name: str, text: str, value: Any) -> None:
    read: Any = _holder(name)(value=text)
    is_quantity = isinstance(value, str) and not isinstance(read.value, str)
    assert (str(read.value) if is_quantity else read.value) == value
    assert is_quantity or type(read.value) is type(value)


@pytest.mark.parametrize(("name", "text"), _REFUSED)
def test_text_is_refused(name: str, text: str) -> None:
    with pytest.raises(ValidationError) as refused:
        _holder(name)(value=text)
    (error,) = refused.value.errors()
    assert error["type"] == "specgen"
    assert error["ctx"]["remedy"]


@pytest.mark.parametrize("value", _NO_TEXT, ids=repr)
@pytest.mark.parametrize("name", _TEXTS)
def test_what_is_not_text_is_refused(name: str, value: Any) -> None:
    with pytest.raises(ValidationError) as refused:
        _holder(name)(value=value)
    assert [error["type"] for error in refused.value.errors()] == ["specgen"]


def test_word_of_a_list_is_read_only_as_it_stands() -> None:
    kind = field_types.choice(PackForm)
    assert kind.parse("aerosol") is PackForm.AEROSOL
    for text in ("Aerosol", " aerosol", "AEROSOL", "", "can"):
        with pytest.raises(Exception, match="not one of the words known here"):
            kind.parse(text)


def _strict_types() -> Iterator[Strict]:
    for model, name in FIELDS:
        kind = value_type(model.model_fields[name])
        if kind is not None:
            yield kind


def test_every_leaf_refuses_what_is_not_text() -> None:
    """The same for every leaf of the model, whatever its type: nothing falls through to pydantic."""
    kinds = {id(kind): kind for kind in _strict_types()}
    assert len(kinds) > 25
    for kind in kinds.values():
        for value in _NO_TEXT:
            with pytest.raises(Exception, match="is given where one value is required"):
                kind._read(value)
