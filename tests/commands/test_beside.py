"""Two pieces of work at the same time: both answers, and a fault in the second process is not lost."""

from __future__ import annotations

import os

import pytest

from specgen.commands.beside import beside


def test_both_answers_come() -> None:
    assert beside(lambda: ("a", 1), lambda: "b") == (("a", 1), "b")


def test_first_is_worked_out_elsewhere() -> None:
    first, second = beside(os.getpid, os.getpid)
    assert (first == second) is ((os.cpu_count() or 1) < 2)


def test_fault_of_the_first_is_seen() -> None:
    with pytest.raises(ZeroDivisionError):
        beside(lambda: 1 // 0, lambda: "b")


def test_answer_that_cannot_travel_is_worked_out_here() -> None:
    first, _ = beside(lambda: (n for n in "ab"), lambda: "b")
    assert list(first) == ["a", "b"]


def test_fault_of_the_second_ends_the_first() -> None:
    with pytest.raises(KeyError):
        beside(lambda: [0] * 10, lambda: {}["a"])
