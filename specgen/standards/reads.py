"""Which published tables and cited documents an answer rests on, noted while it is worked out.

Looking into a table or a document's entry notes its name, `table comb` or `document CLP`, with whoever listens (`recorded`).
An answer that is kept for the next who asks keeps the names beside it and notes them again (`remembered`), so that what is
noted does not depend on what was asked before. Called by tables and citations, by what keeps answers, and by issuing, whose
approvals are bound to just those tables.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import wraps
from typing import ParamSpec, TypeVar

Key = ParamSpec("Key")
Answer = TypeVar("Answer")

_listening: ContextVar[set[str] | None] = ContextVar("listening", default=None)


def note(names: Iterable[str]) -> None:
    """Tell whoever listens that these were looked into."""
    found = _listening.get()
    if found is not None:
        found.update(names)


@contextmanager
def recorded() -> Iterator[set[str]]:
    """The names noted within; whoever listens outside hears of them too, even where the work inside stops with an error.

    A generator made within and run on outside notes nothing here: use it up inside.
    """
    outside, found = _listening.get(), set[str]()
    token = _listening.set(found)
    try:
        yield found
    finally:
        _listening.reset(token)
        if outside is not None:
            outside |= found


def remembered(work_out: Callable[Key, Answer]) -> Callable[Key, Answer]:
    """`work_out`, done once for the same hashable arguments, with what it looked into. An error is not kept."""
    answers: dict[object, tuple[Answer, frozenset[str]]] = {}

    @wraps(work_out)
    def answered(*args: Key.args, **kwargs: Key.kwargs) -> Answer:
        key = (args, tuple(sorted(kwargs.items()))) if kwargs else args
        kept = answers.get(key)
        if kept is None:
            with recorded() as names:
                answer = work_out(*args, **kwargs)
            answers[key] = answer, frozenset(names)
            return answer
        note(kept[1])
        return kept[0]

    return answered
