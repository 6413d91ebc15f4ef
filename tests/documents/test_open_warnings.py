"""A method statement counts the warnings that are open on what it rests on, not those of its whole folder."""

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
    assert open_warnings(spec.jobs["refit"], context(spec, findings=found)) == count


def test_of_a_part_all_that_were_counted_are_told() -> None:
    spec = checked(good_with()).loaded.spec
    assert spec is not None
    assert open_warnings(spec.jobs["refit"], context(spec, open_warnings=3)) == 3
