"""Names of products in short: without what the sheet says already, and never empty."""

from __future__ import annotations

import pytest

from specgen.documents.parts.short_names import without_maker


@pytest.mark.parametrize(
    ("name", "short"),
    [
        ("Example 210 primer", "210 primer"),
        ("Example Works 210 primer", "210 primer"),
        ("Examples 210 primer", "Examples 210 primer"),
        ("Other 9 thinner", "Other 9 thinner"),
        ("Example", "Example"),
    ],
)
def test_a_name_loses_what_it_begins_with_of_the_maker_s(name: str, short: str) -> None:
    assert without_maker([name, "Another 1"], "Example Works") == {name: short, "Another 1": "Another 1"}
