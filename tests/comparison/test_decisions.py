"""The file of decisions and renames is read as strictly as a source."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from specgen.comparison.changes import Answer
from specgen.comparison.decisions import answers_in
from specgen.source.reader import read_text

GOOD = """\
decisions:
  - {fingerprint: 3f00, decision: neutral, who: A. Body, reason: the same in fewer words, on: 2026-11-25}
renames:
  - {old: systems.cab.layers.primer, new: base}
"""


def test_answers_are_read_with_their_places() -> None:
    answers, faults = answers_in(*read_text(GOOD.encode(), "decisions.yaml"))
    assert faults == []
    (decision,) = answers.decisions
    assert (decision.fingerprint, decision.answer, decision.who) == ("3f00", Answer.NEUTRAL, "A. Body")
    assert (decision.on, str(decision.place)) == (date(2026, 11, 25), "decisions.yaml:2:6")
    assert answers.renames == {("systems", "cab", "layers", "primer"): "base"}


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("decisions:\n  - {fingerprint: 3f00, decision: maybe, who: A, reason: b, on: 2026-11-25}\n", [("MOD003", 2)]),
        ("decisions:\n  - {fingerprint: 3f00, decision: relaxed, who: A, on: 2026-11-25}\n", [("MOD002", 2)]),
        (
            "decisions:\n  - {fingerprint: 3f00, decision: relaxed, who: A, reason: b, on: 25.11.2026}\n",
            [("MOD003", 2)],
        ),
        ("decision: []\n", [("MOD001", 1)]),
        ("decisions: none\n", [("MOD004", 1)]),
        ("- a\n", [("SRC012", 1)]),
    ],
)
def test_faults_have_their_place(text: str, found: list[tuple[str, int]]) -> None:
    answers, faults = answers_in(*read_text(text.encode(), "decisions.yaml"))
    assert [(fault.id, fault.place.line) for fault in faults] == found
    assert answers.decisions == ()


def test_a_file_of_format_1_says_the_same_in_its_old_words() -> None:
    old = GOOD.replace("decisions:", "verdicts:").replace("decision:", "verdict:")
    old = old.replace("layers.primer, ", "layers.primer.hold, ")
    answers, faults = answers_in(*read_text(old.encode(), "verdicts.yaml"))
    assert faults == []
    assert answers.in_old_words
    new, _ = answers_in(*read_text(GOOD.encode(), "verdicts.yaml"))
    assert not new.in_old_words
    # the place shows the line as it is written
    assert [replace(one, place=None) for one in answers.decisions] == [
        replace(one, place=None) for one in new.decisions
    ]
    assert answers.renames == {("systems", "cab", "layers", "primer", "overcoat_interval"): "base"}


def test_both_names_of_one_key_are_a_fault() -> None:
    _, faults = answers_in(*read_text(f"verdicts: []\n{GOOD}".encode(), "decisions.yaml"))
    assert [(fault.id, fault.place.line) for fault in faults] == [("MOD001", 1)]
