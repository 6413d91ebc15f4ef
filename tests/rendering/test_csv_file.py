"""The CSV file byte by byte: mark, line ends, quoting, and cells that a spreadsheet would run."""

from __future__ import annotations

import pytest

from specgen.rendering.csv_file import harmless, write_csv


def test_bytes() -> None:
    rows = [("P-1", 'says "no"'), ("a,b", "two\nlines"), ("ä", "")]
    assert write_csv(("Number", "Text"), rows) == (
        b'\xef\xbb\xbf"Number","Text"\r\n"P-1","says ""no"""\r\n"a,b","two\nlines"\r\n"\xc3\xa4",""\r\n'
    )


@pytest.mark.parametrize(
    "cell",
    [
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\tx",
        "\rx",
        " =1",
        '"=1"',
        ' " =1',
        "\u00a0=1",
        "\n=1",
        "＝1",
        "＋1",
        "－1",
        "＠A",
    ],
)
def test_formula_is_neutralised(cell: str) -> None:
    assert harmless(cell) == f"'{cell}"
    assert write_csv(("A",), [(cell,)]).startswith(b'\xef\xbb\xbf"A"\r\n"\'')


@pytest.mark.parametrize(
    ("cell", "written"),
    [
        ("a;=1+1", "a;'=1+1"),
        ("a; =1;-2", "a;' =1;'-2"),
        ('a;"=1"', 'a;\'"=1"'),
        ("a\t@x", "a\t'@x"),
        ("a;＝1", "a;'＝1"),
    ],
)
def test_formula_behind_a_dividing_sign_is_neutralised(cell: str, written: str) -> None:
    assert harmless(cell) == written


@pytest.mark.parametrize("cell", ["", "P-1", "400 mL", "1=1", "'=1", "a; b", "a - b", "a, -5 degC"])
def test_other_cells_stay(cell: str) -> None:
    assert harmless(cell) == cell


def test_uneven_row_is_refused() -> None:
    with pytest.raises(ValueError, match=r"a row of 1 cells stands under 2 headings"):
        write_csv(("A", "B"), [("1",)])
