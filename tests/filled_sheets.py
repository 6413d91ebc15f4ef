"""Fills the record sheets of the demo's lockers as an inspector would, and writes the form that stands in the demo.

`python -m tests.filled_sheets` prints the sheets by the program, types into their fields what `documents/filled_sheets.yaml` says was
recorded, and writes `specs_demo/tramway/readings/locker-trim-record-sheets.pdf`. Run it again where a test says that the job has changed.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping, Set
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from pypdf import PdfReader, PdfWriter

from specgen.assessing.forms import field_name, span_name
from specgen.checking import Checked, check
from specgen.documents.parts.wording import Words
from specgen.documents.record_sheets.lines import Rows
from specgen.documents.record_sheets.rows import tables
from specgen.printing.documents import print_documents
from specgen.units.locale import ENGLISH
from tests.good_spec import DEMO, ON, spec_of

JOB = "locker-trim"
FORM = DEMO / "readings" / f"{JOB}-record-sheets.pdf"
RECORDED: dict[str, Any] = yaml.load(
    (Path(__file__).parent / "documents" / "filled_sheets.yaml").read_text("utf-8"), Loader=yaml.CBaseLoader
)


def fill(form: bytes, values: Mapping[str, str]) -> bytes:
    """The form with texts in its fields, by their names. Raises AssertionError for a field that it does not have."""
    # what a viewer saves stands behind what the program wrote
    writer = PdfWriter(io.BytesIO(form), incremental=True)
    names = _fields_of(form)
    assert set(values) <= names, sorted(set(values) - names)[:5]
    writer.update_page_form_field_values(list(writer.pages), dict(values), auto_regenerate=False)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


@cache
def _fields_of(form: bytes) -> frozenset[str]:
    return frozenset(PdfReader(io.BytesIO(form)).get_fields() or {})


@cache
def _checked() -> Checked:
    return check(DEMO, ON)


def recorded() -> dict[str, str]:
    """What is typed, by the names of the fields."""
    spec = spec_of(_checked())
    rows = Rows()
    listed = tuple(tables(spec.jobs[JOB], spec, rows, Words.of(spec.project, ENGLISH), ON))
    spans = {
        field for table in listed for line in table.lines for field in line.fields if "to" in field.partition("_")[0]
    }
    typed = dict(_typed(rows, spans))
    for field in (field for table in listed for _, field in table.shared):
        span, _, column = field.partition("_")
        point = rows.printed[int(span[1:].partition("to")[0]) - 1]["point"]
        typed[field] = RECORDED["shared"][point][column]
    return typed


def _typed(rows: Rows, spans: Set[str]) -> Iterator[tuple[str, str]]:
    """Row by row: film by its point and the number of its reading, all else by what its row is about, the first of several alike;
    `spans` are the boxes that hold for two rows of a line."""
    seen: dict[tuple[str, ...], int] = {}
    films: dict[str, int] = {}
    for number, about in enumerate(rows.printed, 1):
        if "reading" in about and "spot" not in about:
            continue
        if "reading" in about:
            point = about["point"]
            read = films[point] = films.get(point, -1) + 1
            low, high = map(int, RECORDED["film"][point])
            yield field_name("value", number), str(low + (read * 7) % (high - low + 1))
            continue
        key = tuple(about.get(name, "") for name in ("point", "item", "coat", "product", "work"))
        at = seen[key] = seen.get(key, -1) + 1
        held = RECORDED["rows"].get("/".join(part for part in key if part), [])
        for column, text in (held[at] if at < len(held) else {}).items():
            of_line = span_name(column, number, number + 1)
            yield of_line if of_line in spans else field_name(column, number), text


def demo_form() -> bytes:
    """The sheets as the program prints them, filled."""
    (form,) = print_documents(_checked(), documents=["record-sheets"], jobs=[JOB], formats=["pdf"]).values()
    return fill(form, recorded())


if __name__ == "__main__":
    FORM.write_bytes(demo_form())
    print(f"{FORM} written")
