"""The stack of an item: old coats that stay, what the part comes with, and the film of it all."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.facts.job.exposure import exposure_of
from specgen.facts.job.stack import Stack, stack
from specgen.model.job import Exposure
from tests.good_spec import good, good_with, put, spec_of

OLD = "[{id: works, family: nitrocellulose, thickness: 25 um}, {id: top, family: oem_finish, thickness: 2 mil}]"


def _stack(changes: dict[str, str], item: str = "DOOR") -> Stack:
    spec = spec_of(good_with(changes))
    job = spec.jobs["refit"]
    found = stack(job, next(one for one in job.items if one.id == item), spec)
    assert found is not None
    return found


def test_from_the_part_up() -> None:
    found = _stack({"jobs.refit.items.DOOR.old_coats": OLD})
    assert [old.family for old in found.old] == ["nitrocellulose", "oem_finish"]
    assert [new.layer.id for new in found.new] == ["primer", "base", "clear"]
    top, first, last = found.top_of_old, found.first, found.last
    assert top is not None
    assert first is not None
    assert last is not None
    assert (top.coat.id, first.family, last.family) == ("top", "epoxy_latent", "pu_latent")
    assert top.path == ("jobs", "refit", "items", "DOOR", "old_coats", "top")
    assert first.path == ("systems", "cab", "layers", "primer")


def test_build_is_measured_old_and_nominal_new() -> None:
    build = _stack({"jobs.refit.items.DOOR.old_coats": OLD}).build()
    assert build is not None
    # 25 um, 2 mil of 25.4 um, and 60 + 20 + 50 um
    assert build.to("um") == 25 + Fraction("50.8") + 130


def test_coats_that_nobody_measured_are_named() -> None:
    found = _stack({"jobs.refit.items.DOOR.old_coats": "[{id: a, thickness: 25 um}, {id: b}]"})
    assert [old.coat.id for old in found.unmeasured()] == ["b"]
    build = found.build()
    assert build is not None
    assert build.to("um") == 155


@pytest.mark.parametrize(
    ("steps", "left"),
    [
        ("[{id: a, do: sand, text: Sand.}]", 2),
        ("[{id: a, do: strip, text: Strip.}]", 0),
        ("[{id: a, do: blast, text: Blast.}]", 0),
        ("[{id: a, do: strip, text: Strip the spot.}, {id: b, do: feather-edge, text: Feather.}]", 2),
    ],
)
def test_old_coats_that_stay(steps: str, left: int) -> None:
    found = _stack({"jobs.refit.items.DOOR.old_coats": OLD, "preparations.sand-steel.steps": steps})
    assert len(found.old) == left


@pytest.mark.parametrize(
    ("material", "family"),
    [("ecoat_part", "ecoat"), ("powder_part", "powder"), ("oem_finish", "oem_finish"), ("old_paint", None)],
)
def test_part_that_comes_painted(material: str, family: str | None) -> None:
    (old,) = _stack({"jobs.refit.items.DOOR.substrate": f"{{material: {material}}}"}).old
    assert old.family == family
    assert old.path == ("jobs", "refit", "items", "DOOR", "substrate", "material")


def test_exposure_of_the_item_goes_before_that_of_the_job() -> None:
    source = good()
    put(source, "jobs.refit.exposure", "exterior")
    put(source, "jobs.refit.items.DOOR.exposure", "interior")
    spec = spec_of(source)
    job = spec.jobs["refit"]
    assert [exposure_of(job, item) for item in job.items] == [Exposure.INTERIOR, Exposure.EXTERIOR]
