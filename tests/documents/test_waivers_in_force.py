"""A method statement shows the waivers that hold on its day, and no other."""

from __future__ import annotations

from datetime import date

import pytest

from specgen.documents.method_statement.view import method_statement
from tests.documents.conftest import context
from tests.good_spec import good, put, spec_of

ENDING = "{{id: {id}, rule: FLM001, path: products.primer.density, reason: trial, by: QA, until: {until}}}"


@pytest.mark.parametrize(
    ("day", "shown"),
    [
        (date(2026, 12, 31), ["2026-12-31", "2027-06-30"]),
        (date(2027, 1, 1), ["2027-06-30"]),
        (date(2027, 7, 1), []),
    ],
)
def test_only_waivers_in_force_on_the_day_are_printed(day: date, shown: list[str]) -> None:
    source = good()
    waivers = (ENDING.format(id="short", until="2026-12-31"), ENDING.format(id="long", until="2027-06-30"))
    put(source, "jobs.refit.waivers", f"[{', '.join(waivers)}]")
    spec = spec_of(source)
    printed = method_statement(spec.jobs["refit"], context(spec, day=day)).waivers
    assert [row[-1] for row in printed.rows] == shown
