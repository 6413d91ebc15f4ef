"""The author's pictures in the method statement: numbered, captioned, with their marks, and named where they belong."""

from __future__ import annotations

import re
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from specgen.checking import check_loaded
from specgen.documents.method_statement.view import method_statement
from specgen.model.canonical import canonical
from specgen.model.parse import parse
from specgen.printing.documents import print_documents
from specgen.source.project import Sources
from specgen.source.reader import read_text
from tests.documents.conftest import context
from tests.good_spec import GOOD, ON, checked, good, put, spec_of, written


def _figure(id: str, marks: str = "") -> str:
    return f"{{id: {id}, file: sketch.svg, caption: Caption of {id}, alternative_text: 'A \"{id}\" <drawn>', marks: [{marks}]}}"


def _spec() -> dict[str, Any]:
    spec = good()
    put(spec, "preparations.sand-steel.steps.sand.figures", f"[{_figure('grain').replace(', marks: []', '')}]")
    put(
        spec,
        "jobs.refit.items.DOOR.figures",
        f"[{_figure('door', '{id: edge, letter: A, x: 0.25, y: 1}, {id: lock, letter: B, x: 0, y: 0.6}')}]",
    )
    put(spec, "jobs.refit.figures", f"[{_figure('site').replace(', marks: []', '')}]")
    put(spec, "jobs.refit.inspection.primer-film.figures", f"[{_figure('film').replace(', marks: []', '')}]")
    put(spec, "jobs.refit.inspection.primer-film.marked", "[door/edge, door/lock]")
    return spec


def test_figures_are_numbered_in_the_order_of_job_parts_work_and_inspection() -> None:
    whole = spec_of(_spec())
    view = method_statement(whole.jobs["refit"], context(whole))
    number = [point.id for point in whole.jobs["refit"].inspection].index("primer-film") + 1
    assert [(one.number, one.caption) for one in view.pictures] == [
        ("Figure 1", "Caption of site"),
        ("Figure 2", "Caption of door"),
        ("Figure 3", "Caption of grain"),
        ("Figure 4", "Caption of film"),
    ]
    door = view.pictures[1]
    assert [(mark.letter, mark.left, mark.top) for mark in door.marks] == [
        ("A", "25.0%", "100.0%"),
        ("B", "0.0%", "60.0%"),
    ]
    assert door.legend == (f"A, B: inspection {number}",)
    assert [one.belongs.partition(" ")[0] for one in view.pictures] == [
        "",
        "item",
        view.pictures[2].belongs.partition(" ")[0],
        "inspection",
    ]
    (row,) = [row for row in view.points.rows if "marked" in " ".join(map(str, row))]
    assert "marked A, B on figure 2" in " ".join(map(str, row))
    assert "see figure 4" in " ".join(map(str, row))


def test_the_picture_its_words_and_its_marks_are_in_both_editions() -> None:
    files = print_documents(checked(_spec()), documents=["method-statement"], jobs=["refit"])
    page = next(data for name, data in files.items() if name.endswith(".html")).decode()
    # one file, four times on the page
    assert page.count('src="data:image/svg+xml;base64,') == 4
    assert 'alt="A &#34;door&#34; &lt;drawn&gt;"' in page
    assert '<span class="mark" style="left: 25.0%; top: 100.0%">A</span>' in page
    assert "See figure 3" in page
    assert re.search(r"see figure\s2", page.replace("&nbsp;", " "))
    reader = PdfReader(BytesIO(next(data for name, data in files.items() if name.endswith(".pdf"))))
    text = " ".join(" ".join(sheet.extract_text() for sheet in reader.pages).split())
    assert "Caption of door" in text
    assert "marked A, B on figure 2" in text
    assert "OUTSIDE" in text  # a word of the drawing
    assert reader.attachments == {}


def test_another_picture_is_another_content() -> None:
    """What is approved holds the picture; the figures of a job are no mere dress."""
    source, _ = read_text(written(_spec()).encode(), "spec.yaml")
    drawn = (GOOD / "sketch.svg").read_bytes()
    texts = []
    for data in (drawn, drawn.replace(b"#111111", b"#222222")):
        read = parse(Sources(GOOD, (source,), (), beside=lambda name, data=data: data))
        assert read.spec is not None
        texts.append(canonical(read.spec, content=True))
    assert texts[0] != texts[1]
    assert texts[0].count("sketch.svg sha256:") == 4


@pytest.mark.parametrize("place", ["1.01", "-0.1", "50 %", "2", "0.12345"])
def test_a_mark_lies_on_its_picture(place: str) -> None:
    spec = _spec()
    put(spec, "jobs.refit.figures", f"[{_figure('site', f'{{id: a, letter: A, x: 0.5, y: {place}}}')}]")
    source, _ = read_text(written(spec).encode(), "spec.yaml")
    found = check_loaded(parse(Sources(GOOD, (source,), ())), ON).report
    assert [(one.id, one.path) for one in found if one.id.startswith("MOD")] == [
        ("MOD003", "jobs.refit.figures.site.marks.a.y")
    ]
