"""What an example on a rule page may say, besides the examples that stand on real pages."""

from __future__ import annotations

import pytest

from specgen.rules.page import Example, Page, read_page

PAGE = """FLM999 Title

Checks
    What.
Why
    Why.
Passes
    Given second good

    Given two boats
    systems.deck.title: Deck
Fails
    {fails}    # at systems
To put right
    How.
"""


def _page(fails: str = "without systems") -> Page:
    return read_page(PAGE.format(fails=fails))


def test_an_example_may_start_elsewhere() -> None:
    assert _page().examples(failing=False) == (
        Example("second good", (), (), ()),
        Example("two boats", (("systems.deck.title", "Deck"),), (), ()),
    )
    assert _page().examples(failing=True) == (Example("", (), ("systems",), (("", "systems", ""),)),)


@pytest.mark.parametrize("fails", ["without jobs\n    Given two boats", "Given two boats"])
def test_given_is_a_line_of_its_own_and_the_first(fails: str) -> None:
    with pytest.raises(ValueError, match=r"^'Given two boats' is a line of its own, the first of its example$"):
        _page(fails).examples(failing=True)


def test_a_remark_may_name_a_weight_and_another_rule() -> None:
    found = (
        _page("without systems    # note at systems    # also ABC001 warning at jobs")
        .examples(failing=True)[0]
        .findings
    )
    assert found == (("", "systems", "note"), ("ABC001", "jobs", "warning"), ("", "systems", ""))
