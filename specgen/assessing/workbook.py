"""A workbook (xlsx) as rows of text: values as they are kept, never what a formula would show. Called by `readings`.

The library that tells days from numbers is an extra of the program and imported with the first workbook.
"""

from __future__ import annotations

import io
import posixpath
import zipfile
from collections.abc import Callable, Iterator
from datetime import date, datetime

from specgen.assessing.sheet_xml import Element, elements, rows_of_sheet
from specgen.assessing.text_table import MOST_BYTES, NotReadableError, Row, refuse_many

_MOST_UNPACKED = 384 * 1024 * 1024
"""Rows are read as a stream; this bounds the time they take."""
_MOST_HELD = 48 * 1024 * 1024
"""Texts and styles that several cells share are held whole."""
_STREAMED = "xl/worksheets/"
_MOST_COLUMNS = 200
_BOOK, _RELATIONS = "xl/workbook.xml", "xl/_rels/workbook.xml.rels"
_TEXTS, _STYLES = "xl/sharedStrings.xml", "xl/styles.xml"
_NONE = "is no workbook that can be read"


def is_workbook(raw: bytes) -> bool:
    return raw.startswith(b"PK\x03\x04")


def sheets_of(raw: bytes) -> Iterator[tuple[str, Iterator[Row]]]:
    """Every sheet with its name and its rows. Raises NotReadableError."""
    packed = _opened(raw)
    try:
        book = _Book(packed)
    except ImportError:
        raise NotReadableError(
            "is a workbook, and the library that reads one is not installed: install specgen[xlsx], or save it as CSV"
        ) from None
    except Exception:  # noqa: BLE001  # a damaged part fails in every way there is; to the user all of it is one thing
        raise NotReadableError(_NONE) from None
    for name, part in book.sheets:
        yield name, _rows(packed, part, book)


def _opened(raw: bytes) -> zipfile.ZipFile:
    if len(raw) > MOST_BYTES:
        raise NotReadableError(f"is larger than {MOST_BYTES // 1024 // 1024} MiB")
    try:
        packed = zipfile.ZipFile(io.BytesIO(raw))
    except (zipfile.BadZipFile, ValueError, OSError):
        raise NotReadableError(_NONE) from None
    sizes = [(entry.filename, entry.file_size) for entry in packed.infolist()]
    held = sum(size for name, size in sizes if not name.startswith(_STREAMED))
    if sum(size for _, size in sizes) > _MOST_UNPACKED or held > _MOST_HELD:
        raise NotReadableError("unpacks to more than is read")
    return packed


class _Book:
    """What sheets, texts and styles a workbook holds."""

    def __init__(self, packed: zipfile.ZipFile) -> None:
        from openpyxl.styles.numbers import BUILTIN_FORMATS, is_date_format, is_timedelta_format
        from openpyxl.utils.datetime import MAC_EPOCH, WINDOWS_EPOCH, from_excel

        self._from_excel: Callable[..., object] = from_excel
        self._packed = packed
        parts = {
            about["Id"]: _beside(_BOOK, about["Target"]) for _, about, _ in self._elements(_RELATIONS) if "Id" in about
        }
        self._epoch = WINDOWS_EPOCH
        self.sheets: list[tuple[str, str]] = []
        for path, about, _ in self._elements(_BOOK):
            if path[-1] == "workbookPr" and about.get("date1904") in {"1", "true"}:
                self._epoch = MAC_EPOCH
            elif path[-1] == "sheet" and parts.get(about["id"], "").startswith(_STREAMED):
                self.sheets.append((about["name"], parts[about["id"]]))
        self.texts = self._texts()
        formats = dict(BUILTIN_FORMATS)
        styles: list[int] = []
        for path, about, _ in self._elements(_STYLES):
            if path[-1] == "numFmt" and path[-2] == "numFmts":
                formats[int(about["numFmtId"])] = about["formatCode"]
            elif path[-2:] == ("cellXfs", "xf"):
                styles.append(int(about.get("numFmtId", "0")))
        of_days = {
            str(at): is_timedelta_format(formats.get(style, ""))
            for at, style in enumerate(styles)
            if is_date_format(formats.get(style, "")) or is_timedelta_format(formats.get(style, ""))
        }
        self._of_days = of_days

    def number(self, kept: str, style: str) -> str:
        """A number as the text it was typed as: its shortest; a day where its style is one."""
        try:
            number = float(kept)
        except ValueError:
            return kept
        if style in self._of_days:
            try:
                return _text(self._from_excel(number, self._epoch, timedelta=self._of_days[style]))
            except (ValueError, OverflowError):
                return kept
        return str(int(kept)) if kept.lstrip("-").isdecimal() else repr(number).removesuffix(".0")

    def _elements(self, name: str) -> Iterator[Element]:
        if name in self._packed.namelist():
            with self._packed.open(name) as part:
                yield from elements(part)

    def _texts(self) -> list[str]:
        """The texts that cells share; what is only there to be read aloud (rPh) is no part of them."""
        texts, heard = [], list[str]()
        for path, _, text in self._elements(_TEXTS):
            if path[-1] == "t" and "rPh" not in path:
                heard.append(text)
            elif path[-1] == "si":
                texts.append("".join(heard))
                heard = []
        return texts


def _beside(of: str, target: str) -> str:
    """The name of a part that another names."""
    return posixpath.normpath(
        target.removeprefix("/") if target.startswith("/") else posixpath.join(posixpath.dirname(of), target)
    )


def _rows(packed: zipfile.ZipFile, name: str, book: _Book) -> Iterator[Row]:
    try:
        with packed.open(name) as part:
            for count, row in enumerate(rows_of_sheet(part, book.texts, book.number, _MOST_COLUMNS), 1):
                refuse_many(count)
                yield row
    except NotReadableError:
        raise
    except Exception:  # noqa: BLE001  # damaged parts of a workbook are met while its rows are read
        raise NotReadableError(_NONE) from None


def _text(at: object) -> str:
    """A day without a time as a day."""
    if isinstance(at, datetime):
        return at.isoformat(" ", "minutes") if (at.hour, at.minute) != (0, 0) else at.date().isoformat()
    return at.isoformat() if isinstance(at, date) else str(at)
