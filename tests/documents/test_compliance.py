"""The clauses of a customer's document as a job's pages tell them: where each is met in words, and its verdict."""

from __future__ import annotations

import pytest

from specgen.checking import check
from specgen.documents.method_statement.compliance import compliance
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import builds_of
from specgen.units.locale import ENGLISH
from tests.good_spec import DEMO, ON, good, put, spec_of


def _rows(limit: str, items: str, changes: dict[str, str]) -> list[tuple[str, str]]:
    """Where one required clause is met, and the result."""
    spec = good()
    clause = f"{{id: one, number: '1', text: One., force: required, limit: {limit}}}"
    put(spec, "contract_documents", f"[{{id: yard, number: YS-7, title: Painting, clauses: [{clause}]}}]")
    put(spec, "jobs.refit.made_to", f"[{{id: yard, document: yard{items}}}]")
    for path, value in changes.items():
        put(spec, path, value)
    whole = spec_of(spec)
    job = whole.jobs["refit"]
    (table,) = compliance(job, whole, builds_of(job, whole), ON, Words(ENGLISH, {}))
    return [(where, result) for _, _, where, result in table.rows]


_DOOR = ", items: [DOOR]"
_CUT = "{method: cross_cut, standard: ISO 2409, limit: class 0..1}"


@pytest.mark.parametrize(
    ("limit", "changes", "where", "result"),
    [
        ("{total: {min: 95 um}}", {}, ["System A: Total DFT, minimum: 95\xa0µm"], "met"),
        (
            "{total: {min: 96 um}}",
            {},
            ["System A: Total DFT, minimum: 95\xa0µm (clause: 96\xa0µm)"],
            "not met",
        ),
        (
            "{acceptance: ISO-19840}",
            {},
            ["Acceptance rule for DFT readings: own rule (clause: ISO 19840); the job counts by a rule of its own"],
            "to be judged",
        ),
        ("{warranty: 5 years}", {}, ["Warranty period: not stated (clause: 5 years)"], "open"),
        ("{hold_points: [completion]}", {}, ["Hold point: no hold point (clause: on completion)"], "not met"),
        # a test that is typed is told as every page tells it
        (
            f"{{coat: clearcoat, product: {{tests: [{{id: cut, {_CUT[1:]}]}}}}",
            {"jobs.refit.inspection.look.test": "{method: cross_cut, standard: ISO 2409, limit: class 0..2}"},
            [
                "Test: Cross-cut class, ISO 2409: class 0 to class 2 "
                "(clause: Cross-cut class, ISO 2409: class 0 to class 1); compare the results"
            ],
            "to be judged",
        ),
        # how the maker's composition gives a figure stays with the maker
        (
            "{coat: primer, product: {solids: min 5 %}}",
            {},
            ["Volume solids: by the manufacturer's figures"],
            "met",
        ),
    ],
)
def test_where_a_clause_is_met(limit: str, changes: dict[str, str], where: list[str], result: str) -> None:
    ((told, verdict),) = _rows(limit, _DOOR, changes)
    assert (told.split("\n"), verdict) == (where, result)


def test_systems_are_told_apart_by_their_letters_where_there_are_several() -> None:
    ((told, verdict),) = _rows("{total: {min: 60 um}}", "", {})
    assert [line.partition(":")[0] for line in told.split("\n")] == ["System A", "System B"]
    assert verdict == "met"


def test_a_waiver_in_force_is_told_at_the_clause_it_is_for() -> None:
    waiver = (
        "[{id: short, rule: CUS001, path: systems.cab.total.min, reason: Agreed., by: A. Tester, until: 2099-12-31}]"
    )
    changes = {"jobs.refit.waivers": waiver}
    ((_, verdict),) = _rows("{total: {min: 96 um}}", _DOOR, changes)
    assert verdict == "not met, waived by A. Tester until 2099-12-31"
    ended = {"jobs.refit.waivers": waiver.replace("2099", "2000")}
    ((_, verdict),) = _rows("{total: {min: 96 um}}", _DOOR, ended)
    assert verdict == "not met"


def test_a_place_that_meets_a_clause_is_named_by_titles() -> None:
    spec = good()
    clause = "{id: one, number: '1', text: Readings are handed over., force: required}"
    put(spec, "contract_documents", f"[{{id: yard, number: YS-7, title: Painting, clauses: [{clause}]}}]")
    answer = "{id: one, at: systems.cab.layers.primer.film.max}"
    put(spec, "jobs.refit.made_to", f"[{{id: yard, document: yard{_DOOR}, answers: [{answer}]}}]")
    whole = spec_of(spec)
    job = whole.jobs["refit"]
    (table,) = compliance(job, whole, builds_of(job, whole), ON, Words(ENGLISH, {}))
    title = whole.systems["cab"].title
    assert table.rows[0][2] == f"Maximum DFT of the coat 1 primer of the system {title}"


def test_a_clause_that_needs_no_place_has_a_dash_for_it() -> None:
    whole = spec_of(check(DEMO.parent / "waterworks", ON))
    job = whole.jobs["pump-guards"]
    (table,) = compliance(job, whole, builds_of(job, whole), ON, Words(ENGLISH, {}))
    places = {result: where for _, _, where, result in table.rows}
    assert (places["does not apply"], places["permission"]) == ("–", "–")
    assert all(cell for row in table.rows for cell in row)
