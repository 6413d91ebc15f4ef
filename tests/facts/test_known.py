"""What cannot be told is a value: nobody above the trade catches the refusal of a formula by himself."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

import specgen
from specgen.facts.product.figures import product_figures
from specgen.trade.known import NotKnown, known, worked_out
from specgen.trade.solids import Component, volume_solids
from specgen.units.quantity import Quantity
from tests.good_spec import good_with, spec_of


def test_a_refused_formula_is_an_answer_with_its_reason_and_place() -> None:
    share, density = Quantity.of("share", 50, "%"), Quantity.of("density", 1, "g/mL")
    half = [Component("resin", share, density, "solids")]
    found = worked_out("volume solids", lambda: volume_solids("v", half), ("products", "p"))
    expected = NotKnown("volume solids", "the shares by mass add up to 50 %, not to 100 %", at=("products", "p"))
    assert found == expected
    assert known(found) is None
    assert expected.is_fault
    assert not NotKnown("volume solids", "nothing is stated", ("volume solids",)).is_fault


def test_refusals_of_formulas_become_answers_in_one_place() -> None:
    package = Path(specgen.__file__).parent
    catching = {
        path.relative_to(package).as_posix()
        for path in package.rglob("*.py")
        if "except WorkingError" in path.read_text(encoding="utf-8")
    }
    # `working` puts the name of its figure before the reason, and cuts figures for print until they still give the result
    assert catching == {"trade/known.py", "trade/working.py"}


@pytest.mark.parametrize(
    ("changes", "combs", "covered"),
    [
        ({"products.base.solids.sprayed": "0.000001 %", "products.base.film.per_pass": "100 mm"}, 0, 2),
        ({"products.base.film.nominal": "0.0000001 um", "products.base.pack.fill": "400000 L"}, 1, 0),
    ],
)
def test_a_figure_too_large_to_be_told_leaves_the_others(changes: dict[str, str], combs: int, covered: int) -> None:
    spec = spec_of(good_with(changes))
    found = product_figures(spec.products["base"], spec, date(2026, 2, 1))
    assert (len(found.combs), len(found.coverage)) == (combs, covered)
