"""Pages of printed documents: full enough, as many as they may be, and no heading left alone at the foot of one."""

from __future__ import annotations

import pytest

from specgen.checking import Checked, check
from specgen.printing.documents import print_documents
from tests.documents.filled_pages import pages_of
from tests.good_spec import DEMO, DEMO_RANGE, ON

# kind, what is asked: pages with calculations. The page before the safety section of a method statement, which starts a page of its
# own, may be left with a gap.
BUDGET: dict[tuple[str, str], int] = {
    ("method-statement", "tower-wagon-doors"): 10,
    ("method-statement", "rail-grinder-hood"): 16,
    ("data-sheet", "primer-210"): 3,
    ("data-sheet", "surfacer-230"): 3,
    ("data-sheet", "topcoat-410"): 3,
    ("order-list", ""): 4,
    ("range-overview", ""): 1,
}


@pytest.fixture(scope="module")
def demo() -> dict[str, Checked]:
    """The tramway's folder, and the range whose sheets and overview are printed in its own."""
    tramway, products = check(DEMO, ON), check(DEMO_RANGE, ON)
    return {kind: products if kind in ("data-sheet", "range-overview") else tramway for kind, _ in BUDGET}


@pytest.mark.parametrize(("kind", "asked"), BUDGET)
def test_pages_are_full_and_no_heading_stands_alone(kind: str, asked: str, demo: dict[str, Checked]) -> None:
    most = BUDGET[kind, asked]
    subject = {"jobs" if kind == "method-statement" else "products": [asked]} if asked else {}
    (data,) = print_documents(demo[kind], documents=[kind], formats=["pdf"], **subject).values()
    pages = pages_of(data)
    assert len(pages.shares) <= most
    assert pages.wrong(pages.before("Safety")) == []
