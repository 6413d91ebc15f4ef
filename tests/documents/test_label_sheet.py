"""The label elements of a product: declared beside derived, in order, with the reason for what is left out."""

from __future__ import annotations

import io
import re
from typing import Any

import pypdf

from specgen.documents.label_sheet.view import LabelSheet, label_sheet
from specgen.documents.parts.tables import TableView
from specgen.printing.documents import print_documents
from tests.documents.conftest import context
from tests.good_spec import checked, good, good_with, spec_of, take_out


def _sheet(product: str, changes: dict[str, str]) -> LabelSheet:
    spec = spec_of(good_with(changes))
    return label_sheet(spec.products[product], context(spec))


def _column(table: TableView, at: int) -> dict[str, str]:
    return {row[0]: row[at] for row in table.rows}


def _contents(burns: str, rest: str) -> str:
    return (
        f"[{{id: gas, name: propane, cas: 74-98-6, kind: propellant, mass_share: {burns}, density: 0.5 g/mL}}, "
        f"{{id: rest, name: water, flammable: no, kind: solvent, mass_share: {rest}, density: 1 g/mL}}]"
    )


def test_a_can_that_becomes_extremely_flammable_moves_as_a_whole() -> None:
    """Category, signal word, pictogram, statement and storage move together, whatever is declared."""
    mild_label = {
        "products.base.hazards.classification": "[{id: can, hazard_class: aerosols, category: '3'}]",
        "products.base.hazards.signal_word": "Warning",
        "products.base.hazards.statements": "[H229]",
        "products.base.hazards.pictograms": "[]",
        "products.base.hazards.precautions": "[P210, P251, P410+P412]",
    }
    mild = _sheet("base", mild_label | {"products.base.composition": _contents("0.5 %", "99.5 %")})
    severe = _sheet("base", mild_label | {"products.base.composition": _contents("90 %", "10 %")})
    named = dict(mild.facts)
    assert "Aerosol category, from the composition" not in named or named[
        "Aerosol category, from the composition"
    ].startswith("category 3")
    assert list(_column(mild.elements, 1)) == ["Signal word", "H229"]
    assert [text for name, text in mild.facts if name == "Storage temperature"] == [
        "maximum storage temperature: 50 °C (Regulation (EC) No 1272/2008 (CLP), Table 2.3.1, P410+P412 (regulation))"
    ]
    found = dict(severe.facts)
    assert found["Aerosol category, from the composition"].startswith("category 1: 85 % or more is flammable")
    assert _column(severe.elements, 2) == {
        "Signal word": "Aerosols, category 1",
        "GHS02 (not declared)": "Aerosols, category 1",
        "H229": "Aerosols, category 1",
        "H222 (not declared)": "Aerosols, category 1",
    }
    assert found["Amount stored"].startswith("category 1 and 2 with flammable gas or liquid, lower tier: 150 t")
    assert found["Transport"].startswith("dangerous goods class 2.1")


def test_six_on_the_label_and_a_reason_for_the_rest() -> None:
    changes = {
        "products.clear.hazards.precautions": "[P210, P211, P251, P261, P271, P280, P410+P412]",
        "products.clear.hazards.precautions_reason": "The sheet names more.",
    }
    sheet = _sheet("clear", changes)
    assert [entry.code for entry in sheet.on_label] == ["P210", "P211", "P251", "P410+P412", "P261", "P280"]
    places = _column(sheet.precautions, 2)
    assert places["P280"] == "yes"
    assert places["P271"] == "no: not required by any declared class"
    assert places["P302+P352*"] == "no: rank 6"
    assert ("Reason for the precautionary statements declared", "The sheet names more.") in sheet.facts


def test_what_gives_way_says_to_what() -> None:
    classes = (
        "[{id: can, hazard_class: aerosols, category: '1'}, "
        "{id: breath, hazard_class: respiratory_sensitisation, category: '1'}, "
        "{id: skin, hazard_class: skin_sensitisation, category: '1'}]"
    )
    sheet = _sheet("base", {"products.base.hazards.classification": classes})
    assert [(row[0], row[1]) for row in sheet.left_out.rows] == [("GHS07", "left out beside GHS08")]


def test_what_cannot_be_judged_is_said_without_the_substance() -> None:
    """The primer's solvent is not in any table, so its heat is not known; its name stays with the maker."""
    unknown = (
        "[{id: mk, name: Brindol blend, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL}, "
        "{id: rest, name: water, flammable: no, kind: solvent, mass_share: 99.5 %, density: 1 g/mL}]"
    )
    sheet = _sheet("base", {"products.base.composition": unknown})
    assert "aerosol category: cannot be assessed from the data stated" in sheet.not_judged
    assert "Brindol" not in repr(sheet)


def test_a_decision_on_titanium_dioxide_is_recorded() -> None:
    text = "Dropped on 2025-10-01 by product safety."
    sheet = _sheet("base", {"products.base.hazards.titanium_dioxide_decision": text})
    assert ("Titanium dioxide, EUH211", text) in sheet.facts


def test_the_sheet_of_a_product_without_hazards_shows_no_label() -> None:
    source: dict[str, Any] = good()
    take_out(source, "products.base.hazards")
    spec = spec_of(source)
    sheet = label_sheet(spec.products["base"], context(spec))
    assert sheet.panel is None
    assert sheet.on_label == ()


def test_gloves_stay_on_the_label_whatever_their_rank() -> None:
    sheet = _sheet(
        "clear", {"products.clear.hazards.precautions": "[P210, P211, P251, P410+P412, P261, P304+P340, P280]"}
    )
    codes = [entry.code for entry in sheet.on_label]
    assert len(codes) == 6
    assert codes[-1] == "P280"
    assert all("see Personal" not in entry.note for entry in sheet.on_label)


def test_the_label_names_what_it_contains_and_how_much() -> None:
    sheet = _sheet("clear", {"products.clear.hazards.named_on_label": "[n-butyl acetate]"})
    assert sheet.contains == "n-butyl acetate"
    assert sheet.quantity.replace("\N{NO-BREAK SPACE}", " ") == "400 mL"


def test_three_hundred_names_stand_on_the_label_whole() -> None:
    names = [f"substance-{number}" for number in range(300)]
    sheet = _sheet("clear", {"products.clear.hazards.named_on_label": f"[{', '.join(names)}]"})
    assert sheet.contains.split(", ") == names
    printed = print_documents(
        checked(good_with({"products.clear.hazards.named_on_label": f"[{', '.join(names)}]"})),
        documents=["label-sheet"],
        formats=["pdf"],
        products=["clear"],
    )
    (data,) = printed.values()
    text = " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages)
    assert all(re.search(rf"{name}\b", text) for name in names)


def test_a_label_that_names_no_substance_says_so_where_a_class_asks_for_names() -> None:
    allergy = {"products.base.hazards.classification": "[{id: skin, hazard_class: skin_sensitisation, category: '1'}]"}
    irritant = {"products.base.hazards.classification": "[{id: eyes, hazard_class: eye_damage, category: '2'}]"}
    assert _sheet("base", allergy).contains == "not stated"
    assert _sheet("base", irritant).contains == ""
    assert _sheet("base", allergy | {"project.jurisdictions": "[US]"}).contains == ""


def test_reasons_for_the_precautions_end_in_one_full_stop() -> None:
    grave = "[{id: can, hazard_class: aerosols, category: '1'}, {id: breath, hazard_class: respiratory_sensitisation, category: '1'}]"
    changes = {
        "products.base.hazards.classification": grave,
        "products.base.hazards.precautions_reason": "The data sheet names more.",
    }
    why = dict(_sheet("base", changes).facts)["Reason for the precautionary statements declared"]
    assert why.startswith("The data sheet names more; ")
    assert why.endswith(".")
    assert ".;" not in why
