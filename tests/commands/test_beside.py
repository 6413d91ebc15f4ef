"""Two pieces of work at the same time: data comes back, functions stay where they were, and a fault in the second process is not lost."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

import pytest

from specgen.commands.beside import beside
from specgen.commands.outcome import CannotRunError

HERE = os.getpid()


@dataclass
class Counted:
    """How often it was asked, which only the process that was asked can know."""

    asked: list[int] = field(default_factory=list)

    def ask(self, number: int) -> tuple[int, int]:
        self.asked.append(number)
        return os.getpid(), sum(self.asked)


def test_both_answers_come() -> None:
    assert beside(lambda: ("a", 1), lambda: "b") == (("a", 1), "b")


def test_first_is_worked_out_elsewhere() -> None:
    first, second = beside(os.getpid, os.getpid)
    assert first != second == HERE


def test_a_method_stays_and_is_asked_there() -> None:
    (ask, number), _ = beside(lambda: (Counted().ask, 7), lambda: None)
    assert number == 7
    elsewhere, one = ask(3)
    assert (elsewhere != HERE, one) == (True, 3)
    assert ask(4) == (elsewhere, 7)


def test_a_function_that_an_answer_holds_stays_too() -> None:
    def made() -> Callable[[int], Callable[[], int]]:
        return lambda number: lambda: number * os.getpid()

    made_there, _ = beside(made, lambda: None)
    process = made_there(1)()
    assert process != HERE
    assert made_there(2)() == 2 * process


def test_what_has_a_name_everywhere_travels() -> None:
    (function, of_class), _ = beside(lambda: (os.path.join, Fraction.from_float), lambda: None)
    assert function is os.path.join
    assert of_class(0.5) == Fraction(1, 2)


def test_fault_of_the_first_is_seen() -> None:
    with pytest.raises(ZeroDivisionError):
        beside(lambda: 1 // 0, lambda: "b")


def test_fault_of_what_is_asked_is_seen_and_ends_nothing() -> None:
    share, _ = beside(lambda: lambda by: 6 // by, lambda: None)
    with pytest.raises(RuntimeError, match="ZeroDivisionError"):
        share(0)
    assert share(2) == 3


def test_answer_that_cannot_travel_is_worked_out_here() -> None:
    first, _ = beside(lambda: (n for n in "ab"), lambda: "b")
    assert list(first) == ["a", "b"]


def test_what_was_ended_before_it_answered_is_worked_out_here() -> None:
    def work() -> int:
        if os.getpid() != HERE:
            os.kill(os.getpid(), signal.SIGKILL)
        return os.getpid()

    assert beside(work, lambda: "b") == (HERE, "b")


def test_what_was_ended_afterwards_is_said_in_a_line() -> None:
    (process, ask), _ = beside(lambda: (os.getpid(), Counted().ask), lambda: None)
    os.kill(process, signal.SIGKILL)
    for _ in range(2):
        with pytest.raises(CannotRunError, match="the second process, which had read OLD, was ended"):
            ask(1)


def test_fault_of_the_second_ends_the_first() -> None:
    with pytest.raises(KeyError):
        beside(lambda: [0] * 10, lambda: {}["a"])


def test_the_copy_ends_when_nobody_can_ask_it() -> None:
    (process, ask), _ = beside(lambda: (os.getpid(), Counted().ask), lambda: None)
    assert ask(1)[0] == process
    del ask
    assert os.waitpid(process, 0)[0] == process
