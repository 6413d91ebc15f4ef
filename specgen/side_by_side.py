"""Works done at the same time, one process a core. Called to check several folders, to judge large ones and to set
documents on pages."""

from __future__ import annotations

import multiprocessing
import os
import pickle
import signal
from collections.abc import Callable, Iterator, Sequence
from multiprocessing.connection import Connection, wait
from typing import Any, NoReturn, TypeVar

Answer = TypeVar("Answer")


def side_by_side(
    works: Sequence[Callable[[], Answer]], ready: Callable[[], object] | None = None, *, here_too: bool = False
) -> Iterator[Answer]:
    """The answer of each work, in their order; what one raises is raised in its place.

    `ready` is called once before the processes part, so that what it loads is loaded once. Answers have to be picklable. Where the
    machine has one core or cannot copy a process, in a copy itself, and where a copy is ended from outside, the work is done here. With
    `here_too` this process takes works like its copies, which are one fewer: nothing is answered until it finds none left to take.
    """
    processes = min(len(works), cores())
    is_copy = multiprocessing.current_process().daemon
    if processes < 2 or is_copy or "fork" not in multiprocessing.get_all_start_methods():
        yield from (work() for work in works)
        return
    if ready is not None:
        ready()
    context = multiprocessing.get_context("fork")
    nobody_has = context.Value("i", 0)
    pipes: dict[Connection, Any] = {}
    answers: dict[int, tuple[Any, Exception | None]] = {}
    try:
        for _ in range(processes - here_too):
            here, there = context.Pipe(duplex=False)
            copy = context.Process(
                target=_serve, args=([*pipes, here], there, works, nobody_has, here_too), daemon=True
            )
            copy.start()
            there.close()
            pipes[here] = copy
        if here_too:
            answers.update((number, (works[number](), None)) for number in _taken(nobody_has, len(works)))
        for number, work in enumerate(works):
            while number not in answers and pipes:
                _take(pipes, answers)
            # a copy that was ended, for want of memory perhaps, leaves its work to this process
            answer, fault = answers.pop(number) if number in answers else (work(), None)
            if fault is not None:
                raise fault
            yield answer
    finally:
        for here, copy in pipes.items():
            here.close()
            copy.terminate()
            copy.join()


def cores() -> int:
    """As many as this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _take(pipes: dict[Connection, Any], answers: dict[int, tuple[Any, Exception | None]]) -> None:
    """Takes what any copy has to say; one that says no more is let go."""
    for here in [pipe for pipe in pipes if pipe in wait(pipes)]:
        try:
            number, answer, fault = here.recv()
            answers[number] = answer, fault
        except (EOFError, OSError):
            here.close()
            pipes.pop(here).join()


def _serve(
    others: list[Connection],
    there: Connection,
    works: Sequence[Callable[[], object]],
    nobody_has: Any,
    at_the_end: bool,
) -> NoReturn:
    # a key pressed to stop is for the original, which then ends its copies
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    try:
        for other in others:
            other.close()
        told = ((number, *_worked_out(works[number])) for number in _taken(nobody_has, len(works)))
        # who does works of his own takes no answers meanwhile, and a full pipe would keep us waiting
        for answer in list(told) if at_the_end else told:
            there.send(answer)
    finally:
        os._exit(0)


def _taken(nobody_has: Any, count: int) -> Iterator[int]:
    """The numbers of the works that this process takes, one after the other, until none is left."""
    while True:
        with nobody_has.get_lock():
            number = nobody_has.value
            nobody_has.value += 1
        if number >= count:
            return
        yield number


def _worked_out(work: Callable[[], object]) -> tuple[object, Exception | None]:
    try:
        return work(), None
    except Exception as fault:  # noqa: BLE001  # it is raised again where the work was asked for
        # what cannot travel ends the copy, and the original meets it again
        pickle.loads(pickle.dumps(fault))  # noqa: S301  # our own, written a moment ago
        return None, fault
