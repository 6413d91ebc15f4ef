"""One cause, one finding: what is folded, what stays apart, and a waiver that names one place of a folded finding."""

from __future__ import annotations

import copy
from datetime import date
from typing import Any

from specgen.findings import Report, Severity
from specgen.model.cause import cause_of
from tests.good_spec import checked, good, put, second_good, take_out

FIRST, SECOND = "products.primer.application.overlap", "products.primer.application.distance"


def _told(report: Report) -> list[tuple[str, str, list[str]]]:
    return [(t.finding.id, t.finding.path, [other.path for other in t.also]) for t in report.told()]


def _lacking(*paths: str) -> dict[str, Any]:
    spec = good()
    for path in paths:
        take_out(spec, path)
    return spec


def test_what_one_product_lacks_is_told_once() -> None:
    report = checked(_lacking(FIRST, SECOND)).report
    assert len(report) == 2
    ((rule, first, also),) = _told(report)
    assert (rule, {first, *also}) == ("CUR004", {FIRST, SECOND})
    assert report.count(Severity.WARNING) == 1


def test_what_two_products_lack_is_two_causes() -> None:
    told = _told(checked(_lacking(FIRST, "products.base.application.overlap")).report)
    assert [(rule, also) for rule, _, also in told] == [("CUR004", []), ("CUR004", [])]


def test_a_waiver_of_one_place_leaves_the_others_open() -> None:
    spec = _lacking(FIRST, SECOND)
    waiver = f"[{{id: w, rule: CUR004, path: {FIRST}, reason: none, by: Quality, until: 2027-03-31}}]"
    put(spec, "jobs.refit.waivers", waiver)
    report = checked(spec).report
    assert sorted((t.finding.path, t.finding.severity.value, len(t.also)) for t in report.told()) == [
        (SECOND, "warning", 0),
        (FIRST, "note", 0),
    ]
    late = checked(spec, date(2027, 4, 1)).report
    assert sorted((t.finding.id, len(t.also)) for t in late.told()) == [("CUR004", 1), ("WVR002", 0)]


def test_a_lost_source_is_told_once_whoever_names_it() -> None:
    spec = good()
    put(spec, "systems.cab.layers.primer.product", "gone")
    put(spec, "systems.cab.layers.base.product", "gone")
    assert [(rule, len(also)) for rule, _, also in _told(checked(spec).report)] == [("MOD005", 1)]


def test_what_every_entry_of_a_list_lacks_is_told_once_and_each_key_by_itself() -> None:
    spec = good()
    for number in range(2):
        entry = {"id": f"window-{number}", "next_coat": "any", "interval": "1 h..2 h", "air": "20 degC"}
        spec["products"][0]["overcoat"].append(entry)
        del entry["air"]
    del spec["products"][0]["overcoat"][-1]["interval"]
    told = _told(checked(spec).report)
    assert [(rule, path.rpartition(".")[2], len(also)) for rule, path, also in told] == [
        ("MOD002", "air", 1),
        ("MOD002", "interval", 0),
    ]


def test_keys_that_nobody_knows_stay_apart() -> None:
    spec = good()
    put(spec, "products.primer.zzz", "x")
    put(spec, "products.primer.yyy", "x")
    assert [also for _, _, also in _told(checked(spec).report)] == [[], []]


def test_one_place_met_by_several_jobs_is_told_once() -> None:
    """A top coat of polyurethane on an epoxy that several jobs spray in damp air: the layer is to be mended once."""
    ids = checked(second_good()).loaded.ids
    path = ("systems", "deck", "layers", "gloss")
    first, second, nobody = (
        cause_of(path, f"gloss goes on wet, and {job} allows it", ids) for job in ("rails", "lids", "nobody")
    )
    assert first == second != nobody


def test_records_answer_for_themselves_unless_they_rest_on_one_that_is_named() -> None:
    ids = checked(good()).loaded.ids
    one, two = ("systems", "cab", "total"), ("systems", "chassis", "total")
    assert cause_of(one, "cab is too thin", ids) != cause_of(two, "chassis is too thin", ids)
    assert cause_of(one, "cab: clear has no solids", ids) == cause_of(two, "chassis: clear has no solids", ids)
    # what is measured makes a cause of its own
    assert cause_of(one, "cab: clear has 4 um", ids) != cause_of(one, "cab: clear has 5 um", ids)


def test_products_named_by_one_job_are_causes_of_their_own() -> None:
    ids = checked(copy.deepcopy(good())).loaded.ids
    path = ("jobs", "refit", "air")
    assert cause_of(path, "base states no VOC", ids) != cause_of(path, "clear states no VOC", ids)


def test_codes_of_one_label_are_one_cause() -> None:
    ids = checked(good()).loaded.ids
    path = ("products", "base", "hazards", "precautions")
    one = cause_of(path, "precaution P410+P412 of base is missing", ids)
    assert one == cause_of(path, "precaution P210 of base is missing", ids)
