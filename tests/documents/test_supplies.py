"""What is ordered beside the packs: thinner as one figure, each supply once for all jobs."""

from __future__ import annotations

from typing import Any

import pytest

from specgen import check
from specgen.documents.order_list.view import order_list
from specgen.documents.parts.supplies import supplies, total
from specgen.documents.parts.wording import Words
from specgen.facts.job.thinners import _added, thinners_of, thinners_of_all, without_hazards
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH
from tests.documents.conftest import context
from tests.good_spec import DEMOS, ON, good_with, spec_of

WORDS = Words(ENGLISH, {})
THINNED = {
    "systems.chassis.layers.barrier.thinner": "10 %",
    "products.barrier.application.mixing.thinner": "Thinner EX-900",
}


def _demo(folder: str) -> Spec:
    return spec_of(check(DEMOS / folder, on=ON))


@pytest.mark.parametrize(
    ("amounts", "whole"),
    [
        (["2 L", "1 L"], "3 L"),
        (["0.5 L", "1.25 L"], "1.75 L"),
        (["24", "12"], "36"),
        (["20 of each"], "20 of each"),
        (["2 L", "1 gal"], "2 L + 1 gal"),
        (["a roll", "a roll"], "a roll + a roll"),
        (["2 x 1 L can", "1 L"], "2 x 1 L can + 1 L"),
        (["1,5 L", "1 L"], "1,5 L + 1 L"),
    ],
)
def test_amounts_are_added_up_where_they_are_counted_alike(amounts: list[str], whole: str) -> None:
    assert total(amounts) == whole


def test_the_coats_of_a_job_take_one_amount_of_a_thinner() -> None:
    spec = _demo("tramway")
    (thinner,) = thinners_of(next(job for job in spec.jobs.values() if job.document.number == "MS-3118"), spec)
    # two coats of the trailer take thinner, one of them a few drops: nobody orders nothing
    assert len(thinner.parts) == 2
    assert thinner.amount.number == sum(needed.number for _, needed in thinner.parts)
    lines = supplies(next(job for job in spec.jobs.values() if job.document.number == "MS-3118"), spec, WORDS)
    assert [line.amount(WORDS) for line in lines] == [WORDS.worked(thinner.amount)]
    assert (lines[0].order_number, lines[0].safety) == ("", "not stated")


def test_all_jobs_take_one_amount_and_each_is_told() -> None:
    spec = _demo("tramway")
    ((name, whole),) = thinners_of_all(spec).items()
    view = order_list(spec, context(spec))
    (row,) = [row for row in view.supplies.rows if row[1] == name]
    assert row[2] == WORDS.worked(whole.amount)
    assert [part.split(":")[0] for part in row[3].split("; ")] == ["MS-3115", "MS-3118", "MS-3125"]
    cleaner = next(row for row in view.supplies.rows if row[1] == "degreaser")
    assert (cleaner[2], cleaner[3]) == ("3 L", "MS-3107: 2 L; MS-3134: 1 L")
    assert view.emergency.endswith("+00 555 0199 (24 h)")


def test_a_thinner_its_author_orders_stands_once_as_it_is_ordered() -> None:
    entry: Any = "{id: thin, what: 'Thinner EX-900, 1 L can', amount: 1 can, order_number: EX-900-1, kind: thinner}"
    spec = spec_of(good_with({**THINNED, "jobs.refit.consumption.supplies": f"[{entry}]"}))
    (line,) = supplies(spec.jobs["refit"], spec, WORDS)
    (thinner,) = thinners_of(spec.jobs["refit"], spec)
    assert (line.order_number, line.what) == ("EX-900-1", "Thinner EX-900, 1 L can")
    assert line.amount(WORDS) == f"1 can (calculated: {WORDS.worked(thinner.amount)})"


def test_a_job_whose_products_are_open_orders_nothing_and_is_told_so() -> None:
    view = order_list(spec := _demo("waterworks"), context(spec))
    assert [row[0] for row in view.jobs.rows] == ["MS-4102"]
    assert {row[0] for row in view.not_counted.rows} == {"MS-4103"}


def test_many_needs_are_added_up_in_groups() -> None:
    spec = _demo("tramway")
    (thinner,) = thinners_of(next(job for job in spec.jobs.values() if job.document.number == "MS-3115"), spec)
    needs = [(f"need {number}", thinner.amount) for number in range(30)]
    *groups, whole = _added("all", needs)
    assert len(groups) == 3
    assert whole.number == 30 * thinner.amount.number


@pytest.mark.parametrize(("ordered", "silent"), [("Thinner EX-900, 1 L", []), ("Thinner EX-9001", ["Thinner EX-900"])])
def test_a_thinner_is_ordered_by_its_whole_name_and_has_the_hazards_of_no_other(
    ordered: str, silent: list[str]
) -> None:
    line = f'[{{id: thin, what: "{ordered}", amount: 1 can, kind: thinner, statements: [H226]}}]'
    spec = spec_of(good_with(THINNED | {"jobs.refit.consumption.supplies": line}))
    assert [name for name, _ in without_hazards(spec.jobs["refit"], spec)] == silent
