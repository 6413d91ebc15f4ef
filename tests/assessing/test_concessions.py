"""What is conceded is told apart from what conforms, and eases no more than it says: one limit, its items, its days."""

from __future__ import annotations

import json
from collections.abc import Mapping

import pytest

from specgen.assessing.results import Assessment, Verdict
from specgen.facts.closure import cut_to_closure
from specgen.model.canonical import canonical
from specgen.report.assessment_report import as_json, as_text
from tests.assessing.job import FILM, OWN, PA_2, assessed, film_on, reasons, spots, told
from tests.good_spec import checked, good_with, spec_of

P, UNDER, F, OPEN = Verdict.CONFORMING, Verdict.CONCEDED, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
DAYS = "agreed_by: fleet, agreed_on: 2026-11-20, until: 2026-12-31, reason: Repainted in spring."


def conceded(
    limit: str, *, items: str = "DOOR", point: str = "point: primer-film,", days: str = DAYS
) -> Mapping[str, str]:
    return {"concessions": f"[{{id: thin, job: refit, items: [{items}], {point} {limit}, {days}}}]"}


THIN = conceded("film_min: {specified: 40 um, conceded: 34 um}")


@pytest.mark.parametrize(
    ("criterion", "means", "changes", "verdict"),
    [
        (OWN, (50, 40, 60), THIN, P),
        (OWN, (50, 39, 60), THIN, UNDER),
        (OWN, (50, 34, 60), THIN, UNDER),
        (OWN, (50, 33.9, 60), THIN, F),
        # the other side is nobody's concession
        (OWN, (50, 39, 81), THIN, F),
        (OWN, (50, 39, 81), conceded("film_max: {specified: 80 um, conceded: 90 um}"), F),
        (OWN, (50, 45, 81), conceded("film_max: {specified: 80 um, conceded: 90 um}"), UNDER),
        (OWN, (50, 39, 60), conceded("film_min: {specified: 40 um, conceded: 34 um}", items="STEP"), F),
        # before it was agreed, and after it ended
        (OWN, (50, 39, 60), conceded("film_min: {specified: 40 um, conceded: 34 um}", days=DAYS.replace("2026-12-31", "2026-11-26")), F),
        (OWN, (50, 39, 60), conceded("film_min: {specified: 40 um, conceded: 34 um}", days=DAYS.replace("2026-12-31", "2026-11-27")), UNDER),
        (OWN, (50, 39, 60), conceded("film_min: {specified: 40 um, conceded: 34 um}", days=DAYS.replace("2026-11-20", "2026-11-28")), F),
        # the rule stays: a spot may lie a fifth below the minimum that is conceded, the mean may not
        (PA_2, (39, 39, 39, 39, 39), THIN, UNDER),
        (PA_2, (60, 60, 60, 60, 28), THIN, UNDER),
        (PA_2, (60, 60, 60, 60, 27), THIN, F),
        (PA_2, (33, 33, 33, 33, 33), THIN, F),
        # a concession is no reading: what is missing stays missing
        (PA_2, (39, 39, 39, 39), THIN, OPEN),
        ("{rule: 90-10, nominal: 60 um}", (52, 53, 54, 55, 56), conceded("film_nominal: {specified: 60 um, conceded: 50 um}"), UNDER),
        ("{rule: 90-10, nominal: 60 um}", (48, 47, 54, 55, 56), conceded("film_nominal: {specified: 60 um, conceded: 50 um}"), F),
        # with the nominal film the most that ISO 19840 makes of it does not fall
        ("{rule: ISO-19840, nominal: 60 um}", (52, 53, 54, 170, 56), conceded("film_nominal: {specified: 60 um, conceded: 50 um}"), UNDER),
    ],
)  # fmt: skip
def test_film(criterion: str, means: tuple[float, ...], changes: Mapping[str, str], verdict: Verdict) -> None:
    found = assessed(spots(*means), criterion=criterion, changes=changes)
    assert told(found) == []
    assert film_on(found) is verdict


def test_the_reason_names_what_was_found_and_the_concession() -> None:
    found = assessed(spots(50, 39, 60), changes=THIN)
    said = "a spot measurement of 39 µm is below 40 µm (DOOR 2); accepted under the concession thin: minimum DFT 34 µm instead of 40 µm"
    assert reasons(found) == said
    assert "outside the concession thin too, which allows 34 µm" in reasons(assessed(spots(50, 33), changes=THIN))


def test_of_two_items_only_the_one_it_names_is_accepted() -> None:
    both = {f"{FILM}.criterion": OWN, "jobs.refit.items.STEP.system": "cab", **THIN}
    found = assessed(
        spots(50, 39),
        spots(50, 39, item="STEP", heading=False).join(["point,item,spot,reading,value,unit\n", ""]),
        changes=both,
    )
    assert (film_on(found), film_on(found, "STEP")) == (UNDER, F)


def test_the_guard_band_holds_against_the_limit_conceded() -> None:
    guard = {**THIN, "project.policies": "{guard_band: 2 um}"}
    assert film_on(assessed(spots(50, 37), changes=guard)) is UNDER
    assert film_on(assessed(spots(50, 35), changes=guard)) is F
    # near the limit as specified, and well inside the one conceded
    assert film_on(assessed(spots(50, 41), changes=guard)) is UNDER


LOOK = "point,item,test,value,unit,by\n"
LIMITS = {"preparations.sand-steel.salt_limit": "50 mg/m2", "preparations.sand-steel.dust_quantity": "2", "preparations.sand-steel.steps.sand.profile": "25..50 um"}  # fmt: skip


@pytest.mark.parametrize(
    ("limit", "row", "verdict"),
    [
        ("salt: {specified: 50 mg/m2, conceded: 60 mg/m2}", "prepared,DOOR,salt,50,mg/m2,K. A.", P),
        ("salt: {specified: 50 mg/m2, conceded: 60 mg/m2}", "prepared,DOOR,salt,6,ug/cm2,K. A.", UNDER),
        ("salt: {specified: 50 mg/m2, conceded: 60 mg/m2}", "prepared,DOOR,salt,61,mg/m2,K. A.", F),
        ("dust_quantity: {specified: 2, conceded: 3}", "prepared,DOOR,dust-quantity,3,,K. A.", UNDER),
        ("dust_quantity: {specified: 2, conceded: 3}", "prepared,DOOR,dust-quantity,4,,K. A.", F),
        ("profile: {specified: min 25 um, conceded: min 20 um}", "prepared,DOOR,profile,21,um,K. A.", UNDER),
        ("profile: {specified: min 25 um, conceded: min 20 um}", "prepared,DOOR,profile,51,um,K. A.", F),
        # one limit for another eases nothing
        ("dust_quantity: {specified: 2, conceded: 3}", "prepared,DOOR,salt,55,mg/m2,K. A.", F),
    ],
)
def test_the_prepared_surface(limit: str, row: str, verdict: Verdict) -> None:
    found = assessed(LOOK + row + "\n", changes={**LIMITS, **conceded(limit, point="")})
    assert told(found) == []
    assert _at(found, "prepared") is verdict


@pytest.mark.parametrize(("result", "verdict"), [("5.2 MPa", P), ("4.1 MPa", UNDER), ("3.9 MPa", F)])
def test_the_result_of_a_test(result: str, verdict: Verdict) -> None:
    test = {"jobs.refit.inspection.look.test": "{method: pull_off, limit: min 5 MPa}"}
    eased = conceded("test: {specified: min 5 MPa, conceded: min 4 MPa}", point="point: look,")
    found = assessed(f"point,item,value,by\nlook,DOOR,{result},K. A.\n", changes={**test, **eased})
    assert _at(found, "look") is verdict


WORDS = conceded(
    'words: {specified: "no runs, pores or bare places", conceded: one run of up to 20 mm}', point="point: look,"
)


@pytest.mark.parametrize(
    ("value", "by", "verdict"),
    [
        ("conforming", "K. A.", P),
        # a person says so, and under which; that something does not conform is never taken for what was conceded
        ("not conforming", "K. A.", F),
        ("conforming under thin", "K. A.", UNDER),
        ("Accepted under the concession thin", "K. A.", UNDER),
        ("conforming under thin", "", OPEN),
        ("conforming under thick", "K. A.", F),
    ],
)
def test_words(value: str, by: str, verdict: Verdict) -> None:
    found = assessed(f"point,item,value,by\nlook,DOOR,{value},{by}\n", changes=WORDS)
    assert told(found) == []
    assert _at(found, "look") is verdict


POINT = {
    "jobs.refit.inspection.climate": "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}"
}


def _air(humidity: int, coat: str = "base") -> str:
    rows = "".join(
        f"climate,{one},20,{humidity if one == coat else 55},20,2026-11-21\n"
        for one in ("primer", "base", "clear", "barrier")
    )
    return f"point,coat,air,humidity,surface,on\n{rows}"


@pytest.mark.parametrize(
    ("humidity", "coat", "verdict"),
    [(75, "base", P), (76, "base", UNDER), (78, "base", UNDER), (79, "base", F), (76, "clear", F)],
)
def test_the_air_of_one_coat(humidity: int, coat: str, verdict: Verdict) -> None:
    eased = conceded("humidity: {specified: max 75 %, conceded: max 78 %}, coat: base", point="")
    assert _at(assessed(_air(humidity, coat), changes={**POINT, **eased}), "climate") is verdict


def test_it_is_counted_used_and_never_silent() -> None:
    more = "{id: other, job: refit, items: [DOOR], point: look, words: {specified: 'no runs, pores or bare places', conceded: a run}, agreed_by: fleet, agreed_on: 2026-10-01, until: 2026-10-31, reason: Over.}"
    found = assessed(spots(50, 39), changes={"concessions": f"[{THIN['concessions'][1:-1]}, {more}]"})
    text = as_text(found).replace("\N{NO-BREAK SPACE}", " ")
    assert "primer-film (Film of the primer): conforming under concession" in text
    assert "Concessions: 2 of this job, 1 in force, 1 used" in text
    assert "thin: minimum DFT 34 µm instead of 40 µm on DOOR, agreed by fleet on 2026-11-20, until 2026-12-31" in text
    assert "until 2026-10-31; not in force\n    used for: nothing" in text
    held = {one["id"]: one for one in json.loads(as_json(found))["concessions"]}
    assert held["thin"]["used"] == [{"item": "DOOR", "point": "primer-film"}]
    assert (held["other"]["in_force"], held["other"]["used"]) == (False, [])


@pytest.mark.parametrize(("read", "said"), [("2026-11-19", True), ("2026-11-20", False)])
def test_one_agreed_once_the_figures_were_known_is_told(read: str, said: bool) -> None:
    text = spots(50, 39).replace("unit\n", "unit,on\n").replace(",um\n", f",um,{read}\n")
    found = assessed(text, changes=THIN)
    assert film_on(found) is UNDER
    late = [(one.id, one.severity.value, one.place.line) for one in found.findings if one.id == "RDG023"]
    assert late == ([("RDG023", "warning", 2)] if said else [])
    assert ("agreed after the readings of 2026-11-19" in as_text(found)) is said


def test_air_outside_its_limits_is_no_reading_that_a_concession_on_film_came_after() -> None:
    text = spots(50, 39).replace("unit\n", "unit,on\n").replace(",um\n", ",um,2026-11-21\n")
    found = assessed(text, _air(80).replace("2026-11-21", "2026-11-19"), changes={**POINT, **THIN})
    assert (film_on(found), _at(found, "climate")) == (UNDER, F)
    assert [one.id for one in found.findings if one.id == "RDG023"] == []
    eased = conceded("humidity: {specified: max 75 %, conceded: max 78 %}, coat: base", point="")
    for coat, told_late in (("base", True), ("clear", False)):
        rows = _air(76) + f"climate,{coat},20,80,20,2026-11-19\n"
        found = assessed(rows, changes={**POINT, **eased})
        assert any(one.id == "RDG023" for one in found.findings) is told_late


@pytest.mark.parametrize(
    ("days", "verdict"),
    [
        # it ended on 2026-11-25 and is judged on 2026-11-27
        (("2026-11-24", "2026-11-25"), UNDER),
        (("2026-11-24", "2026-11-26"), F),
        # nothing shows that a row without a day, or with one that cannot be read, was taken before it ended
        (("2026-11-24", ""), F),
        (("2026-11-24", "03/04/2026"), F),
        # it was granted for what was found
        (("2026-11-18", "2026-11-18"), UNDER),
    ],
)
def test_what_was_read_by_its_last_day_stays_accepted(days: tuple[str, str], verdict: Verdict) -> None:
    ended = conceded("film_min: {specified: 40 um, conceded: 34 um}", days=DAYS.replace("2026-12-31", "2026-11-25"))
    first, *rows = spots(50, 39).splitlines()
    text = "\n".join([f"{first},on", *(f"{line},{days[number // 3]}" for number, line in enumerate(rows))])
    found = assessed(text + "\n", changes=ended)
    assert film_on(found) is verdict
    (seen,) = found.concessions
    assert not seen.is_in_force
    assert ("ended since" in as_text(found)) is (verdict is UNDER)


@pytest.mark.parametrize(("day", "verdict"), [("2026-11-25", UNDER), ("2026-11-26", F), ("", F)])
def test_air_a_surface_a_test_and_words_are_held_to_the_day_of_their_row(day: str, verdict: Verdict) -> None:
    ended = {"days": DAYS.replace("2026-12-31", "2026-11-25")}
    salt = conceded("salt: {specified: 50 mg/m2, conceded: 60 mg/m2}", point="", **ended)
    look = "point,item,test,value,unit,by,on\n"
    found = assessed(f"{look}prepared,DOOR,salt,6,ug/cm2,K. A.,{day}\n", changes={**LIMITS, **salt})
    assert _at(found, "prepared") is verdict
    test = {"jobs.refit.inspection.look.test": "{method: pull_off, limit: min 5 MPa}"}
    eased = conceded("test: {specified: min 5 MPa, conceded: min 4 MPa}", point="point: look,", **ended)
    found = assessed(f"point,item,value,by,on\nlook,DOOR,4.1 MPa,K. A.,{day}\n", changes={**test, **eased})
    assert _at(found, "look") is verdict
    words = {"concessions": WORDS["concessions"].replace("2026-12-31", "2026-11-25")}
    found = assessed(f"point,item,value,by,on\nlook,DOOR,conforming under thin,K. A.,{day}\n", changes=words)
    assert _at(found, "look") is verdict
    air = conceded("humidity: {specified: max 75 %, conceded: max 78 %}, coat: base", point="", **ended)
    rows = _air(76).replace("2026-11-21", day)
    assert _at(assessed(rows, changes={**POINT, **air}), "climate") is verdict


def _at(found: Assessment, point: str, item: str = "DOOR") -> Verdict:
    return next(at.verdict for at in found.results if (at.point.id, at.item.id) == (point, item))


@pytest.mark.parametrize("key", ["hold_point", "parties", "ventilation", "exposure", "protection", "salt_limit"])
def test_only_what_is_measured_or_assessed_has_a_key(key: str) -> None:
    more = conceded(f"film_min: {{specified: 40 um, conceded: 34 um}}, {key}: {{specified: a, conceded: b}}")
    found = [(one.id, one.path) for one in checked(good_with(more, ())).report if one.severity.value == "error"]
    assert found == [("MOD001", f"concessions.thin.{key}")]


def test_no_document_rests_on_a_concession() -> None:
    bare, with_one = (spec_of(good_with(changes, ())) for changes in ({}, THIN))
    assert with_one.concessions
    parts = (canonical(cut_to_closure(spec, spec.jobs["refit"]), content=True) for spec in (bare, with_one))
    assert len(set(parts)) == 1
