"""Work done beside other work, in a second process on a second core. Called by `compare`, where two large folders are judged.

A process is copied with all it has read, so nothing large travels; only the answer comes back.
"""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable
from multiprocessing.connection import Connection
from typing import TypeVar

First = TypeVar("First")
Second = TypeVar("Second")


def beside(first: Callable[[], First], second: Callable[[], Second]) -> tuple[First, Second]:
    """Both answers; `first` is worked out in a second process where the machine can copy one, and its answer can be pickled.

    What goes wrong in the copy is worked out again here, so that its fault is seen.
    """
    if "fork" not in multiprocessing.get_all_start_methods() or (os.cpu_count() or 1) < 2:
        return first(), second()
    context = multiprocessing.get_context("fork")
    here, there = context.Pipe(duplex=False)
    copy = context.Process(target=_answer, args=(there, first), daemon=True)
    copy.start()
    there.close()
    try:
        answer = second()
        try:
            found: First = here.recv()
        except (EOFError, OSError):
            found = first()
        return found, answer
    finally:
        here.close()
        copy.terminate()
        copy.join()


def _answer(there: Connection, work: Callable[[], object]) -> None:
    # whatever goes wrong, the copy says nothing: an answer that does not come is worked out by the original
    try:
        there.send(work())
    finally:
        os._exit(0)
