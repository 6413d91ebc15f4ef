"""Builds of a job: only of items that are complete."""

from __future__ import annotations

import pytest

from specgen.facts.job.builds import builds_of
from tests.good_spec import good_with, spec_of


@pytest.mark.parametrize("missing", ["system", "preparation", "substrate"])
def test_an_item_that_lacks_anything_has_no_build(missing: str) -> None:
    spec = spec_of(good_with({}, [f"jobs.refit.{missing}"]))
    with pytest.raises(ValueError, match="the item DOOR is not complete"):
        builds_of(spec.jobs["refit"], spec)
