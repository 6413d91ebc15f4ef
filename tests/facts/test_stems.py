"""Which rows a sentence can be about: of one way, a stem of every group has to stand in one of its words."""

from __future__ import annotations

import pytest

from specgen.facts.job.stems import Stems, ways_of
from specgen.standards.tables import table

ROWS = Stems([ways_of("rag|cloth"), ways_of("film|coat&thick;runny"), ways_of("")])


@pytest.mark.parametrize(
    ("said", "rows"),
    [
        ("old rags lie about", [0, 2]),
        ("the thick film", [1, 2]),
        ("an overcoat, thicker than the cloths", [0, 1, 2]),
        ("the film is thin", [2]),
        ("thick air", [2]),
        ("runny", [1, 2]),
        ("a runny thick coat", [1, 2]),
        ("fi lm thick", [2]),
        ("", [2]),
    ],
)
def test_rows_by_the_parts_of_words(said: str, rows: list[int]) -> None:
    assert ROWS.likely(said) == rows
    assert ROWS.likely(said) == rows, "a word seen before is read the same"


@pytest.mark.parametrize("name", ["practices_in_words", "safe_forms", "precautions", "excuses"])
def test_every_stem_is_part_of_one_word(name: str) -> None:
    for row in table(name).rows:
        stems = {stem for way in ways_of(row["stems"]) for group in way for stem in group}
        assert all(len(stem) >= 2 and len(stem.split()) == 1 for stem in stems), row["id"]
