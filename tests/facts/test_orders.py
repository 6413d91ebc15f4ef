"""Packs over several jobs: summed before the one rounding up, with every figure worked out again here."""

from __future__ import annotations

import copy
import math
from fractions import Fraction
from typing import Any

from specgen.facts.job.orders import NotCounted, Orders, orders
from tests.good_spec import checked, good, put, take_out


def _orders(spec: dict[str, Any]) -> Orders:
    whole = checked(spec).loaded.spec
    assert whole is not None
    return orders(whole)


def _two_jobs() -> dict[str, Any]:
    spec = good()
    second = copy.deepcopy(spec["jobs"][0])
    second |= {"id": "second", "consumption": {"transfer_efficiency": "50 %"}}
    second["document"]["number"] = "MS-002"
    second["items"][0]["count"] = "3"
    spec["jobs"].append(second)
    return spec


def _cans(area: Fraction, film: int, solids: Fraction, efficiency: int) -> Fraction:
    """400 mL cans, 97 % delivered; areas in m2, films in um, shares in per cent."""
    return area * film / (400 * solids / 100 * Fraction(97, 100) * efficiency / 100)


def test_one_job_needs_what_its_own_list_says() -> None:
    found = _orders(good())
    assert {key: int(packs.number) for key, packs in found.packs.items()} == {
        ("primer", "grey"): 2,
        ("base", "standard"): 1,
        ("clear", "standard"): 2,
        ("barrier", "standard"): 1,
    }
    assert found.not_counted == ()


def test_sums_before_rounding() -> None:
    found = _orders(_two_jobs())
    door = Fraction(6, 10)
    for product, film in (("base", 20), ("clear", 50)):
        first, second = _cans(door * 2, film, Fraction(14), 60), _cans(door * 3, film, Fraction(14), 50)
        key = (product, "standard")
        assert {job: share.number for job, share in found.shares[key].items()} == {"refit": first, "second": second}
        assert found.packs[key].number == math.ceil(first + second)
    # 95 % of a tin can be used
    litres = Fraction(12, 100) * 4 * 80 / 1000 / Fraction(1, 2) / Fraction(95, 100)
    barrier = found.shares["barrier", "standard"]
    assert [share.number for share in barrier.values()] == [litres / Fraction(6, 10), litres / Fraction(5, 10)]
    # two jobs that would open a tin each share one
    assert found.packs["barrier", "standard"].number == 1


def test_items_of_one_name_in_two_jobs_keep_their_own_figures() -> None:
    found = _orders(_two_jobs())
    by_id = {working.id: working for working in found.workings}
    assert len(by_id) == len(found.workings)
    assert [by_id[f"{job}/area.DOOR"].printed() for job in ("refit", "second")] == ["1.20\N{NO-BREAK SPACE}m²", "1.80\N{NO-BREAK SPACE}m²"]  # fmt: skip
    # what is of the product alone stands once
    assert "solids.primer.grey" in by_id
    seen: set[str] = set()
    for working in found.workings:
        below = {entry.origin.removeprefix("working:") for entry in working.inputs if entry.origin.startswith("working:")}  # fmt: skip
        assert below <= seen, working.id
        seen.add(working.id)


def test_what_is_not_in_the_sums_is_told() -> None:
    spec = _two_jobs()
    take_out(spec, "jobs.second.consumption")
    take_out(spec, "jobs.refit.items.STEP.area")
    found = _orders(spec)
    why = "the transfer efficiency of the job is not stated"
    gaps = [gap for gap in found.not_counted if gap.job == "second"]
    assert gaps == [
        NotCounted("second", name, why)
        for name in ("Example primer", "Example base coat", "Example clear", "Example barrier")
    ]
    assert [(gap.of, gap.why) for gap in found.not_counted if gap.job == "refit"] == [
        ("STEP", "the area of the item is not known"),
        ("Example barrier", "no area with a DFT is known for it"),
    ]


def test_profile_is_counted_for_the_job_that_blasts() -> None:
    spec = _two_jobs()
    put(spec, "preparations.blast", "{id: blast, title: Blast, steps: [{id: blast, do: blast, text: Blast., grade: Sa 2 1/2}], coat_within: 4 h}")  # fmt: skip
    put(spec, "jobs.second.preparation", "blast")
    put(spec, "jobs.second.consumption", "{transfer_efficiency: 50 %, profile: 60 um, dead_volume: whole-profile}")
    plain, blasted = _orders(_two_jobs()), _orders(spec)
    key = ("primer", "grey")
    assert plain.shares[key]["refit"] == blasted.shares[key]["refit"]
    assert plain.shares[key]["second"].number < blasted.shares[key]["second"].number


def test_the_workings_of_an_order_are_its_needs_and_sums() -> None:
    """What the needs build on stands in the annex of each job and is not told again."""
    found = _orders(_two_jobs())
    own = [working.id for working in found.own_workings()]
    assert [name for name in own if name.startswith("order.")] == [packs.id for packs in found.packs.values()]
    needs = [share.id for of_jobs in found.shares.values() for share in of_jobs.values()]
    assert sorted(own) == sorted([*needs, *(packs.id for packs in found.packs.values())])
    assert len(own) < len(found.workings)
