"""Files as instruments and people write them: the same fifteen readings in every form, and everything that is told by row and column."""

from __future__ import annotations

import io
import zipfile
from datetime import date, datetime, time, timedelta
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.assessing.cells import Dates
from specgen.assessing.faults import MOST
from specgen.assessing.readings import Asked
from specgen.assessing.results import Verdict
from specgen.assessing.text_table import MOST_ROWS
from specgen.assessing.workbook import sheets_of
from tests.assessing.job import assessed, film_on, reasons, spots, told

P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
PLAIN = spots(50, 55, 60, 65, 70)
GAUGE = """Instrument;Coating gauge
Serial;A-1
Checked on;2026-11-20

No.;Place;Thickness (µm);Date
1;1;49,5;20.11.2026
2;1;50,5;20.11.2026

3;2;61,0;20.11.2026
"""
MAPPED = Asked({"value": "Thickness", "spot": "Place"}, {"point": "primer-film", "item": "DOOR"})


def _values(*texts: str | bytes, **more: object) -> list[str]:
    found = assessed(*texts, **more)  # type: ignore[arg-type]
    assert told(found) == []
    lot = found.lots[0]
    return sorted(str(float(value)) for value in lot.area.values.elements())


def test_every_way_of_writing_the_same_readings_is_read_alike() -> None:
    wanted = _values(PLAIN)
    assert len(wanted) == 15
    semicolons = PLAIN.replace(",", ";").replace(".", ",")
    forms: dict[str, str | bytes] = {
        "semicolons and decimal commas": semicolons,
        "tabs": PLAIN.replace(",", "\t"),
        "strokes": PLAIN.replace(",", "|"),
        "a byte-order mark": b"\xef\xbb\xbf" + PLAIN.encode(),
        "UTF-16": semicolons.encode("utf-16"),
        "UTF-16 without a mark": semicolons.encode("utf-16-le"),
        "line ends of Windows": PLAIN.replace("\n", "\r\n"),
        "line ends of old": PLAIN.replace("\n", "\r"),
        "empty rows": PLAIN.replace("\n", "\n,,,,,\n"),
        "lines before": f"Door readings\nOperator: K. A.\n\n{PLAIN}",
        "unit in the heading": PLAIN.replace("value,unit", "value (µm),unit").replace(",um", ","),
        "unit in the cell": PLAIN.replace(",um", " µm,").replace("value,unit", "value,by"),
        "unit before the table": "Unit;um\n" + semicolons.replace(";unit", "").replace(";um", ""),
        "other order of columns": "\n".join(",".join(reversed(line.split(","))) for line in PLAIN.splitlines()),
        "quotes": "\n".join(",".join(f'"{cell}"' for cell in line.split(",")) for line in PLAIN.splitlines()),
        "western code page": PLAIN.replace("um", "\u00b5m").encode("cp1252"),
    }
    for name, text in forms.items():
        assert _values(text) == wanted, name


def test_a_gauge_s_export_is_mapped_and_its_lines_before_the_table_hold_for_all_rows() -> None:
    found = assessed(GAUGE, asked=MAPPED)
    assert told(found) == []
    assert [spot.name for spot in found.lots[0].spots] == ["DOOR 1", "DOOR 2"]
    assert found.records[0].text("serial") == "A-1"
    assert not [one for one in found.findings if one.id == "RDG012" and "serial" in one.what]


def test_one_mapped_file_beside_one_of_ours() -> None:
    found = assessed(GAUGE, "point,item,value,by\nprepared,DOOR,conforming,K. A.\n", asked=MAPPED)
    assert told(found) == []
    assert next(at for at in found.results if at.point.id == "prepared").verdict is P


def test_a_workbook_is_read_and_its_formulas_are_refused() -> None:
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.append(["Readings of the door"])
    for line in PLAIN.splitlines():
        sheet.append([float(cell) if cell.replace(".", "").isdigit() else cell for cell in line.split(",")])
    assert _values(_bytes(book)) == _values(PLAIN)
    sheet["E4"] = "=E3*2"
    found = assessed(_bytes(book))
    assert told(found) == [("RDG004", 4, 5)]
    assert film_on(found) is OPEN


def test_a_workbook_is_read_as_the_library_reads_it() -> None:
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title, day = "first", date(2026, 11, 20)
    for row in (
        ["text", "  blanks ", "=A1", "µm & <b>", True, False],
        [1, 52.3, -0.25, 1e-7, 12345678901, 0.1 + 0.2, 3.0],
        [datetime.combine(day, time(14, 5)), datetime.combine(day, time()), day, time(14, 5), timedelta(hours=30)],
        [None, None, "third"],
        [],
        ["#N/A", "'quoted", "line\nend"],
    ):
        sheet.append(row)
    sheet["B12"] = "far down"
    sheet["C12"].number_format = "0.00"
    book.create_sheet("second").append(["only"])
    raw = _bytes(book)
    expected = []
    for one in openpyxl.load_workbook(io.BytesIO(raw)).worksheets:
        cells = [[_as_text(cell) for cell in row] for row in one.iter_rows(values_only=True)]
        expected.append((one.title, [(number, row) for number, row in enumerate(map(_filled, cells), 1) if row]))
    assert [(name, [(number, row) for number, row in rows if row]) for name, rows in sheets_of(raw)] == expected
    assert dict(expected[0][1])[1][2] == "=A1"


def _as_text(cell: object) -> str:
    if isinstance(cell, datetime):
        return cell.isoformat(" ", "minutes") if (cell.hour, cell.minute) != (0, 0) else cell.date().isoformat()
    if isinstance(cell, float):
        return repr(cell).removesuffix(".0")
    return "" if cell is None else str(cell)


def _filled(row: list[str]) -> list[str]:
    while row and not row[-1]:
        row = row[:-1]
    return row


def test_texts_that_cells_share_are_read_and_what_is_read_aloud_is_not() -> None:
    found = _values(_packed(_SHEET.replace("COUNT", "2")))
    assert found == ["50.0"]


_SHEET = (
    '<x:worksheet xmlns:x="m"><x:sheetData>'
    '<x:row r="2"><x:c t="s"><x:v>0</x:v></x:c><x:c t="s"><x:v>1</x:v></x:c><x:c t="s"><x:v>COUNT</x:v></x:c></x:row>'
    '<x:row r="5"><x:c t="inlineStr"><x:is><x:r><x:t>primer</x:t></x:r><x:r><x:t>-film</x:t></x:r></x:is></x:c>'
    '<x:c t="str"><x:v>DOOR</x:v></x:c><x:c r="C5" t="n"><x:v>50</x:v></x:c></x:row></x:sheetData></x:worksheet>'
)


def _packed(sheet: str) -> bytes:
    """A workbook of one sheet, as other programs write it: texts shared, rows left out, names with what stands before a colon."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as packed:
        packed.writestr(
            "xl/workbook.xml",
            '<workbook xmlns:r="r"><sheets><sheet name="s" sheetId="1" r:id="a"/></sheets></workbook>',
        )
        packed.writestr(
            "xl/_rels/workbook.xml.rels",
            '<Relationships><Relationship Id="a" Target="worksheets/s.xml"/></Relationships>',
        )
        packed.writestr(
            "xl/sharedStrings.xml",
            "<sst><si><t>point</t></si><si><r><t>it</t></r><r><t>em</t></r></si>"
            "<si><t>value (um)</t><rPh><t>aloud</t></rPh></si></sst>",
        )
        packed.writestr("xl/worksheets/s.xml", sheet)
    return held.getvalue()


@pytest.mark.parametrize(
    "sheet",
    [
        "<!DOCTYPE a [<!ENTITY b 'c'>]>" + _SHEET.replace("COUNT", "2"),
        _SHEET.replace("COUNT", "3"),
        _SHEET.replace("COUNT", "two"),
        _SHEET[:200],
        "",
    ],
)
def test_a_sheet_that_is_damaged_is_told_and_decides_nothing(sheet: str) -> None:
    found = assessed(_packed(sheet))
    assert told(found) == [("RDG001", 1, 1)]
    assert found.verdict is OPEN


def test_a_cell_far_to_the_right_costs_nothing() -> None:
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    for line in PLAIN.splitlines():
        book.active.append(line.split(","))
    for row in range(1, 17):
        book.active.cell(row, 16_384, "far")
    found = assessed(_bytes(book))
    assert told(found) == []
    assert found.lots[0].area.count == 15


def _bytes(book: object) -> bytes:
    held = io.BytesIO()
    book.save(held)  # type: ignore[attr-defined]
    return held.getvalue()


def test_a_workbook_that_is_none_or_unpacks_without_end_is_told() -> None:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", b"0" * (400 * 1024 * 1024))
    shared = io.BytesIO()
    with zipfile.ZipFile(shared, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/sharedStrings.xml", b"0" * (50 * 1024 * 1024))
    for raw in (held.getvalue(), shared.getvalue(), b"PK\x03\x04 and nothing"):
        found = assessed(raw)
        assert told(found) == [("RDG001", 1, 1)]
        assert found.verdict is OPEN


@pytest.mark.parametrize(
    ("was", "now", "finding"),
    [
        ("1,2,50,um", "1,2,-5,um", ("RDG005", 3, 5)),
        ("1,2,50,um", "1,2,9999,um", ("RDG005", 3, 5)),
        ("1,2,50,um", "1,2,fifty,um", ("RDG003", 3, 5)),
        ("1,2,50,um", '1,2,"1,250",um', ("RDG003", 3, 5)),
        ("1,2,50,um", "1,2,1.250.0,um", ("RDG003", 3, 5)),
        ("1,2,50,um", "1,2,50,", ("RDG003", 3, 5)),
        ("1,2,50,um", "1,2,50,bar", ("RDG003", 3, 5)),
        ("1,2,50,um", "1,2,2.0,mil", ("RDG006", 3, 5)),
        ("1,2,50,um", "1,2,=E2,um", ("RDG004", 3, 5)),
        ("1,2,50,um", "1,1,50,um", ("RDG007", 3, 4)),
        # a word is no reading
        ("1,2,50,um", "1,2,pass,um", ("RDG003", 3, 5)),
        ("1,2,50,um", "1,2,not conforming,um", ("RDG003", 3, 5)),
        ("DOOR,1,2,50", "DOR,1,2,50", ("RDG008", 3, 2)),
        ("primer-film,DOOR,1,2,50", "film,DOOR,1,2,50", ("RDG008", 3, 1)),
        ("primer-film,DOOR,1,2,50", "primer-film,,1,2,50", ("RDG008", 3, 2)),
    ],
)
def test_a_cell_that_cannot_be_used_is_told_by_row_and_column_and_decides_nothing(
    was: str, now: str, finding: tuple[str, int, int]
) -> None:
    text = PLAIN.replace(was, now, 1)
    assert text != PLAIN
    found = assessed(text)
    assert told(found) == [finding]
    assert film_on(found) is OPEN
    assert "could not be used" in reasons(found)


def test_ids_that_are_wrong_are_told_with_the_nearest() -> None:
    found = assessed(PLAIN.replace("DOOR,1,2", "DOR,1,2", 1))
    assert "nearest: DOOR" in next(one.what for one in found.findings if one.id == "RDG008")


def test_a_part_past_the_number_of_an_item_is_none_of_the_job() -> None:
    text = PLAIN.replace("point,item,", "point,item,part,").replace("DOOR,", "DOOR,3,")
    assert {one[0] for one in told(assessed(text))} == {"RDG008"}
    assert told(assessed(text.replace("DOOR,3,", "DOOR,2,"))) == []


@pytest.mark.parametrize("part", ["0", "-1", "1a", "left", "9999999999", "1.5", "½"])
def test_parts_are_numbered_and_no_slip_makes_one_more(part: str) -> None:
    text = PLAIN.replace("point,item,", "point,item,part,").replace("DOOR,", "DOOR,1,")
    assert film_on(assessed(text)) is P
    found = assessed(text.replace("DOOR,1,1,2,", f"DOOR,{part},1,2,", 1))
    assert told(found) == [("RDG008", 3, 3)]
    assert film_on(found) is OPEN


@pytest.mark.parametrize("test", ["profile", "gloss", "tomorrow"])
def test_a_test_that_is_none_or_belongs_to_another_point_is_no_reading(test: str) -> None:
    text = PLAIN.replace("point,item,", "point,item,test,").replace("DOOR,", "DOOR,,")
    found = assessed(text.replace("DOOR,,1,2,", f"DOOR,{test},1,2,", 1))
    assert told(found) == [("RDG008", 3, 3)]
    assert film_on(found) is OPEN


def test_a_word_against_figures_counts_where_figures_alone_decide() -> None:
    rule = "{rule: own, min: 40 um, max: 80 um, each: spot}"
    said = "point,item,value,by\nprimer-film,DOOR,{},K. A.\n"
    assert film_on(assessed(PLAIN, said.format("conforming"), criterion=rule)) is P
    found = assessed(PLAIN, said.format("not conforming"), criterion=rule)
    assert film_on(found) is F
    assert "found not conforming by K. A." in reasons(found)
    assert [one.id for one in found.findings if one.id == "RDG017"] == ["RDG017"]
    low = assessed(spots(30), said.format("conforming"), criterion=rule)
    assert film_on(low) is F
    assert "K. A. recorded conforming, the figures say not conforming" in reasons(low)


def test_a_row_without_its_value_is_a_reading_that_is_missing() -> None:
    found = assessed(PLAIN.replace("1,2,50,um", "1,2,,um", 1))
    assert [one.id for one in found.findings if one.place.line == 3] == ["RDG011"]
    assert found.lots[0].area.count == 14


def test_a_file_given_twice_is_read_once() -> None:
    found = assessed(PLAIN, PLAIN)
    assert [one[0] for one in told(found)] == ["RDG007"]
    assert found.lots[0].area.count == 15


DATED = "point,item,coat,spot,reading,value,unit,air,humidity,surface,on\n"
AIR = "climate,,primer,,,,,20,55,20,{}\n"
READ = "primer-film,DOOR,,1,1,60,um,,,,{}\n"
CLIMATE = {
    "jobs.refit.inspection.climate": "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}"
}


@pytest.mark.parametrize(
    ("applied", "read", "wrong"),
    [
        ("2026-11-20", "2026-11-21", False),
        ("2026-11-20", "2026-11-20", False),
        ("2026-11-20", "2026-11-19", True),
        ("2026-11-20 10:00", "2026-11-20 09:59", True),
        ("2026-11-20 10:00", "2026-11-20 10:00", False),
        ("2026-11-20 10:00", "2026-11-20", False),
        ("2026-11-20", "2026-11-28", True),
    ],
)
def test_no_film_is_read_before_its_coat_or_tomorrow(applied: str, read: str, wrong: bool) -> None:
    found = assessed(DATED + AIR.format(applied) + READ.format(read), changes=CLIMATE)
    assert told(found) == ([("RDG009", 3, 11)] if wrong else [])


@pytest.mark.parametrize(
    ("text", "dates", "day"),
    [
        ("20.11.2026", Dates.ISO, "2026-11-20"),
        ("20/11/2026", Dates.ISO, "2026-11-20"),
        ("11/20/2026", Dates.ISO, "2026-11-20"),
        ("03/04/2026", Dates.ISO, None),
        ("03/04/2026", Dates.DAY_FIRST, "2026-04-03"),
        ("03/04/2026", Dates.MONTH_FIRST, "2026-03-04"),
        ("2026-02-30", Dates.ISO, None),
        ("yesterday", Dates.ISO, None),
    ],
)
def test_a_day_that_can_be_read_two_ways_is_not_read(text: str, dates: Dates, day: str | None) -> None:
    found = assessed(DATED + AIR.format(text), changes=CLIMATE, dates=dates)
    assert told(found) == ([("RDG003", 2, 11)] if day is None else [])
    assert found.air[0].on is None if day is None else found.air[0].on.date().isoformat() == day  # type: ignore[union-attr]


@pytest.mark.parametrize("raw", [b"", b"   \n", b"%PDF-1.7 nothing", b"a,b\n1,2\n", b"point,it\x00em\n" * 9])
def test_what_is_no_table_is_told(raw: bytes) -> None:
    found = assessed(raw)
    assert {one[0] for one in told(found)} <= {"RDG001", "RDG002"}
    assert len(told(found)) == 1
    assert found.verdict is OPEN


def test_a_table_of_readings_without_a_column_of_readings_is_told_once() -> None:
    found = assessed(b"No.;Spot;Reading;Thickness (um)\n" + b"1;A;1;52\n" * 40)
    assert told(found) == [("RDG002", 1, 1)]
    assert "Thickness (um)" in found.findings[0].what
    assert found.verdict is OPEN


def test_more_rows_than_are_read_are_told_before_they_take_memory() -> None:
    found = assessed(b"value\n" + b"1\n" * 1_000_000)
    assert told(found) == [("RDG001", 1, 1)]
    assert f"{MOST_ROWS:,} rows" in found.findings[0].what
    assert len(found.records) == 0


def test_faults_without_end_are_counted_not_listed() -> None:
    rows = "".join(f"primer-film,DOOR,{spot},1,x,um\n" for spot in range(MOST + 50))
    found = assessed("point,item,spot,reading,value,unit\n" + rows)
    assert len(told(found)) == MOST + 1
    assert "RDG015" in {one[0] for one in told(found)}


def test_signs_that_must_not_reach_a_screen_are_not_read() -> None:
    found = assessed(PLAIN.replace("DOOR,1,2", "DOOR,1\u202e,2", 1))
    assert told(found) == [("RDG003", 3, 3)]


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.integers(1, 9000), min_size=1, max_size=8),
    st.sampled_from([",", ";", "\t", "|"]),
    st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "cp1252"]),
    st.booleans(),
)
def test_whatever_was_measured_is_read_to_its_last_digit(
    tenths: list[int], separator: str, encoding: str, comma: bool
) -> None:
    """Tenths of a micrometre, with a point or, where it is no separator, with a comma."""
    sign = "," if comma and separator != "," else "."
    heading = separator.join(["point", "item", "spot", "reading", "value (µm)"])
    rows = [
        separator.join(["primer-film", "DOOR", "1", str(number), f"{value // 10}{sign}{value % 10}"])
        for number, value in enumerate(tenths, 1)
    ]
    found = assessed("\r\n".join([heading, *rows]).encode(encoding))
    assert told(found) == []
    assert sorted(found.lots[0].area.values.elements()) == sorted(Fraction(value, 10) for value in tenths)


def test_a_file_given_in_two_formats_is_read_once() -> None:
    openpyxl = pytest.importorskip("openpyxl")
    unnumbered = PLAIN.replace("spot,reading,", "spot,by,")
    book = openpyxl.Workbook()
    for line in unnumbered.splitlines():
        book.active.append(
            [float(cell) if cell.isdigit() and at == 4 else cell for at, cell in enumerate(line.split(","))]
        )
    whole = assessed(unnumbered)
    assert whole.lots[0].area.count == 15
    for other in (_bytes(book), unnumbered.replace(",", ";"), "\n".join(unnumbered.splitlines()[:8])):
        found = assessed(unnumbered, other)
        assert told(found) == [("RDG007", 1, 1)]
        assert "every row of the file stands in 1.csv too" in found.findings[0].what
        assert found.lots[0].area.count == 15
    found = assessed("\n".join(unnumbered.splitlines()[:8]), unnumbered)
    assert told(found) == [("RDG007", 1, 1)]
    assert film_on(found) is OPEN
    # two files that part in one row are two
    assert told(assessed(unnumbered, unnumbered.replace(",49,", ",48,", 1))) == []
