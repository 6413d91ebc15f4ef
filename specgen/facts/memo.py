"""What follows from a whole specification is worked out once and kept as long as the specification lives.

A specification never changes once it is read, so several rules and documents may share one answer, and what
published tables it rests on. Called by facts and rules, as decorators.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import wraps
from typing import Any, Concatenate, ParamSpec, TypeVar, cast
from weakref import WeakKeyDictionary

from specgen.model.spec import Spec
from specgen.standards.reads import note, recorded

Key = ParamSpec("Key")
Answer = TypeVar("Answer")
GoesThrough = TypeVar("GoesThrough", bound=Callable[..., Iterator[Any]])


def memoised(work_out: Callable[Concatenate[Spec, Key], Answer]) -> Callable[Concatenate[Spec, Key], Answer]:
    """`work_out(spec, *key)`, done once a specification and key. Everything after the specification must be hashable."""
    answers: WeakKeyDictionary[Spec, dict[object, tuple[Answer, frozenset[str]]]] = WeakKeyDictionary()

    @wraps(work_out)
    def answered(spec: Spec, /, *args: Key.args, **kwargs: Key.kwargs) -> Answer:
        known = answers.setdefault(spec, {})
        key = (args, tuple(sorted(kwargs.items()))) if kwargs else args
        kept = known.get(key)
        if kept is None:
            with recorded() as names:
                answer = work_out(spec, *args, **kwargs)
            known[key] = answer, frozenset(names)
            return answer
        note(kept[1])
        return kept[0]

    return answered


def gathered(go_through: GoesThrough) -> GoesThrough:
    """What `go_through(*records, spec)` yields, gone through once a specification and records; for what looks into no table.

    A record is told by being the very one, for to hash one takes longer than to go through it; it is kept beside its answer, so that
    no other takes its place. What stops with an error is not kept: whoever goes through it meets the error in its place.
    """
    answers: WeakKeyDictionary[Spec, dict[tuple[int, ...], tuple[object, tuple[object, ...]]]] = WeakKeyDictionary()

    @wraps(go_through)
    def answered(*asked: Any) -> Iterator[object]:
        *records, spec = asked
        known = answers.setdefault(spec, {})
        key = tuple(map(id, records))
        if key not in known:
            try:
                known[key] = records, tuple(go_through(*asked))
            except Exception:  # noqa: BLE001  # it comes again, where the caller has come to it
                return go_through(*asked)
        return iter(known[key][1])

    return cast(GoesThrough, answered)
