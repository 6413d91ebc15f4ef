"""A fixed share of two campaigns: changed quantities are told, sound changes are not. The whole of both is run by hand."""

from __future__ import annotations

import pytest

from specgen.findings import Severity
from tests.campaigns import blind_quantities, sound_moves

SHARE, SEED = 0.012, 3


def test_few_moves_by_four_are_silent() -> None:
    drawn = [at for at in blind_quantities.draw(SHARE, SEED) if at[1].sort in blind_quantities.GRAVE]
    assert len(drawn) > 30
    outcomes = [blind_quantities.tried(at) for at in drawn]
    silent = [str(outcome.move) for outcome in outcomes if outcome.silent and not outcome.excused]
    assert blind_quantities.silent_share(outcomes) <= blind_quantities.ALLOWED, silent


def test_sound_moves_raise_nothing() -> None:
    # of the smaller specification, with one of each sort at least
    every = [at for at in sound_moves.draw(1, SEED) if at[0] == 1]
    drawn = {move.sort: (number, move) for number, move in every}
    drawn |= {move.name: (number, move) for number, move in every[::9]}
    assert len({move.sort for _, move in drawn.values()}) == 7
    told = {move.name: found for number, move in drawn.values() if (found := sound_moves.tried((number, move)))}
    assert [entry for entry in told.items() if any(weight == Severity.ERROR for _, weight, _ in entry[1])] == []
    assert [entry for entry in told.items() if any(weight == Severity.WARNING for _, weight, _ in entry[1])] == []


@pytest.mark.parametrize("row", blind_quantities.reasons(), ids=lambda row: row["leaf"])
def test_what_is_excused_is_there_and_has_a_reason(row: dict[str, str]) -> None:
    leaves = [
        leaf for number in range(len(blind_quantities.FOLDERS)) for leaf in blind_quantities.folder(number).leaves()
    ]
    assert any(row["leaf"] in {leaf.pattern, str(leaf)} for leaf in leaves)
    assert row["reason"]
    assert set(row.get("moves", ())) <= set(blind_quantities.GRAVE)
