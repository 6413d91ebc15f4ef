"""An existing coating measured spot by spot is taken off the readings of the coats on it, which decide nothing without it."""

from __future__ import annotations

from datetime import date

import pytest

from specgen.assessing.assessment import assess
from specgen.assessing.faults import Faults
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.results import Assessment, Verdict
from specgen.documents.record_sheets.view import record_sheets
from specgen.model.spec import Spec
from tests.documents.conftest import context
from tests.good_spec import checked, good, put, spec_of

NEW = (
    "{id: new-film, check: Film of the primer, after: primer, items: [DOOR], gauge: {principle: magnetic, zeroed_on: smooth-steel},"
    " readings: {spots: 2, readings: 4}, method: 'At the same spots, deducting the DFT of the existing finish',"
    " criterion: {rule: own, min: 40 um, max: 80 um, each: spot}}"
)
OLD = (
    "{id: old-film, check: DFT of the existing finish, at: receipt, items: [DOOR], gauge: {principle: magnetic, zeroed_on: smooth-steel},"
    " readings: {spots: 2, readings: 4}, criterion: {text: No spot above 112 µm.}}"
)
HEAD = "point,item,part,spot,value\n"
COATED = "new-film,DOOR,1,1,160 µm\nnew-film,DOOR,1,2,150 µm\n"


def _spec() -> Spec:
    spec = good()
    put(spec, "jobs.refit.inspection", f"[{OLD}, {NEW}]")
    return spec_of(checked(spec))


def _judged(text: str) -> tuple[Assessment, Faults]:
    spec, faults = _spec(), Faults()
    files = [File("film.csv", (HEAD + text).encode())]
    job = spec.jobs["refit"]
    records = records_of(files, Asked(job=job.id, state=""), faults)
    return assess(job, spec, records, faults, day=date(2026, 11, 27), files=files), faults


def test_what_was_measured_before_is_taken_off_spot_by_spot() -> None:
    found, _ = _judged("old-film,DOOR,1,1,100 µm\nold-film,DOOR,1,1,104 µm\nold-film,DOOR,1,2,90 µm\n" + COATED)
    (lot,) = found.lots
    assert [sum(spot.readings) / len(spot.readings) for spot in lot.spots] == [58, 60]


@pytest.mark.parametrize("beneath", ["", "old-film,DOOR,1,1,conforming\n"])
def test_where_nothing_was_recorded_of_it_the_readings_decide_nothing(beneath: str) -> None:
    """Old and new film together lie within the limits of the new one, which they say nothing of."""
    found, faults = _judged(beneath + "new-film,DOOR,1,1,60 µm\nnew-film,DOOR,1,2,50 µm\n")
    (lot,) = found.lots
    assert not lot.spots
    assert {one.verdict for one in found.results if one.point.id == "new-film"} == {Verdict.NOT_DECIDED}
    assert [one.id for one in faults].count("RDG024") == 2


def test_a_spot_without_what_is_beneath_is_told() -> None:
    _, faults = _judged("old-film,DOOR,1,1,100 µm\n" + COATED)
    assert [(one.id, one.what) for one in faults if one.id == "RDG024"] == [
        ("RDG024", "no DFT of the existing coating is recorded of DOOR 1 2, which is to be deducted")
    ]


def test_what_is_beneath_is_still_judged_in_words() -> None:
    found, _ = _judged("old-film,DOOR,1,1,100 µm\n")
    (at,) = (one for one in found.results if one.point.id == "old-film")
    assert at.verdict is Verdict.NOT_DECIDED
    assert not any("was entered" in str(reason) for reason in at.reasons)


def test_the_sheets_have_its_boxes_and_a_column_for_what_is_left() -> None:
    spec = _spec()
    tables = {table.title: table for table in record_sheets(spec.jobs["refit"], context(spec)).tables}
    assert len(tables["1 DFT of the existing finish"].lines) == 2
    assert tables["2 Film of the primer"].heads[-3:] == ("Mean, µm", "Existing coating, µm", "Net, µm")
