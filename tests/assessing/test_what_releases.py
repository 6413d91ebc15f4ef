"""What keeps a job from release that its rows alone would let go, and what does not: parts, days, batches, rows nobody answers for."""

from __future__ import annotations

import json
from pathlib import Path
from shutil import copytree

import pytest

from specgen.assessing.results import Verdict
from specgen.commands import main
from tests.assessing.job import assessed, film_on
from tests.good_spec import GOOD

READ = Path(__file__).parents[1] / "register" / "released_readings"
RELEASE = ",,,,,,,,release,,,,2026-11-12,ka,\n"
CLIMATE = {
    "jobs.refit.inspection.climate": "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}"
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copytree(GOOD, tmp_path / "specs")
    copytree(READ, tmp_path / "specs" / "readings")
    (tmp_path / "specs" / "people.yaml").write_text("people: [{id: ka}, {id: tb}]\n")
    return tmp_path / "specs"


def _open(folder: Path, old: str, new: str, capsys: pytest.CaptureFixture[str]) -> list[str]:
    files = sorted((folder / "readings").iterdir())
    assert any(old in file.read_text("utf-8") for file in files)
    for file in files:
        file.write_text(file.read_text("utf-8").replace(old, new))
    main(["assess", "refit", "--path", str(folder), "--on", "2026-11-27", "--format", "json"])
    return [f"{one['where']}: {one['what']}" for one in json.loads(capsys.readouterr().out)["open"]]


def _parts(*rows: str) -> str:
    """Releases with the number of a part, which stands in a column of its own."""
    return "part,point,item,coat,value,product,batch,expires,cans,work,air,humidity,surface,on,by,remark\n" + "".join(
        rows
    )


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("2027-12-31", "2026-11-10"),  # the last day of a shelf life
        (",2,,,,,2026-11-10", ',"2,5",,,,,2026-11-10'),
        (",2,,,,,2026-11-10", ",2 cans,,,,,2026-11-10"),
        ("2026-11-12,ka", "2026-11-27,ka"),  # the day it is assessed as at
    ],
)
def test_a_job_that_is_in_order_is_released(
    folder: Path, old: str, new: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _open(folder, old, new, capsys) == []


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("2026-11-12,ka", "2026-11-28,ka", "2026-11-28 is yet to come, as at 2026-11-27"),
        ("B-101,2027-12-31,2,,,,,2026-11-10 09:00", "B-101,2026-11-09,2,,,,,", "DOOR: primer: day of application not recorded"),
        ("B-101", "?", "DOOR: primer: batch not recorded"),
        ("B-101", "n/a", "DOOR: primer: batch not recorded"),
        ("12-31,2,", "12-31,0,", "'0' is no number of packs of batch B-101 of primer"),
        ("12-31,2,", "12-31,some,", "'some' is no number of packs of batch B-101 of primer"),
        ("K-1,", "-,", "instrument, serial number and day of its check are not all recorded"),
        ("2026-11-10 12:00,ka", ",ka", "Film of the primer: rows that do not state on: 5"),
        ("2026-11-10 12:00,ka", "2026-11-10 12:00,?", "Film of the primer: rows that do not state by: 5"),
        ("2026-11-11 08:00,ka", ",ka", "rows that do not state on: 2"),
        # a sign for nobody is nobody's name
        ("2026-11-12,ka", "2026-11-12,?", "the row of release does not state by"),
        (",tb,", ",n/a,", "DOOR: primer: applicator not recorded"),
        ("look,DOOR,,conforming,,,,,,,,,2026-11-11 08:00,ka", "look,DOOR,,conforming,,,,,,,,,2026-11-11 08:00,-", "DOOR: Finish: not decided; accepted by nobody who is named"),
    ],
)  # fmt: skip
def test_what_is_not_known_is_open(
    folder: Path, old: str, new: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert any(told in line for line in _open(folder, old, new, capsys))


def test_a_batch_that_had_expired_when_its_coat_was_begun_is_told_whatever_day_it_states(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    applied = ",DOOR,primer,,,,,,application,,,,2026-11-10 09:00,tb,\n"
    said = _open(folder, RELEASE, applied + RELEASE, capsys)
    assert said == []
    said = _open(folder, "B-101,2027-12-31,2,,,,,2026-11-10 09:00", "B-101,2026-11-09,2,,,,,2026-11-08 09:00", capsys)
    what = "batch B-101 of primer expired on 2026-11-09 and its coat was begun on 2026-11-10"
    assert any(line.endswith(what) for line in said)


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("primer-film,,57,,2026-11-10 12:00,ka", ""),
        # a reading that names the coat alone is of the film of that coat
        (",primer,57,,2026-11-10 12:00,ka", ""),
        (",primer,57,,,ka", "refit-more.csv:2: primer: rows that do not state on: 1"),
        (",primer,57,,2026-11-10 12:00,", "refit-more.csv:2: primer: rows that do not state by: 1"),
        (",primer,,20,,", "refit-more.csv:2: primer: rows that do not state on and by: 1"),
    ],
)
def test_readings_that_name_a_coat_and_no_point_have_their_day_and_person_too(
    folder: Path, row: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    head = "item,spot,part,unit,gauge,serial,checked_on,zero_before,point,coat,value,air,on,by\n"
    gauge = "DOOR,6,1,um,magnetic gauge,K-1,2026-11-10,0"
    (folder / "readings" / "refit-more.csv").write_text(f"{head}{gauge},{row}\n")
    assert _open(folder, RELEASE, RELEASE, capsys) == ([told] if told else [])


@pytest.mark.parametrize(("coat", "product"), [("barrier", "barrier"), ("", "barrier"), ("barrier", "")])
def test_a_batch_names_its_coat_or_its_product(
    folder: Path, coat: str, product: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Of which coat a product is follows where it is one coat's alone, so that neither its shelf life nor its air passes unseen."""
    old, new = ",STEP,barrier,,barrier,B-104,2027-12-31", f",STEP,{coat},,{product},B-104,2026-11-09"
    applied = ",STEP,barrier,,,,,,application,,,,2026-11-10 09:00,tb,\n"
    assert _open(folder, old, new.replace("2026-11-09", "2027-12-31"), capsys) == []
    assert _open(folder, RELEASE, applied + RELEASE, capsys) == []
    said = _open(folder, f"{new.replace('2026-11-09', '2027-12-31')},2,,,,,2026-11-10 09:30", f"{new},2,,,,,", capsys)
    assert any(
        "batch B-104 of barrier expired on 2026-11-09 and its coat was begun on 2026-11-10" in one for one in said
    )
    air = f"point,item,coat,product,batch,air,humidity,surface,on,by\nclimate,STEP,barrier,,,20,60,20,2026-11-09,ka\n,STEP,{coat},{product},B1,,,,2026-11-10,tb\n"
    at = next(at for at in assessed(air, changes=CLIMATE).results if (at.point.id, at.item.id) == ("climate", "STEP"))
    assert "no air is recorded for primer on 2026-11-10, when it was applied" in map(str, at.reasons)


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (("", "", ""), ""),
        (("1", "2", ""), "DOOR is released a second time"),
        (("1", "2"), ""),
        (("1", "02"), ""),
        (("2",), "DOOR: parts that nobody has released: 1"),
        (("1", "1", "2"), "DOOR is released a second time"),
        (("", "1"), "DOOR is released a second time"),
    ],
)
def test_a_release_of_a_part_releases_no_other(
    folder: Path, rows: tuple[str, ...], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    if rows == ("", "", ""):
        rows = ("",)
    step = RELEASE.replace(",,", ",STEP,", 1)
    parted = [f"{part}{RELEASE.replace(',,', ',,DOOR,', 1)}" for part in rows]
    (folder / "readings" / "refit-release.csv").write_text(_parts(*parted, f",{step}"))
    said = _open(folder, RELEASE, "", capsys)
    assert len(said) == (1 if told else 0)
    assert all(told in line for line in said)


def test_a_fault_of_the_release_leaves_every_inspection_as_it_is(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    said = _open(folder, "2026-11-12,ka", "2026-11-12,zz", capsys)
    assert said == ["refit-record.csv:12: 'zz' is nobody of people.yaml"]


@pytest.mark.parametrize(
    ("air", "told"),
    [
        ("2026-11-10 09:00", ""),
        ("2026-11-10", ""),
        ("2026-11-09 22:30", ""),  # a night shift
        ("2026-11-09 20:30", "no air is recorded for primer on 2026-11-10, when it was applied"),
        ("2026-11-09", "no air is recorded for primer on 2026-11-10, when it was applied"),
        ("", ""),  # told where the job is to be released
    ],
)
def test_air_of_another_day_is_no_air_of_a_coat(air: str, told: str) -> None:
    rows = (
        "point,item,coat,air,humidity,surface,work,on,by\n"
        f"climate,DOOR,primer,20,60,20,,{air},ka\n"
        ",DOOR,primer,,,,application,2026-11-10 09:00,tb\n"
    )
    found = assessed(rows, changes=CLIMATE)
    at = next(at for at in found.results if (at.point.id, at.item.id) == ("climate", "DOOR"))
    said = [str(why) for why in at.reasons if "when it was applied" in why]
    assert said == ([told] if told else [])
    # of the other coats nothing is recorded at all
    assert at.verdict is Verdict.NOT_DECIDED


@pytest.mark.parametrize(("by", "verdict"), [("ka", Verdict.CONFORMING), ("", Verdict.NOT_CONFORMING)])
def test_the_repeat_of_a_dropped_reading_may_keep_its_number(by: str, verdict: Verdict) -> None:
    """A reading that nobody answers for is not dropped: it counts beside its repeat, below the limit."""
    head = "point,item,spot,reading,value,unit,dropped_by,dropped_why\n"
    rows = "".join(f"primer-film,DOOR,{spot},1,56,um,,\n" for spot in range(2, 6))
    found = assessed(
        f"{head}primer-film,DOOR,1,1,5,um,{by},probe slipped\nprimer-film,DOOR,1,1,56,um,,\n{rows}",
        criterion="{rule: own, min: 40 um, max: 80 um, each: reading}",
    )
    assert not any(one.id == "RDG007" for one in found.findings)
    assert any(one.id == "RDG010" for one in found.findings) is not bool(by)
    assert film_on(found) is verdict


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("refit-film.xls", "readings/refit-film.xls is a table that is not read; save it as xlsx or CSV"),
        ("refit-link.csv", "readings/refit-link.csv is a link, no file, or too large"),
        ("refit-photo.jpg", ""),
        # of another job, which it keeps open
        ("other-link.csv", ""),
        ("other.xls", ""),
    ],
)
def test_a_file_of_the_job_that_is_not_read_keeps_it_open(
    folder: Path, name: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    place = folder / "readings" / name
    if "link" in name:
        place.symlink_to(READ / "refit-film.csv")
    else:
        place.write_bytes(b"\xd0\xcf\x11\xe0")
    main(["assess", "refit", "--path", str(folder), "--on", "2026-11-27", "--format", "json"])
    said = [one["what"] for one in json.loads(capsys.readouterr().out)["open"]]
    assert said == ([told] if told else [])
