"""Which limit of a test accepts no more than another, on the method's own scale, and that comparing mirrors it."""

from __future__ import annotations

import pytest

from specgen.comparison.changes import Effect
from specgen.facts.tests.narrower import as_limit, narrower
from tests.comparison.sides import compared
from tests.good_spec import good, put

CASES = [
    ("pull_off", "ISO 4624", "min 6 MPa", "min 5 MPa", Effect.TIGHTENED),
    ("pull_off", "ISO 4624", "min 5 MPa", "min 725 psi", Effect.TIGHTENED),
    ("scribe_creep", "ISO 4628-8", "max 1 mm", "max 1.5 mm", Effect.TIGHTENED),
    ("cross_cut", "ISO 2409", "class 0", "class 0..1", Effect.TIGHTENED),
    ("cross_cut", "ASTM D3359", "min 4B", "min 3B", Effect.TIGHTENED),
    ("gloss", "ISO 2813", "82..88 GU", "80..90 GU", Effect.TIGHTENED),
    ("gloss", "ISO 2813", "80..88 GU", "82..90 GU", Effect.SHIFTED),
    ("rust_grade", "ISO 4628-3", "Ri 0", "Ri 1", Effect.TIGHTENED),
    ("blistering", "ISO 4628-2", "2(S3)", "3(S2)", Effect.SHIFTED),
    ("blistering", "ISO 4628-2", "0(S0)", "2(S2)", Effect.TIGHTENED),
    ("scribe_creep", "ISO 4628-8", "max 1 mm", "hardly any", Effect.REWORDED),
]
_BACK = {Effect.TIGHTENED: Effect.RELAXED}


@pytest.mark.parametrize(("method", "standard", "strict", "lax", "effect"), CASES)
def test_a_limit_is_compared_by_its_method_and_mirrors(
    method: str, standard: str, strict: str, lax: str, effect: Effect
) -> None:
    one, other = as_limit(method, strict), as_limit(method, lax)
    if one is not None and other is not None:
        expected = {Effect.TIGHTENED: (True, False)}.get(effect)
        found = narrower(method, standard, one, other), narrower(method, standard, other, one)
        assert found == expected if expected is not None else True not in found
    sides = []
    for limit in (lax, strict):
        spec = good()
        put(spec, "jobs.refit.tests", f"[{{id: one, method: {method}, standard: {standard}, limit: '{limit}'}}]")
        sides.append(spec)
    assert [change.effect for change in compared(*sides).changes] == [effect]
    assert [change.effect for change in compared(*reversed(sides)).changes] == [_BACK.get(effect, effect)]


def test_another_method_is_no_stricter_limit() -> None:
    sides = []
    for method, limit in (("pull_off", "min 5 MPa"), ("cross_cut", "class 0..1")):
        spec = good()
        put(spec, "jobs.refit.tests", f"[{{id: one, method: {method}, limit: {limit}}}]")
        sides.append(spec)
    assert {change.effect for change in compared(*sides).changes} == {Effect.REPLACED, Effect.SHIFTED}
