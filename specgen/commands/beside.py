"""Work done beside other work, in a second process on a second core. Called by `compare`, where two large folders are judged.

Of the answer what is data comes back. A method, or a function within a function, stays with all it knows in the process that
worked it out: what comes back in its place asks that process, which lives as long as anybody may ask.
"""

from __future__ import annotations

import multiprocessing
import os
import pickle
from collections.abc import Callable
from io import BytesIO
from multiprocessing.connection import Connection
from types import FunctionType, MethodType
from typing import Any, NoReturn, TypeVar

from specgen.commands.outcome import CannotRunError

First = TypeVar("First")
Second = TypeVar("Second")


def beside(first: Callable[[], First], second: Callable[[], Second]) -> tuple[First, Second]:
    """Both answers; `first` is worked out in a second process where the machine can copy one, and its answer can be pickled.

    What goes wrong there before it has answered is worked out again here, so that its fault is seen.
    """
    if "fork" not in multiprocessing.get_all_start_methods():
        return first(), second()
    context = multiprocessing.get_context("fork")
    here, there = context.Pipe()
    copy = context.Process(target=_serve, args=(here, there, first), daemon=True)
    copy.start()
    there.close()
    answered = False
    try:
        answer = second()
        try:
            found: First = _Copy(here).answer()
            answered = True
        except (EOFError, OSError):
            found = first()
        return found, answer
    finally:
        if not answered:
            here.close()
            copy.terminate()
            copy.join()


class _Copy:
    """The second process as this one knows it. It ends by itself when nobody here knows it any more."""

    def __init__(self, pipe: Connection) -> None:
        self._pipe = pipe

    def answer(self) -> Any:
        return _Reader(self, self._pipe.recv_bytes()).load()

    def ask(self, number: int, arguments: tuple[Any, ...]) -> Any:
        try:
            self._pipe.send((number, arguments))
            fault, answer = self.answer()
        except (EOFError, OSError):
            raise CannotRunError(
                "the second process, which had read OLD, was ended before the comparison was done; "
                "where memory is short, compare smaller folders"
            ) from None
        if fault:
            raise RuntimeError(fault)
        return answer


class _Reader(pickle.Unpickler):
    def __init__(self, copy: _Copy, answer: bytes) -> None:
        super().__init__(BytesIO(answer))
        self._copy = copy

    def persistent_load(self, number: Any) -> Callable[..., Any]:
        # who keeps this keeps the copy alive, not all that was read with it
        copy = self._copy
        return lambda *arguments: copy.ask(number, arguments)


class _Writer(pickle.Pickler):
    """Writes an answer, and puts what stays here into `kept`."""

    def __init__(self, kept: list[Callable[..., Any]]) -> None:
        self._written = BytesIO()
        super().__init__(self._written, pickle.HIGHEST_PROTOCOL)
        self._kept = kept

    def persistent_id(self, value: Any) -> int | None:
        if not isinstance(value, MethodType | FunctionType) or _goes_by_name(value):
            return None
        self._kept.append(value)
        return len(self._kept) - 1

    def whole(self, answer: object) -> memoryview:
        self.dump(answer)
        return self._written.getbuffer()


def _goes_by_name(value: MethodType | FunctionType) -> bool:
    """True for what every process finds by its name: a function of a module, a method of a class."""
    return isinstance(value.__self__, type) if isinstance(value, MethodType) else "<locals>" not in value.__qualname__


def _serve(here: Connection, there: Connection, work: Callable[[], object]) -> NoReturn:
    # whatever goes wrong before the answer, the copy says nothing: the original works it out by itself
    try:
        here.close()
        kept: list[Callable[..., Any]] = []
        there.send_bytes(_Writer(kept).whole(work()))
        while True:
            number, arguments = there.recv()
            try:
                said = _Writer(kept).whole(("", kept[number](*arguments)))
            except Exception as fault:  # noqa: BLE001  # it is raised again where it was asked for
                said = _Writer(kept).whole((f"{type(fault).__name__}: {fault}", None))
            there.send_bytes(said)
    finally:
        os._exit(0)
