"""Names of listed people anywhere in the files an as-built record keeps, byte for byte. Called by `recorded`.

What is issued stays, so that a name in it could never be erased: in a remark, a line before the table, a column nobody asked for, the
properties of a workbook or of a PDF, a note on its pages. Names that the list of people does not hold cannot be told from other words.
The files may be anyone's: they are looked through within bounds, in a process of its own.
"""

from __future__ import annotations

import io
import logging
import re
import zipfile
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import Any

from specgen.assessing.forms import is_form
from specgen.assessing.text_table import NotReadableError, text_of
from specgen.assessing.workbook import is_workbook
from specgen.register.aside import aside
from specgen.register.pdf_attachments import pdf_limits
from specgen.register.people import People
from specgen.register.persons import person, stands_in
from specgen.source.characters import printable_name

_MOST = 100_000
_PIECE = 1 << 20
_CARRIED = 500
_TAG = re.compile(r"<[^>]*>")
_FIGURES = str.maketrans("", "", "0123456789")

_Text = tuple[str, str]
"""Where a text stands in its file, and the text."""


def names_kept(files: Mapping[str, bytes], people: People) -> Iterator[str]:
    """A sentence for each file and listed name that stands in it."""
    names = {one.id: one.name for one in people.listed.values() if one.name}
    for file, data in files.items() if names else ():
        look: Callable[[], dict[str, str] | None] = partial(_found, file, data, names)
        found = aside(look, None)
        if found is None:
            yield f"{printable_name(file)} takes more time or memory to look through for names than is given; split it"
        for id, where in (found or {}).items():
            told = f"{printable_name(file)}{where} names {printable_name(names[id])}"
            yield f"{told}; write the id, {id}, so that the name can be erased later"


def _found(file: str, data: bytes, names: Mapping[str, str]) -> dict[str, str]:
    keys = {id: person(name) for id, name in names.items()}
    found: dict[str, str] = {}
    seen: set[str] = set()
    for where, text in _texts(file, data):
        # thousands of lines part in their figures alone
        plain = text.translate(_FIGURES)
        if plain in seen:
            continue
        seen.add(plain)
        for id, key in keys.items():
            if id not in found and stands_in(text, key):
                found[id] = where
    return found


def _texts(file: str, data: bytes) -> Iterator[_Text]:
    yield "", file.rpartition("/")[2]
    if is_form(data):
        yield from _of_pdf(data)
    elif is_workbook(data):
        yield from _of_workbook(data)
    else:
        try:
            lines = text_of(data).splitlines()
        except NotReadableError:
            return
        yield from ((f":{number}", line) for number, line in enumerate(lines, 1))


def _of_workbook(data: bytes) -> Iterator[_Text]:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            for entry in packed.infolist():
                where, rest = f" ({printable_name(entry.filename)})", ""
                with packed.open(entry) as stream:
                    while piece := stream.read(_PIECE):
                        text = rest + piece.decode("utf-8", "replace")
                        rest = text[-_CARRIED:]
                        yield where, _TAG.sub(" ", text)
    except (OSError, ValueError, RuntimeError, EOFError, zipfile.BadZipFile):
        return


def _of_pdf(data: bytes) -> Iterator[_Text]:
    from pypdf import PdfReader, apply_configuration

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    try:
        with apply_configuration(pdf_limits()):
            whole: Any = PdfReader(io.BytesIO(data), strict=False)
            for value in (whole.metadata or {}).values():
                yield " (properties)", str(value)
            described = whole.trailer["/Root"].get("/Metadata")
            if described is not None:
                yield " (properties)", _TAG.sub(" ", described.get_object().get_data().decode("utf-8", "replace"))
            for name, held in list((whole.get_fields() or {}).items())[:_MOST]:
                if (value := held.get("/V")) is not None:
                    yield f" ({printable_name(str(name))})", str(value)
            for number, page in enumerate(whole.pages, 1):
                for note in list(page.get("/Annots") or ())[:_MOST]:
                    held = note.get_object()
                    if held.get("/Subtype") != "/Widget":
                        yield f" (note on page {number})", f"{held.get('/T', '')}\n{held.get('/Contents', '')}"
    except (KeyboardInterrupt, SystemExit):
        raise
    except Exception:  # noqa: BLE001  # a damaged file makes the reader fail in every way there is
        return
