"""How many spots a part has by the words of a point, and which point is read once a coat is sanded."""

from __future__ import annotations

import pytest

from specgen.facts.job.inspected import film_points
from specgen.facts.job.points import once_sanded
from specgen.facts.job.spots import planned, spots_of_parts
from specgen.model.spec import Spec
from tests.good_spec import checked, good, put, spec_of

ITEMS = """[
  {id: DOOR, name: Cab door, count: 2, system: cab, area: 1 m2},
  {id: SKIRT, name: Skirt panel, count: 3, system: cab, area: 1 m2}]"""


def _spec(frequency: str, readings: str = "{from_edge: 25 mm}", check: str = "Film of the primer") -> Spec:
    spec = good()
    put(spec, "jobs.refit.items", ITEMS)
    for part, text in (("frequency", frequency), ("readings", readings), ("check", check)):
        put(spec, f"jobs.refit.inspection.primer-film.{part}", text)
    return spec_of(checked(spec))


def _spots(frequency: str, readings: str = "{from_edge: 25 mm}") -> tuple[list[int], int, bool]:
    spec = _spec(frequency, readings)
    job = spec.jobs["refit"]
    point = next(one for one in film_points(job) if one.id == "primer-film")
    return [len(one.spots) for one in spots_of_parts(point, job, spec)], *planned(point, job, spec)[1:]


@pytest.mark.parametrize(
    ("frequency", "readings", "spots", "per_spot", "stated"),
    [
        # the plan says how many in all, the words on what
        ("5 spots per door, 3 per panel, 3 readings per spot", "{spots: 19, readings: 57}", [5, 5, 3, 3, 3], 3, True),
        # one number fits the sum in one way alone, whatever the parts are called
        ("5 points per leaf, 3 per trim", "{spots: 19, readings: 57}", [5, 5, 3, 3, 3], 3, True),
        # words that do not add up are left, and the sum is shared
        ("5 spots per door, 3 per panel", "{spots: 12, readings: 36}", [2, 2, 3, 2, 3], 3, True),
        # without a sum the words alone
        ("5 spots per door or panel, 2 readings per spot", "{from_edge: 25 mm}", [5] * 5, 2, True),
        ("2 spots on each part, 3 readings per spot", "{from_edge: 25 mm}", [2] * 5, 3, True),
        # where it is not certain which is meant, as many boxes as may be needed
        ("5 spots per leaf, 3 per trim", "{from_edge: 25 mm}", [5] * 5, 3, False),
        # spots of an area say nothing of a part
        ("5 spots per area, 3 readings per spot", "{from_edge: 25 mm}", [2] * 5, 3, False),
    ],
)  # fmt: skip
def test_the_words_say_how_many_spots_a_part_has(
    frequency: str, readings: str, spots: list[int], per_spot: int, stated: bool
) -> None:
    assert _spots(frequency, readings) == (spots, per_spot, stated)


@pytest.mark.parametrize(
    ("check", "sanded"),
    [
        ("DFT of the primer, after sanding", True),
        ("DFT once dry-sanded", True),
        ("DFT before and after sanding", False),
        ("DFT of the primer", False),
    ],
)
def test_a_point_named_after_the_sanding_is_read_after_it(check: str, sanded: bool) -> None:
    job = _spec("Every part", check=check).jobs["refit"]
    point = next(one for one in job.inspection if one.id == "primer-film")
    assert once_sanded(point) is sanded
