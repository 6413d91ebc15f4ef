"""What is kept for a specification is worked out once, for it alone, and goes with it."""

from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest

from specgen.facts.memo import gathered, memoised
from specgen.facts.placing import items_painted_with, items_prepared_with, jobs_painted_with
from specgen.model.job import Job
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


def test_what_is_gathered_is_gone_through_once_a_record() -> None:
    gone: list[str] = []

    @gathered
    def names(job: Job, spec: Spec) -> Iterator[str]:
        for item in job.items:
            gone.append(item.id)
            yield item.id

    spec = _spec()
    job = spec.jobs["refit"]
    for of in (job, job, job.model_copy()):
        assert list(names(of, spec)) == ["DOOR", "STEP"]
    # a copy is another record
    assert gone == ["DOOR", "STEP"] * 2
    assert list(names(job, _spec())) == ["DOOR", "STEP"]
    assert len(gone) == 6


def test_an_error_is_met_where_it_stands() -> None:
    @gathered
    def broken(job: Job, spec: Spec) -> Iterator[str]:
        yield job.id
        raise LookupError(job.id)

    spec = _spec()
    for _ in range(2):
        found = broken(spec.jobs["refit"], spec)
        assert next(found) == "refit"
        with pytest.raises(LookupError):
            next(found)


def test_where_systems_and_preparations_go() -> None:
    spec = _spec()
    assert [(job.id, item.id) for job, item in items_painted_with(spec.systems["cab"], spec)] == [("refit", "DOOR")]
    assert [(job.id, item.id) for job, item in items_painted_with(spec.systems["chassis"], spec)] == [("refit", "STEP")]
    placed = items_prepared_with(spec.preparations["sand-steel"], spec)
    assert [(job.id, item.id) for job, item in placed] == [("refit", "DOOR"), ("refit", "STEP")]
    assert [job.id for job in jobs_painted_with(spec.systems["cab"], spec)] == ["refit"]
