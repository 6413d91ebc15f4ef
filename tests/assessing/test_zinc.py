"""Zinc beneath the paint, measured part by part: its own criterion, and net readings of what is sprayed on it."""

from __future__ import annotations

import csv
import io
from functools import cache

import pytest

from specgen.assessing.beneath import part_of
from specgen.assessing.columns import COLUMNS
from specgen.assessing.faults import Faults
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.results import Assessment, At, Verdict
from specgen.checking import check
from specgen.documents.record_sheets.lines import SheetTable
from specgen.documents.record_sheets.view import record_sheets
from specgen.facts.job.zinc_beneath import measures_zinc, zinc_asked, zinc_point
from specgen.model.acceptance import Criterion, Gauge, InspectionPoint, Stage
from specgen.model.spec import Spec
from specgen.units.quantity import parse_quantity
from tests.assessing.job import CHECKED, assessed_job, told
from tests.documents.conftest import context
from tests.good_spec import DEMO, ON, good_with, spec_of

P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
JOB = "pump-guards"
ZINC = (70, 72, 74, 76, 78, 80)


@cache
def _spec() -> Spec:
    return spec_of(check(DEMO.parent / "waterworks", ON))


def _zinc(*means: float | str) -> str:
    return "".join(f"zinc-read,GUARD,{part},1,1,{mean},um\n" for part, mean in enumerate(means, 1))


def _film(net: float, zinc: tuple[float, ...] = ZINC) -> str:
    """Two spots a guard, three readings each, of a film of `net` on the zinc of each."""
    return "".join(
        f"barrier-film,GUARD,{part},{spot},{reading},{mean + net + off},um\n"
        for part, mean in enumerate(zinc, 1)
        for spot in (1, 2)
        for reading, off in ((1, -1), (2, 0), (3, 1))
    )


def _judged(*texts: str) -> Assessment:
    rows = "point,item,part,spot,reading,value,unit\n" + "".join(texts)
    return assessed_job(_spec(), JOB, [File("1.csv", rows.encode())], Asked(fixed={**CHECKED, "by": "K. A."}))


def _at(found: Assessment, point: str) -> At:
    return next(at for at in found.results if at.point.id == point)


def _said(at: At) -> str:
    return "; ".join(at.reasons).replace("\N{NO-BREAK SPACE}", " ")


def test_readings_are_net_of_the_zinc_of_their_own_part() -> None:
    found = _judged(_zinc(*ZINC), _film(65))
    lot = next(lot for lot in found.lots if lot.point.id == "barrier-film")
    assert [float(mean) for _, mean in lot.area.means] == [65.0] * 12
    assert _at(_judged(_zinc(*ZINC), _film(66), "barrier-film,GUARD,,,,conforming,\n"), "barrier-film").verdict is P
    low = _judged(_zinc(*ZINC), _film(64))
    assert _at(low, "barrier-film").verdict is F
    assert "a spot measurement of 64 µm is below 65 µm" in _said(_at(low, "barrier-film"))
    # a mean of several measurements is the mean of the rows
    twice = _judged(_zinc(69, *ZINC[1:]), "zinc-read,GUARD,1,1,2,71,um\n", _film(65))
    assert [float(mean) for lot in twice.lots for _, mean in lot.area.means][:2] == [65.0, 65.0]


@pytest.mark.parametrize(
    ("means", "verdict", "said"),
    [
        (ZINC, P, ""),
        ((60, *ZINC[1:]), P, ""),
        ((59.9, *ZINC[1:]), F, "mean zinc thickness of part 1 is 59.9 µm; required: at least 60 µm"),
        (ZINC[:4], OPEN, "no zinc thickness is recorded of the parts: 5, 6"),
    ],
)
def test_the_mean_of_every_part_is_held_against_the_criterion(
    means: tuple[float, ...], verdict: Verdict, said: str
) -> None:
    at = _at(_judged(_zinc(*means)), "zinc-read")
    assert at.verdict is verdict
    assert said in _said(at)
    assert at.said_by == "K. A."


def test_a_word_on_the_zinc_never_goes_before_its_figures() -> None:
    word = "zinc-read,GUARD,,,,conforming,\n"
    assert _at(_judged(_zinc(50, *ZINC[1:]), word), "zinc-read").verdict is F
    assert _at(_judged(word), "zinc-read").verdict is OPEN
    assert _at(_judged(_zinc(*ZINC), word.replace("conforming", "not conforming")), "zinc-read").verdict is F


def test_what_was_read_before_a_repair_is_told_net_too() -> None:
    head = "point,item,part,spot,reading,value,unit,on,work,remark\n"
    film = "".join(f"{line},2026-11-16,,\n" for line in (_zinc(*ZINC) + _film(64)).splitlines())
    repair = "barrier-film,GUARD,,,,,,2026-11-17,repair,recoated\n"
    files = [File("1.csv", (head + film + repair).encode())]
    found = assessed_job(_spec(), JOB, files, Asked(fixed={**CHECKED, "by": "K. A."}))
    (one,) = [one for one in found.deviations if one.point.id == "barrier-film"]
    told_of = " ".join(one.found).replace("\N{NO-BREAK SPACE}", " ")
    assert "64 µm is below 65 µm" in told_of


def test_without_the_zinc_of_a_part_its_readings_say_nothing() -> None:
    found = _judged(_zinc(*ZINC[:5]), _film(65))
    assert [one for one in told(found) if one[0] == "RDG024"] == [("RDG024", 37, 3)]
    assert _at(found, "barrier-film").verdict is OPEN
    assert next(lot for lot in found.lots if lot.point.id == "barrier-film").area.count == 30


@pytest.mark.parametrize(
    ("cell", "id"), [("9999", "RDG005"), ("seventy", "RDG003"), ("-70", "RDG003"), ("=B2", "RDG004")]
)
def test_a_zinc_that_cannot_be_used_is_told_where_it_stands(cell: str, id: str) -> None:
    found = _judged(_zinc(cell, *ZINC[1:]), _film(65))
    assert (id, 2, 6) in told(found)
    assert _at(found, "zinc-read").verdict is OPEN
    assert _at(found, "barrier-film").verdict is OPEN


def test_sheets_have_a_line_for_every_part_and_room_for_what_is_net() -> None:
    sheets = record_sheets(_spec().jobs[JOB], context(_spec()))
    zinc, film = (_table(sheets.tables, title) for title in ("1 Zinc thickness", "4 DFT"))
    assert zinc.heads == ("Item", "Part", "Spot", "Mean of the part, µm")
    assert [line.printed[1] for line in zinc.lines] == ["1", "2", "3", "4", "5", "6"]
    assert film.heads[-3:] == ("Mean, µm", "Zinc of the part, µm", "Net, µm")
    # the rows of the sheet, typed, are read and judged
    out = io.StringIO()
    writer = csv.writer(out)
    names = ("point", "item", "part", "spot", "reading", "value", "unit")
    writer.writerow(names)
    for row in (dict(zip(COLUMNS, typed, strict=True)) for typed in sheets.typed):
        if row["point"] in {"zinc-read", "barrier-film"} and row["part"]:
            value = "70" if row["point"] == "zinc-read" else "140"
            writer.writerow([(row | {"value": value})[name] for name in names])
    found = assessed_job(
        _spec(), JOB, [File("1.csv", out.getvalue().encode())], Asked(fixed={**CHECKED, "by": "K. A."})
    )
    assert _at(found, "zinc-read").verdict is P
    lot = next(lot for lot in found.lots if lot.point.id == "barrier-film")
    assert {float(mean) for _, mean in lot.area.means} == {70.0}


def _table(tables: tuple[SheetTable, ...], title: str) -> SheetTable:
    return next(table for table in tables if table.title.startswith(title))


@pytest.mark.parametrize(
    ("method", "named"),
    [
        ("Deduct the mean zinc thickness of the part, point 1", True),
        ("Deducting the zinc measured at inspection 1", True),
        ("Deduct the mean zinc thickness of the part, point 2", False),
        ("Deduct the mean zinc thickness of the part, point 9", False),
        ("Deduct the zinc", False),
        ("Do as at point 1. Deduct 10 µm", False),
    ],
)
def test_only_words_that_name_a_point_on_the_bare_part_are_read(method: str, named: bool) -> None:
    job = _spec().jobs[JOB]
    points = {point.id: point for point in job.inspection}
    point = points["barrier-film"].model_copy(update={"method": method})
    assert (zinc_point(point, job) is points["zinc-read"]) is named
    fixed = Gauge.model_construct(correction=parse_quantity("thickness", "70 um"))
    assert zinc_point(point.model_copy(update={"gauge": fixed}), job) is None
    assert measures_zinc(points["zinc-read"], job)
    assert not measures_zinc(points["prepared"], job)


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("Mean of each guard at least 60 µm. Deduct this mean from the readings.", "min 60 um"),
        ("Mean 60 to 90 µm", "60..90 um"),
        ("At least 60 µm.", "None"),
        ("Mean at least 60 µm; mean at most 90 µm.", "None"),
    ],
)
def test_what_is_asked_of_the_mean_is_read_where_one_sentence_says_it(text: str, asked: str) -> None:
    point = InspectionPoint(id="zinc", check="Zinc", at=Stage.PREPARED, criterion=Criterion.model_construct(text=text))
    assert str(zinc_asked(point)) == asked


@pytest.mark.parametrize(
    ("row", "part"),
    [
        ("DOOR,", ("DOOR", "1")),
        ("DOOR,2", ("DOOR", "2")),
        ("STEP,", ("STEP", "")),
        ("STEP,3", ("STEP", "3")),
    ],
)
def test_only_an_item_of_one_part_needs_no_number_of_the_part(row: str, part: tuple[str, str]) -> None:
    job = spec_of(good_with({"jobs.refit.items.DOOR.count": "1"}, ())).jobs["refit"]
    (record,) = records_of([File("1.csv", f"item,part\n{row}\n".encode())], Asked(), Faults())
    assert part_of(record, job) == part
