"""One term for one thing: no text a user meets uses a word that is not the trade's. The words are data, `not_to_use.yaml`."""

from __future__ import annotations

import pytest

from tests.words.surfaces import found, rows, texts

SURFACES = ("rule", "message", "fault", "leaf", "page", "help", "report", "readme", "demo")


@pytest.mark.parametrize("surface", SURFACES)
def test_no_text_uses_a_word_that_is_not_the_trade_s(surface: str) -> None:
    told = [
        f"{place}: {word!r}, say {say}: {text[:120]}"
        for where, place, word, say, text in found(surface)
        if where.split()[0] == surface
    ]
    assert told == []


def test_every_surface_is_read() -> None:
    assert {where.split()[0] for where, _, _ in texts()} == set(SURFACES)


@pytest.mark.parametrize(
    ("surface", "text", "hit"),
    [
        ("rule why", "The old paint lets go.", {"existing coating", "loses adhesion"}),
        ("page", "Dry film, least", {"min. or max."}),
        ("page", "Cautions", {"Safety"}),
        ("rule checks", "at least 40 um of the existing coating", set()),
        ("page", "body filler", set()),
        ("help", "audience: customer or maker", set()),
    ],
)
def test_the_words_find_what_they_are_for(surface: str, text: str, hit: set[str]) -> None:
    assert {row.say for row in rows() if row.hits(surface, text)} == hit
