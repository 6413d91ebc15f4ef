"""Clauses of a customer's document traced to where a job meets them: worked out by hand for the second customer of the demo."""

from __future__ import annotations

import pytest

from specgen import check
from specgen.facts.contract.held import Verdict
from specgen.facts.contract.trace import Traced, traced
from specgen.model.spec import Spec
from tests.good_spec import DEMOS, ON, given, good, put, spec_of

WATERWORKS = DEMOS / "waterworks"


def _demo(job: str) -> dict[str, Traced]:
    spec = spec_of(check(WATERWORKS, on=ON))
    return {one.clause.number: one for one in traced(spec.jobs[job], spec)}


def test_the_guards_meet_all_but_one_piece_of_advice() -> None:
    found = _demo("pump-guards")
    verdicts = {number: one.verdict for number, one in found.items()}
    assert verdicts == {
        "3.2": Verdict.MET,
        "3.3": Verdict.NOT_APPLICABLE,  # no part is bare steel
        "3.4": Verdict.MET,
        "3.5": Verdict.MET,
        "3.6": Verdict.NOT_MET,
        "4.1": Verdict.MET,
        "5.1": Verdict.MET,
        "6.1": Verdict.BY_WORD,  # a hold point tells nobody a day before
        "6.4": Verdict.BY_WORD,
        "7.1": Verdict.PERMISSION,
        "8.1": Verdict.MOVED,
    }
    (short,) = found["3.6"].those(Verdict.NOT_MET)
    assert (str(short.asked), str(short.found)) == ("50 um", "48 um")
    assert short.path == ("systems", "zinc-grey", "layers", "frame-top", "film", "min")


def test_coats_to_be_offered_answer_with_what_they_require() -> None:
    found = _demo("pump-frames")
    assert {held.path for held in found["3.4"].held} == {
        ("systems", "pump-frame", "layers", "prime", "film", "min"),
        ("systems", "pump-frame", "layers", "prime", "required", "generic_type"),
        ("systems", "pump-frame", "layers", "prime", "required", "voc"),
    }
    assert found["3.4"].verdict is Verdict.MET
    assert [held.path for held in found["4.1"].held] == [
        ("systems", "pump-frame", "banned", "lead"),
        ("systems", "pump-frame", "banned", "chromate"),
    ]


def _made(limit: str, **changes: str) -> Traced:
    """The clause with this limit, for the doors of the good specification."""
    spec = good()
    clause = f"{{id: one, number: '1', text: One., force: required, limit: {limit}}}"
    put(spec, "contract_documents", f"[{{id: yard, number: YS-7, title: Painting, clauses: [{clause}]}}]")
    put(spec, "jobs.refit.made_to", "[{id: yard, document: yard, items: [DOOR]}]")
    for path, value in changes.items():
        put(spec, path, value)
    whole: Spec = spec_of(spec)
    (found,) = traced(whole.jobs["refit"], whole)
    return found


# the doors have 40 to 80, 15 to 30 and 40 to 70 um, 95 to 180 um in all, nominal 130 um
@pytest.mark.parametrize(
    ("limit", "verdict"),
    [
        ("{total: {min: 95 um}}", Verdict.MET),
        ("{total: {min: 95.1 um}}", Verdict.NOT_MET),
        ("{total: {max: 180 um}}", Verdict.MET),
        ("{total: {max: 179.9 um}}", Verdict.NOT_MET),
        ("{total: {nominal: 130 um}}", Verdict.MET),
        ("{total: {nominal: 131 um}}", Verdict.NOT_MET),
        ("{coat: clearcoat, film: {min: 40 um, max: 70 um}}", Verdict.MET),
        ("{coat: clearcoat, film: {min: 40 um, max: 69 um}}", Verdict.NOT_MET),
        ("{coat: topcoat, film: {min: 40 um}}", Verdict.NOT_ANSWERED),  # the doors have base and clear instead
        ("{coats: 3}", Verdict.MET),
        ("{coats: min 4}", Verdict.NOT_MET),
        ("{coat: primer, coats: 1}", Verdict.MET),
        ("{grade: P Ma}", Verdict.MET),
        ("{profile: 20..40 um}", Verdict.NOT_ANSWERED),
        ("{climate: {air: min 15 degC, humidity: max 75 %}}", Verdict.MET),
        ("{climate: {air: min 15 degC, humidity: max 74 %}}", Verdict.NOT_MET),
        ("{hold_points: [after-preparation]}", Verdict.MET),
        ("{hold_points: [receipt]}", Verdict.NOT_ANSWERED),
        ("{hold_points: [during-application]}", Verdict.NOT_MET),  # the film of the primer is read, and work goes on
        ("{acceptance: own}", Verdict.MET),
        ("{acceptance: 90-10}", Verdict.NOT_TOLD),  # readings all inside the limits are stricter
        ("{acceptance: ISO-19840}", Verdict.NOT_TOLD),
        ("{durability: high}", Verdict.NOT_ANSWERED),
        ("{warranty: 2 years}", Verdict.NOT_ANSWERED),
        ("{materials: [aluminium], total: {min: 900 um}}", Verdict.NOT_APPLICABLE),
        ("{materials: [steel_cold_rolled], total: {min: 900 um}}", Verdict.NOT_MET),
    ],
)
def test_a_limit_at_its_edge(limit: str, verdict: Verdict) -> None:
    assert _made(limit).verdict is verdict


@pytest.mark.parametrize(
    ("claimed", "verdict"),
    [
        ("{corrosivity: C3, durability: high}", Verdict.MET),
        ("{corrosivity: C4, durability: high}", Verdict.MET),
        ("{corrosivity: C2, durability: high}", Verdict.NOT_MET),
        ("{corrosivity: C4, durability: medium}", Verdict.NOT_TOLD),  # a harsher air for a shorter time
    ],
)
def test_category_and_durability_go_together(claimed: str, verdict: Verdict) -> None:
    assert _made("{corrosivity: C3, durability: high}", **{"systems.cab.category": claimed}).verdict is verdict


@pytest.mark.parametrize(
    ("binder", "verdict"),
    [("epoxy_2k", Verdict.MET), ("epoxy_latent", Verdict.NOT_TOLD), ("oil_alkyd", Verdict.NOT_MET)],
)
def test_a_blocked_hardener_is_left_to_a_person(binder: str, verdict: Verdict) -> None:
    made = _made("{coat: primer, product: {generic_type: epoxy_2k}}", **{"products.primer.binder": binder})
    assert made.verdict is verdict


def test_an_edition_based_on_the_one_before_keeps_every_limit() -> None:
    spec = good()
    clause = "{id: one, number: '1', text: One., force: required, limit: {product: {voc: 420 g/L}, banned: [{id: lead, substance: lead}]}}"
    first = f"{{id: first, number: YS-7, title: Painting, edition: '1', clauses: [{clause}]}}"
    second = "{id: second, based_on: first, edition: '2', supersedes: [{id: old, number: YS-7, edition: '1'}]}"
    put(spec, "contract_documents", f"[{first}, {second}]")
    (taken,) = spec_of(spec).contract_documents["second"].clauses
    assert taken.limit is not None
    assert taken.limit.product is not None
    assert str(taken.limit.product.voc) == "420 g/L"
    assert [ban.substance for ban in taken.limit.banned] == ["lead"]


@pytest.mark.parametrize(
    ("rules", "verdict", "shown"),
    [
        (("ISO-19840", "ISO-19840"), Verdict.MET, "end"),
        (("ISO-19840", "90-10"), Verdict.NOT_TOLD, "end"),
        (("90-10", "ISO-19840"), Verdict.NOT_TOLD, "primer-film"),
        (("90-10", "90-10"), Verdict.NOT_MET, "end"),
    ],
)
def test_one_point_by_the_rule_asked_for_does_not_answer_for_the_others(
    rules: tuple[str, str], verdict: Verdict, shown: str
) -> None:
    first, last = (f"{{rule: {rule}, nominal: 60 um, max: 80 um}}" for rule in rules)
    end = f"{{id: end, check: Film, at: completion, criterion: {last}}}"
    points = {"jobs.refit.inspection.primer-film.criterion": first, "jobs.refit.inspection.end": end}
    made = _made("{acceptance: ISO-19840}", **points)
    assert (made.verdict, made.held[0].path[3]) == (verdict, shown)


_CUT = "{method: cross_cut, standard: ISO 2409, limit: class 0..1}"


@pytest.mark.parametrize(
    ("place", "test", "leads_to"),
    [
        ("jobs.refit.inspection.look.test", _CUT, "jobs.refit.inspection.look.test"),
        ("jobs.refit.tests", f"[{{id: cut, {_CUT[1:]}]", "jobs.refit.tests.cut"),
        ("systems.cab.tests", f"[{{id: cut, {_CUT[1:]}]", "systems.cab.tests.cut"),
        ("jobs.refit.inspection.look.method", '"Cross-cut, ISO 2409"', "jobs.refit.inspection.look"),
        ("jobs.refit.inspection.look.test", "{method: cross_cut, limit: 4B}", "jobs.refit.inspection.look.test"),
        ("jobs.refit.inspection.look.test", "{method: pull_off, limit: min 3 MPa}", None),
        # what no report stands behind is not printed, so no clause is met by it
        ("products.clear.claims", f"[{{id: cut, text: Holds to ISO 2409., basis: ISO 2409, test: {_CUT}}}]", None),
    ],
)
def test_a_test_is_found_wherever_it_is_typed(place: str, test: str, leads_to: str | None) -> None:
    made = _made(f"{{coat: clearcoat, product: {{tests: [{{id: cut, {_CUT[1:]}]}}}}", **{place: test})
    (held,) = made.held
    assert held.verdict is (Verdict.NOT_TOLD if leads_to is not None else Verdict.NOT_ANSWERED)
    assert (".".join(held.path) if held.found is not None else None) == leads_to


def test_a_claim_that_its_report_bears_out_shows_a_test_and_is_named_before_one_of_the_same_exposure() -> None:
    spec = given("a claim with its report")
    exposed = "after: {method: nss, standard: ISO 9227, duration: 480 h}"
    asked = f"{{id: creep, method: scribe_creep, standard: ISO 4628-8, {exposed}, limit: max 2 mm}}"
    clause = f"{{id: one, number: '1', text: One., force: required, limit: {{product: {{tests: [{asked}]}}}}}}"
    put(spec, "contract_documents", f"[{{id: yard, number: YS-7, title: Painting, clauses: [{clause}]}}]")
    put(spec, "jobs.refit.made_to", "[{id: yard, document: yard}]")
    put(spec, "jobs.refit.tests", f"[{{id: rust, method: rust_grade, standard: ISO 4628-3, {exposed}, limit: Ri 0}}]")
    whole = spec_of(spec)
    (held,) = traced(whole.jobs["refit"], whole)[0].held
    assert held.path == ("products", "barrier", "claims", "salt", "test")


@pytest.mark.parametrize(
    ("words", "answer", "verdict"),
    [
        ("The engineer is told a day before each hold point.", "", Verdict.NOT_TOLD),
        ("Seven days' notice of each hold point.", "", Verdict.NOT_TOLD),
        ("The contractor notifies the yard of each hold point.", "", Verdict.NOT_TOLD),
        (
            "The engineer is told a day before.",
            ", answers: [{id: one, text: The desk calls the engineer.}]",
            Verdict.BY_WORD,
        ),
        ("A hold point after surface preparation.", "", Verdict.MET),
    ],
)
def test_a_hold_point_is_no_notice_of_it(words: str, answer: str, verdict: Verdict) -> None:
    spec = good()
    clause = f'{{id: one, number: "1", text: "{words}", force: required, limit: {{hold_points: [after-preparation]}}}}'
    put(spec, "contract_documents", f"[{{id: yard, number: YS-7, title: Painting, clauses: [{clause}]}}]")
    put(spec, "jobs.refit.made_to", f"[{{id: yard, document: yard, items: [DOOR]{answer}}}]")
    whole: Spec = spec_of(spec)
    (found,) = traced(whole.jobs["refit"], whole)
    assert found.verdict is verdict
