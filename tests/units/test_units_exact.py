"""Conversion is exact in every unit of every kind, values keep one order, and ranges are judged by what they accept."""

from __future__ import annotations

import ast
from collections.abc import Callable
from fractions import Fraction
from itertools import product
from pathlib import Path

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen import trade, units
from specgen.units.kinds import KINDS, UNITS
from specgen.units.known_units import registry, scale, worked_out
from specgen.units.quantity import Quantity, Range

# Exact fractions take their time; a slow machine is no fault of the trade.
QUICK = settings(max_examples=100, deadline=None)

EVERY_UNIT = [(kind.name, unit) for kind in KINDS.values() for unit in kind.units]
EVERY_PAIR = [(kind.name, one, other) for kind in KINDS.values() for one, other in product(kind.units, repeat=2)]
NUMBERS = [Fraction(text) for text in ("0", "1", "-40", "0.000000001", "25.4", "999999999999.999999999", "1/3")]

NUMBER = st.fractions(min_value=-(10**6), max_value=10**6, max_denominator=10**6)
FILM = st.builds(
    Quantity.of,
    st.just("thickness"),
    st.fractions(min_value=0, max_value=200, max_denominator=20),
    st.sampled_from(["um", "mil"]),
)


@st.composite
def ranges(draw: st.DrawFn) -> Range:
    """A closed range, or one open on either side."""
    low, high = sorted((draw(FILM), draw(FILM)))
    shape = draw(st.sampled_from(["both", "low", "high"]))
    return Range("thickness", None if shape == "high" else low, None if shape == "low" else high)


@pytest.mark.parametrize(("kind", "one"), EVERY_UNIT)
def test_there_and_back_is_exact(kind: str, one: str) -> None:
    for other, number in product(KINDS[kind].units, NUMBERS):
        value = Quantity.of(kind, number, one)
        again = Quantity.of(kind, value.to(other), other)
        assert again == value, other
        assert again.to(one) == number, other


@pytest.mark.parametrize(("kind", "unit"), EVERY_UNIT)
def test_every_figure_is_a_fraction(kind: str, unit: str) -> None:
    factor, offset = KINDS[kind].scale(unit)
    value = Quantity.of(kind, 3, unit)
    assert {type(figure) for figure in (factor, offset, value.number, value.base, value.to(unit))} == {Fraction}
    assert factor > 0


@pytest.mark.parametrize(
    ("kind", "unit", "other", "factor"),
    [
        ("thickness", "mil", "um", "25.4"),
        ("length", "in", "mm", "25.4"),
        ("length", "ft", "in", "12"),
        ("area", "ft2", "m2", "0.09290304"),
        ("volume", "gal", "mL", "3785.411784"),
        ("mass", "lb", "g", "453.59237"),
        ("pressure", "bar", "kPa", "100"),
        ("voltage", "kV", "V", "1000"),
        ("duration", "week", "h", "168"),
        ("share", "%", "%", "1"),
    ],
)
def test_factors_fixed_by_definition(kind: str, unit: str, other: str, factor: str) -> None:
    assert Quantity.of(kind, 1, unit).to(other) == Fraction(factor)


@pytest.mark.parametrize(("celsius", "fahrenheit"), [("0", "32"), ("100", "212"), ("-40", "-40"), ("20", "68")])
def test_temperature_has_an_offset_and_a_difference_has_none(celsius: str, fahrenheit: str) -> None:
    assert Quantity.of("temperature", Fraction(celsius), "degC").to("degF") == Fraction(fahrenheit)
    assert Quantity.of("temperature_difference", Fraction(celsius), "degC").to("degF") == Fraction(celsius) * 9 / 5


def test_no_unit_but_ours_is_known() -> None:
    assert "furlong" not in registry()
    assert "radian" not in registry()


def test_kept_factors_are_those_of_pint(golden: Callable[[Path, str], None]) -> None:
    pairs = {(UNITS[unit].meaning, UNITS[kind.base].meaning) for kind in KINDS.values() for unit in kind.units}
    head = "# What pint makes of units.txt: unit, base unit, factor, offset. Written by pytest --update-golden.\n"
    rows = [" ".join(map(str, (*pair, *worked_out(*pair)))) + "\n" for pair in sorted(pairs)]
    golden(Path(units.__file__).with_name("factors.txt"), head + "".join(rows))


def test_what_measures_another_thing_is_not_turned_into_it() -> None:
    with pytest.raises(pint.DimensionalityError):
        scale("g/mL", "g")


@QUICK
@given(NUMBER, NUMBER, st.sampled_from(EVERY_PAIR))
def test_order_is_that_of_the_amounts_whatever_the_unit(
    first: Fraction, second: Fraction, pair: tuple[str, str, str]
) -> None:
    kind, one, other = pair
    left, right = Quantity.of(kind, first, one), Quantity.of(kind, second, one)
    turned = Quantity.of(kind, right.to(other), other)
    assert (left < turned, left == turned, left > turned) == (first < second, first == second, first > second)
    assert hash(right) == hash(turned)


def test_quantities_of_two_kinds_are_never_equal_and_have_no_order() -> None:
    share, humidity = Quantity.of("share", 50, "%"), Quantity.of("humidity", 50, "%")
    assert share != humidity
    with pytest.raises(TypeError, match=r"^a share and a humidity have no order$"):
        _ = share < humidity


def test_unknown_kind_or_unit_is_a_slip_of_the_code() -> None:
    with pytest.raises(KeyError):
        Quantity.of("charm", 1, "um")
    with pytest.raises(KeyError):
        Quantity.of("thickness", 1, "m")


@QUICK
@given(ranges(), FILM)
def test_range_holds_both_its_limits_and_nothing_beyond(accepted: Range, value: Quantity) -> None:
    below = accepted.low is not None and value.base < accepted.low.base
    above = accepted.high is not None and value.base > accepted.high.base
    assert accepted.holds(value) is not (below or above)
    assert all(accepted.holds(limit) for limit in (accepted.low, accepted.high) if limit is not None)


@QUICK
@given(ranges(), ranges(), ranges(), FILM)
def test_inclusion_is_that_of_the_accepted_sets(first: Range, second: Range, third: Range, value: Quantity) -> None:
    assert first.holds_all_of(first)
    if first.holds_all_of(second):
        assert first.holds(value) or not second.holds(value)
        assert not second.holds_all_of(third) or first.holds_all_of(third)
        assert not second.holds_all_of(first) or (first.low, first.high) == (second.low, second.high)
    else:
        # Something is accepted by the second alone: one of its limits, or what lies beyond a side it leaves open.
        open_low = second.low is None and first.low is not None
        open_high = second.high is None and first.high is not None
        limits = [limit for limit in (second.low, second.high) if limit is not None]
        assert open_low or open_high or any(not first.holds(limit) for limit in limits)


# Modules that reckon as the machine does, each with the reason; a module that has become exact is told below.
BY_THE_MACHINE = {
    "colour.py": "a colour difference is made of roots and angles, which no fraction holds; it is held to published pairs"
}


def test_what_reckons_by_the_machine_does_so() -> None:
    folder = Path(str(trade.__file__)).parent
    for name in BY_THE_MACHINE:
        assert any(
            isinstance(node, ast.Constant) and isinstance(node.value, float)
            for node in ast.walk(ast.parse((folder / name).read_text("utf-8")))
        )


@pytest.mark.parametrize("package", [trade, units], ids=lambda package: package.__name__)
def test_no_decimal_figure_of_python_is_written_in_the_code(package: object) -> None:
    folder = Path(str(package.__file__)).parent  # type: ignore[attr-defined]  # a package has a file
    floats = [
        f"{file.name}:{node.lineno}"
        for file in sorted(folder.glob("*.py"))
        if file.name not in BY_THE_MACHINE
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, float)
    ]
    assert floats == []


def test_trade_never_calls_float_or_round() -> None:
    folder = Path(str(trade.__file__)).parent
    calls = [
        f"{file.name}:{node.lineno}"
        for file in sorted(folder.glob("*.py"))
        if file.name not in BY_THE_MACHINE
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in {"float", "round", "eval", "exec"}
    ]
    assert calls == []
