"""The window that holds between two coats: one answer for the hold that is judged and for the late remedy that is printed."""

from __future__ import annotations

import pytest

from specgen.documents.method_statement.view import MethodStatement, method_statement
from specgen.documents.parts.application import application_at
from specgen.documents.parts.wording import Words
from specgen.facts.layer.intervals import air_of, airs_of, coldest_air, interval, warmest_air
from specgen.facts.product.drying import Unstated, drying_at, earliest, longest, sandable_at
from specgen.model.drying import Drying, DryingStage, SandableAfter
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH
from specgen.units.quantity import Quantity, parse_quantity
from tests.documents.conftest import context
from tests.good_spec import checked, good_with, spec_of

TWICE = (
    "[{id: first, role: primer, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um},"
    " coats: 1, overcoat_interval: 8 h..48 h},"
    " {id: second, role: topcoat, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um},"
    " coats: 1}]"
)
ANY_AND_ITSELF = (
    "[{id: any, next_coat: any, interval: 6 h..24 h, air: 10 degC, if_exceeded: Abrade with P240.},"
    " {id: again, next_coat: itself, interval: 8 h..72 h, air: 10 degC, if_exceeded: Abrade with P400.}]"
)
WARM_FIRST = (
    "[{id: warm, next_coat: any, interval: 20 min..16 h, air: 20 degC, if_exceeded: Abrade with P240.},"
    " {id: cold, next_coat: any, interval: 30 min..24 h, air: 10 degC, if_exceeded: Abrade with P400.}]"
)
# a second job with the same system in warmer air
WARM_JOB = (
    "{id: warm, document: {number: MS-002, title: Step, owner: Technical desk}, scope: Repainting of steps.,"
    " vehicles: [T-03], call: {name: Technical desk, phone: '+00 000 000'},"
    " substrate: {material: steel_cold_rolled, thickness: 1.5 mm, condition: bare and free of rust},"
    " preparation: sand-steel, system: cab, items: [{id: DOOR, name: Door, count: 1, area: 1 m2}],"
    " climate: {air: 20..25 degC, surface: 20..30 degC, humidity: 40..75 %, dew_point_margin: min 3 K},"
    " consumption: {transfer_efficiency: 60 %}}"
)


def _spec(changes: dict[str, str]) -> Spec:
    source = good_with(changes)
    return spec_of(source)


def _said(changes: dict[str, str]) -> list[str]:
    source = good_with(changes)
    return [finding.what for finding in checked(source).report if finding.id == "LAY006"]


def _statement(spec: Spec, job: str = "refit") -> MethodStatement:
    return method_statement(spec.jobs[job], context(spec))


def _late(statement: MethodStatement, build: int = 0) -> str:
    """What is printed for the first wait between two coats."""
    coats = statement.builds[build].coats
    at = [column.heading for column in coats.columns].index("If exceeded")
    return next(row[at] for row in coats.rows if row[0] != "preparation")


def test_of_one_product_twice_the_window_for_itself_is_judged_and_printed() -> None:
    changes = {"systems.chassis.layers": TWICE, "products.barrier.overcoat": ANY_AND_ITSELF}
    statement = _statement(_spec(changes))
    assert _said(changes) == []  # 48 h lie inside 72 h, not inside 24 h
    assert _late(statement, 1) == "Abrade with P400."
    assert statement.repair is not None
    assert statement.repair.coats[1].rows[1][1] == "P400"
    assert "If the maximum interval is exceeded: Abrade with P400." in statement.builds[1].between[0].steps[0].text


def test_without_a_window_for_itself_that_for_any_holds() -> None:
    only_any = ANY_AND_ITSELF.partition(", {id: again")[0] + "]"
    only_any = only_any.replace("6 h..24 h", "6 h..48 h")
    changes = {"systems.chassis.layers": TWICE, "products.barrier.overcoat": only_any}
    assert _said(changes) == []
    assert _late(_statement(_spec(changes)), 1) == "Abrade with P240."


@pytest.mark.parametrize(
    ("air", "late", "judged"),
    [
        ("10..25 degC", "Abrade with P400.", []),
        ("19..25 degC", "Abrade with P400.", []),
        (
            "20..25 degC",
            "Abrade with P240.",
            [
                "the interval 30 min..24 h between primer and base is outside the overcoating interval of the product primer, 20 min..16 h at 20 degC"
                " (used for the coldest air, 20 degC)"
            ],
        ),
    ],
)
def test_of_two_temperatures_the_one_that_holds_is_judged_and_printed(air: str, late: str, judged: list[str]) -> None:
    changes = {"products.primer.overcoat": WARM_FIRST, "jobs.refit.climate.air": air}
    assert _said(changes) == judged
    assert _late(_statement(_spec(changes))) == late


def test_each_job_has_its_window() -> None:
    changes = {"products.primer.overcoat": WARM_FIRST, "jobs.warm": WARM_JOB}
    spec = _spec(changes)
    assert (_late(_statement(spec)), _late(_statement(spec, "warm"))) == ("Abrade with P400.", "Abrade with P240.")
    assert _said(changes) == [
        "the interval 30 min..24 h between primer and base is outside the overcoating interval of the product primer, 20 min..16 h at 20 degC"
        " (used for the coldest air, 20 degC)"
    ]
    assert [str(air) for air in airs_of(spec.systems["cab"], spec)] == ["15 degC", "20 degC"]


def test_without_an_air_the_coldest_window_holds() -> None:
    spec = _spec({"products.primer.overcoat": WARM_FIRST})
    below, above = spec.systems["cab"].layers[:2]
    held = interval(below, above, spec, None)
    assert held.window is not None
    assert (held.window.id, held.late) == ("cold", "Abrade with P400.")
    assert air_of(spec.jobs["refit"]) == Quantity.of("temperature", 15, "degC")


def test_own_word_of_the_system_goes_before_the_window() -> None:
    changes = {"products.primer.overcoat": WARM_FIRST, "systems.cab.layers.primer.if_exceeded": "Sand with P320."}
    assert _late(_statement(_spec(changes))) == "Sand with P320."


def test_what_another_window_says_is_not_printed_for_this_one() -> None:
    silent = WARM_FIRST.replace(", if_exceeded: Abrade with P400.", "")
    assert _late(_statement(_spec({"products.primer.overcoat": silent}))) == "–"


@pytest.mark.parametrize(
    ("changes", "allowed"),
    [
        ({}, "30 min..24 h"),
        ({"systems.cab.layers.primer.abraded_with": "P400"}, "min 30 min"),
        ({"systems.cab.layers.base.tie_coat": "yes"}, "min 30 min"),
    ],
)
def test_an_abraded_coat_and_a_tie_coat_may_be_late(changes: dict[str, str], allowed: str) -> None:
    spec = _spec(changes)
    below, above = spec.systems["cab"].layers[:2]
    assert str(interval(below, above, spec, None).allowed) == allowed


def test_drying_is_chosen_as_a_window_is() -> None:
    stages = (
        "[{id: warm, stage: dust-free, time: 20 min, air: 20 degC}, {id: cold, stage: dust-free, time: 40 min, air: 10 degC},"
        " {id: hand, stage: dry-to-handle, time: 2 h, air: 25 degC}]"
    )
    product = _spec({"products.primer.drying": stages}).products["primer"]
    chosen = {air: _named(drying_at(product, Quantity.of("temperature", air, "degC"))) for air in (5, 15, 20, 25, 30)}
    assert chosen == {
        5: ["dust-free not stated for 5 degC", "dry-to-handle not stated for 5 degC"],
        15: ["cold", "dry-to-handle not stated for 15 degC"],
        20: ["warm", "dry-to-handle not stated for 20 degC"],
        25: ["warm", "hand"],
        30: ["warm", "hand"],
    }
    assert _named(drying_at(product, None)) == ["warm", "cold", "hand"]


def test_the_earliest_time_is_that_of_the_air_or_not_known() -> None:
    stages = (
        "[{id: warm, stage: dust-free, time: 20..30 min, air: 20..30 degC},"
        " {id: hand, stage: dry-to-handle, time: 2 h, air: 25 degC}]"
    )
    product = _spec({"products.primer.drying": stages}).products["primer"]
    at = {air: earliest(product, DryingStage.DUST_FREE, Quantity.of("temperature", air, "degC")) for air in (19, 20)}
    assert isinstance(at[19], Unstated)
    assert (str(at[19].stated_at), str(at[19].time)) == ("20 degC", "30 min")
    assert at[20] is product.drying[0]
    assert str(longest(product.drying[0])) == "30 min"
    assert earliest(product, DryingStage.THROUGH, Quantity.of("temperature", 20, "degC")) is None
    assert earliest(product, DryingStage.DUST_FREE, None) is None


def test_a_time_for_warmer_air_is_never_printed_as_if_it_held() -> None:
    spec = _spec(
        {
            "products.clear.drying": "[{id: hand, stage: dry-to-handle, time: 10 h, air: 20 degC}]",
            "products.primer.sandable_after": "[{id: wet, sanding: wet, time: 3 h, air: 20 degC}]",
            "project.second_units": "{film: mil}",
        }
    )
    words = Words.of(spec.project, ENGLISH)
    printed = {
        product.name: dict(application_at(product, spec.jobs["refit"], words).drying)
        for product in spec.products.values()
    }
    assert printed["Example clear"] == {"dry to handle": "not stated for 15\N{NO-BREAK SPACE}°C"}
    assert "not stated for 15\N{NO-BREAK SPACE}°C" in printed["Example primer"].values()


def _named(found: tuple[Drying | SandableAfter | Unstated, ...]) -> list[str]:
    return [f"{one.kind} not stated for {one.air}" if isinstance(one, Unstated) else one.id for one in found]


def test_coldest_and_warmest_air_are_those_of_all_jobs_that_state_one() -> None:
    two = _spec({"jobs.warm": WARM_JOB})
    one = spec_of(good_with({"jobs.warm": WARM_JOB}, ["jobs.refit.climate.air"]))
    none = spec_of(good_with({}, ["jobs.refit.climate.air"]))
    shown = [
        [None if air is None else str(air) for air in (coldest_air(system, spec), warmest_air(system, spec))]
        for spec in (two, one, none)
        for system in [spec.systems["cab"]]
    ]
    assert shown == [["15 degC", "25 degC"], ["20 degC", "25 degC"], [None, None]]


@pytest.mark.parametrize(
    ("air", "chosen"),
    [
        ("9 degC", ["dry not stated for 9 degC", "wet not stated for 9 degC"]),
        ("14 degC", ["cold", "wet not stated for 14 degC"]),
        ("15 degC", ["band", "wet not stated for 15 degC"]),
        ("24 degC", ["band", "wet"]),
    ],
)
def test_the_time_before_sanding_is_that_of_the_coldest_air_and_a_band_holds_from_its_lower_end(
    air: str, chosen: list[str]
) -> None:
    entries = (
        "[{id: band, sanding: dry, time: 3..4 h, air: 15..25 degC}, {id: wet, sanding: wet, time: 16 h, air: 20 degC},"
        " {id: cold, sanding: dry, time: 9 h, air: 10 degC}]"
    )
    product = _spec({"products.primer.sandable_after": entries}).products["primer"]
    assert sorted(_named(sandable_at(product, parse_quantity("temperature", air)))) == sorted(chosen)
    assert _named(sandable_at(product, None)) == ["band", "wet", "cold"]
