"""Hand-written changes and what is said of them: `cases.yaml`, at least one for every sense."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.comparison.sentences import notes, sentence
from specgen.model.declaring import Polarity
from tests.comparison.sides import changed, compared
from tests.comparison.way_back import mirrored

CASES: list[dict[str, Any]] = yaml.load(
    (Path(__file__).parent / "cases.yaml").read_text("utf-8"), Loader=yaml.CBaseLoader
)


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_case(case: dict[str, Any]) -> None:
    old, new = _sides(case)
    there, back = compared(old, new), compared(new, old)
    stated = [change for change in there.changes if change.difference.through is None]
    assert sorted(f"{c.effect.value} {c.concern.value} {c.path}" for c in stated) == sorted(case["finds"])
    assert sorted(
        f"{mirrored(c.effect).value} {c.concern.value} {c.path}" for c in back.changes if c.difference.through is None
    ) == sorted(case["finds"])
    # of what a swapped reference reaches, the cases name what matters
    reached = {
        f"{c.effect.value} {c.concern.value} {c.path}" for c in there.changes if c.difference.through is not None
    }
    assert reached >= set(case.get("reached", ()))
    assert bool(reached) == ("reached" in case)
    if "says" in case:
        said = [sentence(change).replace("\N{NO-BREAK SPACE}", " ") for change in there.changes]
        assert said == [case["says"]]
    if "note" in case:
        assert case["note"] in "; ".join(note for change in there.changes for note in notes(change))


def _sides(case: dict[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
    puts, takes = case.get("puts", {}), case.get("takes", ())
    if "then" not in case:
        return changed(), changed(puts, takes)
    # the second state where the first differs from the good specification too
    return changed(puts), changed({**puts, **case["then"]}, case.get("loses", ()))


def test_every_sense_has_a_case() -> None:
    met = {change.difference.polarity for case in CASES for change in compared(*_sides(case)).changes}
    assert met | {Polarity.NOTE} == set(Polarity), "a note is met leaf by leaf in test_every_leaf"
