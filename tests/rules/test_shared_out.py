"""A large folder judged on all cores: what is found, in which order, what stopped and which tables were looked into, as one process says it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from specgen import side_by_side
from specgen.model.parse import Loaded, load
from specgen.rules import shared_out
from specgen.rules.declare import all_rules
from specgen.rules.run import Share, Stopped, Timings, run_rules
from specgen.rules.shared_out import judged_by_all
from specgen.standards.reads import recorded
from tests.good_spec import DEMO, GOOD, ON


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


@pytest.mark.parametrize("cores", [1, 2, 3])
def test_shares_say_what_one_process_says(loaded: Loaded, cores: int, monkeypatch: pytest.MonkeyPatch) -> None:
    run_rules(loaded, ON)  # tables that are read for the first time are noted again
    stopped: list[Stopped] = []
    with recorded() as names:
        found = run_rules(loaded, ON, stopped=stopped)
    monkeypatch.setattr(shared_out, "_WORTH_IT", 0)
    for module in (side_by_side, shared_out):
        monkeypatch.setattr(module, "cores", lambda: cores)
    in_shares: list[Stopped] = []
    timings: Timings = {}
    with recorded() as names_of_shares:
        assert judged_by_all(loaded, ON, timings, in_shares) == found
    assert sorted(in_shares, key=str) == sorted(stopped, key=str)
    assert names_of_shares == names
    assert set(timings) == {rule.id for rule in all_rules()}


@pytest.mark.parametrize("length", [0, 1, 7, 8, 9, 1000])
@pytest.mark.parametrize("count", [1, 2, 8])
def test_shares_follow_each_other_and_leave_nothing_out(length: int, count: int) -> None:
    subjects = tuple(range(length))
    shares = [Share(number, count).of_all(subjects) for number in range(count)]  # type: ignore[arg-type]
    assert [one for share in shares for one in share] == list(subjects)
