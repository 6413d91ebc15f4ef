"""Record sheets: a box for everything, filled by a program, read back and judged; the CSV beside the form has the same rows."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from datetime import date
from functools import cache
from typing import Any

from pypdf import PdfReader

from specgen.assessing.assessment import assess
from specgen.assessing.columns import COLUMNS
from specgen.assessing.faults import Faults
from specgen.assessing.forms import filled, state_of
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.results import Assessment, Verdict
from specgen.checking import Checked, check
from specgen.documents.record_sheets.view import RecordSheets, record_sheets
from specgen.facts.job.spots import spots_of_parts
from specgen.model.spec import Spec
from specgen.printing.documents import print_documents
from tests.documents.conftest import context
from tests.filled_sheets import FORM, demo_form, fill
from tests.good_spec import DEMO, ON, good, put, spec_of
from tests.good_spec import checked as checked_of

JOB = "tower-wagon-doors"
LATER = date(2026, 11, 27)


@cache
def _checked() -> Checked:
    return check(DEMO, ON)


def _spec() -> Spec:
    return spec_of(_checked())


@cache
def _form() -> bytes:
    files = print_documents(_checked(), documents=["record-sheets"], jobs=[JOB], formats=["pdf"])
    return next(iter(files.values()))


@cache
def _sheets() -> RecordSheets:
    return record_sheets(_spec().jobs[JOB], context(_spec()))


def _rows() -> dict[int, dict[str, str]]:
    """What each row of the sheets is about."""
    return {number: dict(zip(COLUMNS, row, strict=True)) for number, row in enumerate(_sheets().typed, 1)}


def _fill(values: Mapping[str, str]) -> bytes:
    return fill(_form(), values)


def _judged(*forms: bytes) -> Assessment:
    spec, faults = _spec(), Faults()
    job = spec.jobs[JOB]
    files = [File(f"{number}.pdf", data) for number, data in enumerate(forms, 1)]
    records = records_of(files, Asked(job=job.id, state=state_of(job)), faults)
    return assess(job, spec, records, faults, day=LATER, files=files)


def _primer(reading: str, **other: str) -> dict[str, str]:
    """Every reading of the primer, with gauge and inspector in the boxes that hold for all of them; `other` are rows by number."""
    own = [number for number, row in _rows().items() if row["point"] == "primer-film" and row["spot"]]
    span = f"r{own[0]}to{own[-1]}"
    shared = {
        "gauge": "induction",
        "serial": "K-1",
        "checked_on": "2026-11-16",
        "on": "2026-11-16 14:00",
        "by": "K. A.",
    }
    return {
        **{f"r{number}_value": reading for number in own},
        **{f"{span}_{column}": text for column, text in shared.items()},
        **other,
    }


def _verdicts(found: Assessment) -> dict[str, Verdict]:
    return {at.item.id: at.verdict for at in found.results if at.point.id == "primer-film"}


def test_there_is_a_box_for_every_reading_planned() -> None:
    job = _spec().jobs[JOB]
    point = next(one for one in job.inspection if one.id == "primer-film")
    parts = spots_of_parts(point, job, _spec())
    assert [(one.item.id, one.part, one.spots) for one in parts][:3] == [
        ("DOOR", 1, ("A", "B", "C", "D", "E")),
        ("DOOR", 2, ("A", "B", "C", "D", "E")),
        ("SKIRT", 1, ("1", "2", "3")),
    ]
    assert sum(len(one.spots) for one in parts) == 28
    read = [row for row in _rows().values() if row["point"] == "primer-film"]
    assert len(read) == 84
    assert {(row["item"], row["part"], row["spot"], row["reading"]) for row in read} == {
        (one.item.id, str(one.part), spot, str(reading)) for one in parts for spot in one.spots for reading in (1, 2, 3)
    }


def test_a_rule_that_asks_for_more_than_the_plan_has_its_boxes() -> None:
    spec = good()
    rule = "{rule: SSPC-PA-2, edition: '2012', level: '3', min: 40 um, max: 80 um}"
    put(spec, "jobs.refit.inspection.primer-film.criterion", rule)
    put(spec, "jobs.refit.inspection.primer-film.readings", "{spots: 2, readings: 6}")
    whole = spec_of(checked_of(spec))
    job = whole.jobs["refit"]
    point = next(one for one in job.inspection if one.id == "primer-film")
    assert sum(len(one.spots) for one in spots_of_parts(point, job, whole)) >= 5


def test_every_batch_of_every_coat_and_item_has_its_boxes() -> None:
    lines = {(row["coat"], row["item"], row["product"]) for row in _rows().values() if row["product"]}
    coats = (("primer", "primer-210"), ("surfacer", "surfacer-230"), ("top", "topcoat-410"))
    assert lines == {(coat, item, product) for coat, product in coats for item in ("DOOR", "SKIRT", "LADDER")}
    fields = PdfReader(io.BytesIO(_form())).get_fields() or {}
    first = next(number for number, row in _rows().items() if row["product"])
    assert {f"r{first}_{column}" for column in ("batch", "expires", "cans", "on", "by")} <= set(fields)


def test_a_form_filled_by_a_program_is_read_back_and_judged() -> None:
    good_readings = _judged(_fill(_primer("56")))
    assert set(_verdicts(good_readings).values()) == {Verdict.CONFORMING}
    first = next(record for record in good_readings.records if record.text("point") == "primer-film")
    assert [first.text(column) for column in ("value", "unit", "serial", "by")] == ["56", "um", "K-1", "K. A."]
    assert good_readings.verdict is Verdict.NOT_DECIDED, "the other points were not filled"
    thin = {f"r{number}_value": "30" for number, row in _rows().items() if (row["item"], row["spot"]) == ("SKIRT", "2")}
    assert Verdict.NOT_CONFORMING in _verdicts(_judged(_fill(_primer("56", **thin)))).values()


def test_concessions_in_force_are_printed_and_change_no_row() -> None:
    spec = _spec()
    job = spec.jobs[JOB]
    with_, after = (record_sheets(job, context(spec, day=day)) for day in (date(2026, 11, 27), date(2027, 1, 1)))
    table = with_.tables[0]
    assert table.title == "Concessions in force"
    assert [line.printed[0] for line in table.lines] == ["skirt-total\nNCR-0146"]
    assert [line.fields for line in table.lines] == [()]
    assert "Concessions in force" not in {one.title for one in after.tables}
    assert (with_.typed, with_.hidden) == (after.typed, after.hidden)


def test_the_form_of_the_demo_is_what_the_program_prints_filled_by_the_script() -> None:
    kept, anew = filled(FORM.read_bytes()), filled(demo_form())
    assert anew is not None
    assert kept == anew, "the job, the sheets or what is recorded has changed: run `python -m tests.filled_sheets`"
    assert sum("value" in row for row in anew.rows.values()) == 118


def test_a_form_nobody_filled_decides_nothing() -> None:
    found = _judged(_form())
    assert found.records == ()
    assert {at.verdict for at in found.results} == {Verdict.NOT_DECIDED}


def test_an_expired_batch_is_a_finding() -> None:
    row = next(number for number, row in _rows().items() if row["product"] == "primer-210")
    values = {"batch": "B1", "expires": "2026-11-01", "cans": "3", "on": "2026-11-16 09:30"}
    found = _judged(_fill({f"r{row}_{column}": text for column, text in values.items()}))
    assert any(one.id == "RDG013" and "expired" in one.what for one in found.findings)


def test_the_same_sheet_filled_twice_is_told() -> None:
    found = _judged(_fill(_primer("56")), _fill(_primer("57")))
    assert [one.id for one in found.findings if "filled twice" in one.what] == ["RDG007"]
    assert {record.text("value") for record in found.records} == {"56"}


def test_a_form_does_not_ask_its_viewer_to_draw_it_anew() -> None:
    root: Any = PdfReader(io.BytesIO(_form())).trailer["/Root"]
    assert "/NeedAppearances" not in root["/AcroForm"]
    assert filled(_form()) is not None


def test_the_rows_to_type_are_those_of_the_form() -> None:
    files = print_documents(_checked(), documents=["record-sheets"], jobs=[JOB], formats=["csv"])
    typed = list(csv.DictReader(io.StringIO(next(iter(files.values())).decode("utf-8-sig"))))
    form = filled(_form())
    assert form is not None
    assert [{name: text for name, text in row.items() if text} for row in typed] == [
        form.rows[number] for number in sorted(form.rows)
    ]


def test_a_sheet_says_what_state_it_is_of_what_decides_and_where_the_spots_are() -> None:
    text = "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(_form())).pages)
    assert "DRAFT: do not work to this document" in text
    assert "DRAFT, not issued" in text
    assert "specgen assess" not in text
    assert "return it to: Technical desk" in " ".join(text.split())
    primer, surfacer, total = (table for table in _sheets().tables if "DFT" in table.title)
    assert primer.note.replace("\xa0", " ").endswith(
        "accepted by this rule: spot measurement 40 to 80 µm; a single gauge reading is not limited"
    )
    assert "After deducting the primer DFT at the same spot, no surfacer below 40 µm" in surfacer.note.replace(
        "\xa0", " "
    )
    assert [len(table.pictures) for table in (primer, surfacer, total)] == [1, 0, 0]
    assert primer.heads[-2:] == ("Reading 3, µm", "Mean, µm")
    assert [name for name, _ in primer.shared][-4:] == ["Zero before, µm", "Zero after, µm", "Date, time", "By"]
    # what is limited by difference follows from readings: nobody is asked for a word on it
    (results,) = (table for table in _sheets().tables if table.title == "Results")
    assert {line.printed[0] for line in results.lines} == {
        "1 Surface prepared (HOLD POINT)",
        "6 Colour, gloss and finish",
    }


def test_a_mean_that_somebody_wrote_down_is_not_read() -> None:
    own = next(number for number, row in _rows().items() if row["point"] == "primer-film" and row["spot"])
    found = _judged(_fill(_primer("56", **{f"mean_{own}": "12"})))
    assert set(_verdicts(found).values()) == {Verdict.CONFORMING}
    assert {record.text("value") for record in found.records} == {"56"}
