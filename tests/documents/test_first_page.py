"""The first page of a method statement beside its dangers: the sequence of work, and what figures in brackets are."""

from __future__ import annotations

import re

import pytest

from specgen import check
from specgen.documents.method_statement.view import method_statement
from specgen.rendering.environment import fill
from tests.documents.conftest import context
from tests.good_spec import DEMOS, ON, good_with, spec_of


def test_of_several_inspections_each_criterion_has_the_number_of_its_own() -> None:
    spec = spec_of(check(DEMOS / "waterworks", on=ON))
    job = next(job for job in spec.jobs.values() if job.document.number == "MS-4102")
    view = method_statement(job, context(spec))
    prepared, *_, last = view.sequence.rows
    assert [re.findall(r"(?:^|; )(\d+): ", row[2]) for row in (prepared, last)] == [["1", "2"], ["5", "6"]]
    # what looks at the air stands in the table above, with the limits
    assert last[1].startswith("5 ")
    assert view.climate.caption.endswith("; inspection 3")


@pytest.mark.parametrize(
    ("second", "told"), [("{film: mil}", True), ("{temperature: degF}", True), ("{area: ft2}", False), ("{}", False)]
)
def test_figures_in_brackets_are_explained_where_there_are_some(second: str, told: bool) -> None:
    spec = spec_of(good_with({"project.second_units": second}))
    view = method_statement(spec.jobs["refit"], context(spec))
    page = fill(
        "method_statement/document.html.j2", language="en", medium="print", view=view, draft=True, identity=None
    )
    assert ("Figures in brackets are rounded" in page) is told


@pytest.mark.parametrize(("folder", "number", "told"), [
    ("tramway", "MS-3107", "P Ma, P150, then P180"),
    ("waterworks", "MS-4102", "SP 16, profile 19 to 30 µm"),
])  # fmt: skip
def test_the_first_row_of_the_coat_table_tells_the_grade_to_prepare_to(folder: str, number: str, told: str) -> None:
    spec = spec_of(check(DEMOS / folder, on=ON))
    job = next(job for job in spec.jobs.values() if job.document.number == number)
    row = method_statement(job, context(spec, words=context(spec).words.in_one_unit())).builds[0].coats.rows[0]
    assert [cell.replace("\N{NO-BREAK SPACE}", " ") for cell in row[:2]] == ["preparation", told]


@pytest.mark.parametrize(("steps", "told"), [
    ("[{id: sand, do: sand, text: Sand., abrasive: P240}]", "P240"),
    ("[{id: wash, do: wash, text: Wash.}]", "last step"),
])  # fmt: skip
def test_a_preparation_without_a_grade_tells_its_papers_or_nothing(steps: str, told: str) -> None:
    spec = spec_of(good_with({"preparations.sand-steel.steps": steps}))
    assert method_statement(spec.jobs["refit"], context(spec)).builds[0].coats.rows[0][1] == told
