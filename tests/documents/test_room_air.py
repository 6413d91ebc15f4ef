"""Air of a job as printed: both dangers in one table, no substance by name, and no leave to go in early."""

from __future__ import annotations

import re
from typing import Any

from specgen.documents.method_statement.room_air import AirView
from specgen.documents.method_statement.view import MethodStatement, method_statement
from tests.documents.conftest import context
from tests.good_spec import good, good_with, put, spec_of

NB = "\N{NO-BREAK SPACE}"

# 30 % of 1 kg an hour is butyl acetate: 300 g/h at 116.16 g/mol, 1.2 % lower explosive limit, 241 mg/m3 over 8 h.
AIR = {
    "jobs.refit.items": "[{id: STEP, name: Step, count: 4, area: 0.12 m2, system: chassis}]",
    "jobs.refit.system": "chassis",
    "products.barrier.composition": "[{id: resin, name: resin, kind: solids, mass_share: 70 %, density: 1.4 g/mL}, "
    "{id: mk-acetate, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 30 %, density: 0.88 g/mL}]",
    "jobs.refit.ventilation": "{room: 60 m3, flow: 2000 m3/h, spraying_rate: 1000 g/h, mixing: 3}",
}


RE_ENTRY = "Re-entry without respiratory protection, after spraying has stopped (spray mist): not before the clearance time posted at the booth, extraction running; if none is posted, wait at least 30 min, extraction running, and have it measured."


def _view(changes: dict[str, str]) -> MethodStatement:
    spec = spec_of(good_with(changes))
    return method_statement(spec.jobs["refit"], context(spec))


def _rows(air: AirView) -> list[tuple[str, str, str]]:
    """What the air is for, its limits and its figures, without the numbers of the workings."""
    (table,) = air.tables
    found: dict[str, list[tuple[str, str]]] = {}
    for use, limit, figure in table.rows:
        found.setdefault(use, []).append((limit, re.sub(r" \(W\d+\)$", "", figure.replace(NB, " "))))
    return [
        (
            use.replace(NB, " "),
            "\n".join(limit.replace(NB, " ") for limit, _ in lines),
            "\n".join(text for _, text in lines),
        )
        for use, lines in found.items()
    ]


def _numbers(air: AirView, use: str = "") -> list[str]:
    (table,) = air.tables
    return [number for row in table.rows if not use or row[0] == use for number in re.findall(r"\((W\d+)\)", row[2])]


def test_both_dangers_stand_together() -> None:
    air = _view(AIR).safety.air
    # 300 g/h / 116.16 * 24.06 L/mol / 1.2 % / 25 % = 20.7 m3/h; 300 000 mg/h * 3 / 241 = 3734, / 723 = 1245 m3/h, to three digits;
    # 3734 over 20.71 is 180.3; 2000 m3/h leave 450 mg/m3, and 60 * 3 * 60 / 2000 * ln(450 / 241) = 3.4 min
    assert _rows(air) == [
        ("lower explosive limit (LEL)", "25 % of the LEL", "21 m³/h"),
        ("exposure limit, solvent 1", "IOELV, EU, 8 h TWA\nIOELV, EU, 15 min STEL", "3730 m³/h\n1240 m³/h"),
        ("exposure limits, all vapours combined", "8 h TWA", "3730 m³/h"),
        ("fresh-air flow required", "highest of the above", "3730 m³/h"),
        ("fresh-air flow provided (stated for the job)", "", "2000 m³/h"),
    ]
    assert [text.replace(NB, " ") for text in air.statements] == [
        # the 3.4 min of the vapour would be read as leave to go in at once
        RE_ENTRY,
        "The jurisdiction is not stated for this project; the limits shown are those of EU and may not apply at the place of work.",
        "Exposure limits shown: EU. Binding limits at the place of work take precedence where they are lower.",
        "The air flow is set by the occupational exposure limits, never by the lower explosive limit alone.",
        "The exposure limits require up to about 180 times the air flow that the lower explosive limit requires (Example barrier).",
        "Calculated for well-mixed room air; in the spray cone, in pits and inside the part the concentration is far higher. Solvents are numbered; section 3 of the safety data sheet names them.",
    ]


def test_every_figure_is_in_the_annex_and_gives_nothing_away() -> None:
    view = _view(AIR)
    numbers = _numbers(view.safety.air)
    listed = {working.number: working for working in view.workings}
    assert len(listed) == len(view.workings)
    assert [listed[number].held for number in numbers] == ["inputs withheld by the manufacturer"] * len(numbers) != []
    # what the label names is public; of the air nothing is named
    printed = repr((view.safety.air, view.workings))
    assert [
        word for word in ("butyl", "acetate", "123-86-4", "mk-acetate", "30\N{NO-BREAK SPACE}%") if word in printed
    ] == []


def test_what_the_job_states_is_shown_in_full() -> None:
    """20 changes an hour of 60 m3 are the customer's own figures."""
    view = _view(AIR | {"jobs.refit.ventilation": "{room: 60 m3, changes: 20, spraying_rate: 1000 g/h, mixing: 3}"})
    (stated,) = [working for working in view.safety.air.workings if not working.held]
    assert (stated.name, stated.substituted, stated.result) == ("fresh-air flow", "20 × 60", f"1200{NB}m³/h")
    assert _numbers(view.safety.air, "fresh-air flow provided (stated for the job)") == [stated.number]


def test_isocyanate_has_no_time_but_the_posted_one() -> None:
    air = _view(AIR | {"products.barrier.binder": "pu_2k_aliphatic"}).safety.air
    rows = {row[0]: row[1:] for row in _rows(air)}
    assert rows["exposure limit, isocyanate (as NCO)"] == (
        "OEL, EU, 8 h TWA, 0.01 mg/m³\nOEL, EU, 15 min STEL, 0.02 mg/m³",
        "cannot be calculated: keep protective equipment on and measure the air",
    )
    assert RE_ENTRY in [text.replace(NB, " ") for text in air.statements]
    assert "re-entry without respiratory protection, after spraying has stopped" not in rows
    assert any(
        text.startswith("Dilution ventilation is not a control measure for isocyanates") for text in air.statements
    )


def test_a_vapour_without_a_limit_is_no_pass() -> None:
    """Nothing of the reason is printed, for it would name the substance."""
    unknown = AIR["products.barrier.composition"].replace("123-86-4", "990011-51-7")
    view = _view(AIR | {"products.barrier.composition": unknown})
    rows = {row[0]: row[2] for row in _rows(view.safety.air)}
    open_text = "cannot be calculated: keep protective equipment on and measure the air"
    assert (
        rows["lower explosive limit (LEL)"]
        == rows["exposure limits, all vapours combined"]
        == rows["fresh-air flow required"]
        == open_text
    )
    assert "acetate" not in repr((view.safety.air, view.workings))


def test_a_job_that_says_nothing_of_its_air_says_so() -> None:
    air = _view({}).safety.air
    assert (air.tables, air.workings) == ((), ())
    (said,) = air.statements
    assert said.startswith("The job states no room volume and no fresh-air flow")
    assert said.endswith("wait at least 30 min, extraction running, and have it measured.")


def test_voc_is_set_against_its_limit_and_added_up() -> None:
    view = _view({})
    rows = [tuple(cell.replace(NB, " ") for cell in row) for row in view.safety.voc.rows]
    # 2 cans of 0.4 L at 615 g/L, 1 at 700, 2 at 690, 1 tin of 1 L at 450
    assert rows == [
        ("Example primer", "615 g/L", "EU, e", "840 g/L, in force since 2007-01-01", "492 g"),
        ("Example base coat", "700 g/L", "EU, e", "840 g/L, in force since 2007-01-01", "280 g"),
        ("Example clear", "690 g/L", "EU, e", "840 g/L, in force since 2007-01-01", "552 g"),
        ("Example barrier", "450 g/L", "EU, c(i)", "540 g/L, in force since 2007-01-01", "450 g"),
        ("All products", "", "", "", "1770 g"),
    ]


def test_no_total_where_a_content_is_not_stated() -> None:
    source: dict[str, Any] = good()
    put(source, "products.base.voc", "{density: 0.8 g/mL}")
    spec = spec_of(source)
    view = method_statement(spec.jobs["refit"], context(spec))
    assert [row[0] for row in view.safety.voc.rows] == [
        "Example primer",
        "Example base coat",
        "Example clear",
        "Example barrier",
    ]


def test_a_member_state_is_shown_the_limits_of_the_eu_and_told_so() -> None:
    air = _view(AIR | {"project.jurisdictions": "[DE]"}).safety.air
    assert _rows(air)[1] == (
        "exposure limit, solvent 1",
        "IOELV, EU, 8 h TWA\nIOELV, EU, 15 min STEL",
        "3730 m³/h\n1240 m³/h",
    )
    told = "Where no exposure limit of DE is on file, that of EU is shown; the law of DE may be stricter and decides."
    assert told in air.statements
    # beside the EU it adds no second table
    beside = _view(AIR | {"project.jurisdictions": "[EU, DE]"}).safety.air
    assert len(beside.tables) == 1
    assert told in beside.statements


def test_a_law_without_limits_is_told() -> None:
    air = _view(AIR | {"project.jurisdictions": "[AU]"}).safety.air
    told = [text.replace(NB, " ") for text in air.statements]
    assert (
        "No exposure limit of AU is on file, so no air flow is shown for it: obtain the limits of the place of work."
        in told
    )
    assert not [text for text in told if text.startswith("Exposure limits shown")]


def test_what_is_known_in_part_is_at_least() -> None:
    composition = AIR["products.barrier.composition"].replace("mass_share: 70 %", "mass_share: 69 %")
    unlisted = ", {id: mk-other, name: unlisted, kind: solvent, mass_share: 1 %, density: 0.88 g/mL}]"
    rows = _rows(_view(AIR | {"products.barrier.composition": composition[:-1] + unlisted}).safety.air)
    assert rows[0] == (
        "lower explosive limit (LEL)",
        "25 % of the LEL",
        "at least 21 m³/h (not every component is known)",
    )
    assert rows[2][2] == "at least 3730 m³/h (not every component is known)"
    assert rows[3] == (
        "fresh-air flow required",
        "highest of the above",
        "at least 3730 m³/h (not every component is known)",
    )


def test_water_asks_for_no_air() -> None:
    composition = AIR["products.barrier.composition"].replace("mass_share: 70 %", "mass_share: 40 %")
    water = ", {id: water, name: water, cas: 7732-18-5, kind: solvent, mass_share: 30 %, density: 1 g/mL}]"
    changed = AIR | {"products.barrier.composition": composition[:-1] + water}
    assert _rows(_view(changed).safety.air) == _rows(_view(AIR).safety.air)


def test_what_curing_lets_off_of_a_solvent_of_the_paint_is_one_vapour_with_it() -> None:
    # 300 g/h of the contents and 10 g/h of the hardener: 310 000 mg/h * 3 / 241 = 3859, / 723 = 1286 m3/h, to three digits
    changes = AIR | {
        "products.barrier.hazards.cure_releases": "n-butyl acetate",
        "products.barrier.hazards.cure_release_cas": "123-86-4",
        "products.barrier.hazards.cure_release_share": "1 %",
    }
    rows = _rows(_view(changes).safety.air)
    assert [row for row in rows if "solvent" in row[0]] == [
        ("exposure limit, solvent 1", "IOELV, EU, 8 h TWA\nIOELV, EU, 15 min STEL", "3860 m³/h\n1290 m³/h")
    ]
