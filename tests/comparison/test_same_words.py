"""What two texts may differ in and still say the same; everything else waits for a person."""

from __future__ import annotations

import pytest

from specgen.comparison.changes import Effect
from tests.comparison.sides import changed, compared

TEXT = "preparations.sand-steel.steps.sand.text"


def _effect(old: str, new: str) -> Effect:
    def quoted(text: str) -> str:
        return "'" + text.replace("'", "''") + "'"

    (change,) = compared(changed({TEXT: quoted(old)}), changed({TEXT: quoted(new)})).changes
    return change.effect


ALIKE = [
    ("Wipe two (2) times", "Wipe two times"),
    ("Wipe 2 (two) times", "Wipe two times"),
    ("Two coats, six hours apart.", "2 coats, 6 hours apart"),
    ("Never sand wet. Wipe first.", "NEVER sand wet. wipe first."),
    ("Keep the foreman's list", "Keep the foreman’s list"),
    ("Wait 5-10 min", "Wait 5–10 min"),
]
APART = [
    ("Wipe two (2) times", "Wipe two (3) times"),
    ("Wipe two times", "Wipe twelve times"),
    ("No, mask is needed", "No mask is needed"),
    ("Sand with 1.5 mm", "Sand with 15 mm"),
    ("No one sands", "No 1 sands"),
    ("Twenty-two parts", "Twenty-2 parts"),
    ("Use 5 mW", "Use 5 MW"),
    ("Wipe it", "You may wipe it"),
    ("Sand. not wet", "Sand not wet"),
]


@pytest.mark.parametrize(("old", "new"), ALIKE)
def test_the_same_words_are_editorial(old: str, new: str) -> None:
    assert _effect(old, new) is _effect(new, old) is Effect.EDITORIAL


@pytest.mark.parametrize(("old", "new"), APART)
def test_other_words_are_for_a_person(old: str, new: str) -> None:
    assert _effect(old, new) is _effect(new, old) is Effect.REWORDED
