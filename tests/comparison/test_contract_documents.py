"""A customer's document that changes: force, limits, clauses that come, go and move."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.comparison.changes import Effect
from tests.comparison.sides import changed, compared
from tests.comparison.way_back import mirrored

LIMIT = "limit: {total: {min: 90 um, max: 200 um}}"


def _document(clauses: str, number: str = "YS-7") -> str:
    return f"{{id: {number.lower()}, number: {number}, title: Painting, clauses: [{{id: stays, number: '9', text: Stays., force: required}}{clauses}]}}"


def _clause(force: str = "required", limit: str = LIMIT, more: str = "") -> str:
    return f", {{id: film, number: '4.2', text: Film., force: {force}, {limit}{more}}}"


def _effects(old: str, new: str) -> dict[str, Effect]:
    sides: list[dict[str, Any]] = [changed({"contract_documents": f"[{side}]"}) for side in (old, new)]
    there = {".".join(one.difference.path): one.effect for one in compared(*sides).changes}
    back = [one.effect for one in compared(*reversed(sides)).changes]
    assert sorted(back) == sorted(mirrored(effect) for effect in there.values())
    return there


AT = "contract_documents.ys-7.clauses.film"


@pytest.mark.parametrize(
    ("old", "new", "effects"),
    [
        (_clause("required"), _clause("permitted"), {f"{AT}.force": Effect.RELAXED}),
        (_clause("permitted"), _clause("advised"), {f"{AT}.force": Effect.TIGHTENED}),
        (_clause(), _clause(limit="limit: {total: {min: 95 um, max: 200 um}}"), {f"{AT}.limit.total.min": Effect.TIGHTENED}),
        (_clause(), _clause(limit="limit: {total: {min: 90 um, max: 220 um}}"), {f"{AT}.limit.total.max": Effect.RELAXED}),
        (_clause(), "", {AT: Effect.RELAXED}),
        (_clause("permitted"), "", {AT: Effect.TIGHTENED}),  # a permission goes
        (
            _clause(),
            _clause(limit="", more="moved_to: {number: YS-8, clause: '1'}"),
            {f"{AT}.moved_to.number": Effect.FACT, f"{AT}.moved_to.clause": Effect.FACT},
        ),
    ],
)  # fmt: skip
def test_a_clause_that_changes(old: str, new: str, effects: dict[str, Effect]) -> None:
    assert _effects(_document(old), _document(new)) == effects


def test_a_clause_that_moved_is_held_against_the_one_at_its_new_place() -> None:
    stub = _clause(limit="", more="moved_to: {number: YS-8, clause: '1'}")
    other = ", {id: total, number: '1', text: Film., force: required, limit: {total: {min: 80 um, max: 200 um}}}"
    old = f"{_document(_clause())}, {_document('', 'YS-8')}"
    new = f"{_document(stub)}, {_document(other, 'YS-8')}"
    assert _effects(old, new) == {
        f"{AT}.moved_to.number": Effect.FACT,
        f"{AT}.moved_to.clause": Effect.FACT,
        "contract_documents.ys-8.clauses.total.number": Effect.EDITORIAL,
        "contract_documents.ys-8.clauses.total.limit.total.min": Effect.RELAXED,
    }
