"""What the validator says is read whole: a file or a profile it passed over is not taken for one that passed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from tests.pdf_validator import judge as judging
from tests.pdf_validator.judge import CannotJudgeError, Failure, Verdict, judge, told

PASSED = [["checked", "a.pdf", "3a", "900"], ["checked", "a.pdf", "ua1", "700"]]
FAILED = ["failed", "a.pdf", "ua1", "7.2", "20", "root/L[0]", "LI may contain only Lbl and LBody"]
FAILURE = Failure("7.2", "20", "root/L[0]", "LI may contain only Lbl and LBody")


def test_verdicts() -> None:
    passed, failed = judging._verdicts([*PASSED, FAILED], ["a.pdf"])
    assert passed == Verdict("a.pdf", "3a", 900, ())
    assert failed == Verdict("a.pdf", "ua1", 700, (FAILURE,))
    assert told(passed) == "a.pdf: 3a: 900 assertions, none failed"
    assert told(failed) == (
        "a.pdf: ua1: 700 assertions, 1 FAILED\n    7.2, test 20, at root/L[0]: LI may contain only Lbl and LBody"
    )


@pytest.mark.parametrize(
    ("lines", "names", "why"),
    [
        ([], ["a.pdf"], "judged 0 of 2"),
        (PASSED[:1], ["a.pdf"], "judged 1 of 2"),
        (PASSED, ["a.pdf", "b.pdf"], "judged 2 of 4"),
        ([PASSED[0], ["checked", "a.pdf", "ua1", "3"]], ["a.pdf"], "tested next to nothing of [('a.pdf', 'ua1')]"),
    ],
)
def test_what_was_not_judged(lines: Sequence[list[str]], names: Sequence[str], why: str) -> None:
    with pytest.raises(CannotJudgeError) as refusal:
        judging._verdicts(lines, names)
    assert why in str(refusal.value)


def test_a_missing_validator_or_java(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(CannotJudgeError, match=r"There is no validator in .*fetch\.sh"):
        judge([tmp_path / "a.pdf"], tmp_path)
    (tmp_path / "validator.jar").touch()
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(CannotJudgeError, match=r"There is no java\. Install a JDK"):
        judge([tmp_path / "a.pdf"], tmp_path)
