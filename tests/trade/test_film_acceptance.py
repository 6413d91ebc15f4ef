"""Film readings under the counting rules: every verdict of the reference, and what has to hold whatever was read.

The cases are worked out by hand from the stated rules; what the levels of SSPC-PA 2 other than 3 allow is from memory.
"""

from __future__ import annotations

from fractions import Fraction
from statistics import fmean

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.facts.job.counting import counting
from specgen.facts.job.counts import counts_of_rule
from specgen.model.acceptance import AcceptanceRule, Criterion
from specgen.standards.tables import table
from specgen.trade.film_acceptance import Counting, Fault, Least, accepts, judge
from specgen.trade.film_area import Area, Spot
from specgen.trade.film_walk import walked
from specgen.trade.verdict import Verdict, together
from specgen.units.quantity import Quantity, parse_quantity

QUICK = settings(max_examples=80, deadline=None)
P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
FAULTS = {
    "spot_low": Fault.SPOT_LOW,
    "spot_high": Fault.SPOT_HIGH,
    "area_low": Fault.MEAN_LOW,
    "area_high": Fault.MEAN_HIGH,
    "mean_low": Fault.MEAN_LOW,
    "too_many_80_to_100pct": Fault.MANY_BELOW,
    "reading_below_80pct": Fault.READING_LOW,
    "reading_below_90pct_NDFT": Fault.READING_LOW,
    "reading_above_max": Fault.READING_HIGH,
    "less_than_90pct_at_or_above_NDFT": Fault.MANY_BELOW,
}


def held(**stated: str) -> Counting:
    found = counting(Criterion.model_validate(stated))
    assert found is not None
    return found


def pa_2(level: int, least: str = "100 um", most: str = "150 um") -> Counting:
    return held(rule="SSPC-PA-2", edition="2012", level=str(level), min=least, max=most)


def iso(way: str = "fewer-than", nominal: str = "100 um", **more: str) -> Counting:
    return held(rule="ISO-19840", nominal=nominal, low_readings=way, **more)


def singles(*values: str | int | Fraction) -> Area:
    return Area([Spot(str(at), (Fraction(value),)) for at, value in enumerate(values, 1)], "um")


def of(text: str, correction: Fraction = Fraction(0)) -> Area:
    spots = [Spot(str(at), (Fraction(value),)) for at, value in enumerate(text.split(), 1)]
    return Area(spots, "um", correction=correction)


def faults(counted: Counting, area: Area) -> set[Fault]:
    return {reason.fault for reason in judge(counted, area).reasons}


@pytest.mark.cases("pa_2_verdicts")
def test_levels_of_sspc_pa_2(case: dict[str, str]) -> None:
    area = of(case["spots"])
    told = "".join("P" if judge(pa_2(level), area).verdict is P else "F" for level in range(1, 6))
    assert told == case["levels"]
    assert faults(pa_2(3), area) == {FAULTS[name] for name in case["faults_at_3"].split()}
    mean = judge(pa_2(3), area).mean
    assert mean is not None
    assert mean.number == Fraction(case["mean"])


@pytest.mark.cases("iso_19840_verdicts")
def test_both_readings_of_the_clause_of_iso_19840(case: dict[str, str]) -> None:
    row = table("iso_19840_corrections").row("profile", case["correction"]) if case["correction"] else None
    area = of(case["readings"], Fraction(row["correction_um"]) if row is not None else Fraction(0))
    limit = {"max": f"{case['max']} um"} if case["max"] else {}
    for way, verdict, named in (
        ("fewer-than", case["fewer_than"], case["faults"]),
        ("at-most", case["at_most"], case["faults_at_most"]),
    ):
        found = judge(iso(way, **limit), area)
        assert found.verdict is (P if verdict == "pass" else F)
        assert {reason.fault for reason in found.reasons} == {FAULTS[name] for name in named.split()}
        assert found.mean is not None
        assert found.mean.number == Fraction(case["mean"])
    # counted apart from the program: readings from 80 % up to, not including, the nominal film
    low = [value for value in area.values.elements() if 80 <= value < 100]
    assert Fraction(len(low), area.count) == Fraction(case["share"])


@pytest.mark.cases("ninety_ten_verdicts")
def test_ninety_ten_and_iso_19840_are_independent(case: dict[str, str]) -> None:
    area, nominal = of(case["readings"]), f"{case['nominal']} um"
    found = judge(held(rule="90-10", nominal=nominal), area)
    assert found.verdict is (P if case["verdict"] == "pass" else F)
    assert {reason.fault for reason in found.reasons} == {FAULTS[name] for name in case["faults"].split()}
    assert found.below is not None
    assert 1 - found.below.number / 100 == Fraction(case["share_at_or_above"])
    assert accepts(iso(nominal=nominal), area) is (case["iso_19840"] == "pass")


def test_one_set_of_readings_under_three_rules() -> None:
    area = of("85 85 85 85 85")
    single = {"rule": "SSPC-PA-2", "nominal": "100 um"}
    assert judge(held(**single, edition="2012", level="3"), area).verdict is P
    assert judge(held(**single, edition="2004"), area).verdict is F
    assert judge(iso(), area).verdict is F


@pytest.mark.parametrize(
    ("stated", "spot", "mean"),
    [
        ({"edition": "2012", "level": "3", "min": "8 mil", "max": "12 mil"}, ("6.4", "14.4"), ("8", "12")),
        ({"edition": "2012", "level": "3", "min": "9 mil", "max": "12 mil"}, ("7.2", "14.4"), ("9", "12")),
        ({"edition": "2012", "level": "3", "nominal": "3.0 mil"}, ("1.92", "4.32"), ("2.4", "3.6")),
        ({"edition": "2018", "level": "3", "nominal": "100 um"}, ("64", "144"), ("80", "120")),
        ({"edition": "2004", "nominal": "100 um"}, ("80", ""), ("100", "")),
        ({"edition": "2004", "min": "100 um", "max": "150 um"}, ("80", "180"), ("100", "150")),
    ],
)
def test_limits_by_edition(stated: dict[str, str], spot: tuple[str, str], mean: tuple[str, str]) -> None:
    found = held(rule="SSPC-PA-2", **stated)
    limits = (found.spot_min, found.spot_max, found.mean_min, found.mean_max)
    told = [Fraction(limit.number) if limit is not None else None for limit in limits]
    assert told == [Fraction(text) if text else None for text in (*spot, *mean)]


def test_what_an_edition_before_levels_accepts_is_marked_as_unconfirmed() -> None:
    found = held(rule="SSPC-PA-2", edition="2004", min="100 um", max="150 um")
    assert found.unconfirmed is not None
    assert pa_2(3).unconfirmed is None
    assert pa_2(4).unconfirmed is not None
    # the edition of 2012 has levels, and none is stated
    stated = {"rule": "SSPC-PA-2", "edition": "2012", "min": "100 um", "max": "150 um"}
    assert counting(Criterion.model_validate(stated)) is None


def test_a_spot_is_the_mean_of_its_readings() -> None:
    spot = Spot("1", tuple(Fraction(text) for text in ("2.4", "2.6", "2.9")))
    assert float(spot.mean) == pytest.approx(fmean([2.4, 2.6, 2.9]))
    # to the digits of the readings, as reported: 2.6
    rounded = Area([spot], "mil", places=1)
    assert rounded.means == (("1", Fraction("2.6")),)
    # one low reading alone does not matter
    area = Area([Spot(str(at), (Fraction(60), Fraction(90), Fraction(102))) for at in range(5)], "um")
    assert area.means[0][1] == 84
    assert judge(pa_2(3, "84 um"), area).verdict is P


def test_means_are_rounded_only_where_that_is_asked() -> None:
    limit = held(rule="own", min="80 um", max="120 um", each="spot")
    spot = Spot("A", (Fraction(79), Fraction(80), Fraction(80)))
    assert judge(limit, Area([spot], "um")).verdict is F
    assert judge(limit, Area([spot], "um", places=0)).verdict is P


@pytest.mark.parametrize(
    ("lowest", "below", "read", "verdict"),
    [
        ("80 %", "20 %", "80 100 100 100 100", P),
        ("80 %", "20 %", "79 100 100 100 100", F),
        ("80 %", "20 %", "80 99 100 100 100", F),
        ("90 %", "10 %", "90 100 100 100 100 100 100 100 100 100", P),
        ("90 %", "10 %", "89 100 100 100 100 100 100 100 100 100", F),
        ("50 %", "0 %", "99 200 200", F),
    ],
)
def test_own_rules_by_two_shares(lowest: str, below: str, read: str, verdict: Verdict) -> None:
    own = held(rule="own", nominal="100 um", least_reading=lowest, below_nominal=below)
    assert judge(own, of(read)).verdict is verdict


def test_the_80_20_family() -> None:
    assert judge(held(rule="80-20", nominal="100 um"), of("80 120 120 120 120")).verdict is P
    assert judge(held(rule="80-20", nominal="100 um"), of("80 85 120 120 120")).verdict is F


def test_too_few_readings_are_never_a_pass() -> None:
    asked = Least(spots=5, readings=15, in_spot=3)
    three = [Spot(str(at), (Fraction(110),) * 3) for at in range(4)]
    found = judge(pa_2(3), Area(three, "um"), asked)
    assert found.verdict is OPEN
    assert {reason.fault for reason in found.reasons} == {Fault.FEW_SPOTS, Fault.FEW_READINGS}
    assert judge(pa_2(3), Area([*three, Spot("4", (Fraction(110),) * 3)], "um"), asked).verdict is P
    assert judge(pa_2(3), Area([*three, Spot("4", (Fraction(110),) * 2)], "um"), asked).verdict is OPEN
    assert judge(pa_2(3), Area([], "um"), asked).verdict is OPEN
    assert judge(pa_2(3), Area([], "um")).verdict is OPEN


def test_what_more_readings_could_turn_decides_nothing_while_some_are_missing() -> None:
    few = Least(readings=10)
    assert judge(iso(), of("90 90"), few).verdict is OPEN
    assert judge(iso(), of("79 120"), few).verdict is F
    low = Spot("low", (Fraction(60), Fraction(60)))
    assert judge(pa_2(3), Area([low], "um"), Least(spots=1, in_spot=3)).verdict is OPEN
    assert judge(pa_2(3), Area([low], "um"), Least(spots=5, in_spot=2)).verdict is F
    # a spot that lacks readings does not fail for another that has them all
    full = Spot("full", (Fraction(62),) * 3)
    low_spots = [
        one for one in judge(pa_2(3), Area([low, full], "um"), Least(in_spot=3)).reasons if one.fault is Fault.SPOT_LOW
    ]
    assert [(one.at, one.found, one.decides) for one in low_spots] == [(("full",), 62, True), (("low",), 60, False)]


def test_a_figure_within_the_guard_band_is_not_decided() -> None:
    inside = held(rule="own", min="40 um", max="80 um", each="reading")
    two = Fraction(2)
    verdicts = {read: judge(inside, of(read), guard=two).verdict for read in ("37", "38", "41", "42", "78", "79", "83")}
    assert verdicts == {"37": F, "38": OPEN, "41": OPEN, "42": P, "78": P, "79": OPEN, "83": F}
    found = judge(inside, of("41 60"), guard=two)
    assert [(reason.fault, reason.near) for reason in found.reasons] == [(Fault.READING_LOW, True)]


def test_a_spot_out_for_sure_hides_none_that_is_near_and_the_limit_is_the_one_stated() -> None:
    for each, fault in (("spot", Fault.SPOT_LOW), ("reading", Fault.READING_LOW)):
        inside = held(rule="own", min="40 um", max="80 um", each=each)
        found = judge(inside, of("37 41 60 39"), guard=Fraction(2))
        assert found.verdict is F
        assert [(one.fault, one.found, one.limit, one.at, one.decides, one.near) for one in found.reasons] == [
            (fault, 37, 40, ("1",), True, False),
            (fault, 39, 40, ("2", "4"), False, True),
        ]
    found = judge(held(rule="own", max="80 um", min="40 um", each="spot"), of("81 79 85 60"), guard=Fraction(2))
    assert [(one.found, one.limit, one.at, one.near) for one in found.reasons] == [
        (85, 80, ("3",), False),
        (81, 80, ("1", "2"), True),
    ]
    # 4 of 5 lie below nominal, though only one does so by more than the guard band
    found = judge(
        held(rule="own", nominal="100 um", least_reading="50 %", below_nominal="10 %"),
        of("90 99 99 99 120"),
        guard=Fraction(2),
    )
    assert [(one.fault, one.found, one.near) for one in found.reasons] == [(Fault.MANY_BELOW, Fraction(4, 5), False)]


def test_reasons_name_the_spots() -> None:
    area = Area([Spot("A", (Fraction(70), Fraction(120))), Spot("B", (Fraction(120),))], "um")
    reason = next(reason for reason in judge(iso(), area).reasons if reason.fault is Fault.READING_LOW)
    assert (reason.found, reason.limit, reason.at) == (70, 80, ("A",))


@pytest.mark.parametrize(
    ("spots", "found"),
    [
        ("90 110 95 105 106", (3, True)),
        ("101 102", (0, True)),
        ("90 101", (1, False)),
        ("", (0, False)),
        ("90 80 85", (3, False)),
        # 85 lies within 80 % of the minimum, and the walk grants no allowance
        ("85 100 100", (1, True)),
        ("151 150 150", (1, True)),
    ],
)
def test_the_walk_ends_at_two_spots_in_a_row(spots: str, found: tuple[int, bool]) -> None:
    way = walked(Fraction(100), Fraction(150), [Fraction(text) for text in spots.split()])
    assert (way.spots, way.closed) == found


@pytest.mark.cases("pa_2_counts")
def test_areas_spots_and_readings_of_sspc_pa_2(case: dict[str, str]) -> None:
    area = parse_quantity("area", f"{case['area']} {case['unit']}")
    found = counts_of_rule(AcceptanceRule.PA_2, area, unit=case["unit"])
    told = [found[name].number for name in ("areas", "spots", "readings")]
    assert told == [int(case[name]) for name in ("areas", "spots", "readings")]


@pytest.mark.cases("iso_19840_counts")
def test_readings_of_iso_19840(case: dict[str, str]) -> None:
    found = counts_of_rule(AcceptanceRule.ISO_19840, parse_quantity("area", f"{case['area']} m2"))
    assert found["readings"].number == int(case["readings"])


def test_together_the_gravest_decides_and_nothing_is_no_pass() -> None:
    assert together([P, OPEN, F]) is F
    assert together([P, OPEN]) is OPEN
    assert together([P, P]) is P
    assert together([]) is OPEN


# What has to hold whatever was read; P numbers follow the project's reference list.

READING = st.integers(0, 400).map(lambda number: Fraction(number, 2))
READ = st.lists(READING, min_size=1, max_size=20)
SPOTS = st.lists(st.lists(READING, min_size=1, max_size=4), min_size=1, max_size=8)
WAY = st.sampled_from(["fewer-than", "at-most"])
RULES = {
    "PA 2": pa_2(3),
    "ISO 19840": iso(max="160 um"),
    "90-10": held(rule="90-10", nominal="100 um", max="160 um"),
    "80-20": held(rule="80-20", nominal="100 um", max="160 um"),
    "own": held(rule="own", nominal="100 um", max="160 um", least_reading="70 %", below_nominal="15 %"),
}
ANY = st.sampled_from(list(RULES))


def area_of(spots: list[list[Fraction]], unit: str = "um") -> Area:
    return Area([Spot(str(at), tuple(read)) for at, read in enumerate(spots)], unit)


@QUICK
@given(SPOTS)
def test_p21_levels_are_nested(spots: list[list[Fraction]]) -> None:
    passes = [accepts(pa_2(level), area_of(spots)) for level in range(1, 6)]
    assert passes == sorted(passes)


@QUICK
@given(st.lists(st.integers(100, 150).map(Fraction), min_size=1, max_size=10))
def test_p22_spots_inside_the_range_pass_at_every_level(spots: list[Fraction]) -> None:
    assert all(accepts(pa_2(level), singles(*spots)) for level in range(1, 6))


@QUICK
@given(SPOTS, ANY, st.randoms(use_true_random=False))
def test_p23_order_changes_nothing(spots: list[list[Fraction]], rule: str, random: object) -> None:
    turned = [list(reversed(spot)) for spot in spots]
    random.shuffle(turned)  # type: ignore[attr-defined]
    assert faults(RULES[rule], area_of(turned)) == faults(RULES[rule], area_of(spots))


@QUICK
@given(SPOTS, ANY)
def test_p24_another_unit_keeps_every_reason(spots: list[list[Fraction]], rule: str) -> None:
    in_mil = [[Quantity.of("thickness", value, "um").to("mil") for value in spot] for spot in spots]
    ours, theirs = judge(RULES[rule], area_of(spots)), judge(RULES[rule], area_of(in_mil, "mil"))
    assert ours.verdict is theirs.verdict
    assert [(r.fault, r.at) for r in ours.reasons] == [(r.fault, r.at) for r in theirs.reasons]


@QUICK
@given(st.integers(1, 30_000).map(lambda n: Fraction(n, 10)), st.integers(0, 3000).map(lambda n: Fraction(n, 10)))
def test_p25_p31_counts_never_fall_with_the_area(area: Fraction, more: Fraction) -> None:
    small, large = (Quantity.of("area", size, "m2") for size in (area, area + more))
    for rule in (AcceptanceRule.PA_2, AcceptanceRule.ISO_19840):
        few, many = counts_of_rule(rule, small), counts_of_rule(rule, large)
        assert all(few[name].number <= many[name].number for name in few)
    assert counts_of_rule(AcceptanceRule.ISO_19840, small)["readings"].number >= 5


@QUICK
@given(READ)
def test_p27_a_spot_lies_between_its_readings(read: list[Fraction]) -> None:
    assert min(read) <= Spot("", tuple(read)).mean <= max(read)


@QUICK
@given(READ, WAY)
def test_p28_p29_iso_19840(read: list[Fraction], way: str) -> None:
    rule, area = iso(way, max="160 um"), singles(*read)
    if all(100 <= value <= 160 for value in read):
        assert accepts(rule, area)
    if min(read) < 80 or sum(read) < 100 * len(read):
        assert not accepts(rule, area)
    assert not accepts(iso("fewer-than", max="160 um"), area) or accepts(iso("at-most", max="160 um"), area)


@QUICK
@given(SPOTS, st.data())
def test_p30_raising_a_reading_below_the_maximum_breaks_no_minimum(
    spots: list[list[Fraction]], data: st.DataObject
) -> None:
    low = {Fault.READING_LOW, Fault.SPOT_LOW, Fault.MEAN_LOW, Fault.MANY_BELOW}
    at = data.draw(st.integers(0, len(spots) - 1))
    raised = [list(spot) for spot in spots]
    raised[at][0] += data.draw(READING)
    for rule in RULES.values():
        assert faults(rule, area_of(raised)) & low <= faults(rule, area_of(spots)) & low


@QUICK
@given(READ, st.integers(0, 40).map(Fraction))
def test_p32_a_correction_lowers_the_mean_by_just_itself(read: list[Fraction], correction: Fraction) -> None:
    spots = [Spot(str(at), (value,)) for at, value in enumerate(read)]
    plain, corrected = Area(spots, "um"), Area(spots, "um", correction=correction)
    assert corrected.mean(of_spots=False) == plain.mean(of_spots=False) - correction


@QUICK
@given(SPOTS, ANY, st.integers(0, 10).map(Fraction))
def test_a_guard_band_never_turns_a_verdict_into_its_opposite(
    spots: list[list[Fraction]], rule: str, guard: Fraction
) -> None:
    plain, guarded = judge(RULES[rule], area_of(spots)), judge(RULES[rule], area_of(spots), guard=guard)
    assert guarded.verdict in {plain.verdict, OPEN}


@QUICK
@given(SPOTS, ANY, st.integers(1, 40))
def test_missing_readings_never_pass(spots: list[list[Fraction]], rule: str, more: int) -> None:
    area = area_of(spots)
    assert judge(RULES[rule], area, Least(readings=area.count + more)).verdict is not P
