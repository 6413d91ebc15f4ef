"""Several works at the same time: every answer in its place, faults too, and none lost with a process that ends."""

from __future__ import annotations

import os
import signal
import time
from collections import Counter
from collections.abc import Callable
from itertools import islice
from multiprocessing import active_children

import pytest

from specgen import side_by_side as module
from specgen.rendering.failure import RenderError
from specgen.side_by_side import side_by_side

HERE = os.getpid()


@pytest.fixture(autouse=True, params=[1, 2, 3])
def cores(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> int:
    number: int = request.param
    monkeypatch.setattr(module, "cores", lambda: number)
    return number


def test_answers_come_in_the_order_of_the_works() -> None:
    works: list[Callable[[], int]] = [lambda number=number: number * number for number in range(20)]  # type: ignore[misc]
    assert list(side_by_side(works, lambda: None)) == [number * number for number in range(20)]


def test_they_are_worked_out_elsewhere_where_there_are_cores(cores: int) -> None:
    where = set(side_by_side([os.getpid] * 4, lambda: None))
    assert (HERE in where) == (cores == 1)


def test_works_may_be_taken_here_too(cores: int) -> None:
    def where() -> tuple[int, str]:
        time.sleep(0.05)  # so that nobody takes them all
        return os.getpid(), "more than a pipe holds" * 10_000

    done = Counter(process for process, _ in side_by_side([where] * 30, here_too=True))
    assert HERE in done
    assert len(done) == cores
    assert min(done.values()) > 1


def test_a_fault_of_one_that_may_be_taken_here_ends_the_others() -> None:
    def faulty() -> int:
        raise RenderError("the page is out of bounds")

    with pytest.raises(RenderError, match="out of bounds"):
        list(side_by_side([faulty] * 4, here_too=True))
    assert not active_children()


def test_what_makes_ready_is_called_before(cores: int) -> None:
    loaded: list[str] = []
    works = [lambda: list(loaded)] * 3
    assert list(side_by_side(works, lambda: loaded.append("once"))) == [["once"] if cores > 1 else []] * 3


def test_a_fault_is_raised_in_its_place() -> None:
    def faulty() -> int:
        raise RenderError("the page is out of bounds")

    answers = side_by_side([lambda: 1, faulty, lambda: 3], lambda: None)
    assert next(answers) == 1
    with pytest.raises(RenderError, match="out of bounds"):
        next(answers)


def test_the_work_of_a_process_that_was_ended_is_done_here(cores: int) -> None:
    def ended() -> int:
        if os.getpid() != HERE:
            os.kill(os.getpid(), signal.SIGKILL)
        return HERE

    assert list(side_by_side([ended] * 5, lambda: None)) == [HERE] * 5


def test_a_fault_that_cannot_travel_is_met_again_here() -> None:
    class OwnError(Exception):
        pass

    def faulty() -> int:
        raise OwnError("made within a function")

    with pytest.raises(OwnError):
        list(side_by_side([faulty, faulty], lambda: None))


def test_who_takes_no_more_answers_leaves_no_process() -> None:
    answers = side_by_side([os.getpid] * 50, lambda: None)
    made = set(islice(answers, 2)) - {HERE}
    answers.close()  # type: ignore[attr-defined]
    for process in made:
        with pytest.raises(ProcessLookupError):
            os.kill(process, 0)


def test_a_copy_makes_no_copies_of_its_own() -> None:
    def within() -> set[int]:
        return set(side_by_side([os.getpid] * 4, lambda: None)) - {os.getpid()}

    assert list(side_by_side([within] * 2, lambda: None)) == [set()] * 2
