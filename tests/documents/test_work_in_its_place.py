"""What the demo's method statements say at a step: inspections where they can be made, and the precautions of what is really done."""

from __future__ import annotations

import pytest

from specgen import check
from specgen.documents.inspection_plan.view import inspection_plan
from specgen.documents.method_statement.view import MethodStatement, method_statement
from specgen.documents.method_statement.work import Phase
from specgen.documents.method_statement.work_rows import WorkRow
from specgen.facts.job.looked_for import CLIMATE
from specgen.facts.pairs.answers import says_sanding
from tests.documents.conftest import context
from tests.good_spec import DEMO, ON, spec_of


@pytest.fixture(scope="module")
def told() -> dict[str, MethodStatement]:
    spec = spec_of(check(DEMO, on=ON))
    return {job.document.number: method_statement(job, context(spec)) for job in spec.jobs.values()}


def _phases(view: MethodStatement) -> list[Phase]:
    return [phase for build in view.builds for phase in build.phases]


def _row(view: MethodStatement, text: str) -> WorkRow:
    return next(row for phase in _phases(view) for row in phase.rows if text in f"{row.title} {row.text}")


def test_the_wet_film_is_read_once_the_coat_is_applied(told: dict[str, MethodStatement]) -> None:
    titles = [row.title for row in _phases(told["MS-3115"])[1].rows]
    assert titles.index("Ambient conditions at the part") < titles.index("Mix") < titles.index("Apply")
    assert titles[titles.index("Apply") + 1 : titles.index("Leave to dry")] == ["WFT of the coat"]


def test_a_coat_that_is_not_sanded_needs_nothing_against_its_dust(told: dict[str, MethodStatement]) -> None:
    assert _row(told["MS-3112"], "Do not sand. Wipe").safety == ()
    late = {phase.title: phase.late_safety for phase in _phases(told["MS-3112"])}
    assert [bool(safety) for title, safety in late.items() if "metallic basecoat" in title] == [False, False]


@pytest.mark.parametrize(("text", "sands"), [
    ("Dry-sand with P400.", True), ("Do not sand.", False), ("Never abrade, wipe.", False), ("Scuff lightly.", True),
])  # fmt: skip
def test_a_denial_orders_no_sanding(text: str, sands: bool) -> None:
    assert says_sanding(text) is sands


def test_a_step_that_sands_old_paint_again_sends_to_all_its_precautions(told: dict[str, MethodStatement]) -> None:
    first, again = (_row(told["MS-3121"], text) for text in ("Power-tool clean", "Sand with P240"))
    assert any("P2 or P3 filter" in text for text in first.safety)
    assert again.safety == (f"Same precautions and protective equipment as at step {first.number}.",)


@pytest.mark.parametrize(("said", "air"), [
    ("Surface temperature of 5 °C or more", True),
    ("heat slowly to a surface temperature of 200 °C", False),
    ("Air temperature and dew point", True),
])  # fmt: skip
def test_the_heat_of_a_first_heating_is_no_ambient_condition(said: str, air: bool) -> None:
    assert (CLIMATE.search(said) is not None) is air


def test_a_plan_names_items_only_where_a_point_leaves_some_out() -> None:
    spec = spec_of(check(DEMO, on=ON))
    jobs = {job.document.number: inspection_plan(job, context(spec)) for job in spec.jobs.values()}
    whats = [row.what for phase in jobs["MS-3125"].phases for row in phase.rows]
    assert not any("(DOOR-L" in what for what in whats)
    assert jobs["MS-3118"].parts[0] == "14 × SPOT Rusted spot on the frame, about hand-sized"
    assert jobs["MS-3118"].open == "1 to 9"
