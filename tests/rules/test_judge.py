"""Folders judged in several processes: what is found, in which order, what stopped and which tables were looked into, as one says it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

import pytest

from specgen import checking, side_by_side
from specgen.checking import check_each, check_loaded
from specgen.model.parse import Loaded, load
from specgen.rules import judge as module
from specgen.rules.declare import all_rules, families, rules_of
from specgen.rules.judge import Judged, judge
from specgen.rules.run import Share
from specgen.standards.reads import recorded
from tests.good_spec import DEMO, GOOD, ON

WATERWORKS = DEMO.parent / "waterworks"


@pytest.fixture(params=["demo", "broken"])
def loaded(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Loaded]:
    if request.param == "demo":
        yield load(DEMO)
        return
    for file in GOOD.rglob("*.yaml"):
        text = file.read_text("utf-8").replace("phone:", "fone:").replace("humidity: ", "humidity: about ")
        at = tmp_path / file.relative_to(GOOD)
        at.parent.mkdir(parents=True, exist_ok=True)
        at.write_text(text, "utf-8")
    found = load(tmp_path)
    assert found.findings
    yield found


@pytest.fixture(params=[1, 2, 3])
def cores(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    for each in (side_by_side, module):
        monkeypatch.setattr(each, "cores", lambda: request.param)


@pytest.mark.parametrize("many", [0, 400])
@pytest.mark.usefixtures("cores")
def test_several_processes_say_what_one_says(loaded: Loaded, many: int, monkeypatch: pytest.MonkeyPatch) -> None:
    judge([loaded], ON)  # tables that are read for the first time are noted again
    with recorded() as names:
        (alone,) = judge([loaded], ON)
    monkeypatch.setattr(module, "_MANY", many)
    with recorded() as names_of_several:
        (shared,) = judge([loaded], ON, beginning=True)
    assert shared.found == alone.found
    assert shared.never_waived == alone.never_waived
    assert sorted(shared.stopped, key=str) == sorted(alone.stopped, key=str)
    assert names_of_several == names
    assert set(shared.timings) == {rule.id for rule in all_rules()}


@pytest.mark.usefixtures("cores")
def test_several_folders_are_judged_as_each_by_itself(loaded: Loaded) -> None:
    others = [loaded, load(WATERWORKS), load(GOOD)]
    together = judge(others, ON, beginning=True)
    assert [one.found for one in together] == [judge([each], ON)[0].found for each in others]
    assert together[1].found


def test_findings_come_in_the_order_of_the_rules() -> None:
    (judged,) = judge([load(DEMO)], ON)
    ids = [one.id for one in judged.found]
    assert ids == sorted(ids)
    assert len(set(ids)) > 1


def test_every_rule_is_of_one_family() -> None:
    read = [
        rule for sentences in (True, False) for family in families(sentences=sentences) for rule in rules_of(family)
    ]
    assert sorted(rule.id for rule in read) == [rule.id for rule in all_rules()]


def test_folders_of_many_records_are_judged_before_the_next_is_read(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    done: list[str] = []

    def read(folder: Path) -> Loaded:
        done.append("read")
        return load(folder)

    def judged(folders: Sequence[Loaded], on: date, *, beginning: bool = False) -> list[Judged]:
        done.append(f"judge {len(folders)}")
        return judge(folders, on, beginning=beginning)

    monkeypatch.setattr(checking, "load", read)
    monkeypatch.setattr(checking, "judge", judged)
    expected = (check_loaded(load(GOOD), ON).report, check_loaded(load(WATERWORKS), ON).report)
    done.clear()
    assert tuple(one.report for one in check_each([GOOD, WATERWORKS], ON)) == expected
    assert done == ["read", "read", "judge 2"]
    monkeypatch.setattr(module, "_MANY", 1)
    done.clear()
    assert tuple(one.report for one in check_each([GOOD, WATERWORKS], ON)) == expected
    assert done == ["read", "judge 1", "read", "judge 1"]


@pytest.mark.parametrize("length", [0, 1, 7, 8, 9, 1000])
@pytest.mark.parametrize("count", [1, 2, 8])
def test_shares_follow_each_other_and_leave_nothing_out(length: int, count: int) -> None:
    subjects = tuple(range(length))
    shares = [Share(number, count).of_all(subjects) for number in range(count)]  # type: ignore[arg-type]
    assert [one for share in shares for one in share] == list(subjects)
