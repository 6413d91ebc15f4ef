"""The file of verdicts and renames is read as strictly as a source."""

from __future__ import annotations

from datetime import date

import pytest

from specgen.comparison.changes import Answer
from specgen.comparison.verdicts import answers_in
from specgen.source.reader import read_text

GOOD = """\
verdicts:
  - {fingerprint: 3f00, verdict: neutral, who: A. Body, reason: the same in fewer words, on: 2026-11-25}
renames:
  - {old: systems.cab.layers.primer, new: base}
"""


def test_answers_are_read_with_their_places() -> None:
    answers, faults = answers_in(*read_text(GOOD.encode(), "verdicts.yaml"))
    assert faults == []
    (verdict,) = answers.verdicts
    assert (verdict.fingerprint, verdict.answer, verdict.who) == ("3f00", Answer.NEUTRAL, "A. Body")
    assert (verdict.on, str(verdict.place)) == (date(2026, 11, 25), "verdicts.yaml:2:6")
    assert answers.renames == {("systems", "cab", "layers", "primer"): "base"}


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("verdicts:\n  - {fingerprint: 3f00, verdict: maybe, who: A, reason: b, on: 2026-11-25}\n", [("MOD003", 2)]),
        ("verdicts:\n  - {fingerprint: 3f00, verdict: relaxed, who: A, on: 2026-11-25}\n", [("MOD002", 2)]),
        ("verdicts:\n  - {fingerprint: 3f00, verdict: relaxed, who: A, reason: b, on: 25.11.2026}\n", [("MOD003", 2)]),
        ("verdict: []\n", [("MOD001", 1)]),
        ("verdicts: none\n", [("MOD004", 1)]),
        ("- a\n", [("SRC012", 1)]),
    ],
)
def test_faults_have_their_place(text: str, found: list[tuple[str, int]]) -> None:
    answers, faults = answers_in(*read_text(text.encode(), "verdicts.yaml"))
    assert [(fault.id, fault.place.line) for fault in faults] == found
    assert answers.verdicts == ()
