"""What a file of readings can hold that must not count, line by line and in each kind of file: told by row and column, never a pass."""

from __future__ import annotations

import io
from collections.abc import Callable, Mapping, Sequence

import pytest

from specgen.assessing.columns import COLUMNS, PLACES
from specgen.assessing.forms import field_name, state_of
from specgen.assessing.readings import Asked, File
from specgen.assessing.results import Assessment, Verdict
from specgen.model.spec import Spec
from tests.assessing.job import FILM, OWN, assessed_job, film_on
from tests.assessing.test_forms import pdf_form
from tests.good_spec import good_with, spec_of

USED = (
    "point",
    "item",
    "coat",
    "spot",
    "reading",
    "value",
    "unit",
    "air",
    "humidity",
    "surface",
    "gauge",
    "serial",
    "checked_on",
    "on",
)
CLIMATE = "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}"
Row = dict[str, str]
Made = Callable[[Spec, Sequence[Row]], bytes]


def _sound() -> list[Row]:
    """The air of the primer, and three spots that conform."""
    air = {"point": "climate", "coat": "primer", "air": "20", "humidity": "55", "surface": "20", "on": "2026-11-20"}
    gauge = {"gauge": "magnetic", "serial": "K-1", "checked_on": "2026-11-21"}
    film = [
        {
            "point": "primer-film",
            "item": "DOOR",
            "spot": spot,
            "reading": "1",
            "value": "60",
            "unit": "um",
            "on": "2026-11-21",
            **gauge,
        }
        for spot in "123"
    ]
    return [air, *film]


def _csv(_spec: Spec, rows: Sequence[Row]) -> bytes:
    return "".join(
        ",".join(row) + "\n" for row in (USED, *([row.get(name, "") for name in USED] for row in rows))
    ).encode()


def _workbook(_spec: Spec, rows: Sequence[Row]) -> bytes:
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    book.active.append(list(USED))
    for row in rows:
        book.active.append([row.get(name) for name in USED])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _form(spec: Spec, rows: Sequence[Row]) -> bytes:
    fields = {"form_job": "refit", "form_state": state_of(spec.jobs["refit"]), "form_sheet": "MS-001"}
    for number, row in enumerate(rows, 1):
        fields |= {field_name(column, number): text for column, text in row.items()}
    return pdf_form(fields)


def _place(kind: str, row: int, column: str) -> tuple[int, int]:
    """Where a cell is told: in a table below its heading; of a form its row, and the column as they stand in the list of columns."""
    return (row, PLACES[column] + 1) if kind == "form" else (row + 1, USED.index(column) + 1)


KINDS: Mapping[str, Made] = {"csv": _csv, "xlsx": _workbook, "form": _form}


def _spec() -> Spec:
    return spec_of(good_with({f"{FILM}.criterion": OWN, "jobs.refit.inspection.climate": CLIMATE}, ()))


def _assessed(kind: str, rows: Sequence[Row]) -> Assessment:
    spec = _spec()
    asked = Asked(job="refit", state=state_of(spec.jobs["refit"]))
    return assessed_job(spec, "refit", [File(f"readings.{kind}", KINDS[kind](spec, rows))], asked)


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_sound_is_read_alike_from_each_kind_of_file(kind: str) -> None:
    found = _assessed(kind, _sound())
    assert [one.id for one in found.findings if one.severity.value == "error"] == []
    assert film_on(found) is Verdict.CONFORMING
    assert set(USED) <= set(COLUMNS)


BAD = {
    "a formula": ({"value": "=B2*25.4"}, "RDG004", "value"),
    "a formula in a name": ({"item": "=A1"}, "RDG004", "item"),
    "a row of nines": ({"value": "9999"}, "RDG005", "value"),
    "a row of nines with a decimal comma": ({"value": "9999.9"}, "RDG005", "value"),
    "a negative film": ({"value": "-12"}, "RDG005", "value"),
    "a negative film with the sign of print": ({"value": "\N{MINUS SIGN}12"}, "RDG005", "value"),
    "another unit in its cell": ({"value": "2.4 mil"}, "RDG006", "value"),
    "another unit in its column": ({"value": "2.4", "unit": "mil"}, "RDG006", "value"),
    "no unit of film": ({"unit": "g"}, "RDG003", "value"),
    "a reading that is there already": ({"spot": "1"}, "RDG007", "reading"),
    "an item that is none": ({"item": "DOOOR"}, "RDG008", "item"),
    "a point that is none": ({"point": "primerfilm"}, "RDG008", "point"),
    "a film read before its coat": ({"on": "2026-11-19"}, "RDG009", "on"),
    "a film read on a day to come": ({"on": "2026-11-28"}, "RDG009", "on"),
    "a day that is none": ({"on": "2026-02-30"}, "RDG003", "on"),
    "a figure in words": ({"value": "about 60"}, "RDG003", "value"),
}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("case", BAD)
def test_it_is_told_by_row_and_column_and_never_passes(kind: str, case: str) -> None:
    changed, id, column = BAD[case]
    rows = _sound()
    rows[3] |= changed
    found = _assessed(kind, rows)
    told = {(one.id, one.place.line, one.place.column) for one in found.findings if one.severity.value == "error"}
    assert (id, *_place(kind, 4, column)) in told
    assert film_on(found) is Verdict.NOT_DECIDED
    assert found.verdict is not Verdict.CONFORMING


def _sheets(*changes: tuple[Mapping[str, str], Mapping[str, str]]) -> Assessment:
    """Forms of the sound rows, each with changes about itself and to its last row."""
    spec, files = _spec(), []
    for number, (about, row) in enumerate(changes, 1):
        rows = _sound()
        rows[3] |= row
        fields = {"form_job": "refit", "form_state": state_of(spec.jobs["refit"]), "form_sheet": "MS-001", **about}
        for at, cells in enumerate(rows, 1):
            fields |= {field_name(column, at): text for column, text in cells.items()}
        files.append(File(f"{number}.pdf", pdf_form(fields)))
    return assessed_job(spec, "refit", files, Asked(job="refit", state=state_of(spec.jobs["refit"])))


def test_a_form_filled_twice_is_read_once_and_decides_nothing() -> None:
    found = _sheets(({}, {}), ({}, {"value": "30"}))
    assert ("RDG007", "2.pdf") in {(one.id, one.place.file) for one in found.findings}
    assert found.lots[0].area.count == 3
    assert film_on(found) is Verdict.NOT_DECIDED


@pytest.mark.parametrize("about", [{"form_state": "0" * 16}, {"form_job": "rails"}])
def test_a_form_of_another_revision_or_job_decides_nothing(about: Mapping[str, str]) -> None:
    found = _sheets((about, {}))
    assert ("RDG016", "1.pdf", 1) in {(one.id, one.place.file, one.place.line) for one in found.findings}
    assert film_on(found) is Verdict.NOT_DECIDED


def test_a_million_rows_are_refused_in_a_sentence() -> None:
    spec = _spec()
    raw = _csv(spec, _sound()) + b"primer-film,DOOR,,9,1,60,um,,,,,,,\n" * 1_000_000
    found = assessed_job(spec, "refit", [File("readings.csv", raw)])
    assert [one.id for one in found.findings if one.severity.value == "error"] == ["RDG001"]
    assert found.records == ()
    assert film_on(found) is Verdict.NOT_DECIDED
