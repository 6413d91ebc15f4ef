"""The counting rules against verdicts worked out by hand, and sets of readings that part two of them.

The spots of SSPC-PA 2 and the readings of ISO 19840 and 90/10 are invented, their verdicts follow from the rules as cited in the
tables; the limits of the levels other than 3 are from memory there.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.comparison.changes import Effect
from specgen.comparison.film_readings import READINGS, Judge, judge_of, told_apart
from specgen.model.acceptance import InspectionPoint
from tests.comparison.sides import changed, compared

PA_2 = {"rule": "SSPC-PA-2", "edition": "2012", "min": "100 um", "max": "150 um"}
ISO = {"rule": "ISO-19840", "nominal": "100 um", "max": "300 um"}
NINETY_TEN = {"rule": "90-10", "nominal": "100 um"}
AT = "jobs.refit.inspection.primer-film"


def _judge(criterion: dict[str, str], **more: object) -> Judge:
    point = {"id": "film", "check": "Film", "criterion": criterion, **more}
    found = judge_of(InspectionPoint.model_validate(point))
    assert found is not None
    return found


def _readings(*values: int) -> list[Fraction]:
    return [Fraction(value) for value in values]


# five spots, and whether they pass at the levels 1 to 5
SPOTS = {
    "spots low, area right": ((85, 105, 110, 120, 130), "FFPPP"),
    "a spot below 80 per cent": ((79, 110, 110, 120, 130), "FFFFF"),
    "the area is thin": ((85, 90, 95, 100, 105), "FFFFF"),
    "the area is thick": ((150, 160, 170, 150, 125), "FFFFP"),
    "a spot above 120 per cent": ((181, 100, 110, 120, 130), "FFFPP"),
    "both limits met exactly": ((80, 105, 105, 105, 105), "FFPPP"),
    "low and high": ((82, 200, 130, 115, 105), "FFFPP"),
    "high within 120 per cent": ((100, 150, 180, 120, 110), "FPPPP"),
    "twice the most": ((100, 300, 150, 150, 150), "FFFFP"),
    "all within": ((100, 150, 150, 150, 150), "PPPPP"),
}


@pytest.mark.parametrize(("spots", "verdicts"), SPOTS.values(), ids=SPOTS)
def test_levels_of_sspc_pa_2(spots: tuple[int, ...], verdicts: str) -> None:
    read = [reading for spot in spots for reading in _readings(spot - 3, spot, spot + 3)]
    told = "".join("P" if _judge({**PA_2, "level": str(level)}).accepts(read) else "F" for level in range(1, 6))
    assert told == verdicts


SINGLE = {
    "none below": ((100, 105, 110, 120, 100, 101, 130, 125, 115, 100), "PP"),
    "a fifth below": ((85, 90, 130, 120, 110, 110, 110, 110, 110, 111), "FP"),
    "three tenths below": ((85, 90, 95, 120, 130, 110, 110, 110, 110, 131), "FF"),
    "one below 80": ((79, 110, 110, 110, 110, 110, 110, 110, 110, 126), "FF"),
    "the mean is low": ((100, 100, 100, 100, 100, 100, 100, 100, 100, 95), "FF"),
    "one above the most": ((100, 100, 100, 100, 100, 100, 100, 100, 100, 301), "FF"),
    "one at 80": ((80, 105, 105, 105, 105, 105, 105, 105, 105, 105), "PP"),
}


@pytest.mark.parametrize(("read", "verdicts"), SINGLE.values(), ids=SINGLE)
def test_both_ways_of_reading_iso_19840(read: tuple[int, ...], verdicts: str) -> None:
    told = [_judge({**ISO, "low_readings": way}).accepts(_readings(*read)) for way in ("fewer-than", "at-most")]
    assert told == [verdict == "P" for verdict in verdicts]


def test_ninety_ten() -> None:
    judge = _judge({"rule": "90-10", "nominal": "320 um"})
    assert judge.accepts(_readings(*[320] * 9, 288))
    assert not judge.accepts(_readings(*[320] * 9, 287))
    assert not judge.accepts(_readings(*[320] * 8, 319, 319))
    assert not _judge({**ISO, "nominal": "320 um", "max": "900 um", "low_readings": "at-most"}).accepts(
        _readings(*[320] * 9, 288)
    )


def test_a_correction_is_taken_off_every_reading() -> None:
    read = _readings(125, 130, 140, 120, 135)
    assert _judge({**ISO, "low_readings": "at-most"}).accepts(read)
    assert not _judge({**ISO, "low_readings": "fewer-than"}, gauge={"correction": "25 um"}).accepts(read)


RULES = {
    "PA 2": {**PA_2, "level": "3"},
    "ISO 19840": {**ISO, "low_readings": "fewer-than"},
    "90-10": NINETY_TEN,
}


@pytest.mark.parametrize("unit", ["um", "mil"])
@pytest.mark.parametrize("refusing", RULES)
@pytest.mark.parametrize("accepting", RULES)
def test_no_rule_implies_another(accepting: str, refusing: str, unit: str) -> None:
    first, second = _judge(RULES[accepting]), _judge(RULES[refusing])
    found = told_apart(first, second, unit)
    if accepting == refusing:
        assert found is None
        return
    assert found is not None
    scale = Fraction(254, 10) if unit == "mil" else 1
    read = [value * scale for count, value in found for _ in range(count)]
    assert (len(read), first.accepts(read), second.accepts(read)) == (READINGS, True, False)
    assert all((value * 10).denominator == 1 for _, value in found), "a gauge shows no more digits"


def _effect(old: dict[str, str], new: dict[str, str], more: dict[str, str] | None = None) -> Effect:
    before, after = changed({f"{AT}.criterion": old}), changed({f"{AT}.criterion": new, **(more or {})})
    return next(
        change.effect for change in compared(before, after).changes if change.path.startswith(f"{AT}.criterion")
    )


@pytest.mark.parametrize(
    ("old", "new", "effect"),
    [
        ({**PA_2, "level": "3"}, {**PA_2, "level": "2"}, Effect.TIGHTENED),
        ({**PA_2, "level": "3"}, {**PA_2, "level": "4"}, Effect.RELAXED),
        ({**PA_2, "level": "3"}, {**PA_2, "level": "9"}, Effect.REPLACED),
        ({**PA_2, "level": "3"}, PA_2, Effect.REPLACED),
        ({**PA_2, "level": "3"}, {**PA_2, "level": "3", "edition": "2004"}, Effect.REPLACED),
        ({**ISO, "low_readings": "at-most"}, {**ISO, "low_readings": "fewer-than"}, Effect.TIGHTENED),
        (NINETY_TEN, {**NINETY_TEN, "nominal": "110 um"}, Effect.TIGHTENED),
        (NINETY_TEN, {**NINETY_TEN, "nominal": "90 um"}, Effect.RELAXED),
        (NINETY_TEN, RULES["ISO 19840"], Effect.REPLACED),
        ({"rule": "own", "nominal": "60 um"}, {"rule": "own", "nominal": "70 um"}, Effect.SHIFTED),
    ],
)
def test_only_one_rule_with_another_limit_is_ordered(old: dict[str, str], new: dict[str, str], effect: Effect) -> None:
    assert _effect(old, new) is effect


def test_nothing_is_ordered_where_readings_are_taken_otherwise() -> None:
    fewer = {f"{AT}.readings": "{spots: 3}"}
    assert _effect({**PA_2, "level": "3"}, {**PA_2, "level": "2"}, fewer) is Effect.REPLACED


def test_a_replaced_rule_is_told_with_readings_that_part_the_two() -> None:
    old, new = changed({f"{AT}.criterion": NINETY_TEN}), changed({f"{AT}.criterion": RULES["ISO 19840"]})
    change = next(entry for entry in compared(old, new).changes if entry.path.endswith(".rule"))
    # by hand: 90/10 has no most film and ISO 19840 does; one reading of 80 um in fifteen is a share of 6.7 % and below 90 um
    assert change.note == (
        "a set of 15 readings (15 × 301 µm) passed before and fails now; a set of 15 readings (1 × 80 µm + 14 × 299 µm) passes now"
        " and failed before; by IMO-PSPC, published, ISO-19840, published"
    )
