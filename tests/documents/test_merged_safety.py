"""Safety said once for all products of a job: nothing that a product states is lost by merging."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

import pytest

from specgen.documents.method_statement.view import method_statement
from specgen.documents.parts.caution_catalogue import NO_FIRST_AID
from specgen.documents.parts.short_names import apart, short_names
from specgen.documents.parts.tables import TableView
from specgen.facts.product.protection import worn
from specgen.model.job import Job
from specgen.model.parse import load
from specgen.model.spec import Spec
from tests.documents.conftest import context
from tests.good_spec import DEMO, ON, good, put, spec_of


def _specs() -> Iterator[Spec]:
    for spec in (spec_of(good()), load(DEMO).spec):
        assert spec is not None
        yield spec


JOBS = [(job, spec) for spec in _specs() for job in spec.jobs.values()]


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _texts(getattr(value, field.name))
    elif isinstance(value, tuple):
        for entry in value:
            yield from _texts(entry)


def _stated(job: Job, spec: Spec) -> Iterator[tuple[str, str]]:
    """(product, what its data state of hazards) for all that has to stand in the section."""
    for product in spec.products_of(job):
        stated = product.hazards
        assert stated is not None
        for code in (*stated.statements, *stated.supplemental, *stated.precautions):
            yield product.name, code
        for caution in stated.cautions:
            yield product.name, caution.text
        for act in stated.first_aid:
            yield product.name, act.action
        for kit in worn(product):
            for text in (kit.respiratory, kit.gloves, kit.eyes, kit.skin):
                if text:
                    yield product.name, text
        for text in (stated.ventilation, stated.disposal, *stated.waste_codes, *stated.named_on_label):
            if text:
                yield product.name, text


@pytest.mark.parametrize(("job", "spec"), JOBS, ids=[job.id for job, _ in JOBS])
def test_nothing_a_product_states_is_lost(job: Job, spec: Spec) -> None:
    """Each text stands in a row or a line of a cell that names its product, or that is for all."""
    merged = method_statement(job, context(spec, day=ON)).safety.merged
    short = short_names([_cell(merged.products, row, "Product") for row in merged.products.rows])
    said = [
        (whose, line)
        for table in (merged.statements, merged.first_aid, merged.rules, merged.protection)
        for row in table.rows
        for cell in row
        for line in cell.replace("\N{NO-BREAK SPACE}", " ").split("\n")
        for whose in (_cell(table, row, "Products") or line.partition(":")[0],)
    ]
    stated = [(product, text.replace("\N{NO-BREAK SPACE}", " ")) for product, text in _stated(job, spec)]
    lost = [
        (product, text)
        for product, text in stated
        if not any(text in line and _is_for(short, short[product], whose) for whose, line in said)
    ]
    assert stated
    assert lost == []


def _cell(table: TableView, row: tuple[str, ...], heading: str) -> str:
    return next((cell for column, cell in zip(table.columns, row, strict=True) if column.heading == heading), "")


def _is_for(short: dict[str, str], name: str, whose: str) -> bool:
    """Whether a row for `whose` is for the product; a cell that names none is for all."""
    named = set(whose.split(", "))
    return whose == "all" or name in named or not named <= set(short.values())


def test_a_row_names_those_it_is_for() -> None:
    spec = spec_of(good())
    merged = method_statement(spec.jobs["refit"], context(spec, day=ON)).safety.merged
    assert [(row[0], row[1].replace("\n", " ").split(" ")[0]) for row in merged.statements.rows] == [
        ("all", "H319"),
        ("primer, base coat, clear", "H222"),
        ("primer, clear, barrier", "H317"),
        ("primer, barrier", "EUH205"),
        ("base coat", "H336"),
        ("clear", "EUH204"),
        ("barrier", "H226"),
    ]
    rules = [(row[0], row[1]) for row in merged.rules.rows]
    assert ("Clean-up", "all") in rules
    assert ("Health surveillance", "clear") in rules
    hands = {row[0]: row[2] for row in merged.protection.rows}["Clean-up"].split("\n")
    assert hands[0].startswith("primer, base coat, barrier: nitrile gloves")
    assert hands[1].startswith("clear: ")


@pytest.mark.parametrize(
    ("names", "shown"),
    [
        (["Fenn 210 epoxy primer", "Fenn 230 surfacer"], ["210", "230"]),
        (["Fenn 210 primer", "Fenn 210 surfacer"], ["primer", "surfacer"]),
        (["Fenn red primer", "Fenn 230 surfacer"], ["red primer", "230"]),
        (["Fenn 210 primer", "Fenn thinner 90"], ["210", "thinner 90"]),
        (["Fenn", "Fenn 230"], ["Fenn", "Fenn 230"]),
        (["Fenn 210 primer"], ["Fenn 210 primer"]),
        (["thinner 7", "Fenn 230"], ["thinner 7", "Fenn 230"]),
    ],
)
def test_short_names_stay_apart(names: list[str], shown: list[str]) -> None:
    assert list(short_names(names).values()) == shown


def test_first_aid_nobody_states_is_told() -> None:
    spec = good()
    put(spec, "products.primer.hazards.first_aid", "[{id: eyes, route: eyes, action: Rinse for a quarter of an hour.}]")
    whole = spec_of(spec)
    rows = method_statement(whole.jobs["refit"], context(whole, day=ON)).safety.merged.first_aid.rows
    assert [row for row in rows if NO_FIRST_AID in row] == [("any", "base coat, clear, barrier", NO_FIRST_AID)]


def test_a_cleaner_may_be_graver_than_every_product() -> None:
    spec = good()
    for product in ("primer", "base", "clear", "barrier"):
        put(spec, f"products.{product}.hazards.signal_word", "Warning")
    put(
        spec,
        "jobs.refit.consumption.supplies",
        "[{id: wipe, what: degreaser, amount: 2 L, kind: cleaner, statements: [H225, H304], gloves: nitrile 0.4 mm}]",
    )
    whole = spec_of(spec)
    merged = method_statement(whole.jobs["refit"], context(whole, day=ON)).safety.merged
    assert (merged.word, merged.level) == ("Danger", "danger")


def test_first_aid_beside_a_cleaner_names_the_products_it_is_for() -> None:
    spec = good()
    put(
        spec,
        "jobs.refit.consumption.supplies",
        "[{id: wipe, what: degreaser, amount: 2 L, kind: cleaner, statements: [H225, H304], gloves: nitrile 0.4 mm}]",
    )
    whole = spec_of(spec)
    table = method_statement(whole.jobs["refit"], context(whole, day=ON)).safety.merged.first_aid
    owners = [_cell(table, row, "Products") for row in table.rows]
    assert "all" not in owners
    assert owners[-1].endswith("degreaser")
    assert table.rows[-1][-1] == NO_FIRST_AID


def test_names_that_hold_a_comma_are_told_apart_by_semicolons() -> None:
    assert apart(["520", "410"]) == "520, 410"
    assert apart(["520", "thinner 90, 1 L can", "degreaser"]) == "520; thinner 90, 1 L can; degreaser"
