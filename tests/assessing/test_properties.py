"""Whatever stands in a file: nothing breaks, what is not counted is told by its row, and less than was asked for never passes."""

from __future__ import annotations

import csv
import io
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.assessing.columns import COLUMNS
from specgen.assessing.readings import Asked
from specgen.assessing.results import Assessment, Verdict
from tests.assessing.job import FILM, assessed, film_on, told

FEW = settings(max_examples=40, deadline=None)
PLAN = {f"{FILM}.readings": "{areas: 1, spots: 5, readings: 15}"}
DIFFERENCE = {
    "jobs.refit.inspection.base-film": "{id: base-film, check: Film of both coats, after: base, criterion: {rule: own, min: 50 um, "
    'max: 140 um, each: spot, text: "After deducting the primer DFT at the same spot, no basecoat below 15 µm."}}'
}
ROW = 7
HOSTILE = st.one_of(
    st.text(max_size=30),
    st.sampled_from(
        ["=B2", "+A1", "-5", "9999", "9.999,9", "1,234", "1e9", "NaN", "50 nm", "50 mil", "OL", "pass", "fail", "2026-02-30", "½", "\u200b"]
    ),
    st.decimals(allow_nan=True, allow_infinity=True).map(str),
)  # fmt: skip


def _rows(value: str = "{}") -> list[dict[str, str]]:
    stated = {"point": "primer-film", "item": "DOOR", "unit": "um", "gauge": "G", "serial": "1", "by": "K. A."}
    days = {"checked_on": "2026-11-20", "on": "2026-11-20 10:00"}
    return [
        stated | days | {"spot": str(spot), "reading": str(reading), "value": value.format(50 + spot)}
        for spot in range(1, 6)
        for reading in (1, 2, 3)
    ]


def _text(rows: list[dict[str, str]], separator: str = ",") -> str:
    out = io.StringIO()
    writer = csv.DictWriter(out, list(COLUMNS), delimiter=separator, lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def _judged(*texts: str | bytes, changes: dict[str, str] | None = None) -> Assessment:
    return assessed(*texts, changes=PLAN if changes is None else changes, asked=Asked())


@FEW
@given(st.sampled_from(sorted(COLUMNS)), HOSTILE, st.sampled_from([",", ";", "\t"]), st.booleans())
def test_one_cell_of_any_content_breaks_nothing_and_never_passes_unseen(
    column: str, content: str, separator: str, wide: bool
) -> None:
    rows = _rows()
    assert film_on(_judged(_text(rows, separator))) is Verdict.CONFORMING
    rows[ROW - 2][column] = content
    # quotes and line ends within a cell are the file's own signs
    text = _text(rows, separator)
    found = _judged(text.encode("utf-16", "surrogatepass") if wide else text.encode("utf-8", "replace"))
    read = sum(lot.area.count for lot in found.lots if lot.point.id == "primer-film" and "DOOR" in lot.items)
    if read < len(rows):
        assert film_on(found) is not Verdict.CONFORMING
    if any(line == ROW for _, line, _ in told(found)):
        assert film_on(found) is not Verdict.CONFORMING


@FEW
@given(st.lists(st.integers(10, 40), min_size=15, max_size=15))
def test_the_unit_in_which_readings_are_written_changes_no_verdict(tenths: list[int]) -> None:
    def written(unit: str, each: Fraction) -> str:
        rows = [row | {"unit": unit, "value": f"{float(n * each):.6g}"} for row, n in zip(_rows(), tenths, strict=True)]
        return _text(rows)

    # 0.1 mil is 2.54 um, to the digit
    mils, micrometres = written("mil", Fraction(1, 10)), written("um", Fraction(254, 100))
    assert film_on(_judged(mils)) is film_on(_judged(micrometres))


@FEW
@given(st.lists(st.integers(37, 80), min_size=15, max_size=15), st.integers(0, 14), st.integers(1, 50))
def test_raising_a_reading_that_stays_below_the_maximum_breaks_no_minimum(
    values: list[int], at: int, more: int
) -> None:
    def judged(read: list[int]) -> Verdict:
        return film_on(_judged(_text([row | {"value": str(n)} for row, n in zip(_rows(), read, strict=True)])))

    raised = [*values]
    raised[at] = min(80, values[at] + more)
    if judged(values) is Verdict.CONFORMING:
        assert judged(raised) is Verdict.CONFORMING


@FEW
@given(st.lists(st.tuples(st.integers(40, 70), st.integers(10, 30)), min_size=5, max_size=5), st.integers(0, 10))
def test_what_both_readings_share_changes_no_difference(spots: list[tuple[int, int]], shared: int) -> None:
    def judged(add: int) -> tuple[object, ...]:
        below, above = (
            [row | {"point": point, "value": str(sum(spots[int(row["spot"]) - 1][:many]) + add)} for row in _rows()]
            for point, many in (("primer-film", 1), ("base-film", 2))
        )
        found = _judged(_text(below + above), changes=DIFFERENCE)
        less = next(at.less for at in found.results if (at.point.id, at.item.id) == ("base-film", "DOOR"))
        assert less is not None
        return less.verdict, tuple(spot.left for spot in less.spots)

    assert judged(0) == judged(shared)
    assert judged(0)[1] == tuple(coat for _, coat in spots)
