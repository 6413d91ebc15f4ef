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
from specgen.documents.record_sheets.lines import SheetTable
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
    (span,) = {
        field.partition("_")[0]
        for table in _sheets().tables
        for _, field in table.shared
        if field.startswith(f"r{own[0]}to")
    }
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
    read = [row for row in _rows().values() if row["point"] == "primer-film" and row["spot"]]
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


def _table(title: str) -> SheetTable:
    (found,) = (table for table in _sheets().tables if table.title == title)
    return found


def test_the_work_on_every_item_and_its_release_have_their_boxes() -> None:
    steps = (
        "Preparation",
        "1 primer: application",
        "2 surfacer: application",
        "2 surfacer: sanding",
        "3 topcoat: application",
    )
    done, decided = _table("Work done"), _table("Acceptance and release")
    assert [line.printed for line in done.lines] == [
        (item, step) for item in ("DOOR", "SKIRT", "LADDER") for step in steps
    ]
    assert [line.printed for line in decided.lines] == [
        (item, decision) for item in ("DOOR", "SKIRT", "LADDER") for decision in ("Acceptance", "RELEASE")
    ]
    # there is room to sign, and no field for it
    assert {line.fields[-1] for line in decided.lines} == {""}
    assert decided.heads[-1] == "Signature"
    works = {row["work"] for row in _rows().values()}
    assert works == {"", "preparation", "application", "sanding", "repair", "acceptance", "release"}


def test_what_was_repaired_is_read_again_in_boxes_of_its_own() -> None:
    """Two spots are thin; one of them is repaired and read again, with the gauge of the first readings."""
    thin = [
        number for number, row in _rows().items() if (row["point"], row["spot"]) == ("primer-film", "C") and row["item"]
    ]
    (repair, _) = (line for line in _table("Repairs").lines if line.printed == ("3 DFT of primer",))
    (again, *_) = _table("Inspection 3, after a repair").lines
    typed = {
        **_primer("56", **{f"r{number}_value": "38" for number in thin}),
        **dict(zip(repair.fields, ("DOOR", "1", "C", "one more cross coat", "2026-11-16 15:00", "K. A."), strict=True)),
    }
    found = _judged(_fill(typed))
    assert _verdicts(found)["DOOR"] is Verdict.NOT_CONFORMING
    assert any("repaired and not read again: DOOR 1 C" in why for at in found.results for why in at.reasons)
    # the mean is worked out beside the readings, as in the table above, and is read by nobody
    typed |= dict(
        zip(again.fields, ("DOOR", "1", "C", "55", "57", "59", "99", "2026-11-16 17:00", "K. B."), strict=True)
    )
    found = _judged(_fill(typed))
    (lot,) = (lot for lot in found.lots if lot.point.id == "primer-film")
    read = {spot.name: [int(reading) for reading in spot.readings] for spot in lot.spots}
    assert (read["DOOR 1 C"], read["DOOR 2 C"]) == ([55, 57, 59], [38, 38, 38])
    (record,) = (one for one in found.records if one.text("value") == "57")
    assert [record.text(name) for name in ("serial", "on", "by")] == ["K-1", "2026-11-16 17:00", "K. B."]
    (deviation,) = (one for one in found.deviations if one.point.id == "primer-film")
    assert "38\N{NO-BREAK SPACE}µm is below 40\N{NO-BREAK SPACE}µm" in deviation.found[0]


def test_begin_and_end_of_one_line_are_two_moments_of_one_person() -> None:
    line = next(line for line in _table("Work done").lines if line.printed == ("DOOR", "1 primer: application"))
    typed = dict(zip(line.fields, ("2026-11-16 09:30", "2026-11-16 10:40", "bt", "two cross coats"), strict=True))
    done = [
        (one.record.text("item"), one.record.text("coat"), f"{one.on:%H:%M}", one.record.text("by"))
        for one in _judged(_fill(typed)).work
    ]
    assert done == [("DOOR", "primer", "09:30", "bt"), ("DOOR", "primer", "10:40", "bt")]


def test_the_rows_to_type_that_were_not_needed_are_no_fault() -> None:
    """Of the CSV nothing but one batch is filled in: what stays open is told by the verdicts, and readings not taken by their rows."""
    files = print_documents(_checked(), documents=["record-sheets"], jobs=[JOB], formats=["csv"])
    rows = list(csv.reader(io.StringIO(next(iter(files.values())).decode("utf-8-sig"))))
    columns = {name: at for at, name in enumerate(rows[0])}
    batch = next(row for row in rows[1:] if row[columns["product"]])
    for name, text in {
        "batch": "B1",
        "expires": "2027-03-31",
        "cans": "3",
        "on": "2026-11-16 09:30",
        "by": "bt",
    }.items():
        batch[columns[name]] = text
    out = io.StringIO()
    csv.writer(out).writerows(rows)
    spec, faults = _spec(), Faults()
    job = spec.jobs[JOB]
    found = assess(job, spec, records_of([File("a.csv", out.getvalue().encode())], Asked(), faults), faults, day=LATER)
    told = {one.id for one in found.findings}
    assert told == {"RDG011", "RDG013"}, "readings not taken, batches not recorded"
    assert [one.what for one in found.findings if one.id == "RDG013"] == [
        "no batch is recorded of: surfacer-230, topcoat-410"
    ]
    assert [used.batch for used in found.batches] == ["B1"]
    assert found.work == ()


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
    assert sum("value" in row for row in anew.rows.values()) == 100


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
    assert "return to: Technical desk" in " ".join(text.split())
    primer, surfacer, total = (table for table in _sheets().tables if "DFT" in table.title and table.shared)
    assert primer.note.replace("\xa0", " ").endswith(
        "accepted by this rule: spot measurement 40 to 80 µm; a single gauge reading is not limited. "
        "Spots with a number are on no drawing and are read again at inspection 4: mark them, or note where each lies"
    )
    assert "After deducting the primer DFT at the same spot, no surfacer below 40 µm" in surfacer.note.replace(
        "\xa0", " "
    )
    assert [len(table.pictures) for table in (primer, surfacer, total)] == [1, 0, 0]
    assert primer.heads[-2:] == ("Reading 3, µm", "Mean, µm")
    assert surfacer.heads[-3:] == ("Mean, µm", "Inspection 3, µm", "Net, µm")
    (again,) = (table for table in _sheets().tables if table.title == "Inspection 4, after a repair")
    assert again.heads == (*surfacer.heads, "Date, time", "By")
    assert [name for name, _ in primer.shared][-4:] == ["Zero before, µm", "Zero after, µm", "Date, time", "By"]
    # what is limited by difference follows from readings: nobody is asked for a word on it
    (results,) = (table for table in _sheets().tables if table.title == "Results")
    assert results.lines
    assert {line.printed[0] for line in results.lines} == {
        "1 Surface prepared (HOLD POINT)",
        "6 Colour, gloss and finish",
    }


def test_a_mean_that_somebody_wrote_down_is_not_read() -> None:
    own = next(number for number, row in _rows().items() if row["point"] == "primer-film" and row["spot"])
    found = _judged(_fill(_primer("56", **{f"mean_{own}": "12"})))
    assert set(_verdicts(found).values()) == {Verdict.CONFORMING}
    assert {record.text("value") for record in found.records} == {"56"}
