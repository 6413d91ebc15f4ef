"""A filled record sheet: its fields become rows; a sheet of another job or state, or filled twice, is told."""

from __future__ import annotations

import io
from collections.abc import Mapping

import pytest
from pypdf import PdfWriter
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, NumberObject, TextStringObject

from specgen.assessing.faults import Faults
from specgen.assessing.forms import field_name, state_of
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.records import Record
from specgen.model.spec import Spec
from tests.good_spec import good_with, spec_of

ROWS = {
    field_name("point", 1): "primer-film",
    field_name("item", 1): "DOOR",
    field_name("spot", 1): "A",
    field_name("value", 1): "61,5",
    field_name("point", 2): "primer-film",
    field_name("item", 2): "DOOR",
    field_name("spot", 2): "B",
    field_name("value", 7): "=1+1",
    field_name("unit"): "um",
    field_name("serial"): "K-1",
}


def pdf_form(fields: Mapping[str, str]) -> bytes:
    """A PDF with these text fields, as a person's viewer leaves them when it saves."""
    writer = PdfWriter()
    page = writer.add_blank_page(200, 200)
    held = ArrayObject()
    for name, text in fields.items():
        widget = DictionaryObject(
            {
                NameObject("/Type"): NameObject("/Annot"),
                NameObject("/Subtype"): NameObject("/Widget"),
                NameObject("/FT"): NameObject("/Tx"),
                NameObject("/T"): TextStringObject(name),
                NameObject("/V"): TextStringObject(text),
                NameObject("/Rect"): ArrayObject([NumberObject(at) for at in (0, 0, 50, 20)]),
            }
        )
        held.append(writer._add_object(widget))
    page[NameObject("/Annots")] = held
    writer._root_object[NameObject("/AcroForm")] = writer._add_object(DictionaryObject({NameObject("/Fields"): held}))
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


@pytest.fixture(scope="module")
def spec() -> Spec:
    return spec_of(good_with({}, ()))


def _read(spec: Spec, *forms: Mapping[str, str]) -> tuple[list[Record], list[str]]:
    faults = Faults()
    job = spec.jobs["refit"]
    files = [File(f"{number}.pdf", pdf_form(fields)) for number, fields in enumerate(forms, 1)]
    records = records_of(files, Asked(job=job.id, state=state_of(job)), faults)
    return records, [f"{one.id} {one.place}" for one in faults]


def _about(spec: Spec, **changed: str) -> dict[str, str]:
    about = {"job": "refit", "state": state_of(spec.jobs["refit"]), "sheet": "1"} | changed
    return {f"form_{name}": text for name, text in about.items()}


def test_fields_become_rows_and_those_nobody_filled_do_not(spec: Spec) -> None:
    records, told = _read(spec, {**_about(spec), **ROWS})
    (record,) = records
    assert (record.row, record.text("point"), record.text("value")) == (1, "primer-film", "61,5")
    assert (record.text("unit"), record.text("serial")) == ("um", "K-1")
    assert told == ["RDG004 1.pdf:7:9"]


def test_a_sheet_of_another_job_or_state_is_told(spec: Spec) -> None:
    records, told = _read(spec, {**_about(spec, job="other"), **ROWS})
    assert (records, told) == ([], ["RDG016 1.pdf:1:1"])
    records, told = _read(spec, {**_about(spec, state="0" * 16), **ROWS})
    assert len(records) == 1
    assert "RDG016 1.pdf:1:1" in told


def test_a_sheet_that_was_filled_twice_is_read_once(spec: Spec) -> None:
    again = {**ROWS, field_name("value", 1): "58"}
    records, told = _read(spec, {**_about(spec), **ROWS}, {**_about(spec), **again})
    assert len(records) == 1
    assert "RDG007 2.pdf:1:1" in told
    records, _ = _read(spec, {**_about(spec), **ROWS}, {**_about(spec, sheet="2"), **again})
    assert len(records) == 2


def test_the_state_of_a_job_changes_with_its_points_and_items_alone(spec: Spec) -> None:
    first = state_of(spec.jobs["refit"])
    more = {"jobs.refit.items.DOOR.count": "3"}
    assert state_of(spec_of(good_with(more, ())).jobs["refit"]) != first
    other = {"jobs.refit.inspection.primer-film.criterion.max": "90 um"}
    assert state_of(spec_of(good_with(other, ())).jobs["refit"]) != first
    assert state_of(spec_of(good_with({"jobs.refit.scope": "Other words."}, ())).jobs["refit"]) == first


@pytest.mark.parametrize(
    "raw", [b"%PDF-1.7\nnothing", b"%PDF" + b"\x00" * 100_000, pdf_form({}), pdf_form({"r1_value": "60"})]
)
def test_a_pdf_that_is_no_sheet_of_ours_is_told(raw: bytes) -> None:
    faults = Faults()
    assert records_of([File("a.pdf", raw)], Asked(), faults) == []
    assert [one.id for one in faults] == ["RDG001"]
