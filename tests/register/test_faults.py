"""Whatever goes wrong at whichever step of issuing, the register is as it was or holds the whole revision."""

from __future__ import annotations

import errno
import os
import shutil
import threading
from collections.abc import Callable
from pathlib import Path

import pytest

from specgen.register import folder as register_folder
from specgen.register.chain import all_faults, left_behind
from specgen.register.failure import RegisterError, TakenError
from specgen.register.folder import histories
from specgen.register.notes import acknowledge, withdraw
from specgen.register.state import issues
from tests.good_spec import GOOD
from tests.register.conftest import Desk

Tree = Callable[[Path], dict[str, bytes]]


class BrokenError(Exception):
    """Stands for anything that can go wrong."""


def _steps(desk: Desk) -> list[str]:
    told: list[str] = []
    desk.revise(step=told.append)
    return told


@pytest.fixture(scope="module")
def waiting(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """A document with revision A, and the approval of B waiting; nobody goes on with it."""
    desk = Desk(shutil.copytree(GOOD, tmp_path_factory.mktemp("waiting") / "specs"))
    desk.revise()
    desk.approve()
    return desk


@pytest.fixture
def second(waiting: Desk, tmp_path: Path) -> Desk:
    """The same in a folder of one's own."""
    desk = Desk(shutil.copytree(waiting.folder, tmp_path / "specs"))
    desk.minutes = waiting.minutes
    return desk


def test_every_step_is_told(second: Desk) -> None:
    told: list[str] = []
    second.issue(step=told.append)
    assert told[:5] == ["check", "collect approvals", "certify", "print", "look at the sources again"]
    assert told[5:7] == ["make the document's folder", "make the stage"]
    assert told[-4:] == ["confirm the stage", "read the record back", "rename", "confirm the renaming"]
    assert sum(step.startswith("write ") for step in told) == 10


# the steps of the test above, by number: before the renaming and after it
BEFORE, AFTER = range(20), (20,)


@pytest.mark.parametrize("fault", [BrokenError("stop"), OSError(errno.EIO, "Input/output error"), KeyboardInterrupt()])
@pytest.mark.parametrize("at", [*BEFORE, *AFTER])
def test_a_fault_at_any_step_leaves_the_old_state_or_the_new(
    second: Desk, tree: Tree, at: int, fault: BaseException
) -> None:
    before, told = tree(second.register), list[str]()

    def fail(step: str) -> None:
        told.append(step)
        if len(told) == at + 1:
            raise fault

    with pytest.raises((BrokenError, OSError, KeyboardInterrupt, RegisterError)):
        second.issue(step=fail)
    (found,) = histories(second.register)
    assert list(all_faults(found)) == []
    if at in AFTER:
        assert told[-1] == "confirm the renaming"
        assert [kept.record.revision for kept in issues(found.kept)] == ["A", "B"]
    else:
        assert tree(second.register) == before
        assert left_behind(second.register) == []
        assert [kept.record.revision for kept in issues(found.kept)] == ["A"]
        assert second.issue().kept.record.revision == "B"


def test_the_first_issue_that_fails_leaves_no_register(desk: Desk) -> None:
    desk.approve()

    def fail(step: str) -> None:
        if step == "rename":
            raise BrokenError(step)

    with pytest.raises(BrokenError):
        desk.issue(step=fail)
    assert not desk.register.exists()


@pytest.mark.parametrize("call", ["fsync", "rename", "mkdir", "write"])
def test_a_full_disk_is_said_in_a_line_and_loses_nothing(
    second: Desk, tree: Tree, monkeypatch: pytest.MonkeyPatch, call: str
) -> None:
    before = tree(second.register)

    def full(*arguments: object, **named: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device", str(second.register))

    if call == "mkdir":
        monkeypatch.setattr(Path, "mkdir", full)
    elif call == "write":
        monkeypatch.setattr(register_folder, "_fill", full)
    else:
        monkeypatch.setattr(os, call, full)
    with pytest.raises(RegisterError, match="cannot be written to: .*No space left on device; nothing was changed"):
        second.issue()
    monkeypatch.undo()
    assert tree(second.register) == before
    assert second.issue().kept.record.revision == "B"


def test_a_folder_that_may_not_be_written_is_said_in_a_line(
    second: Desk, tree: Tree, monkeypatch: pytest.MonkeyPatch
) -> None:
    # root may write anywhere, so the refusal is made here
    def refuse(self: Path, *arguments: object, **named: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied", str(self))

    before = tree(second.register)
    monkeypatch.setattr(Path, "mkdir", refuse)
    with pytest.raises(RegisterError, match="Permission denied; nothing was changed"):
        second.issue()
    monkeypatch.undo()
    assert tree(second.register) == before


def test_a_register_that_is_a_file_is_said_in_a_line(desk: Desk) -> None:
    desk.approve()
    desk.register.write_text("x")
    with pytest.raises(RegisterError, match="is a file, not the folder of a register"):
        desk.issue()
    assert desk.register.read_text() == "x"


def test_of_two_at_once_one_wins(second: Desk) -> None:
    """Both have everything ready and stand before the renaming; then both go on."""
    gate = threading.Barrier(2, timeout=20)
    came: list[str] = []
    moments = (second.now(), second.now())

    def wait(step: str) -> None:
        if step == "rename":
            gate.wait()

    def run(at: int) -> None:
        try:
            came.append(second.issue(step=wait, reason=f"by {at}", now=moments[at]).kept.record.reason)
        except TakenError:
            came.append("taken")

    both = [threading.Thread(target=run, args=(at,)) for at in (0, 1)]
    for one in both:
        one.start()
    for one in both:
        one.join(30)
    assert len(came) == 2
    assert came.count("taken") == 1
    (found,) = histories(second.register)
    assert list(all_faults(found)) == []
    assert left_behind(second.register) == []
    (won,) = [kept.record.reason for kept in found.kept if kept.record.revision == "B"]
    assert won in came


def test_issuing_and_withdrawing_at_once_meet_in_one_number(second: Desk) -> None:
    def withdraw_meanwhile(step: str) -> None:
        if step == "rename":
            withdraw(second.register, "MS-001", "A", reason="wrong", by="Ada Quill", now=second.now())

    with pytest.raises(TakenError, match="was taken meanwhile by someone else"):
        second.issue(step=withdraw_meanwhile)
    (found,) = histories(second.register)
    assert list(all_faults(found)) == []
    assert [kept.record.kind for kept in found.kept] == ["issue", "withdrawal"]


@pytest.mark.parametrize("name", ["record.json", "certificate.json", "SHA256SUMS", "sources/job.yaml.txt"])
def test_nothing_is_added_after_a_damaged_record(second: Desk, name: str) -> None:
    path = second.register / "MS-001" / "0001" / name
    path.write_bytes(path.read_bytes() + b" ")
    for add in (
        second.issue,
        second.approve,
        lambda: withdraw(second.register, "MS-001", "A", reason="x", by="y", now=second.now()),
        lambda: acknowledge(second.register, "MS-001", "A", by="y", now=second.now()),
    ):
        with pytest.raises(RegisterError, match="damaged|there is no MS-001 A"):
            add()
    assert [path.name for path in (second.register / "MS-001").iterdir()] == ["0001"]


def test_nothing_is_added_to_a_chain_with_a_gap(second: Desk) -> None:
    second.issue()
    shutil.rmtree(second.register / "MS-001" / "0001")
    with pytest.raises(RegisterError, match="MS-001/0002: record 1 is missing before it"):
        second.approve()
