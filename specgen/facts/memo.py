"""What follows from a whole specification is worked out once and kept as long as the specification lives.

A specification never changes once it is read, so several rules and documents may share one answer, and what
published tables it rests on. Called by `placing`,
`plan` and rules, as a decorator.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar
from weakref import WeakKeyDictionary

from specgen.model.spec import Spec
from specgen.standards.reads import note, recorded

Key = ParamSpec("Key")
Answer = TypeVar("Answer")


def memoised(work_out: Callable[Concatenate[Spec, Key], Answer]) -> Callable[Concatenate[Spec, Key], Answer]:
    """`work_out(spec, *key)`, done once a specification and key. Everything after the specification must be hashable."""
    answers: WeakKeyDictionary[Spec, dict[object, tuple[Answer, frozenset[str]]]] = WeakKeyDictionary()

    @wraps(work_out)
    def answered(spec: Spec, /, *args: Key.args, **kwargs: Key.kwargs) -> Answer:
        known = answers.setdefault(spec, {})
        key = (args, tuple(sorted(kwargs.items())))
        if key not in known:
            with recorded() as names:
                answer = work_out(spec, *args, **kwargs)
            known[key] = answer, frozenset(names)
            return answer
        answer, looked_into = known[key]
        note(looked_into)
        return answer

    return answered
