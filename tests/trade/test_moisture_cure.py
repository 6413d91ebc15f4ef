"""Water for a blocked hardener and time to bring it, against figures worked out apart from the program, and what must hold of any."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.trade.moist_air import Air, vapour_pressure
from specgen.trade.moisture_cure import (
    carried_over,
    released_in_can,
    through_the_film,
    vapour_for_wait,
    waiting_time,
    water_demand,
)
from specgen.trade.times_between import Node, between
from specgen.trade.working import Working, WorkingError
from specgen.units.quantity import Quantity


def of(kind: str, number: float | str | Fraction, unit: str) -> Quantity:
    return Quantity.of(kind, Fraction(number), unit)


def film(number: float | Fraction) -> Quantity:
    return of("thickness", number, "um")


def kilopascal(number: float | str | Fraction) -> Quantity:
    return of("pressure", number, "kPa")


def hours(number: float | str | Fraction) -> Quantity:
    return of("duration", number, "h")


def degrees(number: float | str) -> Quantity:
    return of("temperature", number, "degC")


def vapour(temperature: int, humidity: int) -> Working:
    return vapour_pressure("p", Air(degrees(temperature), of("humidity", humidity, "%")))


def primer(thick: float | Fraction = 60) -> Working:
    """An epoxy of 1.8 g/mL dry, 40 % resin of 475 g for each equivalent, hardener one for one."""
    density, resin, weight = of("density", "1.8", "g/mL"), of("share", 40, "%"), of("molar_mass", 475, "g/mol")
    return water_demand("w", film(thick), density, resin, 1, weight, one_for_one=False)


def test_water_of_a_primer_by_hand() -> None:
    """60 · 1.8 · 0.40 = 43.2 g/m² of resin; · 9.0076 ÷ 475 = 0.819 g/m²."""
    assert float(primer().number) == pytest.approx(0.819, abs=0.001)


def test_an_aldimine_with_isocyanate_needs_twice_the_water() -> None:
    given_ = (film(50), of("density", "1.3", "g/mL"), of("share", 25, "%"), 1, of("molar_mass", 193, "g/mol"))
    two = water_demand("w", *given_, one_for_one=False).number
    assert water_demand("w", *given_, one_for_one=True).number / two == pytest.approx(2, abs=0.001)


@pytest.mark.parametrize(("pressure", "minutes", "slack"), [("1.1694", 18.1, 0.3), ("0.3684", 57.4, 1.0)])
def test_time_through_the_film(pressure: str, minutes: float, slack: float) -> None:
    """0.8192 g/m² over half of 60 um at 2·10⁻¹⁴ kg/(m s Pa) and 2.0·10⁻⁸ kg/(m² s Pa); still air, as taken here, is some 10 s slower."""
    found = through_the_film("t", primer(), film(60), kilopascal(pressure), polyurethane=False)
    assert float(found.number) == pytest.approx(minutes, abs=slack)


@pytest.mark.parametrize(
    ("temperature", "humidity", "thick", "factor"),
    [(20, 65, 50, 0.92), (10, 40, 50, 2.861), (30, 70, 50, 0.47), (23, 25, 50, 2.0), (23, 50, 100, 4.0)],
)
def test_carried_over_from_23_degrees_and_half_saturated(
    temperature: int, humidity: int, thick: int, factor: float
) -> None:
    found = carried_over("t", hours(1), film(50), vapour(23, 50), film(thick), vapour(temperature, humidity))
    assert float(found.number) == pytest.approx(60 * factor, rel=0.01)


@pytest.mark.parametrize(("parts", "share"), [(50, 2.6), (100, 5.3), (200, 10.5), (500, 26.4), (1000, 52.7)])
def test_hardener_released_in_the_can(parts: int, share: float) -> None:
    """320 g with 0.0674 mol of equivalents."""
    found = released_in_can("r", parts, of("mass", 320, "g"), Fraction("0.0674"))
    assert float(found.number) == pytest.approx(share, abs=0.05)


@given(st.integers(10, 200), st.integers(200, 4000), st.integers(200, 4000))
def test_time_and_vapour_pressure_give_one_product(thick: int, one: int, other: int) -> None:
    times = [
        through_the_film("t", primer(thick), film(thick), kilopascal(Fraction(pascal, 1000)), polyurethane=True).number
        * pascal
        for pascal in (one, other)
    ]
    assert times[0] == times[1]


@given(st.integers(10, 200), st.integers(10, 200))
def test_water_is_additive_over_coats(one: int, other: int) -> None:
    assert primer(one).number + primer(other).number == primer(one + other).number


@given(st.integers(15, 600), st.integers(300, 3000))
def test_at_the_vapour_pressure_wanted_the_wait_is_the_interval(minutes: int, pascal: int) -> None:
    wanted = of("duration", minutes, "min")
    pressure = kilopascal(Fraction(pascal, 1000))
    water = through_the_film("t", primer(), film(60), pressure, polyurethane=False)
    least = vapour_for_wait("p", waiting_time("wait", water), pressure, wanted)
    again = through_the_film("t", primer(), film(60), least, polyurethane=False)
    assert waiting_time("wait", again).number == minutes


def test_the_wait_is_never_shorter_than_drying() -> None:
    water = of("duration", 10, "min")
    assert waiting_time("w", water, of("duration", 90, "min")).number == 2 * 90
    assert waiting_time("w", water).number == 2 * 10


def test_water_taken_up_in_flight_shortens_the_time() -> None:
    whole = through_the_film("t", primer(), film(60), kilopascal(1), polyurethane=False).number
    half = through_the_film(
        "t", primer(), film(60), kilopascal(1), polyurethane=False, in_flight=of("share", 50, "%")
    ).number
    assert 2 * half == whole


def test_every_time_of_the_model_is_called_an_estimate() -> None:
    water = through_the_film("t", primer(), film(60), kilopascal(1), polyurethane=False)
    carried = carried_over("t", hours(1), film(50), kilopascal(1), film(60), kilopascal(1))
    for found in (water, carried, waiting_time("w", water), vapour_for_wait("v", water, kilopascal(1), hours(1))):
        assert "an estimate, not a property of the product" in found.note
        assert not found.source.basis.confirmed


NODES = (Node(degrees(10), hours(16)), Node(degrees(20), hours(8)), Node(degrees(30), hours(4)))


@pytest.mark.parametrize(("at", "expected"), [(10, 16), (15, 11.314), (20, 8), (23, 6.498), (30, 4)])
def test_between_stated_temperatures(at: int, expected: float) -> None:
    assert float(between("t", "interval", NODES, degrees(at)).number) == pytest.approx(expected, abs=0.001)


@pytest.mark.parametrize("at", [9, 31])
def test_nothing_outside_them(at: int) -> None:
    with pytest.raises(WorkingError):
        between("t", "interval", NODES, degrees(at))
