"""What cannot be told is a value: nobody above the trade catches the refusal of a formula by himself."""

from __future__ import annotations

from pathlib import Path

import specgen
from specgen.trade.known import NotKnown, known, worked_out
from specgen.trade.solids import Component, volume_solids
from specgen.units.quantity import Quantity


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
