"""Times between coats and before sanding, by what the records allow; and what was repaired is read again or stays open."""

from __future__ import annotations

from datetime import timedelta

import pytest

from specgen.assessing.results import Assessment, Verdict, Waited
from specgen.assessing.waited import time_text
from specgen.report.assessment_report import as_text
from tests.assessing.job import assessed, film_on, reasons, told

P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
HEAD = "point,item,part,spot,coat,product,batch,value,unit,air,humidity,surface,work,remark,on,by\n"


def row(**cells: object) -> str:
    return ",".join(str(cells.get(name, "")) for name in HEAD.strip().split(",")) + "\n"


def applied(coat: str, on: str, item: str = "DOOR") -> str:
    return row(coat=coat, on=on, item=item, work="application", by="K. A.")


def wait(found: Assessment, above: str | None = "base") -> Waited:
    return next(one for one in found.waited if (one.above.id if one.above is not None else None) == above)


@pytest.mark.parametrize(
    ("times", "verdict", "said"),
    [
        # 30 min..24 h are asked
        (("2026-11-16 09:00", "2026-11-16 09:30"), P, ""),
        (("2026-11-16 09:00", "2026-11-16 09:29"), F, "29 min at most, required: at least 30 min"),
        (("2026-11-16 09:00", "2026-11-17 09:00"), P, ""),
        (("2026-11-16 09:00", "2026-11-17 09:01"), F, "24 h 1 min at least, required: at most 24 h"),
        # a day alone leaves open how long it was
        (("2026-11-16", "2026-11-16"), OPEN, "record when each coat began and ended"),
        (("2026-11-16", "2026-11-17"), OPEN, "required: at most 24 h"),
        (("2026-11-16", "2026-11-19"), F, "48 h 1 min at least, required: at most 24 h"),
        (("2026-11-16 09:00", ""), OPEN, "when basecoat was applied is not recorded"),
    ],
)
def test_times_between_coats_are_held_against_the_job(times: tuple[str, str], verdict: Verdict, said: str) -> None:
    rows = [applied(coat, on) for coat, on in zip(("primer", "base"), times, strict=True) if on]
    found = assessed(HEAD + "".join(rows))
    assert told(found) == []
    assert wait(found).verdict is verdict
    text = "; ".join(wait(found).reasons).replace("\N{NO-BREAK SPACE}", " ")
    assert said in text if said else text == ""
    assert "primer to basecoat" in as_text(found)


def test_the_last_of_a_coat_counts_for_the_minimum_and_the_first_for_the_maximum() -> None:
    first, last, then = "2026-11-16 09:00", "2026-11-16 11:00", "2026-11-16 11:10"
    found = assessed(HEAD + applied("primer", first) + applied("primer", last) + applied("base", then))
    assert wait(found).verdict is OPEN
    assert wait(assessed(HEAD + applied("primer", last) + applied("base", then))).verdict is F
    # batches and air tell a moment of the work, a row of application when it was
    used = row(coat="primer", product="primer", batch="B1", on=last, by="K. A.")
    assert wait(assessed(HEAD + used + applied("primer", first) + applied("base", then))).verdict is P
    assert wait(assessed(HEAD + used + applied("base", then))).verdict is F


@pytest.mark.parametrize(
    ("then", "verdict"),
    [
        ("2026-11-16 09:29", F),
        ("2026-11-16 09:30", OPEN),
        ("2026-11-16 09:39", OPEN),
        ("2026-11-16 09:40", P),
        ("2026-11-17 09:00", P),
        ("2026-11-17 09:01", OPEN),
        ("2026-11-17 09:10", OPEN),
        ("2026-11-17 09:11", F),
    ],
)
def test_a_limit_that_the_records_can_just_reach_stays_open(then: str, verdict: Verdict) -> None:
    """The primer went on from 09:00 to 09:10; 30 min to 24 h are asked."""
    primer = applied("primer", "2026-11-16 09:00") + applied("primer", "2026-11-16 09:10")
    assert wait(assessed(HEAD + primer + applied("base", then))).verdict is verdict


def test_two_coats_at_one_moment_are_too_early_and_no_wrong_order() -> None:
    found = assessed(HEAD + applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-16 09:00"))
    assert told(found) == []
    assert wait(found).verdict is F


@pytest.mark.parametrize(
    ("on", "verdict"),
    [
        ("2026-11-16 08:59", F),
        ("2026-11-16 09:00", P),
        ("2026-11-17 12:00", P),
        ("2026-11-17 12:01", F),
    ],
)
def test_a_late_coat_is_saved_only_by_sanding_between_the_two(on: str, verdict: Verdict) -> None:
    late = HEAD + applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-17 12:00")
    done = row(coat="primer", item="DOOR", work="sanding", on=on, by="K. A.")
    assert wait(assessed(late + done)).verdict is verdict


@pytest.mark.parametrize(
    ("hours", "minutes", "said"), [(0, 0, "0 min"), (71, 59, "71 h 59 min"), (72, 0, "3 d"), (73, 5, "3 d 1 h 5 min")]
)
def test_a_time_is_written_in_days_from_three_days_on(hours: int, minutes: int, said: str) -> None:
    assert time_text(timedelta(hours=hours, minutes=minutes)).replace("\N{NO-BREAK SPACE}", " ") == said


def test_a_coat_recorded_before_the_one_under_it_is_told_and_decides_nothing() -> None:
    found = assessed(HEAD + applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-16 08:00"))
    assert told(found) == [("RDG009", 3, 15)]
    assert wait(found).verdict is OPEN


def test_what_the_job_says_for_a_late_coat_is_told_unless_it_was_done() -> None:
    late = HEAD + applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-17 12:00")
    found = assessed(late)
    assert (wait(found).verdict, wait(found).put_right) == (F, "abrade with P400 and dust off")
    done = row(coat="primer", item="DOOR", work="sanding", on="2026-11-17 11:00", by="K. A.")
    found = assessed(late + done)
    assert wait(found).verdict is P
    assert wait(found).reasons[-1] == "the coat was abraded on 2026-11-17 11:00, as the job asks for in that case"


SANDED = {
    "products.primer.sandable_after": "[{id: dry, sanding: dry, time: 6 h, air: 15 degC}]",
    "systems.cab.layers.primer.abraded_with": "P400",
}


@pytest.mark.parametrize(
    ("sanded", "verdict"), [("2026-11-16 15:00", P), ("2026-11-16 14:59", F), ("2026-11-16", OPEN), ("", OPEN)]
)
def test_the_wait_before_sanding_is_held_against_the_product(sanded: str, verdict: Verdict) -> None:
    rows = applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-17 12:00")
    done = row(coat="primer", item="DOOR", work="sanding", on=sanded, by="K. A.") if sanded else ""
    found = assessed(HEAD + rows + done, changes=SANDED)
    assert wait(found, None).verdict is verdict
    # abraded in any case, so that the next coat may be late
    assert wait(found).verdict is P
    assert found.verdict_on(found.job.items[0]) is not P


def test_a_repair_takes_the_ground_from_what_was_read_before_and_asks_for_it_again() -> None:
    def read(spot: str, film: int, on: str) -> str:
        return row(point="primer-film", item="DOOR", part=1, spot=spot, value=film, unit="um", on=on, by="K. A.")

    before = read("A", 60, "2026-11-16") + read("B", 90, "2026-11-16")
    repair = row(
        point="primer-film", item="DOOR", part=1, spot="B", work="repair", remark="sanded", on="2026-11-17", by="T. B."
    )
    assert film_on(assessed(HEAD + before)) is F
    found = assessed(HEAD + before + repair)
    assert told(found) == []
    assert film_on(found) is OPEN
    assert "repaired and not read again: DOOR 1 B" in reasons(found)
    found = assessed(HEAD + before + repair + read("B", 70, "2026-11-18"))
    assert "repaired" not in reasons(found)
    assert film_on(found) is P
    (deviation,) = [one for one in found.deviations if one.point.id == "primer-film"]
    assert [text.replace("\N{NO-BREAK SPACE}", " ") for text in deviation.found] == [
        "a spot measurement of 90 µm is above 80 µm (DOOR 1 B)"
    ]
    assert deviation.verdict is P
    assert film_on(assessed(HEAD + before + repair + read("B", 70, "2026-11-18").replace("DOOR,1,", "DOOR,01,"))) is P
    # a day alone does not tell which came first: the reading stands
    assert film_on(assessed(HEAD + read("B", 90, "2026-11-17") + repair)) is F


def test_what_was_looked_at_before_the_last_repair_is_looked_at_again() -> None:
    look = row(point="look", item="DOOR", value="conforming", on="2026-11-19", by="K. A.")
    repair = row(point="primer-film", item="DOOR", work="repair", remark="recoated", on="2026-11-20", by="T. B.")

    def verdict(*rows: str) -> Verdict:
        return next(
            at.verdict for at in assessed(HEAD + "".join(rows)).results if (at.point.id, at.item.id) == ("look", "DOOR")
        )

    assert verdict(look) is P
    assert verdict(look, repair) is OPEN
    assert verdict(look, repair, look.replace("11-19", "11-21")) is P


@pytest.mark.parametrize(
    ("cells", "id", "column"),
    [
        ({"work": "polished", "on": "2026-11-16", "by": "K. A."}, "RDG018", 13),
        ({"work": "sanding", "on": "2026-11-16", "by": "K. A."}, "RDG019", 5),
        ({"work": "repair", "remark": "sanded", "on": "2026-11-16", "by": "K. A."}, "RDG019", 2),
        ({"work": "application", "coat": "primer", "by": "K. A."}, "RDG019", 15),
        ({"work": "release", "on": "2026-11-16"}, "RDG019", 16),
    ],
)
def test_a_row_of_work_says_what_when_on_what_and_by_whom(cells: dict[str, str], id: str, column: int) -> None:
    assert told(assessed(HEAD + row(**cells))) == [(id, 2, column)]


def test_a_coat_renewed_in_a_repair_is_no_coat_of_the_order() -> None:
    repair = row(point="primer-film", item="DOOR", work="repair", remark="recoated", on="2026-11-16 12:00", by="T. B.")
    rows = HEAD + applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-16 09:30") + repair
    assert wait(assessed(rows + applied("primer", "2026-11-16 12:00"))).verdict is P
    assert wait(assessed(rows + applied("primer", "2026-11-16 11:59"))).verdict is OPEN


@pytest.mark.parametrize(
    ("coats", "read", "wrong"),
    [
        (("2026-11-16 09:00",), "2026-11-16 09:00", False),
        (("2026-11-16 09:00",), "2026-11-16 08:59", True),
        (("2026-11-16 09:00",), "2026-11-16", False),
        (("2026-11-16 09:00",), "2026-11-15", True),
        # without a time of day nothing shows which came first
        (("2026-11-16",), "2026-11-16 08:00", False),
        (("2026-11-17 09:00", "2026-11-16 09:00"), "2026-11-16 10:00", False),
        # judged on the 27th
        ((), "2026-11-27", False),
        ((), "2026-11-28", True),
    ],
)
def test_film_is_read_after_its_coat_and_on_no_day_to_come(coats: tuple[str, ...], read: str, wrong: bool) -> None:
    film = row(point="primer-film", item="DOOR", part=1, spot="A", value=60, unit="um", on=read, by="K. A.")
    found = told(assessed(HEAD + film + "".join(applied("primer", on) for on in coats)))
    assert found == ([("RDG009", 2, 15)] if wrong else [])


@pytest.mark.parametrize(("again", "wrong"), [("2026-11-20 15:00", False), ("2026-11-20 13:59", True)])
def test_film_may_be_read_before_a_coat_is_renewed_in_a_repair(again: str, wrong: bool) -> None:
    """What is sprayed on the item before its repair is its coat; from the repair on it renews one that was read."""
    film = row(point="primer-film", item="DOOR", spot="A", value=60, unit="um", on="2026-11-19 09:00", by="ka")
    repair = row(item="DOOR", work="repair", remark="recoated", on="2026-11-20 14:00", by="bt")
    found = assessed(HEAD + film + repair + row(item="DOOR", coat="primer", work="application", on=again, by="bt"))
    assert [one.id for one in found.findings if one.severity.value == "error"] == (["RDG009"] if wrong else [])


@pytest.mark.parametrize(
    ("sanded", "air", "verdict"),
    [
        ("2026-11-16 13:00", "23", OPEN),
        ("2026-11-16 12:59", "23", F),
        ("2026-11-16 13:00", "22.9", F),
        ("2026-11-16 13:00", "", F),
        ("2026-11-16 15:00", "", P),
    ],
)
def test_a_shorter_time_at_the_air_that_was_recorded_is_a_persons_to_decide(
    sanded: str, air: str, verdict: Verdict
) -> None:
    """Six hours at the coldest air of the job, four at 23 degrees."""
    changes = {
        **SANDED,
        "products.primer.sandable_after": "[{id: dry, sanding: dry, time: 6 h, air: 15 degC}, {id: warm, sanding: dry, time: 4 h, air: 23 degC}]",
    }
    rows = applied("primer", "2026-11-16 09:00") + applied("base", "2026-11-17 12:00")
    rows += row(coat="primer", item="DOOR", work="sanding", on=sanded, by="K. A.")
    if air:
        rows += row(coat="primer", item="DOOR", air=f"{air} degC", humidity="50 %", on="2026-11-16 09:00", by="K. A.")
    found = wait(assessed(HEAD + rows, changes=changes), None)
    assert found.verdict is verdict
    assert any("a person decides whether that counts" in one for one in found.reasons) is (verdict is OPEN)
