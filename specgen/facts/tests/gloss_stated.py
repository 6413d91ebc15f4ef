"""Whether a share of gloss retained follows from the gloss before and after the exposure that stands beside it.

Called by the rule that tells the author, and by `outcome` for the mean; the pages print both values with the share.
"""

from __future__ import annotations

from fractions import Fraction

from specgen.model.test_report import DoneTest, SpecimenResult
from specgen.model.test_value import Measured, read_result
from specgen.units.quantity import Quantity

GLOSS_RETAINED = "gloss_retained"
_PERCENT = 100


def without_values(done: DoneTest) -> list[str]:
    """The results that do not state the gloss before and after."""
    return [one.id for one in done.results if one.gloss_before is None or one.gloss_after is None]


def followed(result: SpecimenResult) -> str | None:
    """The share that follows from the two values, where the one stated is none they can round to; None where it is one."""
    stated, before, after = read_result(result.value), result.gloss_before, result.gloss_after
    if before is None or after is None or before.number <= 0 or not isinstance(stated, Measured) or stated.unit != "%":
        return None
    half = _half(stated.digits)
    least = _PERCENT * (after.number - _half(after.digits)) / (before.number + _half(before.digits))
    most = _PERCENT * (after.number + _half(after.digits)) / (before.number - _half(before.digits))
    if least - half <= stated.number <= most + half:
        return None
    return f"{float(_PERCENT * after.number / before.number):.1f} %"


def retained(result: SpecimenResult) -> Fraction | None:
    """The share in % as it follows from the two values, not rounded; None where they are not stated, or where the one stated is another."""
    stated, before, after = read_result(result.value), result.gloss_before, result.gloss_after
    if before is None or after is None or before.number <= 0 or followed(result) is not None:
        return None
    return _PERCENT * after.number / before.number if isinstance(stated, Measured) and stated.unit == "%" else None


def mean_gloss(done: DoneTest, *, before: bool) -> Quantity | None:
    """The mean gloss of the results that are counted, before the exposure or after it; None where one of them states none."""
    counted = [one for one in done.results if one.excluded is None]
    stated = [one.gloss_before if before else one.gloss_after for one in counted]
    values = [value for value in stated if value is not None]
    if not values or len(values) < len(stated):
        return None
    mean = sum((value.to("GU") for value in values), Fraction(0)) / len(values)
    places = max(len(value.digits.partition(".")[2]) for value in values) + 1
    return Quantity.of("gloss", mean, "GU", f"{float(mean):.{places}f}")


def _half(digits: str) -> Fraction:
    """Half a unit of the last digit written."""
    return Fraction(1, 2 * 10 ** len(digits.partition(".")[2]))
