"""What cannot be told: the one answer of every floor to a question that the sources or the tables leave open.

A figure or a category is given as itself or as `NotKnown`: a missing figure is never a pass, and never an exception,
for nobody called anything wrongly. Called by every module of `trade` and `facts` that may have no answer, and by the
rules, documents and comparison that word it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple, TypeVar

from specgen.standards.citations import Citation
from specgen.trade.working import Working, WorkingError

Known = TypeVar("Known")


class NotKnown(NamedTuple):
    """No answer: `why` says what stands in the way of `what`, `missing` names each thing that would have to be known.

    `missing` is empty where all is stated and cannot be together. `at` is the path in the sources where the missing or
    faulty value stands, empty where no single place does. `workings` are what could be worked out on the way, `source`
    the document that leaves it open.
    """

    what: str
    why: str
    missing: tuple[str, ...] = ()
    workings: tuple[Working, ...] = ()
    source: Citation | None = None
    at: tuple[str, ...] = ()

    @property
    def is_fault(self) -> bool:
        """True where a stated value cannot be or two contradict each other; False where something is only missing."""
        return not self.missing


def known(answer: Known | NotKnown) -> Known | None:
    """The answer itself, None where it is not known: for who goes on without it and has nothing to say of why."""
    return None if isinstance(answer, NotKnown) else answer


def worked_out(
    what: str, work_out: Callable[[], Known], at: tuple[str, ...] = (), missing: tuple[str, ...] = ()
) -> Known | NotKnown:
    """What `work_out` gives, NotKnown with its reason where stated figures leave a formula without a result.

    The one place where a WorkingError becomes an answer: shares that do not add up, a division by a stated zero.
    """
    try:
        return work_out()
    except WorkingError as error:
        return NotKnown(what, error.what, missing, at=at)
