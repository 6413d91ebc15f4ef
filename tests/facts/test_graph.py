"""What rests on what is one relation read both ways: against brute force, on the demo and on specifications drawn at random."""

from __future__ import annotations

import copy
import random
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from specgen.comparison.reach import jobs_reached, reached
from specgen.facts.closure import cut_to_closure
from specgen.facts.graph import (
    PROJECT,
    Address,
    address_of,
    closure,
    document_closure,
    document_reach,
    links_from,
    reach,
)
from specgen.facts.placing import items_painted_with, items_prepared_with
from specgen.facts.usage import Use, uses_of_record
from specgen.model.parse import load
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import leaves
from tests.good_spec import DEMO, GOOD, good, loaded, put, take_out


def _parsed(sources: dict[str, Any]) -> Spec:
    read = loaded(sources)
    assert read.spec is not None
    assert read.findings == []
    return read.spec


def _loaded(folder: Path) -> Spec:
    spec = load(folder).spec
    assert spec is not None
    return spec


def _drawn(seed: int) -> Spec:
    """Several jobs, systems, preparations and products that name each other at random."""
    draw = random.Random(seed)
    sources = good()

    def copies(kind: str, number: int) -> list[dict[str, Any]]:
        made = [copy.deepcopy(draw.choice(sources[kind])) | {"id": f"{kind}-{n}"} for n in range(number)]
        return [{key: value for key, value in one.items() if key != "waivers"} for one in made]

    products, preparations = copies("products", draw.randint(3, 9)), copies("preparations", draw.randint(1, 4))
    systems, jobs = copies("systems", draw.randint(1, 5)), copies("jobs", draw.randint(1, 5))

    def one_of(entries: list[dict[str, Any]]) -> str:
        return str(draw.choice(entries)["id"])

    for product in products:
        names = ["any", "itself", "elsewhere", *(one["id"] for one in products)]
        product["overcoat"] = [
            {"id": f"w{n}", "next_coat": draw.choice(names), "interval": "1 h..24 h", "air": f"{10 + n} degC"}
            for n in range(draw.randint(0, 3))
        ]
    for system in systems:
        system["layers"] = [
            {key: value for key, value in layer.items() if key != "variant"} | {"product": one_of(products)}
            for layer in system["layers"]
        ]
    for job in jobs:
        for owner in (job, *(job.setdefault("items", []))):
            owner.pop("system", None)
            owner.pop("preparation", None)
        job["items"] = [
            {**draw.choice(job["items"]), "id": f"I{n}"}
            | ({"system": one_of(systems)} if draw.random() < 0.4 else {})
            | ({"preparation": one_of(preparations)} if draw.random() < 0.4 else {})
            for n in range(draw.randint(1, 4))
        ]
        if draw.random() < 0.7:
            job["system"], job["preparation"] = one_of(systems), one_of(preparations)
        lines = [{"id": f"o{n}", "product": one_of(products), "packs": "2"} for n in range(draw.randint(0, 2))]
        job["consumption"] = dict(job.get("consumption") or {}) | {"ordered": lines}
        job["inspection"] = []
    made = {"products": products, "preparations": preparations, "systems": systems, "jobs": jobs}
    return _parsed({"project": sources["project"]} | made)


@cache
def _named(name: str) -> Spec:
    folder = {"good": GOOD, "demo": DEMO}.get(name)
    return _loaded(folder) if folder is not None else _drawn(int(name.removeprefix("seed ")))


@pytest.fixture(params=["good", "demo", *(f"seed {seed}" for seed in range(25))])
def spec(request: pytest.FixtureRequest) -> Spec:
    """Read when the first test asks for it, and kept."""
    return _named(request.param)


def _addresses(spec: Spec) -> list[Address]:
    return [PROJECT, *((kind, key) for kind in LIST_KINDS for key in getattr(spec, kind))]


def _by_brute_force(spec: Spec, begin: Address) -> set[Address]:
    """Every leaf that refers, asked again until nothing new comes."""
    found, before = {begin, PROJECT}, 0
    while len(found) != before:
        before = len(found)
        for kind, key in [one for one in found if one != PROJECT]:
            record = getattr(spec, kind)[key]
            found |= {(said.refers, str(value)) for _, value, said in leaves(record) if said.refers in LIST_KINDS}
    return found


def test_closure_is_what_naming_gives_in_the_end(spec: Spec) -> None:
    for address in _addresses(spec):
        assert closure(spec, address) == _by_brute_force(spec, address), address


def test_both_ways_are_one_relation(spec: Spec) -> None:
    every = _addresses(spec)
    for whole, back in ((closure, reach), (document_closure, document_reach)):
        down = {(one, other) for one in every for other in whole(spec, one)}
        up = {(one, other) for other in every for one in back(spec, other)}
        assert down == up


def test_what_is_placed_and_listed_is_of_the_same_relation(spec: Spec) -> None:
    for kind, items_with in (("systems", items_painted_with), ("preparations", items_prepared_with)):
        for key, record in getattr(spec, kind).items():
            got = [
                (job.id, item.id)
                for job in spec.jobs.values()
                for item in job.items
                if (getattr(item, kind[:-1]) or getattr(job, kind[:-1])) == key
            ]
            assert [(job.id, item.id) for job, item in items_with(record, spec)] == got
    for address in _addresses(spec)[1:]:
        listed = {tuple(use.address.split(".")) for use in uses_of_record(spec, *address)}
        assert listed == document_reach(spec, address) - {address}
        assert jobs_reached(spec, {address}) == {key for kind, key in reach(spec, address) if kind == "jobs"}
        if address[0] != "jobs":
            assert len(reached(spec, address)) == len(jobs_reached(spec, {address}))
    assert jobs_reached(spec, {("project", "page_size")}) == set(spec.jobs)


def test_a_part_is_a_specification_with_the_same_links(spec: Spec) -> None:
    for subject in (*spec.jobs.values(), *spec.products.values()):
        kind = "jobs" if subject.id in spec.jobs and spec.jobs[subject.id] is subject else "products"
        part = cut_to_closure(spec, subject)
        assert set(_addresses(part)) == document_closure(spec, (kind, subject.id))
        for address in _addresses(part):
            assert links_from(part, address) == links_from(spec, address)


def _placed_by_item(sources: dict[str, Any]) -> Spec:
    """The job names the system `cab`, and the one item left overrides it."""
    take_out(sources, "jobs.refit.items.DOOR")
    put(sources, "jobs.refit.items.STEP.system", "chassis")
    put(sources, "jobs.refit.system", "cab")
    put(sources, "jobs.refit.inspection", "[]")
    return _parsed(sources)


def test_a_system_that_every_item_overrides_is_named_and_got_by_nobody() -> None:
    spec = _placed_by_item(good())
    assert items_painted_with(spec.systems["cab"], spec) == ()
    assert uses_of_record(spec, "systems", "cab") == [Use("jobs.refit", ("system",))]
    assert uses_of_record(spec, "systems", "chassis") == [Use("jobs.refit", ("items.STEP",))]
    assert [one.items for one in reached(spec, ("systems", "cab"))] == [()]
    # and the document cannot be read without it
    assert set(cut_to_closure(spec, spec.jobs["refit"]).systems) == {"cab", "chassis"}


def test_an_inherited_preparation_stands_at_the_items_that_get_it() -> None:
    spec = _parsed(good())
    assert spec.jobs["refit"].preparation == "sand-steel"
    assert uses_of_record(spec, "preparations", "sand-steel") == [Use("jobs.refit", ("items.DOOR", "items.STEP"))]


def test_a_product_that_is_only_ordered_reaches_the_job() -> None:
    sources = good()
    spare = dict(sources["products"][0]) | {"id": "spare", "overcoat": []}
    spare.pop("document", None)
    sources["products"].append(spare)
    put(sources, "jobs.refit.consumption.ordered", "[{id: spare, product: spare, packs: 3}]")
    spec = _parsed(sources)
    assert uses_of_record(spec, "products", "spare") == [Use("jobs.refit", ("consumption.ordered.spare",))]
    assert jobs_reached(spec, {("products", "spare", "name")}) == {"refit"}


def test_a_product_named_in_a_window_only_is_told_of_by_the_sheet_and_rests_under_no_job() -> None:
    sources = good()
    spare = dict(sources["products"][0]) | {"id": "spare"}
    spare["overcoat"] = [{"id": "w", "next_coat": "clear", "interval": "1 h..24 h", "air": "20 degC"}]
    spare.pop("document", None)
    sources["products"].append(spare)
    put(sources, "products.base.overcoat", "[{id: s, next_coat: spare, interval: 1 h..24 h, air: 20 degC}]")
    spec = _parsed(sources)
    assert uses_of_record(spec, "products", "spare") == [
        Use("products.base", ("overcoat.s",)),
        Use("products.clear", ("products.spare.overcoat.w",)),
    ]
    assert "spare" not in cut_to_closure(spec, spec.jobs["refit"]).products
    assert set(cut_to_closure(spec, spec.products["base"]).products) == {"base", "spare"}
    assert jobs_reached(spec, {("products", "spare")}) == set()


def test_a_sheet_tells_of_the_coats_on_the_panels_behind_its_claims() -> None:
    spec = _loaded(DEMO)
    clear, base = spec.products["clear-430"], spec.products["base-420"]
    sheets = {use.address: use.through for use in uses_of_record(spec, "products", base.id)}
    assert sheets["products.clear-430"]
    assert set(sheets["products.clear-430"]) <= {f"claims.{claim.id}.evidence" for claim in clear.claims}
    assert base.id in cut_to_closure(spec, clear).products
    # the clearcoat is on no panel that the basecoat's sheet prints
    assert clear.id not in cut_to_closure(spec, base).products


def test_a_neighbour_in_a_sheet_comes_with_the_reports_it_rests_on() -> None:
    spec = _loaded(DEMO)
    topcoat = cut_to_closure(spec, spec.products["topcoat-410"])
    assert "primer-210" in topcoat.products
    behind = {claim.evidence.report for claim in spec.products["primer-210"].claims if claim.evidence is not None}
    assert behind
    assert behind <= set(topcoat.reports)


@pytest.mark.parametrize(
    ("path", "address"),
    [
        ("systems.cab.layers.primer", ("systems", "cab")),
        ("jobs.refit", ("jobs", "refit")),
        ("project.maker", PROJECT),
        ("jobs", PROJECT),
        ("", PROJECT),
    ],
)
def test_where_a_path_stands(path: str, address: Address) -> None:
    assert address_of(path.split(".")) == address
