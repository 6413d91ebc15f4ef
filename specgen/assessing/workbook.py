"""A workbook (xlsx) as rows of text: values as they are kept, never what a formula would show. Called by `readings`.

The library that reads it is an extra of the program and imported with the first workbook.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any

from specgen.assessing.text_table import MOST_BYTES, NotReadableError, Row, refuse_many

_MOST_UNPACKED = 384 * 1024 * 1024
"""Rows are read as a stream; this bounds the time they take."""
_MOST_HELD = 48 * 1024 * 1024
"""Texts and styles that several cells share are held whole."""
_STREAMED = "xl/worksheets/"
_MOST_COLUMNS = 200


def is_workbook(raw: bytes) -> bool:
    return raw.startswith(b"PK\x03\x04")


def sheets_of(raw: bytes) -> Iterator[tuple[str, Iterator[Row]]]:
    """Every sheet with its name and its rows. Raises NotReadableError."""
    _refuse_hostile(raw)
    try:
        from openpyxl import load_workbook
    except ImportError:
        raise NotReadableError(
            "is a workbook, and the library that reads one is not installed: install specgen[xlsx], or save it as CSV"
        ) from None
    try:
        book = load_workbook(io.BytesIO(raw), read_only=True, data_only=False, keep_links=False)
    except Exception:  # noqa: BLE001  # the library raises what it meets; to the user all of it is one thing
        raise NotReadableError("is no workbook that can be read") from None
    for sheet in book.worksheets:
        yield str(sheet.title), _rows(sheet)


def _refuse_hostile(raw: bytes) -> None:
    if len(raw) > MOST_BYTES:
        raise NotReadableError(f"is larger than {MOST_BYTES // 1024 // 1024} MiB")
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as packed:
            sizes = [(entry.filename, entry.file_size) for entry in packed.infolist()]
    except (zipfile.BadZipFile, ValueError, OSError):
        raise NotReadableError("is no workbook that can be read") from None
    held = sum(size for name, size in sizes if not name.startswith(_STREAMED))
    if sum(size for _, size in sizes) > _MOST_UNPACKED or held > _MOST_HELD:
        raise NotReadableError("unpacks to more than is read")


def _rows(sheet: Any) -> Iterator[Row]:
    try:
        for number, cells in enumerate(sheet.iter_rows(values_only=True, max_col=_MOST_COLUMNS), 1):
            refuse_many(number)
            # the library fills a row up to the columns asked for
            filled = len(cells)
            while filled and cells[filled - 1] is None:
                filled -= 1
            yield number, [_text(cell) for cell in cells[:filled]]
    except NotReadableError:
        raise
    except Exception:  # noqa: BLE001  # damaged parts of a workbook are met while its rows are read
        raise NotReadableError("is no workbook that can be read") from None


def _text(cell: object) -> str:
    """A cell as text; a day without a time as a day."""
    if isinstance(cell, str):
        return cell
    if cell is None:
        return ""
    if isinstance(cell, datetime):
        return cell.isoformat(" ", "minutes") if (cell.hour, cell.minute) != (0, 0) else cell.date().isoformat()
    if isinstance(cell, date):
        return cell.isoformat()
    if isinstance(cell, float):
        # what was typed as 62.3 is kept as its nearest double, whose shortest text is what was typed
        return repr(cell).removesuffix(".0")
    return str(cell)
