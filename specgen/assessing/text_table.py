"""A file of separated values as rows of text: whatever the encoding, the separator and the lines before the table.

Nothing is guessed that changes a figure: the text is decoded by its mark, as UTF-8, or in the western code page, and the separator
is the one that parts the most cells alike. Called by `readings`.
"""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterator

MOST_BYTES = 64 * 1024 * 1024
MOST_ROWS = 300_000
_MOST_IN_CELL = 10_000
_SEPARATORS = ";\t,|"
_LOOKED_AT = 60

Row = tuple[int, list[str]]
"""The number of a row in its file, from 1, and its cells."""


class NotReadableError(Exception):
    """The file is no table that can be read; the text goes on from its name."""


def refuse_many(rows: int) -> None:
    """Raises NotReadableError for more rows than are read."""
    if rows > MOST_ROWS:
        raise NotReadableError(f"has more than {MOST_ROWS:,} rows; split it by item or by day")


def text_of(raw: bytes) -> str:
    """The text of a file. Raises NotReadableError for one too large, or with more rows than are read."""
    if len(raw) > MOST_BYTES:
        raise NotReadableError(f"is larger than {MOST_BYTES // 1024 // 1024} MiB")
    refuse_many(raw.count(b"\n"))
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        text = raw.decode("utf-16", errors="replace")
    elif raw[:200].count(0) * 5 >= len(raw[:200]) * 2 and raw:
        text = raw.decode("utf-16-be" if raw[0] == 0 else "utf-16-le", errors="replace")
    else:
        try:
            text = raw.decode("utf-8-sig")
        except UnicodeDecodeError:
            text = raw.decode("cp1252", errors="replace")
    if "\x00" in text:
        raise NotReadableError("is no text")
    return text


def separator_of(text: str) -> str:
    """The sign that parts the cells: the one for which the most of the first lines have the same number of cells, and several."""
    lines = [line for line in text[:100_000].splitlines()[:_LOOKED_AT] if line.strip()]
    best, most = ",", 0
    for sign in _SEPARATORS:
        widths = Counter(width for line in lines if (width := line.count(sign)))
        if not widths:
            continue
        width, alike = widths.most_common(1)[0]
        if (weight := alike * width) > most:
            best, most = sign, weight
    return best


def rows_of(text: str) -> Iterator[Row]:
    """Every row with its number; the number is that of the line a row begins in."""
    csv.field_size_limit(_MOST_IN_CELL)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator_of(text))
    begins = 1
    try:
        for cells in reader:
            yield begins, cells
            begins = reader.line_num + 1
    except csv.Error:
        raise NotReadableError(f"cannot be parted into cells from row {begins} on") from None
