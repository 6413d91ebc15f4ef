"""The CSV file byte by byte: mark, line ends, quoting, and cells that a spreadsheet would run."""

from __future__ import annotations

import pytest

from specgen.rendering.csv_file import harmless, write_csv


def test_bytes() -> None:
    rows = [("P-1", 'says "no"'), ("a,b", "two\nlines"), ("ä", "")]
    assert write_csv(("Number", "Text"), rows) == (
        b'\xef\xbb\xbfNumber,Text\r\nP-1,"says ""no"""\r\n"a,b","two\nlines"\r\n\xc3\xa4,\r\n'
    )


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"])
def test_formula_is_neutralised(cell: str) -> None:
    assert harmless(cell) == f"'{cell}"
    assert write_csv(("A",), [(cell,)]).startswith(b"\xef\xbb\xbfA\r\n" + (b'"' if "\r" in cell else b"") + b"'")


@pytest.mark.parametrize("cell", ["", "P-1", "400 mL", "1=1", "'=1"])
def test_other_cells_stay(cell: str) -> None:
    assert harmless(cell) == cell


def test_uneven_row_is_refused() -> None:
    with pytest.raises(ValueError, match=r"a row of 1 cells stands under 2 headings"):
        write_csv(("A", "B"), [("1",)])
