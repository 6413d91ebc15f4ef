"""What a reader is sent to, or not told twice: references lead to the words themselves, and a row is for those it concerns."""

from __future__ import annotations

from functools import cache

from specgen.checking import Checked, check
from specgen.documents.inspection_plan.view import inspection_plan
from specgen.documents.job_card.view import job_card
from specgen.documents.method_statement.view import MethodStatement, method_statement
from specgen.documents.record_sheets.view import record_sheets
from tests.documents.conftest import context
from tests.good_spec import DEMO, ON, spec_of


@cache
def _demo() -> Checked:
    return check(DEMO, ON)


@cache
def _statement(job: str) -> MethodStatement:
    spec = spec_of(_demo())
    return method_statement(spec.jobs[job], context(spec, day=ON))


def test_no_reference_leads_to_a_reference() -> None:
    rows = [row for build in _statement("depot-shunter-refit").builds for phase in build.phases for row in phase.rows]
    at = {row.number: " ".join(row.safety) for row in rows if row.kind == "step"}
    told = {said.rstrip(".").rsplit(" ", 1)[-1] for said in at.values() if said.startswith(("As from", "Same"))}
    # a product is described from the step on that begins it; its cautions stand there or at the next steps
    assert told
    assert not [step for step in told if at[step].startswith(("As from", "Same"))]


def test_a_can_is_not_mixed_and_a_thinner_has_its_mask() -> None:
    merged = _statement("tool-trailer-frame").safety.merged
    assert merged is not None
    (mixing,) = (row for row in merged.protection.rows if row[0] == "Mixing")
    assert not any(line.partition(":")[0].endswith("410") for cell in mixing for line in cell.split("\n"))
    assert "Fennholt thinner 90: Not stated: see section 8 of the safety data sheet" in mixing[1]


def test_no_cell_of_an_item_is_empty_and_a_clear_coat_has_no_colour() -> None:
    statement = _statement("rail-grinder-hood")
    items = statement.builds[0].items
    assert [row[-1].replace("\N{NO-BREAK SPACE}", " ") for row in items.rows] == ["–", "–", "76 °C (169 °F)"]
    assert statement.materials is not None
    assert all(cell for row in statement.materials.rows for cell in row)


def test_calculations_call_another_colour_by_its_items() -> None:
    names = {one.of for one in _statement("galvanised-trailer").workings}
    assert "system B (LAMP), 1 primer" in names
    assert not any("zinc-grey" in name for name in names)


def test_a_card_has_a_box_for_each_pack_that_is_ordered() -> None:
    """Two colours over one primer: what each would round up alone is ordered together."""
    spec = spec_of(_demo())
    card = job_card(spec.jobs["galvanised-trailer"], context(spec, day=ON)).builds[1]
    assert "1 tin" in card.work.coats[0].product.replace("\N{NO-BREAK SPACE}", " ")
    base, hardener, *_ = card.records.batches
    assert (base.few, hardener.few) == (1, 1)


def test_a_sheet_says_whose_coat_it_is_where_systems_differ() -> None:
    spec = spec_of(_demo())
    for job, first in (("rail-grinder-hood", "A: 1 primer"), ("tower-wagon-doors", "1 primer")):
        air = next(
            one
            for one in record_sheets(spec.jobs[job], context(spec, day=ON)).tables
            if one.title.startswith("Ambient")
        )
        assert air.lines[0].printed == (first,)
        assert len({line.printed for line in air.lines}) * 3 == len(air.lines)


def test_where_no_party_is_stated_the_plan_asks_for_it() -> None:
    spec = spec_of(_demo())
    for job, open_ in (("guard-rails", True), ("tower-wagon-doors", False)):
        rows = [row for phase in inspection_plan(spec.jobs[job], context(spec, day=ON)).phases for row in phase.rows]
        inspected = [row for row in rows if row.number != "–"]
        assert inspected
        assert all((row.involved == ("to agree",) * 4) is open_ for row in inspected)
        assert all(row.involved == ("–",) * 4 for row in rows if row.number == "–")
