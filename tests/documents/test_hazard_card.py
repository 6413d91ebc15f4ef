"""The hazard card: everything that hurts, the gravest first, nothing cut, room for the climate kept."""

from __future__ import annotations

import io
from typing import Any

import pypdf
import pytest

from specgen.checking import Checked
from specgen.documents.hazard_card.view import HazardCard, hazard_card
from specgen.documents.parts.cautions import chemical_hazards
from specgen.model.spec import Spec
from specgen.printing.documents import print_documents
from tests.documents.conftest import context
from tests.good_spec import checked, good, good_with, put, spec_of, take_out


def _said(node: Any) -> list[str]:
    """The texts that stand for drawings in the structure of a PDF."""
    found = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(found, list):
        return [said for part in found for said in _said(part)]
    if not isinstance(found, dict):
        return []
    own = [str(found["/Alt"])] if "/Alt" in found else []
    return own + _said(found.get("/K"))


def _card(spec: Spec) -> HazardCard:
    return hazard_card(spec.jobs["refit"], context(spec))


def _spec(changes: dict[str, str]) -> Spec:
    return spec_of(good_with(changes))


def test_all_that_hurts_the_gravest_first() -> None:
    card = _card(_spec({"products.base.hazards.statements": "[H222, H229, H319, H336, H350]"}))
    assert [codes for _, codes in card.hurts] == [
        "EUH204: clear",
        "H350: base coat",
        "H222: primer, base coat, clear; H226: barrier",
        "H229: primer, base coat, clear",
        "H317: primer, clear, barrier; EUH205: primer, barrier",
        "H336: base coat",
        # of isocyanate, absorbed through the skin, for which there is no statement
        "clear",
        "H319: all",
        "H315: barrier",
    ]


def test_where_a_product_harms_the_skin_and_states_nothing_for_the_body_no_skin_stays_bare() -> None:
    rows = {(row[0], row[1]): row[5] for row in _card(_spec({})).wear.rows}
    assert rows["Sanding", "all"] == "cover all skin (common practice)"
    # dust of bare metal and a degreaser that states nothing harm no skin
    assert rows["Sanding", "bare part"] == rows["Surface preparation", "cleaner"] == "not stated"
    assert rows["Spraying", "primer, base coat, barrier"] == "overall"


def test_the_mask_of_a_cleaner_is_looked_up_in_its_sheet_by_number() -> None:
    supplies = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H336], safety_data_sheet: {number: SDS-7}}]"
    rows = _card(_spec({"jobs.refit.consumption.supplies": supplies})).wear.rows
    assert [row[2] for row in rows if row[1] == "degreaser EX-7"] == [
        "mask not stated: before starting, look it up in section 8 of SDS-7"
    ]


def test_the_card_keeps_air_on_until_the_booth_is_cleared() -> None:
    worn = [row[:3] for row in _card(_spec({})).wear.rows]
    assert worn[-2] == ("Spraying, Clean-up", "clear", "air-fed half mask, EN 14594")


def test_fire_spill_and_breathing_air_are_said() -> None:
    said = dict(_card(_spec({})).cautions)
    assert any("EN 12021" in text for text in said["Spraying"])
    assert any("fire service" in text for text in said["Fire"])
    assert said["Spill"][-1] == "Sections 5 and 6 of the safety data sheets take precedence."


def test_no_cell_on_what_to_wear_is_empty() -> None:
    assert all(cell for row in _card(_spec({})).wear.rows for cell in row)


def test_oxidative_paint_hurts_by_its_rags() -> None:
    simple = {
        f"products.{product}.hazards.{key}": value
        for product in ("primer", "base", "clear", "barrier")
        for key, value in {"statements": "[H222, H229]", "supplemental": "[]"}.items()
    }
    card = _card(_spec(simple | {"products.base.curing": "oxidative"}))
    assert [text.split(":")[0] for text, _ in card.hurts] == [
        # of the clear, which holds isocyanate whatever it declares
        "Spray mist can cause permanent asthma",
        "Fire hazard",
        "Pressurised, may burst",
        "Absorbed through the skin",
        "Soaked rags can self-heat and catch fire",
    ]


def test_room_for_the_climate_is_kept() -> None:
    source: dict[str, Any] = good()
    take_out(source, "jobs.refit.climate")
    card = _card(spec_of(source))
    assert card.climate == (
        ("Air temperature", ""),
        ("Surface temperature", ""),
        ("Relative humidity", ""),
        ("Surface above dew point", ""),
    )


def test_blasting_old_paint_and_skin_stand_on_the_card() -> None:
    blast = "{id: blast, do: blast, text: Blast it clean., grade: Sa 2½, abrasive: grit, profile: 40..70 um}"
    before = dict(_card(_spec({})).cautions)
    assert "Sanding, blasting" not in before
    after = dict(
        _card(
            _spec({"preparations.sand-steel.steps.blast": blast, "jobs.refit.items.DOOR.old_coats": "[{id: old}]"})
        ).cautions
    )
    assert any("air-fed blast helmet" in text for text in after["Sanding, blasting"])
    assert any("lead or chromate" in text for text in after["Sanding, blasting"])
    assert any("absorbed through the skin" in text for text in after["Surface preparation"])


def test_a_caution_names_its_products_where_a_row_allows_others_another_mask() -> None:
    said = dict(_card(_spec({})).cautions)["Spraying"]
    assert said[0].startswith("clear: The spray contains isocyanate")
    # what follows for every product is not read as one for the clear alone
    assert said[1].startswith("All: Start the extraction")


def test_every_product_has_a_row_at_clearing_up() -> None:
    rows = [row for row in _card(_spec({})).wear.rows if "Clean-up" in row[0]]
    assert {name for row in rows for name in row[1].split(", ")} == {"primer", "base coat", "clear", "barrier"}
    (usual,) = (row for row in rows if row[1] != "clear")
    assert usual[3] == "nitrile gloves, changed at once after contact (common practice)"


def test_who_must_not_do_the_work_and_training_stand_on_the_card() -> None:
    barred = "[{id: asthma, task: any, text: Nobody with asthma works with it.}]"
    card = _card(_spec({"products.clear.hazards.cautions": barred}))
    head, said = card.cautions[0]
    assert head == "Persons"
    assert said[0] == "clear: Nobody with asthma works with it."
    assert any(text.startswith("By law: training completed before use") for text in said)


def test_a_cleaner_that_is_breathed_or_swallowed_says_so_in_its_row_and_in_first_aid() -> None:
    supplies = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225, H304, H336]}]"
    card = _card(_spec({"jobs.refit.consumption.supplies": supplies}))
    (row,) = (row for row in card.wear.rows if row[1] == "degreaser EX-7")
    assert row[2] == "mask not stated: before starting, look it up in section 8 of its safety data sheet"
    assert card.first_aid[-1] == ("If swallowed (degreaser EX-7)", "Do not induce vomiting; call a doctor at once.")


def test_the_hazards_of_a_cleaner_stand_in_full() -> None:
    supplies = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225, H304], gloves: nitrile 0.4 mm}, {id: thin, what: thinner EX-8, amount: 1 L, kind: thinner}]"
    card = _card(_spec({"jobs.refit.consumption.supplies": supplies}))
    assert [row[:2] for row in card.supplies.rows] == [("degreaser EX-7", "Danger"), ("thinner EX-8", "not stated")]
    assert "H304 May be fatal if swallowed and enters airways" in card.supplies.rows[0][2]
    assert card.supplies.rows[1][2].startswith("Hazards not stated: read its safety data sheet before opening it")
    assert "H225" in " ".join(codes for _, codes in card.hurts)


def test_first_aid_that_is_not_stated_is_told() -> None:
    source: dict[str, Any] = good()
    for product in ("primer", "base", "clear", "barrier"):
        put(source, f"products.{product}.hazards.first_aid", "[]")
    ((_, act),) = _card(spec_of(source)).first_aid
    assert act == "First aid is not stated: see section 4 of the safety data sheets, and call for help."


@pytest.mark.parametrize("page", ["A4", "Letter"])
def test_it_is_printed(page: str) -> None:
    source: dict[str, Any] = good()
    put(source, "project.page_size", page)
    put(source, "project.emergency_phone", "'+00 999'")
    result: Checked = checked(source)
    printed = print_documents(result, documents=["hazard-card"], formats=["pdf"])
    (data,) = printed.values()
    reader = pypdf.PdfReader(io.BytesIO(data))
    text = " ".join(side.extract_text() for side in reader.pages)
    assert f"Side {len(reader.pages)} of {len(reader.pages)}" in text
    # a pictogram says what it shows to who cannot see it
    assert [said for said in _said(reader.trailer["/Root"]["/StructTreeRoot"]) if "Pictogram" in said] == [
        "Pictogram: flame (GHS02)",
        "Pictogram: exclamation mark (GHS07)",
    ]
    assert list(printed) == ["MS-001-hazard-card.pdf"]
    assert "In an emergency, call: +00 999" in text
    assert "Danger" in text


def test_a_cleaner_puts_its_signal_word_and_pictograms_on_the_card_and_has_a_panel_of_its_own() -> None:
    wipe = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225, H304, H336], gloves: nitrile 0.4 mm, safety_data_sheet: {number: SDS-7}}, {id: tape, what: tape, amount: 2 rolls, kind: masking}]"
    spec = _spec({"jobs.refit.consumption.supplies": wipe})
    (panel,) = chemical_hazards(spec.jobs["refit"], context(spec).words)
    assert (panel.product, panel.signal_word, panel.data_sheets) == ("degreaser EX-7", "Danger", ("SDS-7",))
    assert [drawn.code for drawn in panel.pictograms] == ["GHS02", "GHS07", "GHS08"]
    assert [said.code for said in panel.statements] == ["H225", "H304", "H336"]
    before, after = _card(_spec({})), _card(spec)
    assert {drawn.code for drawn in after.pictograms} - {drawn.code for drawn in before.pictograms} == {"GHS08"}


def test_the_graver_signal_word_is_that_of_the_card() -> None:
    mild = {f"products.{key}.hazards.signal_word": "Warning" for key in ("primer", "base", "clear", "barrier")}
    thin = "[{id: thin, what: thinner EX-900, amount: 1 L, kind: thinner, statements: [H225]}]"
    assert _card(_spec(mild)).signal_word == "Warning"
    assert _card(_spec(mild | {"jobs.refit.consumption.supplies": thin})).signal_word == "Danger"


def test_long_term_harm_is_what_the_statements_name() -> None:
    supplies = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H351, H373]}]"
    told = {codes: text for text, codes in _card(_spec({"jobs.refit.consumption.supplies": supplies})).hurts}
    assert (
        told["H351, H373: degreaser EX-7"]
        == "May cause serious long-term harm (cancer is suspected, damage to organs): do not breathe it; no skin contact."
    )


def test_first_aid_for_a_cleaner_is_in_its_own_sheet() -> None:
    supplies = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225]}]"
    told = ("degreaser EX-7", "See section 4 of the safety data sheet.")
    assert told in _card(_spec({"jobs.refit.consumption.supplies": supplies})).first_aid
    assert told not in _card(_spec({})).first_aid


def test_packs_are_stored_and_carried_as_each_product_states() -> None:
    packs = dict(
        _card(
            _spec(
                {
                    "products.primer.hazards.storage_min": "5 degC",
                    "products.primer.hazards.storage_max": "45 degC",
                    "products.primer.hazards.transport": "{un_number: UN 1950, transport_class: '2.1'}",
                }
            )
        ).cautions
    )["Unopened packs"]
    assert "primer: 5 to 45\N{NO-BREAK SPACE}°C, UN 1950, class 2.1." in packs


def test_a_thinner_that_nobody_orders_is_among_the_chemicals() -> None:
    card = _card(_spec({"systems.chassis.layers.barrier.thinner": "5 %", "jobs.refit.consumption.supplies": "[]"}))
    ((name, word, said),) = card.supplies.rows
    assert (word, said) == ("not stated", "Hazards not stated: read its safety data sheet before opening it")
    assert ("Mixing", name) in [row[:2] for row in card.wear.rows]


def test_ventilation_and_waste_stand_on_the_card() -> None:
    air, waste = "{room: 60 m3, flow: 2000 m3/h}", "['16 05 04*']"
    changes = {"jobs.refit.ventilation": air, "products.primer.hazards.waste_codes": waste}
    told = dict(_card(_spec(changes)).cautions)
    assert told["Ventilation"][0].startswith("Fresh-air flow that the exposure limits require: ")
    # a product called by a number is not read as part of the figure behind it
    assert "primer, base coat, clear, barrier: cannot be" in told["Ventilation"][0]
    assert told["Ventilation"][0].endswith("provided: 2000\N{NO-BREAK SPACE}m³/h.")
    assert told["Waste"][-1] == "Waste codes: 16\N{NO-BREAK SPACE}05\N{NO-BREAK SPACE}04*."
