"""What is kept for a specification is worked out once, for it alone, and goes with it."""

from __future__ import annotations

import gc

from specgen.facts.memo import memoised
from specgen.facts.placing import items_painted_with, items_prepared_with, jobs_painted_with
from specgen.model.spec import Spec
from tests.good_spec import good, spec_of


def _spec() -> Spec:
    return spec_of(good())


def test_once_a_specification_and_key() -> None:
    asked: list[tuple[int, str, bool]] = []

    @memoised
    def answer(spec: Spec, key: str, *, more: bool = False) -> str:
        asked.append((id(spec), key, more))
        return key

    first, second = _spec(), _spec()
    for spec, key in ((first, "a"), (first, "a"), (first, "b"), (second, "a")):
        assert answer(spec, key) == key
    answer(first, "a", more=True)
    assert asked == [(id(first), "a", False), (id(first), "b", False), (id(second), "a", False), (id(first), "a", True)]


def test_it_goes_with_its_specification() -> None:
    class Held:
        pass

    @memoised
    def answer(spec: Spec) -> Held:
        return Held()

    spec = _spec()
    answer(spec)
    before = sum(isinstance(found, Held) for found in gc.get_objects())
    del spec
    gc.collect()
    assert (before, sum(isinstance(found, Held) for found in gc.get_objects())) == (1, 0)


def test_where_systems_and_preparations_go() -> None:
    spec = _spec()
    assert [(job.id, item.id) for job, item in items_painted_with(spec.systems["cab"], spec)] == [("refit", "DOOR")]
    assert [(job.id, item.id) for job, item in items_painted_with(spec.systems["chassis"], spec)] == [("refit", "STEP")]
    placed = items_prepared_with(spec.preparations["sand-steel"], spec)
    assert [(job.id, item.id) for job, item in placed] == [("refit", "DOOR"), ("refit", "STEP")]
    assert [job.id for job in jobs_painted_with(spec.systems["cab"], spec)] == ["refit"]
