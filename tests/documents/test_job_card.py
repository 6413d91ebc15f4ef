"""The job card on paper: a card a vehicle and build, whole whatever the job holds, with the figures of the method statement."""

from __future__ import annotations

import io
import json
import re
from collections.abc import Mapping
from typing import Any

import pypdf
import pytest

from specgen.checking import check
from specgen.documents.job_card.records import ReadingSheet
from specgen.documents.job_card.view import JobCard, job_card
from specgen.printing.documents import print_documents
from specgen.rendering.failure import RenderError
from tests.documents.conftest import context
from tests.good_spec import DEMO, ON, checked, good, put, spec_of, take_out

NB = "\N{NO-BREAK SPACE}"
HOSTILE = "<b>part</b> & <script>alert(1)</script> " + "Northgate yard side and rear " * 5


def _pages(spec: dict[str, Any]) -> list[pypdf.PageObject]:
    files = print_documents(checked(spec), documents=["job-card"], formats=["pdf"])
    return list(pypdf.PdfReader(io.BytesIO(files["MS-001-job-card.pdf"])).pages)


def _text(page: pypdf.PageObject) -> str:
    return re.sub(r"\s+", " ", page.extract_text())


def _items(many: int, name: str) -> str:
    return json.dumps([{"id": f"I{n}", "name": name, "count": "2", "area": "0.5 m2"} for n in range(many)])


def _card(spec: dict[str, Any], vehicles: tuple[str, ...] = ("T-01",)) -> JobCard:
    whole = spec_of(spec)
    job = whole.jobs["refit"]
    return job_card(job.model_copy(update={"vehicles": vehicles}), context(whole))


@pytest.mark.parametrize(("many", "paper"), [(1, "A4"), (20, "Letter")])
def test_each_vehicle_has_its_card_which_counts_its_sides(many: int, paper: str) -> None:
    spec = good()
    vehicles = ["T-01", "TRACTOR-2", "T-03"]
    put(spec, "project.page_size", paper)
    put(spec, "jobs.refit.vehicles", json.dumps(vehicles))
    put(spec, "jobs.refit.items", _items(many, "Panel of the long side, outer face"))
    pages = [_text(page) for page in _pages(spec)]
    of = len(pages) // 3
    assert len(pages) == 3 * of
    for place, page in enumerate(pages):
        # each side names vehicle, number and state, for the sheets are torn apart
        assert vehicles[place // of] in page
        assert f"Side {place % of + 1} of {of}" in page
        assert "Job card MS-001 DRAFT" in page
    for vehicle in range(3):
        whole = " ".join(pages[vehicle * of : (vehicle + 1) * of])
        for said in (
            "2026-11-25",
            "Danger",
            "+00 000 000",
            "HOLD POINT",
            "20 min",
            "Inspector",
            "expiry date",
            "Dew point",
        ):
            assert said in whole


def test_hostile_text_stays_on_the_page() -> None:
    spec = good()
    take_out(spec, "jobs.refit.vehicles")
    put(spec, "jobs.refit.items", _items(20, HOSTILE))
    put(spec, "jobs.refit.document.title", json.dumps(HOSTILE))
    put(spec, "products.primer.name", json.dumps(HOSTILE))
    put(spec, "products.primer.variants.grey.name", json.dumps("W" * 80))
    put(spec, "preparations.sand-steel.steps.degrease.text", json.dumps("Wipe and " * 200 + "stop here"))
    pages = _pages(spec)
    width = float(pages[0].mediabox.width)
    ends: list[float] = []

    def seen(text: str, matrix: list[float], text_matrix: list[float], font: Any, size: float) -> None:
        if text.strip() and not matrix[1]:  # the draft mark is turned into the margin
            ends.append(text_matrix[4] * matrix[0] + matrix[4])

    text = re.sub(r"\s+", " ", " ".join(page.extract_text(visitor_text=seen) for page in pages))
    assert "<b>part</b> & <script>alert(1)</script>" in text
    assert max(ends) < width
    # nothing is cut: every part, and the end of the long text
    assert all(f"2 × I{n} <b>part</b>" in text for n in range(20))
    assert "Wipe and stop here" in text


def test_no_type_is_smaller_than_eight_points() -> None:
    spec = good()
    put(spec, "jobs.refit.items", _items(20, HOSTILE))
    sizes: list[float] = []
    for page in _pages(spec):
        page.extract_text(
            visitor_text=lambda text, matrix, text_matrix, font, size: (
                sizes.append(round(abs(size * text_matrix[3] * matrix[3]), 2))
                if text.strip() and not matrix[1]
                else None
            )
        )
    # the typesetter counts in CSS pixels, 0.75 pt each
    assert min(sizes) >= 8
    assert max(sizes) >= 40


def test_on_a_screen_no_box_is_narrower_than_its_heading_and_no_line_is_cut_off() -> None:
    """`Spot` and `mean` stand whole on a phone, where the sheet is wider than the page and scrolls."""
    (data,) = print_documents(checked(good()), documents=["job-card"], formats=["html"], jobs=["refit"]).values()
    page = data.decode()
    set_last = {selector: page.rindex(f"{selector} {{") for selector in (".card .records .readings", ".card .batches")}
    shared = page.index(".card td, .card th, .card tbody")
    assert page.index(".card .records .readings th { overflow-wrap: normal; }") > shared
    assert page[set_last[".card .records .readings"] :].startswith(".card .records .readings { table-layout: auto; }")
    assert page[set_last[".card .batches"] :].startswith(".card .batches { margin-top: 0; }")


@pytest.mark.parametrize(
    ("kind", "places"),
    [
        ("job-card", ["System A", "A: 1 primer", "A: Records", "System B"]),
        ("inspection-plan", ["Products delivered", "A: Surface preparation", "A: Coat 1 primer", "Plan agreed"]),
        ("hazard-card", ["Personal protective equipment (PPE)", "First aid", "Re-entry", "Spraying", "Fire"]),
    ],
)
def test_on_a_screen_the_contents_lead_to_what_is_looked_for(kind: str, places: list[str]) -> None:
    (data,) = print_documents(checked(good()), documents=[kind], formats=["html"], jobs=["refit"]).values()
    page = data.decode()
    contents = page[page.index('<nav class="contents"') : page.index("</nav>")]
    links = re.findall(r'<a href="#([^"]+)">([^<]+)</a>', contents)
    assert [name for _, name in links if name in places] == places
    assert [page.count(f'id="{place}"') for place, _ in links] == [1] * len(links)


def test_figures_are_those_of_the_method_statement(good_views: Mapping[str, Any]) -> None:
    card = _card(good())
    for page, build in zip(card.builds, good_views["method_statement_refit"].builds, strict=True):
        side = page.work
        shown = [tuple(f"{figure.first} {figure.second}".strip() for _, figure in coat.films) for coat in side.coats]
        coats = [row for row in build.coats.rows if row[0][0].isdigit()]
        assert shown == [row[3:7] for row in coats]
        held = [side.first_wait, *(coat.wait for coat in side.coats)]
        waits = [(wait.not_before or "–", wait.not_later or "–") for wait in held if wait is not None]
        assert waits == [row[7:9] for row in (build.coats.rows[0], *coats[:-1])]
        assert [f"{wait.comes} at least {wait.not_before}" for wait in side.last_waits] == build.released.split(", ")


def test_the_hold_of_the_second_layer() -> None:
    coat = _card(good()).builds[0].work.coats[1]
    assert coat.wait is not None
    assert (coat.name, coat.wait.comes, coat.wait.not_before, coat.wait.not_later) == (
        "2 basecoat",
        "3 clearcoat",
        f"20{NB}min",
        f"24{NB}h",
    )


@pytest.mark.parametrize(
    ("number", "size"),
    [("TW-31", "huge"), ("TRAM-1045", "large"), ("TRACTOR-10456", "medium"), ("YARD TRACTOR 1045/6", "small"), ("x" * 60, "least")],
)  # fmt: skip
def test_type_of_the_fleet_number(number: str, size: str) -> None:
    assert _card(good(), vehicles=(number,)).vehicles == ((number, size),)


def test_a_wait_that_is_not_stated_is_told() -> None:
    spec = good()
    take_out(spec, "systems.cab.layers.base.overcoat_interval")
    coat = _card(spec).builds[0].work.coats[1]
    assert (coat.wait, coat.last) == (None, False)


def test_forty_hold_points_run_on_to_further_sides() -> None:
    spec = good()
    points = ", ".join(
        f"{{id: p{n}, check: Look {n} over, after: primer, criterion: {{text: good}}, hold_point: yes}}"
        for n in range(40)
    )
    put(spec, "jobs.refit.inspection", f"[{points}]")
    put(spec, "jobs.refit.vehicles", "[T-01]")
    put(spec, "jobs.refit.items", _items(2, "Panel"))
    pages = [_text(page) for page in _pages(spec)]
    assert len(pages) >= 3
    text = " ".join(pages)
    assert all(f"HOLD POINT {n + 1} Look {n} over" in text for n in range(40))
    assert all(page.count("T-01") and f"of {len(pages)}" in page for page in pages)


def test_a_point_after_sanding_stands_after_the_sanding() -> None:
    spec = good()
    put(spec, "systems.cab.layers.primer.before_next", "Sand with P400.")
    put(spec, "jobs.refit.inspection.primer-film.after_sanding", "yes")
    put(spec, "jobs.refit.inspection.primer-film.hold_point", "yes")
    coat = _card(spec).builds[0].work.coats[0]
    assert ([point.check for point in coat.checks], [point.check for point in coat.sanded]) == (
        [],
        ["Film of the primer"],
    )
    text = " ".join(_text(page) for page in _pages(spec))
    assert text.index("Sand with P400.") < text.index("Film of the primer") < text.index("24 h")


def _sheet(readings: str, vehicles: tuple[str, ...] = ("T-01",)) -> ReadingSheet:
    spec = good()
    put(spec, "jobs.refit.inspection.primer-film.readings", readings)
    put(spec, "jobs.refit.inspection.primer-film.items", "[DOOR]")
    (sheet,) = _card(spec, vehicles).builds[0].records.readings
    return sheet


@pytest.mark.parametrize(
    ("readings", "vehicles", "spots", "per_spot"),
    [
        ("{spots: 28, readings: 84}", 1, 28, 3),
        ("{spots: 10, readings: 25}", 1, 10, 3),
        ("{readings: 30}", 1, 30, 1),
        # a card holds the share of its vehicle, rounded up
        ("{spots: 28, readings: 84}", 3, 10, 3),
    ],
)
def test_a_box_for_every_reading(readings: str, vehicles: int, spots: int, per_spot: int) -> None:
    sheet = _sheet(readings, tuple(f"T-{n}" for n in range(vehicles)))
    columns = zip(*sheet.rows, strict=True)
    numbers = [int(number) for column in columns for number in column if number]
    assert (numbers, sheet.per_spot) == (list(range(1, spots + 1)), per_spot)
    assert ("on this card" in sheet.planned) == (vehicles > 1)


def test_more_spots_than_a_card_has_boxes_for_are_told() -> None:
    sheet = _sheet("{spots: 4000, readings: 12000}")
    assert sheet.rows == ()
    assert sheet.planned == "spots: 4000, readings at each: 3; record every reading with the gauge and attach the list"


def test_a_box_for_each_can(good_views: Mapping[str, Any]) -> None:
    build = _card(good()).builds[0]
    sheets = build.records.batches
    boxes = {sheet.coat: [pack for row in sheet.rows for pack in row if pack] or [""] * sheet.few for sheet in sheets}
    asked = {coat.name: coat.product.rpartition(", ")[2] for coat in build.work.coats}
    assert {coat: f"{len(packs)}" for coat, packs in boxes.items()} == {
        coat: text.split(NB)[0].split()[0] for coat, text in asked.items()
    }


def test_a_side_holds_the_points_of_its_own_parts_only() -> None:
    spec = good()
    put(spec, "jobs.refit.inspection.prepared.items", "[STEP]")
    door, step = (card.work for card in _card(spec).builds)
    assert [check.check for check in door.prepared] == []
    # all its parts are meant, and those of other cards are not named
    assert [check.check for check in step.prepared] == ["Surface clean and matt"]
    put(spec, "jobs.refit.inspection.prepared.items", "[STEP, DOOR]")
    door, step = (card.work for card in _card(spec).builds)
    assert {check.check for check in (*door.prepared, *step.prepared)} == {"Surface clean and matt"}


def test_each_coat_says_what_it_does_to_people() -> None:
    """The card is read alone at the vehicle: isocyanate is told where it is sprayed, and dust where the coat may be sanded."""
    for place, decides in (
        ("booth", "until the booth has cleared"),
        ("confined-space", "whoever signs the entry permit decides"),
    ):
        spec = good()
        put(spec, "jobs.refit.workplace", place)
        work = _card(spec).builds[0].work
        sprayed = [" ".join(coat.safety) for coat in work.coats]
        assert ["contains isocyanate" in text for text in sprayed] == [False, False, True]
        assert decides in sprayed[2]
        assert "Uncured epoxy" in sprayed[0]
        # what all need is said once, before the first coat, and no coat sends to another
        assert "no flames, sparks" in dict(work.cautions)["Spraying"]
        assert not any("no flames, sparks" in text or "apply here too" in text for text in sprayed)


def test_what_to_wear_is_one_table_right_for_every_coat_and_breathing_is_said_at_each() -> None:
    spec = good()
    worn = "[{id: spray, task: spraying, respiratory: AX-P3 mask to EN 14387, gloves: nitrile 0.4 mm, eyes: goggles}]"
    for product in ("primer", "base"):
        put(spec, f"products.{product}.hazards.protection", worn)
    work = _card(spec).builds[0].work
    rows = {row[0]: row[1:] for row in work.wear.rows}
    assert rows["Spraying: 1 primer"] == (
        "AX-P3 mask to EN 14387",
        "nitrile 0.4 mm",
        "goggles",
        # a product that harms the skin and states nothing for the body
        "cover all skin (common practice)",
    )
    assert rows["Spraying: 2 basecoat"][3] == "not stated"
    assert "Spraying, Clean-up: 3 clearcoat" in rows
    assert [coat.breathing for coat in work.coats] == [
        "AX-P3 mask to EN 14387",
        "AX-P3 mask to EN 14387",
        "air-fed half mask, EN 14594",
    ]


def test_what_a_painter_looks_for_at_his_coat_stands_apart() -> None:
    work = _card(good()).builds[0].work
    assert all(name in {"", "Nozzle", "Pot life"} for coat in work.coats for name, _ in coat.looked_up)
    assert all(any(text.startswith("Shake") for _, text in coat.looked_up) for coat in work.coats)


def test_of_three_packs_each_has_its_batch_number_written_down() -> None:
    spec = good()
    put(spec, "jobs.refit.items", _items(1, "Panel"))
    sheets = [sheet for card in _card(spec).builds for sheet in card.records.batches]
    assert any(sheet.few for sheet in sheets)
    assert all(bool(sheet.rows) != bool(sheet.few) for sheet in sheets)


def test_a_step_that_needs_what_an_earlier_one_needs_sends_to_it_and_no_other_does() -> None:
    (spec,) = [spec_of(check(DEMO, ON))]
    work = job_card(spec.jobs["sand-tramcar-sides"], context(spec)).builds[0].work
    said = {step.title.split(",")[0]: step.safety for step in work.steps if step.safety}
    whole = said["Power-tool clean"]
    assert "lead or chromate" in whole
    assert "P2 or P3 filter" in whole
    for title in ("Feather edges", "Sand"):
        assert said[title] == "The precautions under Power-tool clean apply here too."
    assert not any("apply here too" in text for title, text in said.items() if title in {"Wash", "Degrease"})


def test_what_holds_for_every_coat_is_said_once() -> None:
    spec = good()
    for product in ("primer", "base", "clear"):
        put(spec, f"products.{product}.application.clear_valve", "Turn the can over and spray until only gas comes.")
    work = _card(spec).builds[0].work
    told = "Turn the can over and spray until only gas comes. Keep on what you wear for spraying."
    assert ("Clear the valve", told) in work.every_coat
    assert all(name != "Clear the valve" for coat in work.coats for name, _ in coat.applied)


def test_a_point_with_marks_prints_the_sketch_and_names_the_marks() -> None:
    loaded = check(DEMO, ON)
    assert loaded.loaded.spec is not None
    job = loaded.loaded.spec.jobs["tower-wagon-doors"]
    (build,) = job_card(job, context(loaded.loaded.spec)).builds
    (sketch,) = build.records.sketches
    assert (sketch.number, [mark.letter for mark in sketch.marks]) == ("Figure 1", ["A", "B", "C", "D", "E"])
    assert [point.check for coat in build.work.coats for point in (*coat.checks, *coat.sanded)] == [
        "DFT of primer (marked A to E on figure 1)",
        "DFT of primer and surfacer, after sanding (marked A to E on figure 1)",
        "Total DFT (marked A to E on figure 1)",
    ]


def test_a_coat_that_breaks_repeats_its_heading() -> None:
    spec = good()
    put(spec, "jobs.refit.vehicles", "[T-01]")
    put(spec, "jobs.refit.items", _items(1, "Panel"))
    points = ", ".join(f"{{id: p{n}, check: Look {n}, after: base, criterion: {{text: good}}}}" for n in range(60))
    put(spec, "jobs.refit.inspection", f"[{points}]")
    pages = [_text(page) for page in _pages(spec)]
    broken = [page for page in pages if "2 basecoat" in page and ("Look 5." in page or "Look 55." in page)]
    assert len(broken) >= 2


def test_cards_that_are_too_many_for_one_file_come_in_several(monkeypatch: pytest.MonkeyPatch) -> None:
    spec = good()
    put(spec, "jobs.refit.vehicles", "[T-01, T-02, T-03, T-04, T-05]")
    held = checked(spec)
    whole = print_documents(held, documents=["job-card"], formats=["pdf"])
    assert list(whole) == ["MS-001-job-card.pdf"]
    cards = len(pypdf.PdfReader(io.BytesIO(whole["MS-001-job-card.pdf"])).pages)
    monkeypatch.setattr("specgen.rendering.bounds.MOST_ELEMENTS", 5_000)
    parts = print_documents(held, documents=["job-card"], formats=["pdf"])
    assert list(parts) == [f"MS-001-job-card-{number}.pdf" for number in range(1, len(parts) + 1)]
    assert len(parts) > 1
    pages = [pypdf.PdfReader(io.BytesIO(data)).pages for data in parts.values()]
    assert sum(len(part) for part in pages) == cards
    told = "".join(page.extract_text() for part in pages for page in part)
    assert all(f"T-0{number}" in told for number in range(1, 6))
    # a card alone cannot be divided
    monkeypatch.setattr("specgen.rendering.bounds.MOST_ELEMENTS", 100)
    with pytest.raises(RenderError, match="more than 100 elements"):
        print_documents(held, documents=["job-card"], formats=["pdf"])
