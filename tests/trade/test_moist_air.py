"""Moist air against two outside libraries over a whole grid, two printed dew-point tables, and what must hold of any air."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.trade.moist_air import (
    Air,
    absolute_humidity,
    dew_point,
    dew_point_over_water,
    humidity_ratio,
    margin,
    pressure_of,
    relative_humidity,
    vapour_pressure,
    wet_bulb,
)
from specgen.trade.working import WorkingError
from specgen.units.quantity import Quantity

SEA_LEVEL = 101_325
PRINTED = Path(__file__).parent / "data" / "dew_points.csv"

psychrolib.SetUnitSystem(psychrolib.SI)


def degrees(number: float | Fraction, unit: str = "degC") -> Quantity:
    return Quantity.of("temperature", Fraction(number), unit)


def per_cent(number: float | Fraction) -> Quantity:
    return Quantity.of("humidity", Fraction(number), "%")


def air(temperature: float | Fraction, humidity: float | Fraction) -> Air:
    return Air(degrees(temperature), per_cent(humidity))


def dew(temperature: float, humidity: float) -> Fraction:
    return dew_point("dew", vapour_pressure("vapour", air(temperature, humidity))).number


@pytest.mark.parametrize("temperature", range(0, 41, 2))
def test_grid_against_two_libraries(temperature: int) -> None:
    """Dew or frost point to 0.1 K, absolute humidity and ratio to 0.8 %, wet bulb to 0.1 K, to 0.6 K where ice and water both hold."""
    # whoever collects the tests need not wait for it: a tenth of the time goes into this import
    from CoolProp.HumidAirProp import HAPropsSI

    for humidity in range(20, 100, 5):
        share = humidity / 100
        pressure = vapour_pressure("vapour", air(temperature, humidity))
        given = dict(zip(("T", "P", "R"), (temperature + 273.15, SEA_LEVEL, share), strict=True))
        real = {
            name: HAPropsSI(name, *(part for item in given.items() for part in item)) for name in ("D", "W", "B", "V")
        }
        ideal_ratio = psychrolib.GetHumRatioFromRelHum(temperature, share, SEA_LEVEL)

        found = float(dew_point("dew", pressure).number)
        assert found == pytest.approx(psychrolib.GetTDewPointFromRelHum(temperature, share), abs=0.1)
        assert found == pytest.approx(real["D"] - 273.15, abs=0.1)

        ratio = float(humidity_ratio("ratio", pressure).number)
        assert ratio == pytest.approx(1000 * ideal_ratio, rel=0.008)
        assert ratio == pytest.approx(1000 * real["W"], rel=0.008)

        held = float(absolute_humidity("held", pressure, degrees(temperature)).number)
        assert held == pytest.approx(1000 * real["W"] / real["V"], rel=0.008)

        bulb = float(wet_bulb("bulb", air(temperature, humidity)).number)
        for outside in (psychrolib.GetTWetBulbFromHumRatio(temperature, ideal_ratio, SEA_LEVEL), real["B"] - 273.15):
            assert bulb == pytest.approx(outside, abs=0.6 if abs(outside) < 1 else 0.1)


@pytest.mark.parametrize("row", list(csv.DictReader(PRINTED.read_text(encoding="utf-8").splitlines()[1:])), ids=str)
def test_printed_tables_over_water(row: dict[str, str]) -> None:
    pressure = vapour_pressure("vapour", air(Fraction(row["air"]), Fraction(row["humidity"])))
    assert abs(dew_point_over_water("dew", pressure).number - Fraction(row["dew_point"])) <= Fraction(12, 100)


def test_worked_by_hand() -> None:
    """20 °C, 65 %: ln 0.65 + 17.62 · 20 ÷ 263.12 = 0.90853; 243.12 · 0.90853 ÷ 16.71147 = 13.217 °C."""
    assert float(dew(20, 65)) == pytest.approx(13.217, abs=0.001)
    assert dew_point("dew", vapour_pressure("vapour", air(20, 65))).printed() == "13.2\N{NO-BREAK SPACE}°C"


AIRS = st.tuples(st.integers(-30, 50), st.integers(2, 100))


@settings(deadline=None)
@given(AIRS)
def test_dew_point_wet_bulb_and_air_stand_in_their_order(taken: tuple[int, int]) -> None:
    temperature, humidity = taken
    over_water = dew_point_over_water("dew", vapour_pressure("vapour", air(temperature, humidity))).number
    bulb = wet_bulb("bulb", air(temperature, humidity)).number
    slack = Fraction(1, 10**6)
    assert over_water <= temperature + slack
    assert bulb <= temperature + Fraction(1, 2)  # over ice the air may be above saturation
    if bulb > 1:
        assert over_water <= bulb + slack <= temperature + 2 * slack


@given(st.integers(-30, 49), st.integers(2, 99))
def test_all_rise_with_humidity_and_with_warmth(temperature: int, humidity: int) -> None:
    def figures(one: Air) -> list[Fraction]:
        pressure = vapour_pressure("vapour", one)
        held = absolute_humidity("held", pressure, one.temperature)
        return [
            pressure.number,
            held.number,
            humidity_ratio("r", pressure).number,
            dew_point_over_water("d", pressure).number,
        ]

    first = figures(air(temperature, humidity))
    for higher in (figures(air(temperature, humidity + 1)), figures(air(temperature + 1, humidity))):
        assert all(one < other for one, other in zip(first, higher, strict=True))


@settings(deadline=None)
@given(AIRS)
def test_back_from_absolute_humidity(taken: tuple[int, int]) -> None:
    temperature, humidity = taken
    pressure = vapour_pressure("vapour", air(temperature, humidity))
    held = absolute_humidity("held", pressure, degrees(temperature))
    again = pressure_of("again", held, degrees(temperature))
    assert abs(again.number - pressure.number) < Fraction(1, 10**9)
    assert abs(relative_humidity("h", again, degrees(temperature)).number - humidity) < Fraction(1, 10**6)


@pytest.mark.parametrize(
    ("outside", "humidity", "inside", "expected"),
    [(0, 80, 20, 20.9), (-5, 80, 20, 14.4), (5, 80, 20, 29.8), (10, 70, 20, 36.8)],
)
def test_warming_alone_dries_the_air(outside: int, humidity: int, inside: int, expected: float) -> None:
    """Same vapour, warmer air. The reference has 13.7 % for -5 °C, with the outside humidity taken over ice; a hygrometer shows that over water."""
    pressure = vapour_pressure("vapour", air(outside, humidity))
    warmed = relative_humidity("h", pressure, degrees(inside))
    assert float(warmed.number) == pytest.approx(expected, abs=0.1)


@pytest.mark.parametrize(("temperature", "most"), [(5, 80.9), (10, 81.6), (20, 82.9), (30, 84.0), (40, 85.1)])
def test_humidity_at_which_three_kelvin_are_left(temperature: int, most: float) -> None:
    """Known from the equation of both limits; surface as warm as the air."""
    for humidity, holds in ((most - 0.2, True), (most + 0.2, False)):
        found = dew_point("d", vapour_pressure("p", air(temperature, humidity)))
        assert (margin("m", degrees(temperature), found).number >= 3) is holds


def test_five_fahrenheit_are_not_three_kelvin() -> None:
    found = dew_point("d", vapour_pressure("p", air(20, 82.9)))
    assert float(margin("m", degrees(20), found, "degF").number) == pytest.approx(5.4, abs=0.1)
    assert float(margin("m", degrees(20), found).number) == pytest.approx(3.0, abs=0.05)


def test_frost_point_is_named_and_lies_above_the_dew_point_over_water() -> None:
    pressure = vapour_pressure("p", air(5, 40))
    frost, water = dew_point("d", pressure), dew_point_over_water("d", pressure)
    assert frost.name == "frost point"
    assert 0 > frost.number > water.number


def test_surface_below_the_dew_point_has_a_negative_margin() -> None:
    found = dew_point("d", vapour_pressure("p", air(20, 65)))
    assert margin("m", degrees(5), found).number < 0


@pytest.mark.parametrize(("temperature", "humidity"), [(68, 50), (-41, 50), (20, 0), (20, 101)])
def test_no_such_air(temperature: int, humidity: int) -> None:
    with pytest.raises((WorkingError, ValueError)):
        air(temperature, humidity)


def test_air_cannot_hold_more_than_saturation() -> None:
    with pytest.raises(WorkingError):
        relative_humidity("h", vapour_pressure("p", air(30, 80)), degrees(10))


def test_what_is_printed_is_what_was_computed() -> None:
    bulb = wet_bulb("bulb", air(20, 65))
    assert bulb.printed() == "15.8\N{NO-BREAK SPACE}°C"
    assert "15.8" in bulb.substituted()
