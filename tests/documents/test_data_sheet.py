"""What a data sheet says where the good specification has no case: variants that differ, windows, claims, and what is left out."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.documents.data_sheet.view import DataSheet, data_sheet
from specgen.documents.parts.protection import protection
from specgen.documents.parts.wording import Words
from specgen.documents.range_overview.view import range_overview
from specgen.units.locale import ENGLISH
from tests.documents.conftest import context
from tests.good_spec import checked, good, good_with, spec_of

NB = "\N{NO-BREAK SPACE}"


def _sheet(product: str, changes: dict[str, str], removed: tuple[str, ...] = ()) -> DataSheet:
    spec = good_with(changes, removed)
    loaded = checked(spec).loaded
    assert loaded.spec is not None, [str(finding) for finding in loaded.findings]
    return data_sheet(loaded.spec.products[product], context(loaded.spec))


def _rows(table: Any) -> list[tuple[str, ...]]:
    return [tuple(cell.replace(NB, " ") for cell in row) for row in table.rows]


def test_a_film_that_variants_state_anew_stands_with_each_of_them_and_not_once_for_all() -> None:
    red = "{id: red, name: red, order_number: EX-base-2, overrides: {hiding: 18 um}}"
    sheet = _sheet("base", {"products.base.film.hiding": "15 um", "products.base.variants.red": red})
    assert "DFT for full hiding" not in dict(sheet.film)
    assert [row[-1] for row in _rows(sheet.variants)] == ["15 µm (0.6 mil)", "18 µm (0.7 mil)"]
    assert dict(_sheet("base", {"products.base.film.hiding": "15 um"}).film)["DFT for full hiding"]


def test_a_can_with_a_capsule_says_in_the_overview_how_long_it_may_be_used() -> None:
    capsule = {
        "products.clear.curing": "capsule-aerosol",
        "products.clear.application.activation": "{action: Press the pin., shake_after: 2 min, usable_for: 9 h}",
    }
    spec = spec_of(good_with(capsule))
    shown = range_overview(spec, context(spec)).products
    at = [column.heading for column in shown.columns].index("Pot life")
    assert {row[0]: row[at] for row in _rows(shown)}["Example clear"] == "9 h after activation"
    assert [name for name, _ in data_sheet(spec.products["clear"], context(spec)).conditions][-1].startswith(
        "Use within"
    )


def test_variants_with_figures_of_their_own_have_lines_of_their_own() -> None:
    red = "{id: red, name: red, order_number: EX-base-2, fill: 150 mL, overrides: {solids_in_can: 10 %, per_pass: 12 um, hiding: 18 um}}"
    blue = "{id: blue, name: blue, order_number: EX-base-3}"
    sheet = _sheet("base", {"products.base.variants.red": red, "products.base.variants.blue": blue})
    # 150 mL x 10 % x 97 % x 50 % / 20 um = 0.36 m2; 400 mL x 14 % x 97 % x 50 % / 20 um = 1.36 m2
    assert [row[1:] for row in _rows(sheet.coverage)] == [
        ("standard, blue", "flat panel, trained hand", "50 to 70 %", "1.36 to 1.90 m²", sheet.coverage.rows[0][-1]),
        ("standard, blue", "profiles, edges, outdoors", "30 to 50 %", "0.81 to 1.36 m²", sheet.coverage.rows[1][-1]),
        ("red", "flat panel, trained hand", "50 to 70 %", "0.36 to 0.51 m²", sheet.coverage.rows[2][-1]),
        ("red", "profiles, edges, outdoors", "30 to 50 %", "0.22 to 0.36 m²", sheet.coverage.rows[3][-1]),
    ]  # fmt: skip
    # 10 um / 23 % = 43 um; 12 um / 23 % = 52 um
    assert [row[:-1] for row in _rows(sheet.comb)] == [
        ("10 µm (0.4 mil)", "standard, blue", "43 µm (1.7 mil)"),
        ("12 µm (0.5 mil)", "red", "52 µm (2.0 mil)"),
    ]
    assert [column.heading for column in sheet.variants.columns] == [
        "Order number",
        "Variant",
        "Pack",
        "DFT per cross coat",
        "DFT for full hiding",
    ]
    assert _rows(sheet.variants) == [
        ("EX-base", "standard", "400 mL aerosol can", "10 µm (0.4 mil)", "not stated"),
        ("EX-base-2", "red", "150 mL aerosol can", "12 µm (0.5 mil)", "18 µm (0.7 mil)"),
        ("EX-base-3", "blue", "400 mL aerosol can", "10 µm (0.4 mil)", "not stated"),
    ]


def test_windows_name_what_goes_on_top() -> None:
    windows = "[{id: a, next_coat: clear, interval: 20 min..24 h, air: 20 degC}, {id: b, next_coat: itself, interval: min 10 min, air: 20 degC}, {id: c, next_coat: any, interval: max 8 h, air: 20 degC, if_exceeded: abrade}]"
    sheet = _sheet("base", {"products.base.overcoat": windows})
    assert [row for row in _rows(sheet.times) if row[0].startswith("Overcoating")] == [
        ("Overcoating with Example clear", "20 min to 24 h"),
        ("Overcoating with this product (second coat)", "at least 10 min"),
        ("Overcoating with any other coat in the product range", "at most 8 h"),
    ]
    assert sheet.if_exceeded == (
        ("If the maximum is exceeded (Example clear, this product (second coat))", "not stated"),
        ("If the maximum is exceeded (any other coat in the product range)", "abrade"),
    )


def test_drying_and_sanding_are_printed_with_their_times_as_stated() -> None:
    sheet = _sheet(
        "primer",
        {
            "products.primer.drying": "[{id: touch, stage: touch-dry, time: 4..6 h, air: 15..25 degC}, {id: dust, stage: dust-free, time: max 30 min, air: min 20 degC}]",
            "products.primer.sandable_after": "[{id: dry, sanding: dry, time: 3 h, air: 20 degC, humidity: 50 %, film: 60 um}, {id: wet, sanding: wet, time: 12..16 h, air: max 10 degC}]",
        },
    )
    named = [column.heading.replace(NB, " ") for column in sheet.times.columns]
    assert named[1:] == [
        "Air 10 °C (50 °F) or below",
        "Air 15 to 25 °C (59 to 77 °F)",
        "Air 15 °C (59 °F)",
        "Air 20 °C (68 °F) or above",
        "Air 20 °C (68 °F)",
    ]
    none = "not stated"
    assert [row for row in _rows(sheet.times) if not row[0].startswith("Overcoating")] == [
        ("Touch-dry", none, "4 to 6 h", none, none, none),
        ("Dust-free", none, none, none, "at most 30 min", none),
        ("Ready for dry sanding, 50 % RH, DFT 60 µm (2.4 mil)", none, none, none, none, "3 h"),
        ("Ready for wet sanding", "12 to 16 h", none, none, none, none),
    ]


def test_conditions_that_all_times_share_stand_in_the_caption() -> None:
    drying = "[{id: a, stage: touch-dry, time: 30 min, air: 20 degC, humidity: 50 %, film: 60 um}, {id: b, stage: dust-free, time: 2 h, air: 10 degC, humidity: 50 %, film: 60 um}]"
    sheet = _sheet("primer", {"products.primer.drying": drying, "products.primer.overcoat": "[]"})
    assert sheet.times.caption.replace(NB, " ") == "Drying times at 50 % RH, DFT 60 µm (2.4 mil)"
    assert _rows(sheet.times) == [("Touch-dry", "not stated", "30 min"), ("Dust-free", "2 h", "not stated")]


def test_conditions_of_one_temperature_alone_stand_beside_its_interval() -> None:
    windows = "[{id: cold, next_coat: any, interval: 8..24 h, air: 10 degC}, {id: lab, next_coat: any, interval: 4..18 h, air: 20 degC, humidity: 50 %, film: 60 um}]"
    sheet = _sheet("primer", {"products.primer.drying": "[]", "products.primer.overcoat": windows})
    name = "Overcoating with any coat in the product range"
    assert _rows(sheet.times) == [(name, "8 to 24 h", "4 to 18 h, 50 % RH, DFT 60 µm (2.4 mil)")]


@pytest.mark.parametrize(
    ("first", "rows"),
    [
        (
            "air: 10 degC, humidity: 50 %",
            [("Overcoating with any coat in the product range, 50 % RH", "8 to 24 h", "4 to 18 h")],
        ),
        (
            "air: 20 degC, humidity: 70 %",
            [
                ("Overcoating with any coat in the product range, 70 % RH", "8 to 24 h"),
                ("Overcoating with any coat in the product range, 50 % RH", "4 to 18 h"),
            ],
        ),
    ],
    ids=["shared", "of one temperature"],
)
def test_conditions_shared_or_telling_two_of_one_temperature_apart_stand_beside_the_name(
    first: str, rows: list[tuple[str, ...]]
) -> None:
    windows = f"[{{id: one, next_coat: any, interval: 8..24 h, {first}}}, {{id: two, next_coat: any, interval: 4..18 h, air: 20 degC, humidity: 50 %}}]"
    sheet = _sheet("primer", {"products.primer.drying": "[]", "products.primer.overcoat": windows})
    assert _rows(sheet.times) == rows


def test_more_temperatures_than_stand_side_by_side_have_a_line_each() -> None:
    drying = ", ".join(
        f"{{id: a{air}, stage: touch-dry, time: {air} min, air: {air} degC}}" for air in (10, 15, 20, 25, 30, 35)
    )
    sheet = _sheet("primer", {"products.primer.drying": f"[{drying}]", "products.primer.overcoat": "[]"})
    assert _rows(sheet.times)[0] == ("Touch-dry", "10 °C (50 °F)", "10 min")
    assert len(sheet.times.rows) == 6


def test_pot_life_is_printed_at_every_temperature_stated() -> None:
    more = "[{id: warm, time: 90 min, air: 30 degC, volume: 1 L}, {id: hot, time: 30..40 min, air: min 35 degC}]"
    sheet = _sheet("barrier", {"products.barrier.pot_life.other_temperatures": more})
    stored = {name: text.replace(NB, " ") for name, text in sheet.storage}
    assert stored["Pot life"] == (
        "4 h at 20 °C (68 °F), 1 L mixed; 90 min at 30 °C (86 °F), 1 L mixed; 30 to 40 min at 35 °C (95 °F) or above"
    )


def test_stoving_and_light_are_printed_with_the_curing() -> None:
    stoving = "[{id: hot, surface: 180..190 degC, time: 15 min}, {id: cool, surface: min 160 degC, time: 25..30 min}]"
    stoved = _sheet("barrier", {"products.barrier.stoving": stoving})
    assert {name: text.replace(NB, " ") for name, text in stoved.nature}["Stoving"] == (
        "15 min at a surface temperature of 180 to 190 °C (356 to 374 °F)"
        " or 25 to 30 min at a surface temperature of 160 °C (320 °F) or above"
    )
    light = "{lamp: UV-A LED 395 nm, time: 3..5 min, distance: 20..25 cm, film_max: 90 um}"
    lit = _sheet("clear", {"products.clear.curing": "light-cured", "products.clear.light": light})
    assert {name: text.replace(NB, " ") for name, text in lit.nature}["Curing by light"] == (
        "UV-A LED 395 nm, 3 to 5 min, 20 to 25 cm from the film, DFT at most 90 µm (3.5 mil) in one exposure"
    )


def test_volume_solids_are_printed_as_stated() -> None:
    sheet = _sheet("barrier", {"products.barrier.solids": "{in_can: 63 +- 2 %}"})
    assert ("Volume solids", f"61 to 65{NB}%") in sheet.film
    can = dict(_sheet("base", {}).film)
    assert (can["Volume solids of the can contents"], can["Volume solids without propellant"]) == (
        f"14{NB}%",
        f"23{NB}%",
    )


def test_clear_coat_is_named_by_the_base_coat() -> None:
    sheet = _sheet("clear", {})
    assert _rows(sheet.over) == [("Example base coat", "20 min to 24 h")]
    assert [column.heading.replace(NB, " ") for column in sheet.over.columns][1:] == ["Air 15 °C (59 °F)"]
    assert not sheet.overcoats


def test_thinner_adds_a_line_for_the_comb() -> None:
    # 80 um x (100 + 10) / 50 = 176 um
    assert [row[:-1] for row in _rows(_sheet("barrier", {}).comb)] == [
        ("80 µm (3.1 mil)", "none", "160 µm (6.3 mil)"),
        ("80 µm (3.1 mil)", "10 %", "176 µm (6.9 mil)"),
    ]


def test_film_in_mils_gives_square_feet_a_gallon() -> None:
    sheet = _sheet("barrier", {"products.barrier.film": "{min: 2 mil, nominal: 3 mil, max: 5 mil}"})
    # 1604 x 50 % / 3 mil = 267.33 ft2/gal, less the loss
    assert [row[1:4] for row in _rows(sheet.coverage)] == [
        ("brush or roller application", "10 to 15 %", "227 to 241 ft²/gal"),
        ("conventional spray", "50 %", "134 ft²/gal"),
        ("airless spray", "30 %", "187 ft²/gal"),
    ]


def test_stated_coverage_is_printed_only_with_its_film() -> None:
    claims = "[{id: a, area_per_pack: 1.5 m2, film: 20 um, losses: included, transfer_efficiency: 60 %}, {id: b, spreading_rate: 7 m2/L}]"
    sheet = _sheet("base", {"products.base.coverage": claims})
    assert _rows(sheet.stated_coverage) == [("20 µm (0.8 mil)", "1.5 m²", "practical, spray losses included", "60 %")]


@pytest.mark.parametrize("missing", ["pack.fill", "solids", "film"])
def test_no_coverage_where_something_is_missing(missing: str) -> None:
    changes = {"products.base.film": "{}"} if missing == "film" else {}
    removed = () if missing == "film" else (f"products.base.{missing}",)
    assert _sheet("base", changes, removed).coverage.rows == ()


def test_volume_solids_of_nothing_give_no_figure() -> None:
    sheet = _sheet("base", {"products.base.solids": "{in_can: 0 %, sprayed: 0 %}"})
    assert (sheet.coverage.rows, sheet.comb.rows) == ((), ())


def test_document_block_claims_and_life() -> None:
    sheet = _sheet(
        "primer",
        {
            "products.primer.document": "{number: DS-9, title: Primer sheet, owner: Desk, reason_for_change: new can}",
            "products.primer.claims": "[{id: a, text: Adheres to steel., basis: panel 7}, {id: b, text: Sands well.}]",
            "products.primer.not_claimed": "No fuel tanks.",
            "products.primer.service_temperature.short_max": "130 degC",
            "products.primer.application.activation": "{usable_for: 48 h}",
        },
    )
    assert (sheet.number, sheet.title, sheet.owner) == ("DS-9", "Primer sheet", "Desk")
    assert any("new can" in cell for row in sheet.revisions.rows for cell in row)
    # a claim without a report is not printed
    assert sheet.claims.table.rows == ()
    assert sheet.not_claimed == "No fuel tanks."
    shown = {name: text.replace(NB, " ") for name, text in (*sheet.nature, *sheet.key_figures)}
    assert shown["Max. continuous service temperature (dry heat)"] == "110 °C (230 °F)"
    assert shown["Max. peak temperature, short-term (dry heat)"] == "130 °C (266 °F)"
    assert ("Usable life after activation", f"48{NB}h") in sheet.storage


def test_equal_protection_shares_a_row() -> None:
    spec = spec_of(good())
    table = protection(list(spec.products.values()), Words.of(spec.project, ENGLISH))
    worn = ("nitrile 0.4 mm, EN ISO 374-1, splash only", "goggles, EN ISO 16321-1", "overall")
    silent = "common practice; none stated for the product", "Not stated: see section 8 of the safety data sheet"
    gloves = "nitrile gloves, changed at once after contact"
    assert table.rows == (
        ("Surface preparation", *silent, gloves, "", ""),
        (
            "Sanding",
            silent[0],
            "P2 or P3 filter, FFP2 or FFP3 mask, with extraction",
            "gloves",
            "safety spectacles",
            "cover all skin (common practice)",
        ),
        (
            "Spraying",
            "Example primer, Example base coat, Example barrier",
            "half mask AXP3, EN 140 and EN 14387",
            *worn,
        ),
        ("Spraying", "Example clear", "air-fed half mask, EN 14594", *worn),
        # nothing is stated, and spray with isocyanate is still in the air
        ("Clean-up", "Example clear", "air-fed half mask, EN 14594", *worn),
        (
            "Clean-up",
            "Example primer, Example base coat, Example barrier",
            silent[1],
            "nitrile gloves, changed at once after contact (common practice)",
            "",
            "cover all skin (common practice)",
        ),
    )


def test_application_methods_are_named() -> None:
    shown = _sheet("barrier", {"products.barrier.application.methods": "[airless, brush]"}).conditions
    assert ("Application methods", "airless spray, brush") in shown
