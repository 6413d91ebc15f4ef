"""The cards and the label sheet on paper: as many sides as they may take, full, with nothing smaller than 8 pt on a card."""

from __future__ import annotations

import io
import shutil
from functools import cache
from pathlib import Path
from typing import Any

import pypdf
import pytest

from specgen.checking import Checked, check
from specgen.documents.job_card import view
from specgen.printing.documents import print_documents
from tests.good_spec import DEMO, ON

FOOT, HEAD = 31, 28
"""Heights of foot and head of a card in points, which are no part of what is filled."""

# job: sides of its job cards, one card after the other
SIDES = {
    "tower-wagon-doors": [2],
    "guard-rails": [2],
    "locker-trim": [2, 1],
    "galvanised-trailer": [2, 2],
    # the first just fits, with lower boxes to write in
    "sand-tramcar-sides": [2, 2],
}


@cache
def _demo() -> Checked:
    return check(DEMO, ON)


def _pages(document: str, job: str) -> list[Any]:
    (data,) = print_documents(_demo(), documents=[document], formats=["pdf"], jobs=[job]).values()
    return list(pypdf.PdfReader(io.BytesIO(data)).pages)


def _filled(page: Any) -> tuple[float, float]:
    """The share of the side that is filled, and the smallest type on it, the foot aside."""
    found: list[tuple[float, float]] = []

    def visit(text: str, now: list[float], matrix: list[float], font: Any, size: float) -> None:
        if text.strip() and not now[1]:  # the draft mark is turned into the margin
            found.append((matrix[5] * now[3] + now[5], abs(size * matrix[3] * now[3])))

    page.extract_text(visitor_text=visit)
    height = float(page.mediabox.height)
    body = [(at, size) for at, size in found if at > FOOT]
    return (height - FOOT - min(body)[0]) / (height - FOOT - HEAD), min(size for _, size in body)


@pytest.mark.parametrize("job", SIDES)
def test_a_job_card_fills_the_sides_it_takes(job: str) -> None:
    cards = SIDES[job]
    filled = [_filled(page) for page in _pages("job-card", job)]
    assert len(filled) == sum(cards)
    assert min(size for _, size in filled) >= 7.99
    ends = {sum(cards[: number + 1]) - 1 for number in range(len(cards))}
    assert all(share >= 0.9 for place, (share, _) in enumerate(filled) if place not in ends)
    assert all(share >= 0.5 for share, _ in filled)


def test_nobody_signs_on_a_side_that_holds_nothing_else(monkeypatch: pytest.MonkeyPatch) -> None:
    """With boxes of the usual height the card of the panels is longer than two sides by less than its signatures."""
    monkeypatch.setattr(view, "type_size", lambda *_: "eight")
    told = [page.extract_text() for page in _pages("job-card", "sand-tramcar-sides")]
    signed = [text for text in told if "Inspector: name, signature" in text]
    assert len(told) == 5
    assert len(signed) == 2
    assert all("A: batch number" in text for text in signed)


@pytest.fixture(scope="module")
def letter(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folders of the demo on Letter."""
    folder = tmp_path_factory.mktemp("letter") / "specs"
    shutil.copytree(DEMO.parent, folder)
    for project in folder.glob("*/project.yaml"):
        project.write_text(project.read_text("utf-8").replace("page_size: A4", "page_size: Letter"), "utf-8")
    return folder


@pytest.mark.parametrize("page", ["A4", "Letter"])
@pytest.mark.parametrize("folder", ["tramway", "waterworks"])
def test_every_hazard_card_of_the_demo_takes_one_side(folder: str, page: str, letter: Path) -> None:
    specs = letter if page == "Letter" else DEMO.parent
    printed = print_documents(check(specs / folder, ON), documents=["hazard-card"], formats=["pdf"])
    assert printed
    for name, data in printed.items():
        (share, smallest), *more = (_filled(side) for side in pypdf.PdfReader(io.BytesIO(data)).pages)
        assert not more, f"{name} takes {1 + len(more)} sides"
        assert smallest >= 7.99
        assert share >= 0.75


@pytest.mark.parametrize("page", ["A4", "Letter"])
def test_a_label_sheet_takes_two_sides(page: str, letter: Path) -> None:
    folder = letter if page == "Letter" else DEMO.parent
    longest = ["surfacer-230", "clear-450", "topcoat-410"]
    printed = print_documents(check(folder / "range", ON), documents=["label-sheet"], formats=["pdf"], products=longest)
    assert [len(pypdf.PdfReader(io.BytesIO(data)).pages) for data in printed.values()] == [2, 2, 2]
