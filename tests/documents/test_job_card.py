"""The job card on paper: a side a vehicle and build whatever the job holds, with the figures of the method statement."""

from __future__ import annotations

import io
import json
import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pypdf
import pytest

from specgen.documents.context import Context
from specgen.documents.job_card.card_side import Cut
from specgen.documents.job_card.view import CUTS, JobCard, job_card
from specgen.documents.registry import KINDS
from specgen.printing.documents import print_documents
from specgen.printing.fit import fitted
from specgen.rendering.failure import RenderError, TooLongError
from tests.documents.conftest import context
from tests.good_spec import checked, good, put, spec_of, take_out

NB = "\N{NO-BREAK SPACE}"
HOSTILE = "<b>part</b> & <script>alert(1)</script> " + "Northgate yard side and rear " * 5


def _pages(spec: dict[str, Any]) -> list[pypdf.PageObject]:
    files = print_documents(checked(spec), documents=["job-card"])
    return list(pypdf.PdfReader(io.BytesIO(files["MS-001-job-card.pdf"])).pages)


def _items(many: int, name: str) -> str:
    return json.dumps([{"id": f"I{n}", "name": name, "count": "2", "area": "0.5 m2"} for n in range(many)])


def _card(spec: dict[str, Any], *cuts: Cut | None, vehicles: tuple[str, ...] = ("T-01",)) -> JobCard:
    whole = spec_of(checked(spec))
    job = whole.jobs["refit"]
    return job_card(job.model_copy(update={"vehicles": vehicles}), context(whole), cuts)


@pytest.mark.parametrize(("many", "paper"), [(1, "A4"), (20, "Letter")])
def test_one_page_a_vehicle(many: int, paper: str) -> None:
    spec = good()
    put(spec, "project.page_size", paper)
    put(spec, "jobs.refit.vehicles", "[T-01, TRACTOR-2, T-03]")
    put(spec, "jobs.refit.items", _items(many, "Panel of the long side, outer face"))
    pages = [re.sub(r"\s+", " ", page.extract_text()) for page in _pages(spec)]
    assert [next(name for name in ("T-01", "TRACTOR-2", "T-03") if name in page) for page in pages] == [
        "T-01",
        "TRACTOR-2",
        "T-03",
    ]
    # each stands alone, for the sheets are torn apart
    for page in pages:
        for said in ("MS-001", "DRAFT", "2026-11-25", "Danger", "+00 000 000", "HOLD POINT", "20 min", "Inspector"):
            assert said in page


def test_hostile_text_stays_on_the_page() -> None:
    spec = good()
    take_out(spec, "jobs.refit.vehicles")
    put(spec, "jobs.refit.items", _items(20, HOSTILE))
    put(spec, "jobs.refit.document.title", json.dumps(HOSTILE))
    put(spec, "products.primer.name", json.dumps(HOSTILE))
    put(spec, "products.primer.variants.grey.name", json.dumps("W" * 80))
    put(spec, "preparations.sand-steel.steps.degrease.text", json.dumps("Wipe and " * 200))
    (page,) = _pages(spec)
    width = float(page.mediabox.width)
    ends: list[float] = []

    def seen(text: str, matrix: list[float], text_matrix: list[float], font: Any, size: float) -> None:
        if text.strip() and not matrix[1]:  # the draft mark is turned into the margin
            ends.append(text_matrix[4] * matrix[0] + matrix[4])

    text = page.extract_text(visitor_text=seen)
    assert "<b>part</b> & <script>alert(1)</script>" in re.sub(r"\s+", " ", text)
    assert max(ends) < width
    assert "40 parts of 20 types" in re.sub(r"\s+", " ", text)


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
    assert max(sizes) >= 44


def test_figures_are_those_of_the_method_statement(good_views: Mapping[str, Any]) -> None:
    card = _card(good(), CUTS[0], CUTS[0])
    for page, build in zip(card.sides, good_views["method_statement_refit"].builds, strict=True):
        side = page.side
        shown = [tuple(f"{figure.first} {figure.second}".strip() for _, figure in coat.films) for coat in side.coats]
        assert shown == [(row[3].partition("\n")[0], *row[4:7]) for row in build.coats.rows[1:]]
        held = [side.first_wait, *(coat.wait for coat in side.coats)]
        waits = [(wait.not_before or "–", wait.not_later or "–") for wait in held if wait is not None]
        assert waits == [row[7:9] for row in build.coats.rows[:-1]]
        assert [f"{wait.comes} at least {wait.not_before}" for wait in side.last_waits] == build.released.split(", ")


def test_the_hold_of_the_second_layer() -> None:
    coat = _card(good(), CUTS[0], None).sides[0].side.coats[1]
    assert coat.wait is not None
    assert (coat.name, coat.wait.comes, coat.wait.not_before, coat.wait.not_later) == (
        "2 basecoat",
        "3 clearcoat",
        f"20{NB}min",
        f"24{NB}h",
    )


def test_what_is_never_cut() -> None:
    whole, least = (_card(good(), cut, cut) for cut in (CUTS[0], CUTS[-1]))
    for full, short in zip(whole.sides, least.sides, strict=True):
        assert (full.vehicle, full.size) == (short.vehicle, short.size) == ("T-01", "huge")
        for one, other in zip(full.side.coats, short.side.coats, strict=True):
            assert (one.films, one.passes, one.name) == (other.films, other.passes, other.name)
            assert [check for check in one.checks if check.hold] == list(other.checks)
            if one.wait is not None and other.wait is not None:
                assert (one.wait.not_before, one.wait.not_later) == (other.wait.not_before, other.wait.not_later)
        assert [check.check for check in short.side.prepared] == ["Surface clean and matt"]


@pytest.mark.parametrize(
    ("number", "size"),
    [("TW-31", "huge"), ("TRAM-1045", "large"), ("TRACTOR-10456", "medium"), ("YARD TRACTOR 1045/6", "small"), ("x" * 60, "least")],
)  # fmt: skip
def test_type_of_the_fleet_number(number: str, size: str) -> None:
    assert _card(good(), CUTS[0], None, vehicles=(number,)).sides[0].size == size


def test_a_wait_that_is_not_stated_is_told() -> None:
    spec = good()
    take_out(spec, "systems.cab.layers.base.overcoat_interval")
    coat = _card(spec, CUTS[0], None).sides[0].side.coats[1]
    assert (coat.wait, coat.last) == (None, False)


def test_each_build_gets_the_mildest_cut_that_fits() -> None:
    spec = spec_of(checked(good()))
    tried: list[list[int | None]] = []

    def view(job: Any, context: Context, cuts: Any, trial: bool) -> JobCard:
        tried.append([None if cut is None else CUTS.index(cut) for cut in cuts])
        return job_card(job, context, cuts, trial)

    def write(card: JobCard) -> bytes:
        if any(len(page.side.coats) == 3 and page.side.room in {"roomy", "plain"} for page in card.sides):
            raise TooLongError("two pages")
        return f"{len(card.sides)} sides".encode()

    kind = KINDS["job-card"]
    assert kind.sides is not None
    sides = replace(kind.sides, view=view)
    assert fitted(kind, sides, spec.jobs["refit"], context(spec), write) == b"4 sides"
    # the first cut that fits, the two builds apart, then both set as found
    assert tried == [[0, None], [1, None], [2, None], [3, None], [None, 0], [3, 0]]


def test_what_fits_with_no_cut_is_refused() -> None:
    spec = good()
    points = ", ".join(
        f"{{id: p{n}, check: Look {n}, after: primer, criterion: {{text: good}}, hold_point: yes}}" for n in range(40)
    )
    put(spec, "jobs.refit.inspection", f"[{points}]")
    # parts that are coated alike share a side, and every cut is set on paper
    put(spec, "jobs.refit.items", _items(2, "Panel"))
    with pytest.raises(RenderError) as refused:
        print_documents(checked(spec), documents=["job-card"])
    assert str(refused.value) == (
        "The job card of the job refit does not fit on one side of A4: 3 coats, 3 steps of preparation and 40 hold points. "
        "What stands overleaf is not read at the vehicle; divide the work into two jobs, or keep fewer hold points."
    )


def test_a_side_holds_the_points_of_its_own_parts_only() -> None:
    spec = good()
    put(spec, "jobs.refit.inspection.prepared.items", "[STEP]")
    door, step = (side.side for side in _card(spec, Cut(room="plain"), Cut(room="plain")).sides)
    assert [check.check for check in door.prepared] == []
    assert [check.check for check in step.prepared] == ["Surface clean and matt"]
