"""A filled record sheet (PDF form) as rows: one way from the names of its fields to columns. Called by `readings`.

A field is called by its row and its column: `r12_value` is the value of row 12, `r3to86_by` holds for the rows 3 to 86 that state
none themselves, `all_serial` is the serial number that holds for the whole sheet, and `form_job`, `form_sheet`, `form_state` say of
which job it is, its number, and which state of the job it was made from. Boxes that help whoever fills it in (`mean_12`,
`party_1`) are read by nobody. The file may be anyone's: it is read within bounds, in a process of its own.
"""

from __future__ import annotations

import io
import logging
import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any, Literal

from specgen.assessing.columns import COLUMNS
from specgen.model.canonical import record_of, text_of
from specgen.model.job import Job
from specgen.register.aside import aside
from specgen.register.pdf_attachments import pdf_limits

FORM = ("job", "sheet", "state")
PRINTED = frozenset(
    {"point", "item", "part", "coat", "area", "spot", "reading", "test", "unit", "walk", "product", "work"}
)
"""Columns that a sheet may print into its fields: a row that holds nothing else was not filled."""
Aside = Literal["mean", "zinc", "before", "net", "margin", "party"]
"""What helps whoever fills in a form: what is worked out beside the readings of a spot or the air at one moment, and who worked."""
_ROW = re.compile(r"r([1-9]\d{0,5})_([a-z_]+)")
_SPAN = re.compile(r"r([1-9]\d{0,5})to([1-9]\d{0,5})_([a-z_]+)")
_ALL = re.compile(r"all_([a-z_]+)")
_MOST_FIELDS = 100_000
_LONGEST = 10_000


@dataclass(frozen=True, slots=True)
class Filled:
    """What a form holds: about itself, for all its rows, for rows from one to another, and row by row, by column."""

    about: dict[str, str] = field(default_factory=dict)
    fixed: dict[str, str] = field(default_factory=dict)
    rows: dict[int, dict[str, str]] = field(default_factory=dict)
    spans: dict[tuple[int, int], dict[str, str]] = field(default_factory=dict)

    def shared(self, row: int) -> dict[str, str]:
        """What holds for a row where it says nothing itself; of two spans the one of fewer rows goes before."""
        found = dict(self.fixed)
        holding = (span for span in self.spans if span[0] <= row <= span[1])
        for span in sorted(holding, key=lambda span: span[0] - span[1]):
            found |= self.spans[span]
        return found


def field_name(column: str, row: int | None = None) -> str:
    """How a field is called: of a row, or without one of the whole sheet."""
    return f"r{row}_{column}" if row is not None else f"all_{column}"


def aside_name(what: Aside, row: int) -> str:
    """How a field is called that helps whoever fills it in, at a row or the spot that begins with it; the program works it out itself."""
    return f"{what}_{row}"


def span_name(column: str, first: int, last: int) -> str:
    """How a field is called that holds for rows from one to another."""
    return f"r{first}to{last}_{column}"


def state_of(job: Job) -> str:
    """What a sheet of this job rests on, in sixteen signs: items and inspection points as they are now. Another state, another sheet."""
    rests_on = {
        "items": [record_of(one) for one in job.items],
        "inspection": [record_of(one) for one in job.inspection],
    }
    return sha256(text_of(rests_on).encode()).hexdigest()[:16]


def is_form(raw: bytes) -> bool:
    return raw.startswith(b"%PDF")


def filled(raw: bytes) -> Filled | None:
    """None where the bytes hold no form of ours, are damaged, or cost more than is given."""
    none: dict[str, str] = {}
    texts = aside(lambda: _fields(raw), none)
    found = Filled()
    for name, text in texts.items():
        if name.startswith("form_") and name[5:] in FORM:
            found.about[name[5:]] = text
        elif (of_all := _ALL.fullmatch(name)) and of_all[1] in COLUMNS:
            found.fixed[of_all[1]] = text
        elif (of_span := _SPAN.fullmatch(name)) and of_span[3] in COLUMNS:
            found.spans.setdefault((int(of_span[1]), int(of_span[2])), {})[of_span[3]] = text
        elif (of_row := _ROW.fullmatch(name)) and of_row[2] in COLUMNS:
            found.rows.setdefault(int(of_row[1]), {})[of_row[2]] = text
    return found if found.about.get("job") and found.rows else None


def _fields(raw: bytes) -> dict[str, str]:
    """In the process aside: names and texts of the fields that are filled."""
    from pypdf import PdfReader, apply_configuration

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    try:
        with apply_configuration(pdf_limits()):
            fields: Any = PdfReader(io.BytesIO(raw), strict=False).get_fields() or {}
            return dict(_texts(list(fields.items())[:_MOST_FIELDS]))
    except (KeyboardInterrupt, SystemExit):
        raise
    except BaseException:  # noqa: BLE001  # a damaged file makes the reader fail in every way there is, recursion included
        return {}


def _texts(fields: Iterable[tuple[object, Any]]) -> Iterable[tuple[str, str]]:
    for name, held in fields:
        value = held.get("/V")
        text = str(value).removeprefix("/").strip() if value is not None else ""
        if text and text != "Off" and len(text) <= _LONGEST:
            yield str(name), text
