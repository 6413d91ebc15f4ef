"""What must make nothing pass: rows of another item, part, coat, day or gauge; and what is read once is not asked for twice."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from specgen.assessing.instruments import instruments_of
from specgen.assessing.readings import Asked
from specgen.assessing.results import Assessment, Verdict
from tests.assessing.job import FILM, PA_2, assessed, film_on, reasons, spots, told

P, UNDER, F, OPEN = Verdict.CONFORMING, Verdict.CONCEDED, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
TWO = {"jobs.refit.items.STEP.system": "cab"}
POINT = "jobs.refit.inspection.climate"
CLIMATE = {
    POINT: "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}"
}


def _at(found: Assessment, point: str, item: str = "DOOR") -> Verdict:
    return next(at.verdict for at in found.results if (at.point.id, at.item.id) == (point, item))


def _conceded(*limits: str) -> Mapping[str, str]:
    stated = (
        f"{{id: {name}, job: refit, items: [DOOR], point: primer-film, {limit}, agreed_by: fleet, agreed_on: 2026-11-20,"
        " until: 2026-12-31, reason: Repainted in spring.}"
        for name, limit in zip(("thin", "thick"), limits, strict=False)
    )
    return {"concessions": f"[{', '.join(stated)}]"}


# concessions

THIN, THICK = "film_min: {specified: 40 um, conceded: 34 um}", "film_max: {specified: 80 um, conceded: 90 um}"


def test_of_two_concessions_each_eases_its_own_side() -> None:
    found = assessed(spots(50, 39, 85), changes=_conceded(THIN, THICK))
    assert film_on(found) is UNDER
    low, high = reasons(found).split("; a spot")
    assert "39 µm" in low
    assert "concession thin" in low
    assert "thick" not in low
    assert "85 µm" in high
    assert "concession thick" in high
    assert "thin" not in high
    assert film_on(assessed(spots(50, 39, 91), changes=_conceded(THIN, THICK))) is F


def test_spots_of_another_item_are_none_of_those_that_are_conceded() -> None:
    """Both items lie in one lot; the other is too thin for the concession, which is none of its own."""
    found = assessed(spots(50, 39) + spots(30, item="STEP", heading=False), changes={**TWO, **_conceded(THIN)})
    assert (film_on(found), film_on(found, "STEP")) == (UNDER, F)


@pytest.mark.parametrize(
    ("criterion", "means", "limit", "verdict"),
    [
        (PA_2, (85, 85, 85, 85, 85), THICK, UNDER),
        (PA_2, (91, 91, 91, 91, 91), THICK, F),
        (PA_2, (85, 85, 85, 85, 85), THIN, F),
        # of a film stated alone the edition makes 40 to 60 um, which stay where the nominal film alone is conceded
        ("{rule: SSPC-PA-2, edition: '2012', level: 3, nominal: 50 um}", (37,) * 5, "film_nominal: {specified: 50 um, conceded: 45 um}", F),
        ("{rule: SSPC-PA-2, edition: '2012', level: 3, nominal: 50 um}", (37,) * 5, THIN, UNDER),
    ],
)  # fmt: skip
def test_a_mean_under_a_concession(criterion: str, means: tuple[float, ...], limit: str, verdict: Verdict) -> None:
    assert film_on(assessed(spots(*means), criterion=criterion, changes=_conceded(limit))) is verdict


# items, parts and areas of one point


def test_an_item_that_was_not_read_passes_by_no_other() -> None:
    found = assessed(spots(50, 60), changes=TWO)
    assert (film_on(found), film_on(found, "STEP")) == (P, OPEN)
    assert "no film was read on this item" in reasons(found, "STEP")


def test_parts_of_another_item_or_readings_of_no_part_are_no_part_that_was_read() -> None:
    plan = {f"{FILM}.sampling": "{count: 1, per: part}", **TWO}
    head = "point,item,part,spot,reading,value,unit\n"
    steps = "".join(f"primer-film,STEP,{part},1,1,60,um\n" for part in range(1, 5))
    first, second, bare = (f"primer-film,DOOR,{part},1,1,60,um\n" for part in (1, 2, ""))
    assert film_on(assessed(head + steps + first + second, changes=plan)) is P
    for rows in (first, first + bare):
        found = assessed(head + steps + rows, changes=plan)
        assert film_on(found) is OPEN
        assert "parts read 1, of 2" in reasons(found)


def test_what_the_plan_asks_of_a_point_is_asked_of_its_areas_together() -> None:
    plan = {f"{FILM}.readings": "{areas: 2, spots: 5, readings: 15}"}
    upper = spots(60, 60).replace("unit\n", "unit,area\n").replace(",um\n", ",um,upper\n")

    def lower(count: int) -> str:
        return spots(*[60] * count, heading=False).replace(",um\n", ",um,lower\n")

    assert film_on(assessed(upper + lower(3), changes=plan)) is P
    found = assessed(upper + lower(2), changes=plan)
    assert film_on(found) is OPEN
    assert "spots read in all: 4; required: 5" in reasons(found)


def test_a_walk_on_another_item_leaves_this_one_as_it_is() -> None:
    head, fine = "unit,walk\n", ",um,\n"
    rows = spots(50, 50, 50).replace("unit\n", head).replace(",um\n", fine)
    rows += spots(50, 50, 50, item="STEP", heading=False).replace(",um\n", fine)
    found = assessed(rows + "primer-film,STEP,w1,1,30,um,left\n", criterion=PA_2, changes=TWO)
    assert (film_on(found), film_on(found, "STEP")) == (P, OPEN)


# instruments

GAUGE = "point,item,spot,reading,value,unit,gauge,serial,checked_on,calibrated_until,on\n"


def _gauge(*rows: tuple[str, int, str]) -> Assessment:
    """Item, spot and what is stated of the gauge, by row."""
    text = GAUGE + "".join(f"primer-film,{item},{spot},1,50,um,{stated}\n" for item, spot, stated in rows)
    return assessed(text, asked=Asked(), changes=TWO)


@pytest.mark.parametrize(
    ("stated", "verdict"),
    [
        ("G,K1,2026-11-20,,2026-11-20", P),
        (",K1,2026-11-20,,2026-11-20", OPEN),
        # days, whatever the time of day beside them
        ("G,K1,2026-11-20 15:00,,2026-11-20 09:00", P),
        ("G,K1,2026-11-20,2026-11-20,2026-11-20 09:00", P),
    ],
)
def test_what_is_stated_of_a_gauge(stated: str, verdict: Verdict) -> None:
    assert film_on(_gauge(("DOOR", 1, stated))) is verdict


def test_every_item_every_day_and_every_gauge_is_looked_at() -> None:
    fine, bare = "G,K1,2026-11-20,2026-11-20,2026-11-20", "G,,2026-11-20,2026-11-20,2026-11-20"
    found = _gauge(("DOOR", 1, bare), ("STEP", 1, bare))
    assert (film_on(found), film_on(found, "STEP")) == (OPEN, OPEN)
    assert film_on(_gauge(("DOOR", 1, fine), ("DOOR", 2, bare))) is OPEN
    found = _gauge(("DOOR", 1, fine), ("DOOR", 2, fine[:-2] + "21"))
    assert film_on(found) is OPEN
    assert "had run out on 2026-11-20" in reasons(found)


def test_a_gauge_that_is_not_stated_is_told_of_each_file() -> None:
    texts = (GAUGE + f"primer-film,DOOR,{spot},1,50,um,G,,2026-11-20,,2026-11-20\n" for spot in (1, 2))
    found = assessed(*texts, asked=Asked())
    assert [one.place.file for one in found.findings if one.id == "RDG012"] == ["1.csv", "2.csv"]


def test_instruments_are_those_of_films_and_those_a_row_names() -> None:
    own = (
        GAUGE
        + "primer-film,DOOR,1,1,50,um,G,K1,2026-11-20,,2026-11-20\nprepared,DOOR,,,conforming,,S,K9,,,2026-11-20\n"
    )
    listed = [(one.stated["serial"], one.points) for one in instruments_of(assessed(own, asked=Asked()))]
    assert listed == [("K1", ("primer-film",)), ("K9", ("prepared",))]
    # what holds for a whole file is of its films
    whole = "point,item,spot,value,unit\nprimer-film,DOOR,1,50,um\nprepared,DOOR,,conforming,\n"
    assert [one.points for one in instruments_of(assessed(whole))] == [("primer-film",)]


# air


def _air(*rows: str, changes: Mapping[str, str] | None = None) -> Verdict:
    text = "point,item,coat,value,air,humidity,surface,on,by\n" + "".join(f"{row}\n" for row in rows)
    return _at(assessed(text, changes={**CLIMATE, **(changes or {})}), "climate")


def _coats(item: str = "", point: str = "climate") -> list[str]:
    return [f"{point},{item},{coat},,20,55,20,2026-11-20,ka" for coat in ("primer", "base", "clear")]


def test_air_is_of_its_item_and_may_leave_out_its_point() -> None:
    assert _air(*_coats()) is P
    assert _air(*_coats(point="")) is P
    assert _air(*_coats("STEP"), changes=TWO) is OPEN
    # humid air at another item is none of this one's
    assert _air(*_coats(), "climate,STEP,primer,,20,80,20,2026-11-20,ka", changes=TWO) is P


def test_a_word_on_the_air_goes_before_no_figure() -> None:
    assert _air(*_coats(), "climate,DOOR,,not conforming,,,,2026-11-20,ka") is F
    humid = [*_coats()[1:], "climate,,primer,,20,80,20,2026-11-20,ka", "climate,DOOR,,conforming,,,,2026-11-20,ka"]
    assert _air(*humid) is F
    rows = "point,item,coat,value,air,humidity,surface,on,by\n" + "\n".join(humid) + "\n"
    assert any(one.id == "RDG017" for one in assessed(rows, changes=CLIMATE).findings)


def test_times_between_records_of_the_air_are_of_one_coat_and_one_day() -> None:
    often = {f"{POINT}.sampling": "{every: 4 h}"}

    def rows(*moments: str) -> list[str]:
        return [f"climate,,{one.partition(' ')[0]},,20,55,20,{one.partition(' ')[2]},ka" for one in moments]

    rest = _coats()[2:]
    assert _air(*rows("primer 2026-11-20 08:00", "base 2026-11-20 13:00"), *rest, changes=often) is P
    assert _air(*rows("primer 2026-11-20 16:00", "primer 2026-11-21 08:00"), *_coats()[1:], changes=often) is P
    assert _air(*rows("primer 2026-11-20 08:00", "primer 2026-11-20 13:00"), *_coats()[1:], changes=often) is OPEN


@pytest.mark.parametrize(
    ("air", "work", "fine"),
    [
        # work, another coat, another item: nothing of it was applied that day
        (",,primer,,20,55,20,2026-11-20,ka", "DOOR,primer,sanding,2026-11-21", True),
        (",,primer,,20,55,20,2026-11-20,ka", "STEP,primer,application,2026-11-21", True),
        (",,primer,,20,55,20,2026-11-20,ka", "DOOR,primer,application,2026-11-21", False),
        (",,primer,,20,55,20,2026-11-20 22:00,ka", "DOOR,primer,application,2026-11-21 09:59", True),
        (",,primer,,20,55,20,2026-11-20 22:00,ka", "DOOR,primer,application,2026-11-21 10:00", False),
        # air measured well after midnight is none of the evening before
        (",,primer,,20,55,20,2026-11-21 11:00,ka", "DOOR,primer,application,2026-11-20 22:00", False),
        (",,primer,,20,55,20,2026-11-21 11:00,ka", "DOOR,primer,application,2026-11-20", False),
        (",,primer,,20,55,20,2026-11-21,ka", "DOOR,primer,application,2026-11-20 22:00", False),
    ],
)
def test_air_is_that_of_the_day_of_the_coat(air: str, work: str, fine: bool) -> None:
    item, coat, did, on = work.split(",")
    text = f"point,item,coat,value,air,humidity,surface,on,by,work\nclimate{air},\n,{item},{coat},,,,,{on},tb,{did}\n"
    found = assessed(text, changes={**CLIMATE, **TWO})
    at = next(one for one in found.results if (one.point.id, one.item.id) == ("climate", "DOOR"))
    assert any("when it was applied" in why for why in at.reasons) is not fine


# repairs

HEAD = "point,item,part,spot,value,unit,work,remark,on,by\n"


def _read(film: int, on: str, part: str = "1", spot: str = "B") -> str:
    return f"primer-film,DOOR,{part},{spot},{film},um,,,{on},ka\n"


def _repair(on: str, point: str = "primer-film", item: str = "DOOR", part: str = "1", spot: str = "B") -> str:
    return f"{point},{item},{part},{spot},,,repair,sanded back,{on},tb\n"


@pytest.mark.parametrize(
    ("rows", "verdict"),
    [
        # a repair that names no inspection holds at each of them
        ((_read(60, "2026-11-16"), _repair("2026-11-17", point="", part="", spot="")), OPEN),
        # what was repaired is read again, and nothing else
        ((_read(90, "2026-11-16"), _read(60, "2026-11-16", "2"), _repair("2026-11-17"), _read(70, "2026-11-18")), P),
        ((_read(90, "2026-11-16"), _read(90, "2026-11-16", "2"), _repair("2026-11-17"), _read(70, "2026-11-18")), F),
        ((_read(90, "2026-11-16"), _read(90, "2026-11-16", spot="C"), _repair("2026-11-17"), _read(70, "2026-11-18")), F),
        # another spot that was read is not the one that was repaired
        ((_read(90, "2026-11-16"), _repair("2026-11-17"), _read(70, "2026-11-18", spot="C")), OPEN),
        ((_read(90, "2026-11-16"), _repair("2026-11-17"), _read(70, "2026-11-18", "2")), OPEN),
        # a reading that may be of any part stands, and so does one of the same moment
        ((_read(90, "2026-11-16", ""), _repair("2026-11-17"), _read(70, "2026-11-18")), F),
        ((_read(95, "2026-11-17 09:00"), _repair("2026-11-17 09:00"), _read(70, "2026-11-17 10:00")), F),
        ((_read(90, "2026-11-17 08:59"), _repair("2026-11-17 09:00"), _read(70, "2026-11-17 10:00")), P),
    ],
)  # fmt: skip
def test_a_repair_takes_the_ground_from_what_it_concerns_alone(rows: tuple[str, ...], verdict: Verdict) -> None:
    assert film_on(assessed(HEAD + "".join(rows))) is verdict


def test_a_word_for_all_items_is_said_again_of_the_one_that_was_repaired() -> None:
    word = "look,,,,conforming,,,,2026-11-19,ka\n"
    found = assessed(HEAD + word + _repair("2026-11-20"))
    assert (_at(found, "look"), _at(found, "look", "STEP")) == (OPEN, P)
    # of a part alone too: what was said of the item is no longer so
    word = "prepared,DOOR,,,conforming,,,,2026-11-15,ka\n"
    assert _at(assessed(HEAD + word), "prepared") is P
    assert _at(assessed(HEAD + word + _repair("2026-11-16", "prepared", spot="")), "prepared") is OPEN


def test_each_repair_is_told_with_what_was_found_before_it() -> None:
    rows = _read(90, "2026-11-16"), _repair("2026-11-17"), _read(95, "2026-11-18"), _repair("2026-11-19")
    found = assessed(HEAD + "".join(rows) + _read(70, "2026-11-20"))
    said = ["; ".join(one.found) for one in found.deviations if one.point.id == "primer-film"]
    assert [("90" in one, "95" in one) for one in said] == [(True, False), (False, True)]
    # one before which nothing was read is told as well, where it names its inspection
    (alone,) = assessed(HEAD + _repair("2026-11-17")).deviations
    assert (alone.point.id, alone.found, alone.verdict) == ("primer-film", (), OPEN)


# days

WORK = "item,coat,work,remark,point,spot,value,unit,air,on,by\n"


@pytest.mark.parametrize(
    ("rows", "wrong"),
    [
        # the first repair counts, and a coat of another item or a sanding begins nothing
        (("DOOR,,repair,recoated,,,,,,2026-11-20,tb", "DOOR,,repair,recoated,,,,,,2026-11-24,tb", "DOOR,primer,application,,,,,,,2026-11-21,tb"), False),
        (("STEP,primer,application,,,,,,,2026-11-21,tb",), False),
        (("DOOR,primer,sanding,,,,,,,2026-11-21,tb",), False),
        ((",primer,application,,,,,,,2026-11-21,tb",), True),
        (("DOOR,primer,application,,,,,,,2026-11-21,tb",), True),
    ],
)  # fmt: skip
def test_film_before_its_coat_is_told_of_its_own_coat(rows: tuple[str, ...], wrong: bool) -> None:
    """Read on the 19th."""
    film = "DOOR,,,,primer-film,A,60,um,,2026-11-19,ka"
    found = assessed(WORK + "\n".join((film, *rows)) + "\n")
    assert [one[0] for one in told(found)] == (["RDG009"] if wrong else [])


def test_a_second_item_read_before_the_coat_for_all_is_told_as_well() -> None:
    rows = [f"{item},,,,primer-film,A,60,um,,2026-11-19,ka" for item in ("DOOR", "STEP")]
    found = assessed(WORK + "\n".join([*rows, "STEP,primer,application,,,,,,,2026-11-21,tb"]) + "\n", changes=TWO)
    assert told(found) == [("RDG009", 3, 10)]
    assert (film_on(found), film_on(found, "STEP")) == (P, OPEN)


def test_a_day_to_come_leaves_its_row_undecided_whatever_it_holds() -> None:
    """Judged on the 27th."""
    word = "point,item,value,on,by\nlook,DOOR,conforming,2026-11-{},ka\n"
    assert _at(assessed(word.format(27)), "look") is P
    found = assessed(word.format(28))
    assert (told(found), _at(found, "look")) == ([("RDG009", 2, 4)], OPEN)
