"""Every figure of the annexes worked out again from what is printed beside it, with formulas written here a second time."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from typing import Any

import pytest

from tests.good_spec import good, put

Inputs = Mapping[str, Fraction]


def _demanded(i: Inputs) -> Fraction:
    return sum((i[f"A{n}"] * i[f"DFT{n}"] for n in range(1, 10) if f"A{n}" in i), Fraction(0))


def _from_can(i: Inputs) -> Fraction:
    return i["S"] * i["d"] / 100 * i["TE"] / 100


BY_HAND: Mapping[str, Callable[[Inputs], Fraction]] = {
    "area of the plate": lambda i: i["L"] * i["W"] * i["n"],
    "area to coat": lambda i: i["A"] * i["n"],
    "DFT per coat": lambda i: i["DFT"] / i["N"],
    "DFT per cross coat": lambda i: i["DFT"] / i["N"],
    "wet film thickness": lambda i: i["DFT"] * (100 + i.get("t", Fraction(0))) / i["VS"],
    "volume of dry solids in a can": lambda i: i["V"] * i["VS"] / 100,
    "paint required": lambda i: _demanded(i) / 1000 / (i["VS"] / 100) / ((100 - i["loss"]) / 100),
    "cans required": lambda i: Fraction(math.ceil(_demanded(i) / _from_can(i))),
    "tins required": lambda i: Fraction(math.ceil(i["V"] / i["P"])),
    "cans required, not rounded": lambda i: _demanded(i) / _from_can(i),
    "tins required, not rounded": lambda i: i["V"] / i["P"],
    "packs to order": lambda i: Fraction(math.ceil(sum(i[f"N{n}"] for n in range(1, 10) if f"N{n}" in i))),
    "coverage per can": lambda i: _from_can(i) / i["DFT"],
    "theoretical spreading rate": lambda i: i["K"] * i["VS"] / 100 / i["DFT"],
    "contents of all packs": lambda i: sum(
        (i[f"n{n}"] * i[f"V{n}"] for n in range(1, 10) if f"n{n}" in i), Fraction(0)
    ),
    "VOC emission": lambda i: i["V"] * i["C"],
    "VOC emission of the whole job": lambda i: sum((i[f"m{n}"] for n in range(1, 10) if f"m{n}" in i), Fraction(0)),
    "practical spreading rate": lambda i: i["TSR"] * (100 - i["loss"]) / 100,
}

# The composition of the primer of the good specification: mass share, density, whether it stays, whether it is propellant.
PRIMER = (
    (Fraction(30), Fraction("1.5"), "solids"),
    (Fraction(40), Fraction("0.85"), "solvent"),
    (Fraction(30), Fraction("0.65"), "propellant"),
)

RESULTS = {
    "data_sheet_primer": 8,
    "data_sheet_base": 6,
    "data_sheet_clear": 6,
    "data_sheet_barrier": 7,
}


@pytest.mark.parametrize("sheet", RESULTS)
def test_data_sheet_figures(sheet: str, good_views: Mapping[str, Any]) -> None:
    assert _recomputed(good_views[sheet]) == RESULTS[sheet]


def test_method_statement_figures(good_views: Mapping[str, Any]) -> None:
    assert _recomputed(good_views["method_statement_refit"]) >= 23


def test_order_list_figures(good_views: Mapping[str, Any]) -> None:
    # one need and one sum a product; what they build on stands in the annex of each job
    assert _recomputed(good_views["order_list"]) == 2 * 4


def test_tables_show_the_workings_they_name(good_views: Mapping[str, Any]) -> None:
    shown = 0
    for sheet in RESULTS:
        view = good_views[sheet]
        results = {working.number: working.result for working in view.workings}
        for row in (*view.coverage.rows, *view.comb.rows):
            *_, text, numbers = row
            ends = [results[number] for number in numbers.split(", ")]
            unit = ends[-1].split("\N{NO-BREAK SPACE}")[1]
            joined = " to ".join(end.removesuffix(f"\N{NO-BREAK SPACE}{unit}") for end in ends)
            assert text.startswith(f"{joined}\N{NO-BREAK SPACE}{unit}")
            shown += 1
    assert shown == 3 + 3 + 3 + 5


def test_a_coverage_always_names_its_film(good_views: Mapping[str, Any]) -> None:
    films = {row[0] for sheet in RESULTS for row in good_views[sheet].coverage.rows}
    assert films == {
        "50 µm (2.0 mil), nominal DFT",
        "20 µm (0.8 mil), nominal DFT",
        "80 µm (3.1 mil), nominal DFT",
    }


def test_a_changed_density_moves_exactly_what_depends_on_it(
    good_views: Mapping[str, Any], views_of_changed: Callable[[dict[str, Any]], Mapping[str, Any]]
) -> None:
    spec = good()
    put(spec, "products.primer.composition.solids.density", "1.1 g/mL")
    changed = views_of_changed(spec)
    assert [name for name in changed if changed[name] != good_views[name]] == [
        "method_statement_refit",
        "job_card_refit",
        "data_sheet_primer",
        "order_list",
        # it names the WFT of each coat, which follows from the volume solids
        "inspection_plan_refit",
    ]
    assert _moved(good_views["data_sheet_primer"], changed["data_sheet_primer"]) == {
        "solids-in-can.primer",
        "solids.primer",
        "area.primer/1-least",
        "area.primer/1-most",
        "area.primer/2-least",
        "area.primer/2-most",
        "solids-sprayed.primer",
        "wet.primer",
    }
    # 2 cans of the primer are still 2 cans: what they are worked out from moves, the whole number does not
    assert _moved(good_views["method_statement_refit"], changed["method_statement_refit"]) == {
        "solids-in-can.primer",
        "solids.primer.grey",
        "solids-sprayed.primer",
        "wet.cab.primer",
    }


def _moved(before: Any, after: Any) -> set[str]:
    old = {working.about: working.result for working in before.workings}
    new = {working.about: working.result for working in after.workings}
    assert list(old) == list(new)
    return {about for about in old if old[about] != new[about]}


def _recomputed(view: Any) -> int:
    """How many figures of the annex were worked out again; each agrees with what is printed."""
    for working in view.workings:
        number, places = _figure(working.result)
        if working.held:
            exact = _held(working.about)
            assert working.inputs == ()
        else:
            inputs = {_plain(sign): _figure(figure)[0] for sign, _, figure, _ in working.inputs}
            exact = BY_HAND[working.name](inputs)
        if working.result.endswith(("m²", "m³/h", "g")) and exact >= 100:
            # what was measured carries three digits, whatever its size
            assert _three_digits(exact) == number, working.about
            continue
        assert _rounded(exact, places) == number, working.about
    return len(view.workings)


def _held(about: str) -> Fraction:
    counted = [line for line in PRIMER if about.startswith("solids-in-can") or line[2] != "propellant"]
    volumes = [(share / density, kind) for share, density, kind in counted]
    solids = sum((volume for volume, kind in volumes if kind == "solids"), Fraction(0))
    return 100 * solids / sum((volume for volume, _ in volumes), Fraction(0))


def _plain(sign: str) -> str:
    """`A₁` and `A_1` are A1."""
    return sign.translate(str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")).replace("_", "")


def _figure(text: str) -> tuple[Fraction, int]:
    found = re.match(r"−?\d+(?:\.(\d+))?", text)
    assert found is not None, text
    return Fraction(found[0].replace("−", "-")), len(found[1] or "")


def _three_digits(number: Fraction) -> Fraction:
    return Fraction(
        Context(prec=3, rounding=ROUND_HALF_UP).divide(Decimal(number.numerator), Decimal(number.denominator))
    )


def _rounded(number: Fraction, places: int) -> Fraction:
    step = Decimal(1).scaleb(-places)
    quotient = Decimal(number.numerator) / Decimal(number.denominator)
    return Fraction(quotient.quantize(step, ROUND_HALF_UP))


def test_lines_are_named_as_the_page_names_things(
    views_of_changed: Callable[[dict[str, object]], dict[str, Any]],
) -> None:
    """Products, systems and variants by their names; a coat as the coat table calls it, whatever its id."""
    spec = good()
    put(spec, "systems.chassis.layers.barrier.id", "base")
    named = {line.about: line.of for line in views_of_changed(spec)["method_statement_refit"].workings}
    films = {
        line.of for line in views_of_changed(spec)["method_statement_refit"].workings if line.of.startswith("system")
    }
    assert films >= {"system A, 1 primer", "system B, 1 primer"}
    assert not [of for of in named.values() if "MS-001" in of or "refit" in of]
    orders = [line.of for line in views_of_changed(spec)["order_list"].workings]
    assert "MS-001, primer, grey" in orders
    assert not [of for of in orders if "refit" in of]
