"""Specifications that name no product: sound ones check without error or warning, faults in them are told, and what depends on the choice is told as that."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest
import yaml

from specgen.checking import Checked, check
from specgen.comparing import compare
from specgen.facts.offered import Verdict, coats_offered, missing_by, offered_in_figures, verdict_by
from specgen.facts.requirement import Asked
from specgen.facts.tests.qualification import bids, of_offer, qualified
from specgen.facts.tests.shown import Standing
from specgen.findings import Severity
from specgen.printing.documents import Refused, print_documents
from tests.good_spec import checked as checked_sources
from tests.good_spec import given, spec_of, take_out
from tests.good_spec import put as put_in
from tests.page_text import running_text

PERFORMANCE = Path(__file__).parent / "performance"
ON = date(2026, 11, 26)
FOOTBRIDGE = "footbridge"


def _changed(tmp_path: Path, name: str, *changes: tuple[str, str]) -> Checked:
    folder = tmp_path / name
    copytree(PERFORMANCE / name, folder)
    for take, put in changes:
        # the specification before the products and offers beside it
        file = next(one for one in sorted(folder.glob("*.yaml"), reverse=True) if take in one.read_text("utf-8"))
        text = file.read_text("utf-8")
        assert text.count(take) == 1
        file.write_text(text.replace(take, put), "utf-8")
    return check(folder, ON)


def _told(checked: Checked, rule: str) -> set[tuple[str, str]]:
    return {(str(found.severity), found.what.partition(":")[0]) for found in checked.report if found.id == rule}


def test_a_specification_of_families_is_sound() -> None:
    """All that is found is what the second offer falls short in."""
    found = [found for found in check(PERFORMANCE / FOOTBRIDGE, ON).report if found.severity is not Severity.NOTE]
    assert {(one.id, one.path.partition(".layers.")[0]) for one in found} == {("REQ006", "offers.ostrey")}


def _faults() -> list[dict[str, Any]]:
    return list(yaml.load((PERFORMANCE / "faults.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader))


@pytest.mark.parametrize("told", _faults(), ids=lambda told: told["fault"])
def test_a_fault_put_in_is_found(told: dict[str, Any], tmp_path: Path) -> None:
    changes = [(change["take"], change["put"]) for change in told["change"]]
    found = {(f.id, f.path, str(f.severity)) for f in _changed(tmp_path, told["folder"], *changes).report}
    assert told["raises"]
    assert {tuple(raised) for raised in told["raises"]} <= found


VINYL = (
    "generic_type: zinc_organic, solids: min 55 %",
    "generic_type: vinyl, alternatives: [{id: zinc, generic_type: zinc_organic}]",
)
LESS_CLEAN = ("Blast clean to Sa 2 1/2., grade: Sa 2 1/2", "Blast clean to Sa 2., grade: Sa 2")


def test_an_error_of_one_choice_alone_is_a_warning_that_names_it(tmp_path: Path) -> None:
    one = _changed(tmp_path, FOOTBRIDGE, VINYL)
    assert _told(one, "OVR001") == {("warning", "with the first requirement of the coat zinc")}
    assert one.report.count(Severity.ERROR) == 0


def test_where_no_choice_is_possible_the_errors_stay(tmp_path: Path) -> None:
    none = _changed(tmp_path, FOOTBRIDGE, VINYL, LESS_CLEAN)
    assert _told(none, "OVR001") == {("error", "with the first requirement of the coat zinc")}
    assert ("error", "with the alternative zinc of the coat zinc") in _told(none, "SUB004")


def test_what_is_found_with_every_choice_is_told_once_and_names_none(tmp_path: Path) -> None:
    close = _changed(tmp_path, FOOTBRIDGE, ("dew_point_margin: min 3 K", "dew_point_margin: min 1 K"))
    assert _told(close, "CLI004") == {
        ("error", "the surface is kept min 1 K above the dew point; the general minimum is 3 K")
    }


def test_it_prints_as_a_performance_specification_and_nothing_that_needs_products() -> None:
    checked = check(PERFORMANCE / FOOTBRIDGE, ON)
    printed = print_documents(checked, formats=["html", "csv"], products=[])
    assert [name for name in printed if "GW-7" in name and "offer" not in name] == [
        "GW-7-performance-specification.html",
        "GW-7-T-qualification-matrix.html",
        "GW-7-O-qualification-matrix.html",
        "GW-7-inspection-plan.html",
    ]
    assert "Apply zinc-rich epoxy, to be offered" in printed["GW-7-inspection-plan.html"].decode()
    page = printed["GW-7-performance-specification.html"].decode()
    assert "According to the safety data sheet of the product chosen" in page
    assert "What the supplier must prove" in page
    with pytest.raises(Refused, match="before the products are chosen"):
        print_documents(checked, documents=["hazard-card"])


def test_an_offer_that_meets_and_one_that_falls_short_in_three_clauses() -> None:
    spec = check(PERFORMANCE / FOOTBRIDGE, ON).loaded.spec
    assert spec is not None
    by_offer = {
        key: [one for coat in coats_offered(offer, spec) for one in coat.answers] for key, offer in spec.offers.items()
    }
    # the report on the zinc is named and is not among the sources; that on the weathering is
    assert [one.missing for one in by_offer["tollan"] if one.verdict is not Verdict.MEETS] == ["the test report itself"]
    short = [
        (one.clause.asked, offered_in_figures(one)) for one in by_offer["ostrey"] if one.verdict is Verdict.FALLS_SHORT
    ]
    assert short == [
        (Asked.SOLIDS, "64\N{NO-BREAK SPACE}%"),
        (Asked.VOC, "330\N{NO-BREAK SPACE}g/L"),
        (Asked.COLOUR, "Board colour card GW 5"),
    ]
    open_yet = [(one.clause.asked, one.missing) for one in by_offer["ostrey"] if one.verdict is Verdict.NOT_SHOWN]
    assert open_yet == [(Asked.TEST, "the test report itself")] * 2


def test_the_review_says_the_outcome_and_every_clause() -> None:
    printed = print_documents(check(PERFORMANCE / FOOTBRIDGE, ON), documents=["offer-review"], formats=["html"])
    assert list(printed) == ["GW-7-T-offer-review.html", "GW-7-O-offer-review.html"]
    meets, short = (page.decode() for page in printed.values())
    assert "Nothing in the offer falls short, but it is not shown to comply in full. 1 clause is not shown." in meets
    assert "It falls short in 3 clauses. 2 clauses are not shown." in short
    assert short.count("FALLS SHORT") == 3


def test_the_rules_judge_the_system_with_the_products_offered(tmp_path: Path) -> None:
    take = "{id: body, product: ostrey-body, variant: standard}"
    put = "{id: body, product: ostrey-top, variant: grey}"
    found = _changed(tmp_path, FOOTBRIDGE, (take, put)).report
    told = {(f.id, str(f.severity)) for f in found if f.path == "offers.ostrey.layers.body.product"}
    assert ("REQ006", "warning") in told
    cold = _changed(tmp_path / "cold", FOOTBRIDGE, ("climate: {air: 10..30 degC", "climate: {air: 2..30 degC")).report
    assert ("CLI001", "warning") in {(f.id, str(f.severity)) for f in cold if f.path == "offers.tollan"}


def _judged(old: str, new: str, tmp_path: Path) -> set[str]:
    """How `compare` judges one change of the specification."""
    before, after = check(PERFORMANCE / FOOTBRIDGE, ON), _changed(tmp_path, FOOTBRIDGE, (old, new))
    return {str(change.effect) for change in compare(before, after).changes}


@pytest.mark.parametrize(
    ("old", "new", "effect"),
    [
        ("solids: min 70 %, voc", "solids: min 65 %, voc", "relaxed"),
        ("solids: min 70 %, voc", "solids: min 72 %, voc", "tightened"),
        ("voc: 300 g/L", "voc: 340 g/L", "relaxed"),
        (", voc: 300 g/L", "", "relaxed"),
        ("gloss: 70..90 GU", "gloss: 60..90 GU", "relaxed"),
        ("generic_type: zinc_organic", "generic_type: zinc_pu", "replaced"),
        (
            ", tests: [{id: zinc-dust, test: ISO 3549, limit: at least 80 % zinc in the dry film by mass}]",
            "",
            "relaxed",
        ),
        (
            "{id: siloxane, generic_type: polysiloxane",
            "{id: aspartic, generic_type: polyaspartic}\n            - {id: siloxane, generic_type: polysiloxane",
            "relaxed",
        ),
    ],
)
def test_a_requirement_that_is_relaxed_is_told(old: str, new: str, effect: str, tmp_path: Path) -> None:
    assert effect in _judged(old, new, tmp_path)


def test_the_demo_has_a_tender_with_an_offer_that_is_not_shown_in_full_and_one_that_does_not_comply() -> None:
    checked = check(PERFORMANCE.parents[1] / "specs_demo" / "waterworks", ON)
    told = [(one.id, one.path) for one in checked.report if one.severity is not Severity.NOTE]
    assert told == [
        ("CUS001", "offers.second-bid"),  # the owner's own specification limits the VOC of the primer as well
        *[("REQ006", "offers.second-bid.layers.prime.product")] * 3,
    ]
    pages = print_documents(checked, documents=["method-statement", "offer-review"], formats=["html"])
    assert [name for name in pages if "4103" in name] == [
        "MS-4103-performance-specification.html",
        "OR-4103-1-offer-review.html",
        "OR-4103-2-offer-review.html",
    ]
    first, second = (pages[f"OR-4103-{number}-offer-review.html"].decode() for number in (1, 2))
    assert "Nothing in the offer falls short, but it is not shown to comply in full. 2 clauses are not shown." in first
    assert second.count("FALLS SHORT") == 3
    # the tests of all coats together: in the specification once, as what the supplier proves, and in each review
    asked = pages["MS-4103-performance-specification.html"].decode()
    proven = asked[asked.index("<h3>What the supplier must prove</h3>") : asked.index("A clause that is not shown")]
    assert (asked.count("Creep from the scribe"), proven.count("Creep from the scribe")) == (1, 1)
    assert "total DFT: required 110 to 165" in running_text(first)
    assert "duration of the exposure: required 720" in running_text(second)


def test_the_weathering_of_the_top_coat_has_one_answer_in_the_demo() -> None:
    checked = check(PERFORMANCE.parents[1] / "specs_demo" / "waterworks", ON)
    spec = checked.loaded.spec
    assert spec is not None
    answers = [coat.answers[-1] for offer in spec.offers.values() for coat in coats_offered(offer, spec)][1::2]
    assert [(one.verdict, one.offered) for one in answers] == [(Verdict.MEETS, "82 %, 81 %, 81 %, ORM-204/2026")] * 2
    both = bids(spec.jobs["pump-frames"], spec)
    found = [one for bid in both for one in qualified(bid, spec) if one.test.id == "weather"]
    assert [one.standing for one in found] == [Standing.SHOWN] * 2


def test_a_bidder_is_told_nothing_of_another() -> None:
    checked = check(PERFORMANCE.parents[1] / "specs_demo" / "waterworks", ON)
    pages = print_documents(checked, documents=["qualification-matrix", "offer-review"], formats=["html"])
    assert sorted(pages) == [
        f"OR-4103-{number}-{kind}.html" for number in (1, 2) for kind in ("offer-review", "qualification-matrix")
    ]
    for number, own, other in (
        (1, "520 epoxy barrier primer", "Dealer at Tannock"),
        (2, "Dealer at Tannock", "520 epoxy barrier primer"),
    ):
        for kind in ("offer-review", "qualification-matrix"):
            page = pages[f"OR-4103-{number}-{kind}.html"].decode()
            assert own in page
            assert other not in page
    alone = print_documents(checked, documents=["qualification-matrix"], formats=["html"], offers=["second-bid"])
    assert list(alone) == ["OR-4103-2-qualification-matrix.html"]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("by: independent-laboratory", "laboratory"),
        ("specimens: 4", "number of results"),
        ("by: manufacturer, specimens: 3", ""),
    ],
)
def test_who_tested_and_how_many_panels_are_held_against_what_is_required(asked: str, told: str) -> None:
    sources = given("an offer for a coat without a product")
    after = "after: {method: nss, duration: 480 h}"
    put_in(sources, "systems.open.tests", f"[{{id: salt, method: rust_grade, {after}, limit: Ri 0, {asked}}}]")
    put_in(sources, "reports.lab-31.laboratory.own", "yes")
    spec = spec_of(checked_sources(sources))
    (whole,) = of_offer(spec.offers["bid"], spec)
    assert [one.about for one in whole.shown.unlike] == ([told] if told else [])


@pytest.mark.parametrize(
    ("report", "verdict", "missing"),
    [
        ("rust", Verdict.MEETS, ""),
        ("short", Verdict.FALLS_SHORT, ""),
        ("other", Verdict.NOT_SHOWN, "a test report of the panels and conditions required"),
        ("none", Verdict.NOT_SHOWN, "the test report, with laboratory and date"),
    ],
)
def test_a_test_with_its_method_is_answered_by_the_reports(report: str, verdict: Verdict, missing: str) -> None:
    sources = given("an offer for a coat without a product")
    hours = "500 h" if report == "other" else "480 h"
    method = "chalking" if report == "none" else "rust_grade"
    asked = f"[{{id: salt, method: {method}, after: {{method: nss, duration: {hours}}}, limit: Ri 0, statistic: each}}]"
    put_in(sources, "systems.open.layers.prime.required.tests", asked)
    put_in(sources, "systems.open.tests", asked)
    if report == "short":
        put_in(sources, "reports.lab-31.tests.rust.results.P2.value", "Ri 1")
    spec = spec_of(checked_sources(sources))
    (coat,) = coats_offered(spec.offers["bid"], spec)
    assert (coat.answers[-1].verdict, coat.answers[-1].missing) == (verdict, missing)
    (whole,) = of_offer(spec.offers["bid"], spec)
    assert (verdict_by(whole.standing), missing_by(whole.standing)) == (verdict, missing)


def test_the_word_of_a_supplier_without_a_report_shows_nothing() -> None:
    sources = given("an offer for a coat without a product")
    take_out(sources, "offers.bid.layers.prime.tests.salt.evidence")
    spec = spec_of(checked_sources(sources))
    (coat,) = coats_offered(spec.offers["bid"], spec)
    assert (coat.answers[-1].verdict, coat.answers[-1].missing) == (Verdict.NOT_SHOWN, "the test report itself")
