"""The inspection and test plan: every step and inspection in its order, who takes part, and hold points that are never cut."""

from __future__ import annotations

import io
import json
from typing import Any

import pypdf

from specgen.checking import check
from specgen.documents.inspection_plan.view import inspection_plan
from specgen.printing.documents import print_documents
from tests.documents.conftest import context
from tests.good_spec import DEMO, ON, checked, good, put, second_good, spec_of


def _plan(spec: dict[str, Any], job: str = "refit") -> Any:
    held = spec_of(spec)
    return inspection_plan(held.jobs[job], context(held))


def test_steps_and_points_stand_in_the_order_of_the_work() -> None:
    spec = good()
    put(spec, "jobs.refit.inspection.air", '{id: air, check: Climate, at: during-application, criterion: {text: dry}}')  # fmt: skip
    put(spec, "jobs.refit.inspection.end", "{id: end, check: Looks, at: completion, criterion: {text: even}}")
    plan = _plan(spec)
    assert plan.phases[0].title == "Products delivered"
    assert plan.phases[1].title.startswith("System A, DOOR: Surface preparation")
    rows = [row for phase in plan.phases for row in phase.rows]
    numbers = [row.number for row in rows if row.number != "–"]
    job = spec_of(spec).jobs["refit"]
    assert set(numbers) == {str(number) for number in range(1, len(job.inspection) + 1)}
    told = [row.what for row in rows]
    assert told.index("Degrease") < told.index("Surface clean and matt") < told.index("Looks")
    again = [row for row in rows if row.what == "Climate"]
    assert [row.accepted for row in again][1:] == ["Same as the first time."] * (len(again) - 1)
    assert len(again) == len([phase for phase in plan.phases if ": Coat" in phase.title])


def test_each_party_has_its_letter_and_a_record_its_name() -> None:
    spec = good()
    parties = "{contractor: hold, quality: witness, customer: review, third_party: surveillance}"
    put(spec, "jobs.refit.inspection.prepared.parties", parties)
    put(spec, "jobs.refit.inspection.prepared.record", "Blasting report")
    plan = _plan(spec)
    row = next(row for phase in plan.phases for row in phase.rows if row.number == "1")
    assert (row.involved, row.record, row.hold) == (("H", "W", "R", "S"), "Blasting report", True)
    assert plan.held == "1"
    assert "1" not in plan.open.split(", ")
    told = {letter: meaning.partition(":")[0] for letter, meaning in plan.legend}
    assert told == {"H": "hold point", "W": "witness point", "R": "review", "S": "surveillance"}


def test_a_hold_point_nobody_holds_says_that_the_party_is_to_be_agreed() -> None:
    spec = good()
    (page,) = print_documents(checked(spec), documents=["inspection-plan"], formats=["html"], jobs=["refit"]).values()
    held = page.decode().count("party to be agreed")
    assert held == page.decode().count('class="hold-word"') > 0
    put(spec, "jobs.refit.inspection.prepared.parties", "{contractor: hold}")
    (page,) = print_documents(checked(spec), documents=["inspection-plan"], formats=["html"], jobs=["refit"]).values()
    assert page.decode().count("party to be agreed") < held


def test_what_the_surface_must_be_is_checked_before_it_is_inspected() -> None:
    spec = good()
    for leaf, value in (("edge_grade", "P2"), ("edge_radius", "2 mm"), ("dust_size", "2"), ("salt_limit", "37 mg/m2")):
        put(spec, f"preparations.sand-steel.{leaf}", value)
    put(spec, "preparations.sand-steel.steps.sand.abrasive", "paper of another grain")
    rows = [row for phase in _plan(spec).phases for row in phase.rows]
    told = [row.what for row in rows]
    at = told.index("Check the prepared surface")
    assert told.index("Degrease") < at < told.index("Surface clean and matt")
    assert rows[at].accepted.split("\n") == [
        "Soluble salts, as sodium chloride: at most 37\N{NO-BREAK SPACE}mg/m²",
        "Dust on tape, ISO 8502-3: at most size 2",
        "Preparation grade of welds and edges, ISO 8501-3: P2, thorough preparation",
        "Edge radius: at least 2\N{NO-BREAK SPACE}mm",
    ]
    assert {row.what for row in rows if row.method == "paper of another grain"} == {
        "Sand to P Ma (local machine abrading, ISO 8501-2)"
    }


def test_the_head_of_a_page_without_sections_names_the_state_alone() -> None:
    for kind, divided in (("inspection-plan", False), ("method-statement", True)):
        data = next(iter(print_documents(checked(good()), documents=[kind], formats=["pdf"]).values()))
        pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages]
        heads = [line for text in pages[1:] for line in text.splitlines() if "DRAFT, not issued" in line]
        assert heads
        assert {" | " in head for head in heads} == {divided}
        assert not [head for head in heads if head.strip().startswith("|")]


def test_every_build_has_its_phases() -> None:
    plan = _plan(second_good(), "rails")
    assert [phase.title for phase in plan.phases if phase.title.startswith("System B")]


def test_hold_points_are_never_cut() -> None:
    """As many as do not go on one side: each stands whole on plan and card, which take another side."""
    spec = good()
    names = [f"Look {number} of forty" for number in range(1, 41)]
    for number, name in enumerate(names, 1):
        held = {"id": f"look-{number}", "check": name, "at": "after-preparation", "hold_point": "yes"}
        held["criterion"] = {"text": f"Passes by criterion {number}: matt, clean and dry all over, edges and seams too. End {number}."}  # type: ignore[assignment]  # fmt: skip
        put(spec, f"jobs.refit.inspection.look-{number}", json.dumps(held))
    files = print_documents(checked(spec), documents=["inspection-plan", "job-card"], formats=["pdf"])
    for data in files.values():
        pages = [" ".join(page.extract_text().split()) for page in pypdf.PdfReader(io.BytesIO(data)).pages]
        assert len(pages) >= 2
        text = " ".join(pages)
        assert [name for name in names if text.count(name) < 1] == []
        assert [number for number in range(1, 41) if f"End {number}." not in text] == []
        assert text.upper().count("HOLD POINT") >= 41


def test_what_the_card_or_a_sheet_records_says_so_and_the_marked_spots_are_shown() -> None:
    found = check(DEMO, ON)
    assert found.loaded.spec is not None
    job = found.loaded.spec.jobs["tower-wagon-doors"]
    plan = inspection_plan(job, context(found.loaded.spec))
    kept = {row.what.partition("\n")[0]: row.record for phase in plan.phases for row in phase.rows}
    assert kept["Interval after 1 primer"] == kept["Degrease"] == "Job card"
    assert {name for name, record in kept.items() if record == "–"} == {"Before handling", "Before return to service"}
    assert [picture.number for picture in plan.pictures] == ["Figure 1"]
