"""A method statement tells the warnings that are open on what it rests on, and none of the rest of its folder."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specgen.documents.method_statement.open_warnings import open_warnings
from specgen.findings import Severity
from tests.documents.conftest import context
from tests.good_spec import checked, good_with


@pytest.mark.parametrize(
    ("path", "count"),
    [("", 1), ("systems.of-another-job.total", 0), ("offers.second-bid.layers.prime", 0), ("project.policies", 1)],
)
def test_warnings_are_those_of_what_is_reached(path: str, count: int) -> None:
    held = checked(good_with({"products.primer.application.can_temperature": "5..8 degC"}))
    spec, (warning,) = held.loaded.spec, [one for one in held.report if one.severity is Severity.WARNING]
    assert spec is not None
    found = (replace(warning, path=path) if path else warning,)
    assert len(open_warnings(spec.jobs["refit"], context(spec, findings=found)).rows) == count


def test_a_warning_is_told_by_its_rule_and_place_and_not_in_its_own_words() -> None:
    held = checked(good_with({"products.primer.application.can_temperature": "5..8 degC"}))
    spec, (warning,) = held.loaded.spec, [one for one in held.report if one.severity is Severity.WARNING]
    assert spec is not None
    ((rule, title, place),) = open_warnings(spec.jobs["refit"], context(spec, findings=(warning,))).rows
    assert (rule, place) == (
        warning.id,
        f"temperature of the can or paint of the product {spec.products['primer'].name}",
    )
    assert title
    assert warning.what not in title
