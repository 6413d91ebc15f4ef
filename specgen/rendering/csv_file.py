"""A table as CSV (RFC 4180), for spreadsheets: UTF-8 with a byte order mark, lines ending in CR LF.

Called by `specgen.printing.files`. A spreadsheet runs a cell that begins like a formula, so such a cell gets an
apostrophe in front and is read as text. Some divide a line at semicolons or tabs whatever the file says, so what stands
behind one of those counts as a cell; and every cell is in quotes, so that fewer of them do.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence

# the signs of a formula are the same in full width; blanks and quotes in front of them are passed over
_BEGINS_A_FORMULA = re.compile(
    r"""^(?=[\t\r]|[\s"]*[=+\-@\uff1d\uff0b\uff0d\uff20])|(?<=[;\t])(?=[^\S\t]*"*[^\S\t]*[=+\-@\uff1d\uff0b\uff0d\uff20])"""
)


def write_csv(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> bytes:
    """The bytes of the file, headings first. Raises ValueError for a row that is not as long as the headings."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n", quoting=csv.QUOTE_ALL)
    writer.writerow([harmless(cell) for cell in headings])
    for row in rows:
        if len(row) != len(headings):
            raise ValueError(f"a row of {len(row)} cells stands under {len(headings)} headings")
        writer.writerow([harmless(cell) for cell in row])
    return text.getvalue().encode("utf-8-sig")


def harmless(cell: str) -> str:
    """The cell as text that no spreadsheet runs."""
    return _BEGINS_A_FORMULA.sub("'", cell)
