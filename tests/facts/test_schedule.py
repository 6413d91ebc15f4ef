"""Plans of the good specification: nights, week-ends, hourly air, sanding, loads, and what is told where there is none."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

import pytest

from specgen.facts.job.hourly_air import Hour, HourlyAir
from specgen.facts.job.plan import NoPlan, Plan, Step, spoken_step
from specgen.facts.job.schedule import schedule
from specgen.facts.layer.waits import wait_between
from specgen.units.quantity import Quantity, parse_quantity
from tests.good_spec import given, put, spec_of, take_out

JOB = "jobs.refit.schedule"
FRIDAY = "2026-11-27 14:00"


def planned(changes: dict[str, Any] | None = None, without: tuple[str, ...] = ()) -> Plan | NoPlan | tuple[Any, ...]:
    spec = given("scheduled")
    for path in without:
        take_out(spec, path)
    for path, value in (changes or {}).items():
        put(spec, path, value)
    whole = spec_of(spec)
    return schedule(whole.jobs["refit"], whole)


def plan(changes: dict[str, Any] | None = None) -> Plan:
    found = planned(changes)
    assert isinstance(found, Plan), found
    return found


def at(found: Plan, step: str, load: str = "cab") -> Step:
    return next(one for one in found.steps if one.load == load and spoken_step(one) == step)


def moment(text: str) -> datetime:
    return datetime.fromisoformat(text)


def test_by_hand() -> None:
    """Primer 07:00 to 08:00, 30 min to the base coat, 20 min to the clear coat, begun on quarters of an hour."""
    found = plan()
    assert at(found, "application of primer").start == moment("2026-11-30 07:00")
    assert at(found, "application of base").start == moment("2026-11-30 08:30")
    assert at(found, "application of clear").start == moment("2026-11-30 10:00")
    assert at(found, "application of primer").slack == timedelta(hours=23, minutes=30)


def test_friday_afternoon_survives_the_week_end() -> None:
    """Two hours are left on Friday: primer and base would be 65 h apart with a night between, and 24 h are allowed."""
    found = plan({f"{JOB}.starts": FRIDAY, f"{JOB}.working_hours.day.ends": "16:00"})
    primer, base = at(found, "application of primer"), at(found, "application of base")
    assert base.start - primer.end <= timedelta(hours=24)
    assert primer.start == moment("2026-11-30 07:00") or base.start.date() == primer.start.date()


def test_day_off() -> None:
    found = plan({f"{JOB}.days_off": "[2026-12-01]", f"{JOB}.times.clear.time": "5 h"})
    assert all(step.start.date() != moment("2026-12-01 00:00").date() for step in found.steps)


def test_service_waits_for_what_the_system_states() -> None:
    found = plan()
    cab = next(done for done in found.done if done.load == "cab")
    assert cab.service == cab.last_coat + timedelta(days=7)


def test_every_coat_reads_its_climate() -> None:
    found = plan({f"{JOB}.times.clear.time": "5 h"})
    clear = at(found, "application of clear")
    assert {clear.start, clear.start + timedelta(hours=4)} <= set(found.readings)


def test_two_bays_where_they_help_and_never_more_painters_than_there_are() -> None:
    one, two = plan(), plan({f"{JOB}.bays": "2", f"{JOB}.painters": "2"})
    assert max(step.end for step in two.steps) < max(step.end for step in one.steps)


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({f"{JOB}.starts": "2026-11-28 08:00"}, "nobody works on Saturday"),
        ({f"{JOB}.working_hours.day.ends": '"06:00"'}, "work ends at 06:00"),
        ({f"{JOB}.painters": "0"}, "there are no painters"),
        ({f"{JOB}.working_hours": "[]"}, "no working hours are stated"),
        ({f"{JOB}.loads": "[{id: a, items: [DOOR, WING]}, {id: b, items: [STEP]}]"}, "there is no item WING"),
        ({f"{JOB}.loads": "[{id: a, items: [DOOR, STEP]}]"}, "items of 2 systems"),
        ({f"{JOB}.loads": "[{id: a, items: [DOOR]}, {id: b, items: [DOOR, STEP]}]"}, "is in the load a already"),
        ({f"{JOB}.air": '[{id: h, begins: "2026-12-30 07:00", air: 20 degC}]'}, "the air is not stated for the start"),
        (
            {
                f"{JOB}.air": '[{id: g, begins: "2026-11-30 06:00", air: 20 degC}, {id: h, begins: "2026-11-30 08:00", air: 20 degC}]'
            },
            "does not follow on the one before",
        ),
        ({"jobs.refit.climate.air": "max 25 degC"}, "coldest and warmest air are not both stated"),
    ],
)
def test_told_with_its_place(changes: dict[str, Any], says: str) -> None:
    found = planned(changes)
    assert isinstance(found, tuple)
    assert any(says in fault.what for fault in found)
    assert all(fault.at[0] == "jobs" for fault in found)


def test_missing_time_of_a_step() -> None:
    found = planned(without=(f"{JOB}.times.base",))
    assert isinstance(found, tuple)
    assert [fault.what for fault in found] == ["the time of application of base is not stated"]


def test_conflict_names_both_steps() -> None:
    found = planned({f"{JOB}.times.prime.time": "9 h", "systems.cab.layers.primer.overcoat_interval": "30 min..10 h"})
    assert isinstance(found, NoPlan)
    assert (found.before, found.after) == ("application of primer", "application of base")
    assert any("abrade" in way for way in found.resolves)


def hour(air: int, humidity: int = 50) -> Hour:
    return Hour(Quantity.of("temperature", air, "degC"), Quantity.of("humidity", humidity, "%"))


def by_air(minutes: dict[int, int]) -> Any:
    return lambda one: minutes.get(int(one.air.to("degC")))


def test_minimum_from_the_coldest_hour_maximum_from_the_warmest() -> None:
    air = HourlyAir((hour(20), hour(10), hour(20), hour(20), hour(30), hour(20)))
    assert air.first_after(0, by_air({20: 90, 10: 150, 30: 60})) == 150
    assert air.first_after(120, by_air({20: 90, 10: 150, 30: 60})) == 210
    assert air.last_after(0, by_air({20: 600, 10: 900, 30: 250})) == 250
    assert air.last_after(0, by_air({20: 100, 10: 900, 30: 250})) == 100


def test_nothing_stated_for_an_hour_is_no_minimum() -> None:
    air = HourlyAir((hour(20), hour(2), hour(20)))
    assert air.first_after(0, by_air({20: 90})) is None


def test_cure_adds_up_over_cold_and_warm_hours() -> None:
    """Half of 120 min at 20 °C, then 60 min at 10 °C as a quarter of 240, then the last quarter at 20 °C: 150 min."""
    air = HourlyAir((hour(20), hour(10), hour(20), hour(20)))
    assert air.gathered_after(0, by_air({20: 120, 10: 240})) == 150
    assert air.gathered_after(0, by_air({20: 120})) == 60 + 60 + 60


def test_dry_air_lengthens_a_wait_and_moist_air_never_shortens_it() -> None:
    """Half an hour stated at 15 °C, 60 % and 50 um for 50 um: 40 % makes it 45 min, 90 % leaves it."""
    spec = given("good")
    put(spec, "products.primer.overcoat.any-warm.humidity", "60 %")
    put(spec, "products.primer.overcoat.any-warm.film", "60 um")
    whole = spec_of(spec)
    cab = whole.systems["cab"]
    air = parse_quantity("temperature", "15 degC")
    found = [
        wait_between(cab, cab.layers[0], cab.layers[1], whole, air, parse_quantity("humidity", humidity)).wait
        for humidity in ("60 %", "40 %", "90 %")
    ]
    assert [float(time.to("min")) for time in found if isinstance(time, Quantity)] == pytest.approx([30, 45, 30])


def test_washed_parts_dry_before_the_first_coat() -> None:
    """Washing until 08:00, 50 min to dry, the primer from the next quarter of an hour on."""
    found = plan({f"{JOB}.times.wash": "{id: wash, work: preparation, time: 1 h, dries_for: 50 min}"})
    assert at(found, "application of primer").start == moment("2026-11-30 09:00")


def test_a_coat_states_no_drying_time_of_its_own() -> None:
    (fault,) = planned({f"{JOB}.times.prime.dries_for": "1 h"})
    assert fault.at == ("jobs", "refit", "schedule", "times", "prime", "dries_for")


@pytest.mark.parametrize(
    ("changes", "step", "why"),
    [
        ({}, "application of primer", ""),
        ({f"{JOB}.starts": "2026-11-30 05:00"}, "application of primer", "for working hours"),
        ({f"{JOB}.starts": "2026-11-30 15:30"}, "application of primer", "for 60 min of working time in one piece"),
        ({f"{JOB}.starts": FRIDAY, "systems.cab.layers.primer.overcoat_interval": "90 min..24 h"}, "application of primer", "finds working time within its interval"),
        ({f"{JOB}.times.prime.time": "5 h"}, "application of primer", ""),
    ],
)  # fmt: skip
def test_why_a_step_does_not_begin_earlier(changes: dict[str, str], step: str, why: str) -> None:
    told = at(plan(changes), step).held_up
    assert why in told
    assert bool(told) == bool(why)


def test_a_coat_waits_for_air_within_its_limits() -> None:
    """The surface is 9 °C from 07:00 to 08:00, and the primer asks for 10 °C at least; after the last stated hour nothing is planned."""
    spec = given("hourly")
    put(spec, f"{JOB}.air.h0.air", "12 degC")
    put(spec, "jobs.refit.climate.air", "10..25 degC")
    put(spec, f"{JOB}.air.h0.surface", "9 degC")
    whole = spec_of(spec)
    found = schedule(whole.jobs["refit"], whole)
    assert isinstance(found, Plan), found
    primer = at(found, "application of primer")
    assert primer.start == moment("2026-11-30 08:00")
    assert "for air within its limits, for before the surface is 9 degC" in primer.held_up
    whole = spec_of(spec | {})
    late = schedule(whole.jobs["refit"], whole, moment("2026-12-02 18:00"))
    assert isinstance(late, NoPlan)


def test_no_plan_tells_the_air_that_stands_in_its_way() -> None:
    spec = given("hourly")
    put(spec, "jobs.refit.climate.humidity", "60..75 %")
    whole = spec_of(spec)
    found = schedule(whole.jobs["refit"], whole)
    assert isinstance(found, NoPlan)
    assert "Mon 2026-11-30 07:00: the air is at 55 %, and refit asks for 60 % at least" in found.why


def test_what_a_step_waits_for_is_told() -> None:
    found = plan({f"{JOB}.days_off": "[2026-12-01]", f"{JOB}.times.clear.time": "5 h", f"{JOB}.times.base.time": "5 h"})
    assert at(found, "application of base").held_up.startswith("for the overcoating interval of primer, until ")
    assert any("no work on Tue 2026-12-01" in step.held_up for step in found.steps)


def test_a_load_waits_for_its_bay_or_for_the_painters() -> None:
    both = {f"{JOB}.loads": "[{id: skins, items: [DOOR]}, {id: tubes, items: [STEP]}]"}
    one = [step.held_up for step in plan(both).steps if step.load == "tubes"]
    assert any("for bay 1 to be free" in why for why in one)
    two = [step.held_up for step in plan({**both, f"{JOB}.bays": "2"}).steps if step.held_up]
    assert any("for the painters" in why for why in two)
