"""What counts in a finding, a report or a notice reads right for one and for many."""

from __future__ import annotations

from specgen.documents.change_notice.view import _left_out, _rest
from specgen.documents.parts.wording import Words
from specgen.model.project import Policies
from specgen.register.policy import missing_approvals
from specgen.units.locale import ENGLISH

WORDS = Words(ENGLISH, {})


def test_a_notice_counts_one_and_many() -> None:
    assert [_left_out(number, WORDS) for number in (0, 1, 2)] == [
        "",
        "One further change is not printed here.",
        "2 further changes are not printed here.",
    ]
    assert _rest(["9"], WORDS) == "One more requirement was relaxed: see 9 in the tables."
    assert _rest(["9", "10", "11"], WORDS) == "3 more requirements were relaxed: see 9–11 in the tables."


def test_approvals_that_are_missing_are_counted() -> None:
    said = [
        next(iter(missing_approvals(Policies.model_construct(approvals_needed=n, approvals=()), ()))) for n in (1, 2)
    ]
    assert said == ["1 person has to check or approve, 0 did", "2 persons have to check or approve, 0 did"]
