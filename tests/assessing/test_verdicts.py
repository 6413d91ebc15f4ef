"""What an assessment comes to, item by item: the rule that is named decides, and what is missing never passes."""

from __future__ import annotations

import pytest

from specgen.assessing.faults import READING_FAULTS
from specgen.assessing.readings import Asked
from specgen.assessing.results import Assessment, Verdict
from specgen.report.assessment_report import as_json, as_text
from tests.assessing.job import FILM, PA_2, assessed, film_on, reasons, spots, told

P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
PLAN = {f"{FILM}.readings": "{areas: 1, spots: 5, readings: 15}"}
CLIMATE_POINT = "jobs.refit.inspection.climate"
CLIMATE = {
    CLIMATE_POINT: "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}"
}


@pytest.mark.parametrize(
    ("criterion", "means", "verdict", "said"),
    [
        ("{rule: own, min: 40 um, max: 80 um, each: spot}", (50, 40, 80), P, ""),
        ("{rule: own, min: 40 um, max: 80 um, each: reading}", (50, 40, 80), F, "a reading of 39 µm is below 40 µm (DOOR 2)"),
        ("{rule: own, min: 40 um, max: 80 um, each: spot}", (50, 39, 70), F, "a spot measurement of 39 µm is below 40 µm (DOOR 2)"),
        ("{rule: 90-10, nominal: 60 um, max: 80 um}", (61, 65, 70, 75, 61), P, ""),
        ("{rule: 90-10, nominal: 60 um, max: 80 um}", (60, 60, 70, 75, 61), F, "13.3"),
        ("{rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: at-most}", (60, 60, 70, 75, 59), F, "below nominal"),
        ("{rule: own, nominal: 60 um, max: 80 um, least_reading: 80 %, below_nominal: 20 %}", (60, 60, 70, 75, 61), P, ""),
        ("{as_specified: yes}", (50, 60, 79), P, ""),
        ("{as_specified: yes}", (50, 60, 80), F, "a reading of 81 µm is above 80 µm"),
        # no level is named, so nothing can be judged
        ("{rule: SSPC-PA-2, edition: '2012', min: 40 um, max: 80 um}", (50, 60, 70, 60, 60), OPEN, "lacks what its rule counts from"),
        ("{rule: SSPC-PA-2, edition: '2004', min: 40 um, max: 80 um}", (50, 60, 70, 60, 60), P, ""),
    ],
)  # fmt: skip
def test_the_rule_that_is_named_decides(criterion: str, means: tuple[int, ...], verdict: Verdict, said: str) -> None:
    found = assessed(spots(*means), criterion=criterion)
    assert told(found) == []
    assert film_on(found) is verdict
    assert said in reasons(found) if said else reasons(found) == ""


def test_one_set_passes_one_rule_and_fails_another_and_both_say_why() -> None:
    found = assessed(spots(50, 41, 60, 62, 58))
    assert film_on(found) is P
    others = {other.rule: other for other in found.lots[0].others}
    ninety = others["90-10"].judged
    assert ninety is not None
    assert ninety.verdict is F
    text = as_text(found)
    assert "accepted: every spot measurement from 40 µm to 80 µm" in text.replace("\u00a0", " ")
    assert "90-10: not conforming\n    - a reading of 40 µm is below 54 µm (DOOR 1, DOOR 2)" in text.replace(
        "\u00a0", " "
    )


def test_too_few_readings_of_rule_or_plan_are_not_decided_and_say_how_many_more() -> None:
    found = assessed(spots(50, 55, 60), criterion=PA_2)
    assert film_on(found) is OPEN
    at = next(at for at in found.results if at.point.id == "primer-film")
    assert at.next == ("read 2 more spots",)
    assert film_on(assessed(spots(50, 55, 60), changes=PLAN)) is OPEN
    assert film_on(assessed(spots(50, 55, 60, 61, 62), changes=PLAN)) is P
    # three readings a spot follow from the plan
    short = spots(50, 55, 60, 61, 62).replace("primer-film,DOOR,5,3,63,um\n", "primer-film,DOOR,4,4,61,um\n")
    assert "readings at a spot: 2; required: 3" in reasons(assessed(short, changes=PLAN))


def test_nothing_read_is_not_decided() -> None:
    found = assessed("point,item,value,by\nprepared,DOOR,conforming,K. A.\n")
    assert film_on(found) is OPEN
    assert "no film was read on this item" in reasons(found)
    assert found.verdict is OPEN


def test_a_comb_or_words_alone_leave_it_to_a_person() -> None:
    said = "point,item,value,by\nprimer-film,DOOR,conforming,K. A.\n"
    for more in (
        {f"{FILM}.gauge": "{principle: wet-film-comb}"},
        {f"{FILM}.criterion": "{text: even}", f"{FILM}.gauge": "{principle: magnetic}"},
    ):
        found = assessed(said, changes=more)
        assert found.lots == ()
        assert film_on(found) is P


def test_an_own_rule_that_leaves_open_what_counts_is_decided_only_where_both_agree() -> None:
    words = "{rule: own, min: 40 um, max: 80 um, text: within the limits}"
    said = "point,item,value,by\nprimer-film,DOOR,conforming,K. A.\n"
    assert film_on(assessed(spots(50, 60), said, criterion=words)) is P
    assert film_on(assessed(spots(50, 39), said, criterion=words)) is F
    found = assessed(spots(50, 40), said, criterion=words)
    assert film_on(found) is OPEN
    assert "does not say which of them counts" in reasons(found)
    few = reasons(assessed(spots(50, 40), said, criterion=words, changes=PLAN))
    assert "does not say which of them counts" in few
    assert "spots read: 2; required: 5" in few
    # the words themselves are a person's to judge
    assert "nobody has recorded" in reasons(assessed(spots(50, 60), criterion=words))


def test_a_guard_band_and_rounded_means_are_the_project_s_policy() -> None:
    near = spots(50, 41, 60)
    assert film_on(assessed(near)) is P
    found = assessed(near, changes={"project.policies": "{guard_band: 2 um}"})
    assert film_on(found) is OPEN
    assert "within the guard band" in reasons(found)
    low = "point,item,spot,reading,value,unit\n" + "".join(
        f"primer-film,DOOR,1,{n},{value},um\n" for n, value in enumerate((39, 40, 40), 1)
    )
    assert film_on(assessed(low)) is F
    assert film_on(assessed(low, changes={"project.policies": "{means: as-read}"})) is P


def test_a_correction_is_taken_off_every_reading() -> None:
    gauge = {f"{FILM}.gauge": "{principle: magnetic, zeroed_on: smooth-steel, correction: 25 um}"}
    assert film_on(assessed(spots(50, 60), changes=gauge)) is F
    assert film_on(assessed(spots(75, 85), changes=gauge)) is P


DROPPED = "point,item,spot,reading,value,unit,dropped_by,dropped_why\n"


def test_a_reading_is_dropped_by_a_person_who_repeated_it_never_by_the_program() -> None:
    wild = "primer-film,DOOR,1,1,210,um,{},{}\nprimer-film,DOOR,1,2,60,um,,\nprimer-film,DOOR,1,3,61,um,,\n"
    # as it stands the wild reading counts
    assert film_on(assessed(DROPPED + wild.format("", ""))) is F
    found = assessed(DROPPED + wild.format("K. A.", "did not repeat"))
    assert told(found) == []
    assert film_on(found) is P
    assert "dropped by K. A., row 2: 210 (did not repeat)" in as_text(found)
    for who, why in (("K. A.", ""), ("", "looked wrong"), ("?", "looked wrong"), ("K. A.", "n/a")):
        found = assessed(DROPPED + wild.format(who, why))
        assert told(found) == [("RDG010", 2, 7)]
        assert found.lots[0].area.count == 3
    # nobody repeated it
    found = assessed(DROPPED + "primer-film,DOOR,1,1,210,um,K. A.,wild\n")
    assert told(found) == [("RDG010", 2, 7)]
    assert found.lots[0].area.count == 1
    # a dropped reading is no repeat of another
    rows = "primer-film,DOOR,1,1,210,um,K. A.,wild\nprimer-film,DOOR,1,2,211,um,K. A.,wild\n"
    found = assessed(DROPPED + rows)
    assert told(found) == [("RDG010", 2, 7), ("RDG010", 3, 7)]
    assert found.lots[0].area.count == 2


def test_the_walk_around_an_area_that_does_not_conform() -> None:
    text = spots(30, 30, 30, 30, 30).replace("unit\n", "unit,walk\n").replace(",um\n", ",um,\n")
    found = assessed(text, criterion=PA_2)
    at = next(at for at in found.results if at.point.id == "primer-film")
    assert at.verdict is F
    assert at.next[0].startswith("measure spots outwards every 1.5 m until 2 in a row lie within minimum and maximum")
    assert at.put_right == "sand back and recoat"
    walk = "".join(f"primer-film,DOOR,w{n},1,{value},um,left\n" for n, value in enumerate((35, 50, 38, 41, 42)))
    found = assessed(text + walk, criterion=PA_2)
    at = next(at for at in found.results if at.point.id == "primer-film")
    assert at.next == ("DOOR left: the area that does not conform reaches 3 spots outwards",)
    assert found.lots[0].area.count == 15
    # of one film alone the edition makes a minimum and a maximum: here 40 and 60 um
    found = assessed(text + walk, criterion="{rule: SSPC-PA-2, edition: '2012', level: 3, nominal: 50 um}")
    at = next(at for at in found.results if at.point.id == "primer-film")
    assert at.next == ("DOOR left: the area that does not conform reaches 3 spots outwards",)
    # spots of a walk that lie outside are hidden by no area that conforms
    fine = text.replace("29,um", "50,um").replace("30,um", "50,um").replace("31,um", "50,um")
    found = assessed(fine + walk, criterion=PA_2)
    assert film_on(found) is OPEN
    assert "spots measured outwards are outside the limits: DOOR left (3)" in reasons(found)
    inside = walk.replace("35,", "45,").replace("38,", "48,")
    assert film_on(assessed(fine + inside, criterion=PA_2)) is P
    # without a minimum and a maximum nothing says where the walk ends
    assert assessed(text + walk, criterion="{rule: 90-10, nominal: 50 um}").lots[0].walks == {}


def test_areas_are_judged_each_by_itself() -> None:
    text = spots(60, 60, 60, 60, 60).replace("unit\n", "unit,area\n").replace(",um\n", ",um,upper\n")
    low = spots(36, 36, 36, 36, 36, heading=False).replace(",um\n", ",um,lower\n")
    found = assessed(text + low, criterion=PA_2)
    assert [lot.name for lot in found.lots] == ["upper", "lower"]
    assert reasons(found) == "area lower: the mean of 36 µm is below 40 µm"
    # ten spots in all, and each area asks for five of its own
    one = spots(60).replace("unit\n", "unit,area\n").replace(",um\n", ",um,upper\n")
    nine = spots(*[60] * 9, heading=False).replace(",um\n", ",um,lower\n")
    found = assessed(one + nine, criterion=PA_2)
    assert film_on(found) is OPEN
    assert reasons(found) == "area upper: spots read: 1; required: 5"
    at = next(at for at in found.results if at.point.id == "primer-film")
    assert at.next == ("area upper: read 4 more spots",)
    assert film_on(assessed(one + nine)) is P


LOOK = "point,item,test,value,unit,by\n"


@pytest.mark.parametrize(
    ("row", "verdict"),
    [
        ("prepared,DOOR,,conforming,,K. A.", P),
        ("prepared,DOOR,,conforming,,", OPEN),
        ("prepared,DOOR,,not conforming,,K. A.", F),
        ("prepared,DOOR,,Pass,,K. A.", P),
        ("prepared,DOOR,,quite good,,K. A.", OPEN),
        ("prepared,DOOR,salt,45,mg/m2,K. A.", P),
        ("prepared,DOOR,salt,51,mg/m2,K. A.", F),
        ("prepared,DOOR,salt,5.1,ug/cm2,K. A.", F),
        ("prepared,DOOR,dust-quantity,2,,K. A.", P),
        ("prepared,DOOR,dust-quantity,3,,K. A.", F),
        ("prepared,DOOR,profile,30,um,K. A.", OPEN),
    ],
)
def test_tests_and_looks(row: str, verdict: Verdict) -> None:
    limits = {"preparations.sand-steel.salt_limit": "50 mg/m2", "preparations.sand-steel.dust_quantity": "2"}
    found = assessed(LOOK + row + "\n", changes=limits)
    assert told(found) == []
    assert _at(found, "prepared") is verdict


@pytest.mark.parametrize(
    ("test", "rows", "verdict", "said"),
    [
        ("{method: pull_off, limit: min 5 MPa}", ("5.2 MPa", "6.1 MPa", "7 MPa"), P, ""),
        ("{method: pull_off, limit: min 5 MPa}", ("5,2 MPa", "4,9 MPa", "7 MPa"), F, "4.9 MPa"),
        (
            "{method: pull_off, limit: min 5 MPa, specimens: 4}",
            ("5.2 MPa", "6.1 MPa", "7 MPa"),
            OPEN,
            "results: 3; required: 4",
        ),
        ("{method: gloss, limit: 80..92 GU, variant: 60 degrees}", ("79 GU", "84 GU", "80 GU"), P, ""),
        ("{method: gloss, limit: 80..92 GU, variant: 60 degrees}", ("79 GU", "78 GU", "80 GU"), F, "the mean is"),
        ("{method: cross_cut, standard: ISO 2409, limit: class 0..1}", ("class 1", "class 0", "class 1"), P, ""),
        ("{method: cross_cut, standard: ISO 2409, limit: class 0..1}", ("class 1", "class 2", "class 1"), F, "class 2"),
        ("{method: colour, limit: max 1 dE00}", ("0.8 dE00",), P, ""),
        # another quantity than the limit is of
        ("{method: pull_off, limit: min 5 MPa}", ("5 GU",), OPEN, ""),
    ],
)
def test_results_of_a_test_with_its_limit(test: str, rows: tuple[str, ...], verdict: Verdict, said: str) -> None:
    text = "point,item,value,by\n" + "".join(f'look,DOOR,"{value}",K. A.\n' for value in rows)
    found = assessed(text, changes={"jobs.refit.inspection.look.test": test})
    assert told(found) == []
    assert _at(found, "look") is verdict
    assert said in "; ".join(next(at.reasons for at in found.results if (at.point.id, at.item.id) == ("look", "DOOR")))


def test_a_word_in_place_of_a_result_decides_nothing() -> None:
    test = {"jobs.refit.inspection.look.test": "{method: pull_off, limit: min 5 MPa}"}
    found = assessed("point,item,value,by\nlook,DOOR,conforming,K. A.\n", changes=test)
    assert _at(found, "look") is OPEN
    both = "point,item,value,by\nlook,DOOR,conforming,K. A.\nlook,DOOR,6 MPa,K. A.\n"
    assert _at(assessed(both, changes=test), "look") is P


def test_a_result_that_cannot_be_read_is_told() -> None:
    text = "point,item,value,by\nlook,DOOR,very good,K. A.\n"
    found = assessed(text, changes={"jobs.refit.inspection.look.test": "{method: pull_off, limit: min 5 MPa}"})
    assert told(found) == [("RDG003", 2, 3)]
    assert _at(found, "look") is OPEN


def _at(found: Assessment, point: str, item: str = "DOOR") -> Verdict:
    return next(at.verdict for at in found.results if (at.point.id, at.item.id) == (point, item))


AIR = "point,coat,air,humidity,surface,dew_point,on\n"
GOOD_AIR = "".join(f"climate,{coat},20,55,20,10.7,2026-11-20\n" for coat in ("primer", "base", "clear"))


def test_air_belongs_to_the_point_it_names() -> None:
    second = {
        "jobs.refit.inspection.later": "{id: later, check: Air temperature after work, at: completion, criterion: {text: within the limits}}"
    }
    found = assessed(AIR + GOOD_AIR, changes={**CLIMATE, **second})
    assert (_at(found, "climate"), _at(found, "later")) == (P, OPEN)
    found = assessed(AIR + GOOD_AIR + GOOD_AIR.replace("climate", "later"), changes={**CLIMATE, **second})
    assert (_at(found, "climate"), _at(found, "later")) == (P, P)
    found = assessed(AIR + GOOD_AIR, "point,value,by\nclimate,conforming,K. A.\n", changes=CLIMATE)
    assert next(at.said_by for at in found.results if at.point.id == "climate") == "K. A."


def test_what_a_criterion_says_in_words_is_a_person_s_to_assess() -> None:
    words = PA_2.replace("}", ", text: no visible runs}")
    read = spots(50, 55, 60, 61, 62)
    assert film_on(assessed(read, criterion=words)) is OPEN
    said = "point,item,value,by\nprimer-film,DOOR,{},K. A.\n"
    assert film_on(assessed(read, said.format("conforming"), criterion=words)) is P
    assert film_on(assessed(read, said.format("not conforming"), criterion=words)) is F
    measured = read.replace("unit\n", "unit,by\n").replace(",um\n", ",um,B. T.\n")
    found = assessed(measured, said.format("conforming"), criterion=words)
    assert next(at.said_by for at in found.results if at.point.id == "primer-film") == "B. T., K. A."


def test_air_of_every_coat_within_every_limit() -> None:
    assert _at(assessed(AIR + GOOD_AIR, changes=CLIMATE), "climate") is P
    missing = assessed(AIR + "climate,primer,20,55,20,,2026-11-20\n", changes=CLIMATE)
    assert _at(missing, "climate") is OPEN
    humid = assessed(AIR + GOOD_AIR.replace("20,55,20,10.7", "20,80,20,", 1), changes=CLIMATE)
    assert _at(humid, "climate") is F
    # 16.4 degC is the dew point of 20 degC and 80 %
    near = assessed(AIR + GOOD_AIR.replace("20,55,20,10.7", "20,70,16,", 1), changes=CLIMATE)
    assert _at(near, "climate") is F
    no_surface = assessed(AIR + GOOD_AIR.replace("20,55,20,10.7", "20,55,,", 1), changes=CLIMATE)
    assert _at(no_surface, "climate") is OPEN
    wrong = assessed(AIR + GOOD_AIR.replace("10.7", "14", 1), changes=CLIMATE)
    assert [one.id for one in wrong.findings if one.id == "RDG014"] == ["RDG014"]
    fahrenheit = assessed(AIR.replace("air,", "air (°F),") + GOOD_AIR.replace(",20,55", ",68,55"), changes=CLIMATE)
    assert _at(fahrenheit, "climate") is P


@pytest.mark.parametrize(
    ("times", "verdict"),
    [(("08:00", "12:00"), P), (("08:00", "12:01"), OPEN), (("08:00", "10:00", "13:59"), P), (("08:00",), P)],
)
def test_air_is_recorded_as_often_as_asked(times: tuple[str, ...], verdict: Verdict) -> None:
    more = {f"{CLIMATE_POINT}.sampling": "{every: 4 h}"}
    rows = "".join(f"climate,primer,20,55,20,,2026-11-20 {time}\n" for time in times)
    rest = "".join(f"climate,{coat},20,55,20,,2026-11-21\n" for coat in ("base", "clear"))
    assert _at(assessed(AIR + rows + rest, changes={**CLIMATE, **more}), "climate") is verdict


@pytest.mark.parametrize(("parts", "verdict"), [((1, 2), P), (("01", "2"), P), ((1,), OPEN), ((1, "01", "1.0"), OPEN)])
def test_each_part_is_read_where_the_point_samples_each_part(parts: tuple[object, ...], verdict: Verdict) -> None:
    text = "point,item,part,spot,reading,value,unit\n"
    text += "".join(f"primer-film,DOOR,{part},1,{number},60,um\n" for part in parts for number in (1, 2, 3))
    plan = {f"{FILM}.sampling": "{count: 3, per: part}"}
    found = assessed(text, changes=plan)
    assert film_on(found) is verdict
    if verdict is OPEN:
        assert "parts read 1, of 2" in reasons(found)
        assert "readings taken: 3; required: 6" in reasons(found)
        # however its number is written, a part is one, and a reading of it is there twice
        assert len(told(found)) == 3 * (len(parts) - 1)


@pytest.mark.parametrize(
    ("plan", "least"),
    [
        # two doors of 0.6 m2
        ("{count: 5, per: part}", 10),
        ("{count: 5}", 5),
        ("{count: 5, first_area: 1 m2, each_area: 1 m2}", 10),
        ("{count: 5, each_area: 0.5 m2}", 15),
        ("{count: 2..3, per: part}", 4),
        ("{count: 5, each_area: 10 m2}", 5),
    ],
)
def test_typed_sampling_asks_for_a_number_of_readings(plan: str, least: int) -> None:
    found = assessed(spots(60), changes={f"{FILM}.sampling": plan})
    assert found.lots[0].least.readings == least


HEAD = "point,item,spot,reading,value,unit,gauge,serial,checked_on,calibrated_until,zero_before,zero_after,on\n"


@pytest.mark.parametrize(
    ("instrument", "verdict", "said", "told_"),
    [
        ("G,K1,2026-11-20,,,,2026-11-20", P, "", 0),
        ("G,K1,2026-11-20,2026-11-20,0,1.5,2026-11-20", P, "", 0),
        # what is common practice, or a usual figure nobody confirmed, is told and decides nothing
        ("G,K1,2026-11-19,,,,2026-11-20", P, "", 1),
        ("G,K1,2026-11-19,,0,,2026-11-20", P, "", 0),
        ("G,K1,2026-11-20,,0,-2.5,2026-11-20", P, "", 1),
        # what shows that nothing is borne out decides nothing either, and says so
        ("G,K1,2026-11-22,,,,2026-11-20", OPEN, "checked only after it was read", 1),
        ("G,K1,2026-11-20,2026-11-19,,,2026-11-20", OPEN, "calibration of the instrument had run out on 2026-11-19", 1),
        ("G,,2026-11-20,,,,2026-11-20", OPEN, "not all recorded", 1),
        ("G,K1,,,0,0,2026-11-20", OPEN, "not all recorded", 1),
        (",,,,,,2026-11-20", OPEN, "not all recorded", 1),
    ],
)  # fmt: skip
def test_readings_are_borne_by_an_instrument_that_was_checked(
    instrument: str, verdict: Verdict, said: str, told_: int
) -> None:
    row = "primer-film,DOOR,{},1,{},um,{}\n"
    found = assessed(HEAD + row.format(1, 50, instrument) + row.format(2, 55, instrument), asked=Asked())
    assert film_on(found) is verdict
    assert said in reasons(found)
    # nothing is missing where it decides nothing: that keeps no job from release
    id = "RDG012" if verdict is OPEN else "RDG025"
    assert [(one.id, one.severity.value) for one in found.findings if one.id != "RDG013"] == [(id, "warning")] * told_
    assert READING_FAULTS[id].is_open is (verdict is OPEN)
    # a reading outside the limits stays one
    low = assessed(HEAD + row.format(1, 30, instrument), asked=Asked())
    assert film_on(low) is F


def test_a_check_that_cannot_be_read_is_told_where_it_stands() -> None:
    row = "primer-film,DOOR,1,1,50,um,G,K1,{},,{},,2026-11-20\n"
    for cells, column in ((("soon", ""), 9), (("2026-11-20", "zero"), 11)):
        found = assessed(HEAD + row.format(*cells), asked=Asked())
        assert film_on(found) is OPEN
        assert ("RDG003", 2, column) in told(found)


def test_batches_that_had_expired_or_are_missing_are_told() -> None:
    head = "coat,product,batch,expires,cans,on\n"
    found = assessed(head + "primer,primer,B1,2026-11-19,2,2026-11-20\n")
    assert told(found) == [("RDG013", 2, 4)]
    found = assessed(head + "primer,primer,B1,2026-11-20,2,2026-11-20\n")
    assert told(found) == []
    said = [one.what for one in found.findings if one.id == "RDG013"]
    assert said == ["no batch is recorded of: base, clear, barrier"]
    assert [used.batch for used in found.batches] == ["B1"]


def test_the_json_says_what_the_text_says() -> None:
    import json

    found = assessed(spots(50, 39, 70))
    record = json.loads(as_json(found))
    assert record["verdict"] == "not conforming"
    point = next(one for one in record["items"][0]["points"] if one["point"] == "primer-film")
    assert point["reasons"] == list(next(at for at in found.results if at.point.id == "primer-film").reasons)
    assert record["files"][0]["name"] == "1.csv"
