"""A share of gloss retained against the two values beside it: every share that these can round to follows, and no other."""

from __future__ import annotations

import pytest

from specgen.facts.tests.gloss_stated import followed
from specgen.model.test_report import SpecimenResult
from specgen.units.quantity import Quantity


@pytest.mark.parametrize(
    ("share", "follows"),
    [("78", False), ("79", True), ("84", True), ("85", False), ("79.1", False), ("79.2", True), ("84.0", True), ("84.1", False)],
)  # fmt: skip
def test_a_share_follows_within_the_rounding_of_what_is_written(share: str, follows: bool) -> None:
    """38 GU and 31 GU are 37.5 to 38.5 and 30.5 to 31.5: from 79.22 % to 84 %."""
    before, after = (Quantity.of("gloss", number, "GU", str(number)) for number in (38, 31))
    result = SpecimenResult.model_construct(id="P1", value=f"{share} %", gloss_before=before, gloss_after=after)
    assert followed(result) == (None if follows else "81.6 %")
