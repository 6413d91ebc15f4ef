"""What a method makes of a value: its dimension, its scale, whether it meets a limit, what is usual; and standards read in words."""

from __future__ import annotations

import pytest

from specgen.facts.tests.plausible import plausible
from specgen.facts.tests.standards import aged, methods_in, methods_of, standards_in
from specgen.facts.tests.values import Unfit, fits, limit_fits, meets
from specgen.model.field_types import nearest_of
from specgen.model.preparation import known_grades
from specgen.model.test_value import Measured, read_limit, read_result
from specgen.standards.citations import Basis
from specgen.standards.tables import table
from specgen.trade.known import NotKnown

ON_METAL = {"substrate": "metal"}


@pytest.mark.parametrize(
    ("method", "text", "standard", "why"),
    [
        ("pull_off", "5 MPa", "", None),
        ("pull_off", "5 mm", "", Unfit.DIMENSION),
        ("pull_off", "5", "", Unfit.UNIT_MISSING),
        ("pull_off", "4B", "", Unfit.DIMENSION),
        ("buchholz", "85", "", None),
        ("gloss", "85 %", "", Unfit.DIMENSION),
        ("gloss_retained", "85 %", "", None),
        ("colour", "0.4 dE", "", Unfit.FORMULA),
        ("colour", "0.4 dE00", "", None),
        ("cross_cut", "class 5", "", None),
        ("cross_cut", "class 6", "", Unfit.OFF_SCALE),
        ("cross_cut", "4B", "ISO 2409", Unfit.OFF_SCALE),
        ("cross_cut", "4B", "ASTM D3359", None),
        ("rust_grade", "Ri 5", "", None),
        ("rust_grade", "Ri 6", "", Unfit.OFF_SCALE),
        ("rust_grade", "9-S", "ASTM D610", None),
        ("rust_grade", "11", "ASTM D610", Unfit.OFF_SCALE),
        ("blistering", "2(S3)", "", None),
        ("blistering", "2(S6)", "", Unfit.OFF_SCALE),
        ("blistering", "6MD", "", None),
        ("flaking", "1(S2)a", "", None),
        ("chalking", "2.5", "ISO 4628-6", None),
        ("cracking", "3", "ASTM D661", None),
    ],
)
def test_a_value_belongs_to_its_method_or_does_not(method: str, text: str, standard: str, why: Unfit | None) -> None:
    misfit = fits(method, read_result(text), standard)
    assert (misfit.why if misfit is not None else None) == why
    if misfit is not None:
        assert str(read_result(text)) in misfit.said


@pytest.mark.parametrize(
    ("method", "result", "limit", "standard", "passes"),
    [
        ("pull_off", "5 MPa", "min 5 MPa", "", True),
        ("pull_off", "725 psi", "min 5 MPa", "", False),
        ("pull_off", "726 psi", "min 5 MPa", "", True),
        ("gloss", "85 GU", "80..90 GU", "", True),
        ("gloss", "91 GU", "80..90 GU", "", False),
        ("scribe_creep", "1.5 mm", "max 1.5 mm", "", True),
        ("buchholz", "79", "min 80", "", False),
        ("cross_cut", "class 1", "class 0..1", "", True),
        ("cross_cut", "2", "class 0..1", "", False),
        ("cross_cut", "class 0", "class 1", "", True),
        ("cross_cut", "4B", "min 4B", "", True),
        ("cross_cut", "3B", "min 4B", "", False),
        ("rust_grade", "9", "min 8", "ASTM D610", True),
        ("rust_grade", "Ri 1", "Ri 0", "", False),
        ("blistering", "8F", "max 6M", "", True),
        ("blistering", "6D", "max 6M", "", False),
        ("blistering", "0(S0)", "0(S0)", "", True),
        ("pencil", "2H", "min H", "", True),
        ("solvent_rub", "4", "min 4", "ASTM D4752", True),
    ],
)
def test_a_result_passes_or_fails(method: str, result: str, limit: str, standard: str, passes: bool) -> None:
    assert meets(method, read_result(result), read_limit(limit), standard) is passes


@pytest.mark.parametrize(
    ("method", "result", "limit", "standard", "why"),
    [
        ("cross_cut", "class 1", "min 4B", "", "other scales"),
        ("cross_cut", "class 1", "min class 1", "", "accepts what is worse"),
        ("rust_grade", "1", "max 1", "", "more than one scale"),
        ("blistering", "6F", "max 8M", "", "no order"),
        ("pendulum_konig", "120 s", "min 100 swings", "", "result is in s"),
        ("pull_off", "5 mm", "min 5 MPa", "", "no pull-off strength"),
        ("buchholz", "85", "80", "", "does not say whether"),
    ],
)
def test_what_cannot_be_told_is_said(method: str, result: str, limit: str, standard: str, why: str) -> None:
    answer = meets(method, read_result(result), read_limit(limit), standard)
    assert isinstance(answer, NotKnown)
    assert why in answer.why


@pytest.mark.parametrize(
    ("method", "limit", "standard", "reversed_"),
    [
        ("cross_cut", "min class 1", "", True),
        ("cross_cut", "max class 1", "", False),
        ("cross_cut", "max 4B", "", True),
        ("rust_grade", "max 8", "ASTM D610", True),
        ("rust_grade", "max Ri 1", "", False),
        ("blistering", "max 6M", "", False),
        ("blistering", "min 6M", "", False),
        ("cross_cut", "class 0..1", "", False),
        ("pull_off", "max 5 MPa", "", False),
    ],
)
def test_a_scale_run_the_wrong_way_is_told(method: str, limit: str, standard: str, reversed_: bool) -> None:
    found = [misfit.why for misfit in limit_fits(method, read_limit(limit), standard)]
    assert found == ([Unfit.REVERSED] if reversed_ else [])


def _doubt(method: str, texts: str, family: str = "", **where: str):  # type: ignore[no-untyped-def]
    values = [read_result(text) for text in texts.split("; ")]
    return plausible(method, [value for value in values if isinstance(value, Measured)], family, where)


def test_pull_off_in_the_wrong_unit_lists_what_it_may_be() -> None:
    doubt = _doubt("pull_off", "150 psi; 160 psi", "epoxy_2k", substrate="metal")
    assert (doubt.value, doubt.bounds, doubt.below, doubt.ceiling) == ("150 to 160 psi", "3 to 25 MPa", True, False)
    assert "150 to 160 bar (15.0 to 16.0 MPa)" in doubt.readings
    assert any("zero lost" in reading for reading in doubt.readings)
    assert not [reading for reading in doubt.readings if "lbf on a 20 mm" in reading]
    assert not doubt.source.basis.confirmed


def test_a_swing_count_at_the_calibration_glass_is_a_ceiling() -> None:
    doubt = _doubt("pendulum_konig", "150 swings; 180 swings", "epoxy_2k")
    assert (doubt.ceiling, doubt.bounds, doubt.source.basis) == (True, "at most 171 oscillations", Basis.PUBLISHED)
    assert any("150 to 180 seconds" in reading for reading in doubt.readings)
    just = _doubt("pendulum_konig", "165 swings", "epoxy_2k")
    assert (just.ceiling, just.bounds) == (False, "40 to 210 s")


@pytest.mark.parametrize(
    ("method", "text", "family", "where"),
    [
        ("pull_off", "5 MPa", "epoxy_2k", ON_METAL),
        ("pull_off", "2 MPa", "", ON_METAL),
        ("pull_off", "30 MPa", "", ON_METAL),
        ("pull_off", "1 MPa", "", {}),
        ("pull_off", "1 MPa", "bituminous", ON_METAL),
        ("pendulum_konig", "121 swings", "pu_2k_aliphatic", {}),
        ("pendulum_konig", "210 s", "", {}),
        ("pendulum_persoz", "420 s", "", {}),
        ("gloss", "97 GU", "", {"angle": "60"}),
        ("gloss", "1 GU", "pu_2k_aliphatic", {"angle": "60"}),
        ("nss", "1500 h", "epoxy_2k", {"coats": "one"}),
        ("nss", "2500 h", "epoxy_2k", {"coats": "system"}),
        ("pull_off", "4 N/mm2", "epoxy_2k", ON_METAL),
    ],
)
def test_what_is_usual_is_not_doubted(method: str, text: str, family: str, where: dict[str, str]) -> None:
    value = read_result(text)
    assert isinstance(value, Measured)
    assert plausible(method, [value], family, where) is None


@pytest.mark.parametrize(
    ("method", "text", "family", "where"),
    [
        ("pull_off", "1.9 MPa", "", ON_METAL),
        ("pull_off", "30.1 MPa", "", ON_METAL),
        ("pendulum_konig", "211 s", "", {}),
        ("pendulum_konig", "151 swings", "", {}),
        ("pendulum_persoz", "421 s", "", {}),
        ("gloss", "98 GU", "", {"angle": "60"}),
        ("gloss", "96 GU", "", {"angle": "20"}),
        ("nss", "1501 h", "epoxy_2k", {"coats": "one"}),
        ("scribe_creep", "0.4 mm", "epoxy_2k", {}),
        ("heat", "320 degF", "epoxy_2k", {}),
    ],
)
def test_what_is_unusual_is_doubted(method: str, text: str, family: str, where: dict[str, str]) -> None:
    value = read_result(text)
    assert isinstance(value, Measured)
    assert plausible(method, [value], family, where) is not None


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Cross-cut, ISO 2409:2013, class 1", [("ISO 2409", "2013", "2020")]),
        ("DIN EN ISO 4624 (2016)", [("ISO 4624", "2016", "2023")]),
        ("ASTM D4541-17 or D3359-23 method B", [("ASTM D4541", "17", "22"), ("ASTM D3359", "23", None)]),
        ("ASTM D610-08(2012)", [("ASTM D610", "08(2012)", "08(2019)")]),
        ("D610-08(2019)", [("ASTM D610", "08(2019)", None)]),
        ("ISO 20340 and C5-M", [("ISO 20340", "", "ISO 12944-9"), ("C5-M", "", "C5 or CX of ISO 12944-2:2017")]),
        ("ISO 4628-3, ISO 12944-6:1998", [("ISO 4628-3", "", None), ("ISO 12944-6", "1998", "2018")]),
        ("ISO 24090, part C5-Mx, HD610, ISO 2409:2031", [("ISO 2409", "2031", None)]),
        ("DIN 53157", [("DIN 53157", "", "ISO 1522")]),
    ],
)
def test_standards_are_read_in_words(text: str, found: list[tuple[str, str, str | None]]) -> None:
    named = [(one, aged(one)) for one in standards_in(text)]
    assert [(one.standard, one.edition, old.now if old is not None else None) for one, old in named] == found


@pytest.mark.parametrize(
    ("text", "methods"),
    [
        ("ISO 1522", ("pendulum_konig", "pendulum_persoz")),
        ("König pendulum, ISO 1522", ("pendulum_konig",)),
        ("ASTM D3359 method A", ("x_cut",)),
        ("cross-cut to ASTM D3359", ("cross_cut",)),
        ("ISO 29601, high voltage", ("holiday_high",)),
        ("Pull-off adhesion 150 psi", ("pull_off",)),
        ("neutral salt spray 1000 h", ("nss",)),
        ("a dolly good coat", ()),
    ],
)
def test_methods_are_read_in_words(text: str, methods: tuple[str, ...]) -> None:
    assert methods_in(text) == methods


def test_a_standard_is_every_method_it_holds_until_a_variant_is_named() -> None:
    assert methods_of("ASTM D3359") == ("cross_cut", "x_cut")
    assert methods_of("ASTM D3359", "B") == ("cross_cut",)
    assert methods_of("ISO 99999") == ()


def test_tables_of_tests_hang_together() -> None:
    methods = {row["id"] for row in table("test_methods").rows}
    scales = {row["scale"] for row in table("test_scale_names").rows}
    assert {row["scale"] for row in table("test_scales").rows} == scales
    for row in table("test_methods").rows:
        assert set(row["scales"].split()) <= scales
        assert row["kinds"] or row["scales"], row["id"]
    for row in table("test_standards").rows:
        assert row["method"] in methods
        assert row["scale"] in scales | {""}
        assert not row["scale"] or row["scale"] in table("test_methods").row("id", row["method"])["scales"].split()
    for name in ("test_envelopes", "test_envelopes_family", "test_readings"):
        assert {row["method"] for row in table(name).rows} <= methods
    families = {row["id"] for row in table("binder_families").rows}
    assert {row["family"] for row in table("test_envelopes_family").rows} <= families
    withdrawn = {row["old"] for row in table("test_successors").rows}
    assert not withdrawn & {row["standard"] for row in table("test_standards").rows}
    assert not withdrawn & {row["standard"] for row in table("test_editions").rows}


def test_classes_that_answer_each_other_are_steps_of_their_scales() -> None:
    steps = {(row["scale"], row["code"]) for row in table("test_scales").rows}
    for row in table("test_scales_answering").rows:
        assert {(row["scale"], row["code"]), (row["other_scale"], row["other_code"])} <= steps
    for row in table("test_twins").rows:
        known = {one["standard"] for one in table("test_standards").rows}
        assert {row["iso"], row["other"].partition(" method")[0]} - {""} <= known


@pytest.mark.parametrize(
    ("grade", "successor"),
    [("SP 12", "WJ-1"), ("SSPC-SP 12", "WJ-1"), ("NACE No. 5", "WJ-1"), ("second quality", "Sa 2 1/2")],
)
def test_a_preparation_grade_that_was_replaced_names_its_successor(grade: str, successor: str) -> None:
    assert successor in nearest_of(grade, list(known_grades()))
    assert "was replaced" in nearest_of(grade, list(known_grades()))
