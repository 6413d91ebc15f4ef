"""A working: its formula is what is computed and printed, it refuses what it cannot do, and it can be redone from its
print.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.standards.citations import ARITHMETIC
from specgen.trade.cans import area_per_can, cans
from specgen.trade.consumption import Demand, litres, spreading_rate
from specgen.trade.film import dry_film, thinned_volume_solids, wet_film
from specgen.trade.formula import constants, evaluate, names, sign, write
from specgen.trade.given import Given, take
from specgen.trade.loss import LossShare
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up

GAP = "\N{NO-BREAK SPACE}"


def bare(symbol: str, value: Fraction | int) -> Input:
    return Input(symbol, f"figure {symbol}", Fraction(value), "", "")


def worked(formula: str, values: dict[str, Fraction], places: int = 0) -> Working:
    inputs = tuple(bare(symbol, value) for symbol, value in values.items())
    return work("w", "result", formula, inputs, places=places, source=ARITHMETIC, note="2, 100, 1000")


def recomputed(text: str) -> Fraction:
    """What a person with a pocket calculator gets from the printed line: an own reader, not the one under test."""
    tokens: Iterator[str] = iter(
        [*re.findall(r"\d+(?:\.\d+)?|rounded up|smallest of|largest of|[−+×÷();]", text), "end"]
    )
    ahead: list[str] = [next(tokens)]

    def step() -> str:
        taken, ahead[0] = ahead[0], next(tokens, "end")
        return taken

    def total() -> Fraction:
        result = product()
        while ahead[0] in "+−":
            result = result + product() if step() == "+" else result - product()
        return result

    def product() -> Fraction:
        result = figure()
        while ahead[0] in "×÷":
            result = result * figure() if step() == "×" else result / figure()
        return result

    def figure() -> Fraction:
        token = step()
        if token == "−":
            return -figure()
        if token == "(":
            inside = total()
            step()
            return inside
        if token in ("rounded up", "smallest of", "largest of"):
            step()
            several = [total()]
            while step() == ";":
                several.append(total())
            return (
                Fraction(math.ceil(several[0]))
                if token == "rounded up"
                else (min if "small" in token else max)(several)
            )
        return Fraction(token)

    return total()


def printed_again(working: Working) -> str:
    return str(round_half_up(recomputed(working.substituted()), working.places)).replace("-", "−")


WRITTEN = {
    "DFT * 100 / VS": "DFT × 100 ÷ VS",
    "DFT * (100 + t) / VS": "DFT × (100 + t) ÷ VS",
    "a - (b - c)": "a − (b − c)",
    "a - b - c": "a − b − c",
    "a / (b * c)": "a ÷ (b × c)",
    "a * (b / c)": "a × b ÷ c",
    "(a + b) * c": "(a + b) × c",
    "ceil(a / min(b, c))": "rounded up (a ÷ smallest of (b; c))",
    "max(a, b + 1)": "largest of (a; b + 1)",
    "m * w_nv / rho_nv": "m × w_nv ÷ ρ_nv",
    "pi * phi * alpha": "π × φ × α",
}


@pytest.mark.parametrize(("formula", "text"), WRITTEN.items())
def test_formula_is_written_as_by_hand(formula: str, text: str) -> None:
    assert write(formula) == text


REFUSED = {
    "a ** 2": "the formula 'a ** 2' holds more than names, whole numbers, + - * / ceil min max",
    "-a": "the formula '-a' holds more than names, whole numbers, + - * / ceil min max",
    "a * 0.5": "the formula 'a * 0.5' holds more than names, whole numbers, + - * / ceil min max",
    "a * True": "the formula 'a * True' holds more than names, whole numbers, + - * / ceil min max",
    "a.b": "the formula 'a.b' holds more than names, whole numbers, + - * / ceil min max",
    "a[0]": "the formula 'a[0]' holds more than names, whole numbers, + - * / ceil min max",
    "round(a)": "the formula 'round(a)' holds more than names, whole numbers, + - * / ceil min max",
    "__import__('os')": "the formula \"__import__('os')\" holds more than names, whole numbers, + - * / ceil min max",
    "min()": "the formula 'min()' holds more than names, whole numbers, + - * / ceil min max",
    "min(*a)": "the formula 'min(*a)' holds more than names, whole numbers, + - * / ceil min max",
    "a if a else a": "the formula 'a if a else a' holds more than names, whole numbers, + - * / ceil min max",
    "ceil(a, a)": "the formula 'ceil(a, a)' rounds up more than one figure at once",
    "a +": "the formula 'a +' cannot be read",
    "(" * 300 + "a": f"the formula {'(' * 60!r} cannot be read",
}


@pytest.mark.parametrize(("formula", "what"), REFUSED.items())
def test_formula_that_is_not_arithmetic_is_refused(formula: str, what: str) -> None:
    with pytest.raises(WorkingError) as refused:
        evaluate(formula, {"a": Fraction(1)})
    assert refused.value.what == what


@pytest.mark.parametrize(
    ("formula", "values", "what"),
    [
        ("a / (b - c)", {"a": 1, "b": 2, "c": 2}, "result cannot be calculated: b − c is zero, and the working divides by it"),
        ("a + rho_s", {"a": 1}, "result cannot be calculated: ρ_s stands in the formula and has no value"),
        ("a * 1000", {"a": 10**9 + 1}, "result cannot be calculated: a × 1000 comes to more than 1000000000000"),
        ("a - 1000 * b", {"a": 0, "b": 10**9 + 1}, "result cannot be calculated: a − 1000 × b comes to more than 1000000000000"),
        ("a", {"a": 1, "b": 2}, "figure b does not stand in the formula of result"),
        ("a * 60", {"a": 1}, "the note on result does not explain 60"),
        ("a * 10", {"a": 1}, "the note on result does not explain 10"),
    ],
)  # fmt: skip
def test_working_that_cannot_be_done_says_why(formula: str, values: dict[str, int], what: str) -> None:
    with pytest.raises(WorkingError) as refused:
        worked(formula, {symbol: Fraction(value) for symbol, value in values.items()})
    assert refused.value.what == what


def test_two_inputs_of_one_symbol_are_refused() -> None:
    with pytest.raises(WorkingError) as refused:
        work("w", "result", "a", (bare("a", 1), bare("a", 2)), places=0, source=ARITHMETIC)
    assert refused.value.what == "two inputs of result share a symbol"


def test_largest_result_is_still_accepted() -> None:
    assert worked("a * 1000", {"a": Fraction(10**9)}).result == 10**12


def test_names_and_constants_of_a_formula() -> None:
    assert names("ceil(a * 100 / b) + a - min(c, 1)") == ("a", "b", "c")
    assert constants("ceil(a * 100 / b) + a - min(c, 1)") == {1, 100}
    assert sign("rho_2") == "ρ₂"
    assert sign("rho_nv") == "ρ_nv"


def test_quantity_enters_in_the_unit_of_the_formula_and_keeps_its_authors_figure() -> None:
    film = take("DFT", "film", Given(parse_quantity("thickness", "2.50 mil"), "a.b"), "thickness", "mil")
    metric = take("DFT", "film", Given(parse_quantity("thickness", "2.50 mil"), "a.b"), "thickness", "um")
    shown = [
        work(
            "w", "film", "DFT", (entry,), kind="thickness", unit=entry.unit, places=1, source=ARITHMETIC
        ).printed_inputs()[0][1]
        for entry in (film, metric)
    ]
    assert shown == [f"2.50{GAP}mil", f"63.5{GAP}µm"]


def test_input_of_another_kind_is_a_slip_of_the_code() -> None:
    with pytest.raises(TypeError, match=r"^film is a length, where a thickness in um is taken$"):
        take("DFT", "film", parse_quantity("length", "5 mm"), "thickness", "um")
    with pytest.raises(TypeError, match=r"^film is a bare number, where a thickness in um is taken$"):
        take("DFT", "film", 5, "thickness", "um")
    with pytest.raises(TypeError, match=r"^share is a humidity, where a share in % is taken$"):
        take("w", "share", parse_quantity("humidity", "5 %"), "share", "%")


def test_customer_sees_all_inputs_or_none() -> None:
    film, solids = Given(parse_quantity("thickness", "60 um"), "a"), parse_quantity("share", "40 %")
    open_working = wet_film("w", film, Given(solids, "b"))
    held = wet_film("w", film, Given(solids, "b", "maker"))
    assert (open_working.held_by_maker, held.held_by_maker) == (False, True)
    assert open_working.shown_inputs() == open_working.inputs
    assert held.shown_inputs() == ()
    assert held.printed() == open_working.printed() == f"150{GAP}µm"


def test_result_enters_the_next_working_unrounded_and_prints_enough_digits() -> None:
    wet = wet_film("wet", parse_quantity("thickness", "100 um"), parse_quantity("share", "65 %"))
    back = dry_film("dry", wet, parse_quantity("share", "65 %"))
    assert wet.printed() == f"154{GAP}µm"
    assert back.result == parse_quantity("thickness", "100 um")
    assert back.substituted() == "153.8 × 65 ÷ 100"
    assert back.inputs[0].origin == "working:wet"


def test_figure_on_the_edge_of_a_rounding_is_printed_as_a_fraction() -> None:
    found = worked("ceil(a * 1000)", {"a": Fraction(1, 3000)})
    assert found.printed() == "1"
    edge = worked("ceil(a * b)", {"a": Fraction(2, 3), "b": Fraction(3)})
    assert (edge.printed(), edge.substituted()) == ("2", "rounded up ((2 ÷ 3) × 3)")


def test_small_and_negative_figures_are_printed_without_exponent_and_with_a_minus() -> None:
    small = worked("a * b", {"a": Fraction(1, 3_000_000), "b": Fraction(10**9)}, 0)
    assert small.substituted() == "0.0000003333 × 1000000000"
    assert small.printed() == "333"
    below = worked("a - b", {"a": Fraction(-1, 3), "b": Fraction(-2)}, 1)
    assert (below.substituted(), below.printed()) == ("(−0.3333) − (−2)", "1.7")


def test_figures_that_cancel_when_cut_are_printed_longer() -> None:
    found = worked("1 / (a - b)", {"a": Fraction(1, 3), "b": Fraction(100001, 300004)}, 0)
    assert printed_again(found) == str(round_half_up(found.number, 0))


EXACT = st.builds(lambda n, places: Fraction(n, 10**places), st.integers(1, 99_999), st.integers(0, 3))
ENDLESS = st.builds(Fraction, st.integers(1, 9_999), st.integers(1, 9_999))
FORMULAS = (
    "a * 100 / b",
    "ceil(a / b)",
    "ceil((a * b + c * 2) / (b * c / 100))",
    "a * b / (c + 1)",
    "min(a, b * c / 100)",
    "max(a, b) / c",
    "a + b - c",
    "1 - c / (a + b)",
    "100 * (a / b) / (a / b + c / a)",
)


@settings(max_examples=400, deadline=None)
@given(
    st.sampled_from(FORMULAS),
    st.tuples(*[EXACT | ENDLESS] * 3),
    st.integers(0, 4),
)
def test_any_working_can_be_redone_from_its_print(formula: str, values: tuple[Fraction, ...], places: int) -> None:
    named = {symbol: value for symbol, value in zip("abc", values, strict=True) if symbol in names(formula)}
    found = worked(formula, named, places)
    assert printed_again(found) == found.printed()


def chains() -> Iterator[Working]:
    """Workings that feed on one another, as a document prints them."""
    film, share = parse_quantity("thickness", "70 um"), parse_quantity("share", "37 %")
    thinned = thinned_volume_solids("vs", share, parse_quantity("percentage", "7 %"))
    yield thinned
    wet = wet_film("wet", film, thinned)
    yield wet
    yield dry_film("dry", wet, share)
    rate = spreading_rate("tsr", thinned, film)
    yield rate
    area = area_per_can("a", parse_quantity("volume", "61.3 mL"), share, share, film)
    yield area
    demands = [Demand(area, film), Demand(parse_quantity("area", "7 ft2"), wet)]
    yield litres("l", demands, thinned, LossShare(share))
    yield cans("c", demands, parse_quantity("volume", "61.3 mL"), share, share)


@pytest.mark.parametrize("working", list(chains()), ids=lambda working: working.id)
def test_chain_of_workings_can_be_redone_from_its_print(working: Working) -> None:
    assert working.printed().partition(GAP)[0] == printed_again(working)


def test_result_is_exact_and_never_a_float() -> None:
    for working in chains():
        assert type(working.number) is Fraction
        assert all(type(entry.number) is Fraction for entry in working.inputs)
        assert isinstance(working.result, Quantity | Fraction)
