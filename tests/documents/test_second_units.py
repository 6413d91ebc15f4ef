"""The second unit of each kind of quantity, as a project chooses it, and what is printed without a choice."""

from __future__ import annotations

import pytest

from specgen.printing.documents import print_documents
from specgen.units.quantity import parse_quantity
from tests.documents.conftest import context
from tests.good_spec import checked, good, good_with, put, spec_of

NB = "\N{NO-BREAK SPACE}"


def _printed(kind: str, text: str, **project: str) -> str:
    spec = good()
    for key, value in project.items():
        put(spec, f"project.{key}", value)
    return context(spec_of(spec)).words.phrase(parse_quantity(kind, text)).replace(NB, "_")


@pytest.mark.parametrize(
    ("chosen", "kind", "text", "printed"),
    [
        ("{area: m2}", "area", "0.5 ft2", "0.5_ft² (0.046_m²)"),
        ("{length: in}", "length", "150 mm", "150_mm (5.91_in)"),
        ("{volume: fl oz}", "volume", "400 mL", "400_mL (13.5_fl oz)"),
        ("{voc: lb/gal}", "voc_content", "420 g/L", "420_g/L (3.51_lb/gal)"),
        ("{density: g/mL}", "density", "10 lb/gal", "10_lb/gal (1.2_g/mL)"),
        ("{area: m2}", "volume", "400 mL", "400_mL"),  # nothing is chosen for it
    ],
)
def test_a_project_chooses_the_second_unit_of_each_kind(chosen: str, kind: str, text: str, printed: str) -> None:
    assert _printed(kind, text, second_units=chosen) == printed


@pytest.mark.parametrize(("units", "text", "printed"), [
    ("{film: um}", "23 degC", "23_°C (73_°F)"),
    ("{temperature: degC}", "23 degC", "23_°C (73_°F)"),
    ("{temperature: degC}", "73 degF", "73_°F (23_°C)"),
])  # fmt: skip
def test_no_temperature_stands_in_degrees_celsius_alone_on_letter(units: str, text: str, printed: str) -> None:
    assert _printed("temperature", text, second_units=units, page_size="Letter") == printed


@pytest.mark.parametrize(
    ("chosen", "text", "printed"),
    [
        ("{film: mil, film_conversion: nominal-25}", "75 um", "75_µm (3_mil)"),
        ("{film: mil, film_conversion: nominal-25}", "125 um", "125_µm (5_mil)"),
        ("{film: um, film_conversion: nominal-25}", "5 mil", "5_mil (125_µm)"),
        ("{film: mil, film_conversion: exact}", "75 um", "75_µm (3.0_mil)"),
        ("{film: mil}", "75 um", "75_µm (3.0_mil)"),
    ],
)
def test_a_nominal_film_is_converted_by_25_where_the_project_says_so(chosen: str, text: str, printed: str) -> None:
    assert _printed("thickness", text, second_units=chosen) == printed


def test_on_a4_a_temperature_has_the_second_unit_that_is_chosen_alone() -> None:
    assert _printed("temperature", "23 degC", second_units="{film: mil}", page_size="A4") == "23_°C"


@pytest.mark.parametrize(("text", "chosen", "printed"), [
    ("3 K", "{temperature: degF}", "3_K (5.4_°F)"),
    ("5 degF", "{temperature: degC}", "5_°F (2.8_K)"),
    ("3 K", "{film: mil}", "3_K"),
])  # fmt: skip
def test_a_difference_of_temperature_follows_the_unit_of_temperature(text: str, chosen: str, printed: str) -> None:
    assert _printed("temperature_difference", text, second_units=chosen, page_size="A4") == printed


@pytest.mark.parametrize(("document", "second", "told"), [
    ("data-sheet", "{area: ft2}", False),  # where no area stands
    ("data-sheet", "{voc: lb/gal}", True),
    ("label-sheet", "{volume: fl oz}", True),
    ("inspection-plan", "{temperature: degF}", True),
    ("data-sheet", "{}", False),
])  # fmt: skip
def test_whatever_stands_in_brackets_is_explained_once(document: str, second: str, told: bool) -> None:
    printed = print_documents(
        checked(good_with({"project.second_units": second})), documents=[document], formats=["html"]
    )
    pages = [data.decode("utf-8") for data in printed.values()]
    assert pages
    assert {page.count("Figures in brackets are rounded") for page in pages} == {int(told)}
