"""What the results of a test come to, and whether that meets a limit: numbers are averaged, of ratings each has to pass.

Called by `evidence`, the rules and the documents. A result that lies far out is named and kept; one that is not counted is shown with its
cause. Results are compared as observed, never rounded before.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from specgen.facts.tests.gloss_stated import GLOSS_RETAINED, retained
from specgen.facts.tests.values import meets, method_row
from specgen.model.test_report import DecisionRule, DoneTest, SpecimenResult
from specgen.model.test_required import AskedTest, Statistic
from specgen.model.test_value import Limit, Measured, Rated, Value, read_limit, read_result
from specgen.standards.tables import table
from specgen.trade.known import NotKnown
from specgen.trade.outlier import farthest

_PERCENT = 100


class Outcome(StrEnum):
    """Whether results meet a limit."""

    MEETS = "meets"
    FALLS_SHORT = "falls short"
    NOT_TOLD = "cannot be told"


class Results(NamedTuple):
    """The results counted, in the order of the report, and what they come to.

    `mean` is that of numbers in one unit, None of ratings; `least` and `most` are the ends of numbers. `far_out` is the id of the result
    that lies farther out than chance would put it, empty where none does.
    """

    counted: tuple[tuple[SpecimenResult, Value], ...]
    left_out: tuple[SpecimenResult, ...]
    mean: Measured | None
    least: Measured | None
    most: Measured | None
    far_out: str

    @property
    def number(self) -> int:
        return len(self.counted)


class Judged(NamedTuple):
    """The outcome, the statistic it rests on, what fell short or why it cannot be told; whether the result lies nearer to the limit than
    its uncertainty, and whether the limit is one in words, which a person holds against the result."""

    outcome: Outcome
    statistic: Statistic
    why: str = ""
    inside_guard: bool = False
    in_words: bool = False


def results_of(done: DoneTest) -> Results:
    """What the results of a test come to."""
    counted = tuple((one, read_result(one.value)) for one in done.results if one.excluded is None)
    left_out = tuple(one for one in done.results if one.excluded is not None)
    numbers = [value for _, value in counted if isinstance(value, Measured)]
    if not numbers or len(numbers) < len(counted) or len({value.unit for value in numbers}) > 1:
        return Results(counted, left_out, None, None, None, "")
    unit = numbers[0].unit
    mean = sum(_observed(done, counted), Fraction(0)) / len(numbers)
    at = farthest([value.number for value in numbers])
    ends = sorted(numbers, key=lambda value: value.number)
    return Results(
        counted,
        left_out,
        Measured(mean, unit, _digits(mean, numbers)),
        ends[0],
        ends[-1],
        counted[at][0].id if at is not None else "",
    )


def _observed(done: DoneTest, counted: Sequence[tuple[SpecimenResult, Value]]) -> Iterator[Fraction]:
    """The numbers a mean is made of: a share of gloss from the gloss that was read, for what is stated of it has been rounded."""
    for one, value in counted:
        if isinstance(value, Measured):
            share = retained(one) if done.method == GLOSS_RETAINED else None
            yield value.number if share is None else share


def number_counted(done: DoneTest) -> int:
    """How many results of a test are counted."""
    return sum(one.excluded is None for one in done.results)


def limit_of(asked: AskedTest | DoneTest) -> Limit | None:
    """The limit as figures or ratings; None where none is stated, or where it is stated in words."""
    if asked.limit is None:
        return None
    try:
        return read_limit(asked.limit)
    except ValueError:
        return None


def judged(asked: AskedTest | DoneTest, done: DoneTest) -> Judged:
    """Whether a test that was done meets the limit of one that is asked or claimed."""
    limit, results = limit_of(asked), results_of(done)
    statistic = asked.statistic or _usual(done, results)
    if limit is None:
        why = "no limit is stated" if asked.limit is None else "the limit is stated in words"
        return Judged(Outcome.NOT_TOLD, statistic, why, in_words=asked.limit is not None)
    if not results.counted:
        return Judged(Outcome.NOT_TOLD, statistic, "no result is counted")
    if statistic is Statistic.MEAN and results.mean is None:
        return Judged(Outcome.NOT_TOLD, statistic, "there is no mean of these results")
    if statistic is Statistic.MEAN and results.mean is not None:
        return _of_mean(done, results.mean, limit)
    return _of_each(asked, done, results, limit, statistic)


def _of_mean(done: DoneTest, mean: Measured, limit: Limit) -> Judged:
    met = _meets(done, mean, limit)
    room = _guard(done, mean)
    if isinstance(met, NotKnown):
        return Judged(Outcome.NOT_TOLD, Statistic.MEAN, met.why)
    ends = [_meets(done, _moved(mean, by), limit) for by in (-room, room)]
    inside = room != 0 and any(end is not met for end in ends)
    if done.decision is DecisionRule.GUARDED and met and inside:
        return Judged(
            Outcome.FALLS_SHORT, Statistic.MEAN, "the mean meets the limit by less than its uncertainty", inside
        )
    return Judged(
        Outcome.MEETS if met else Outcome.FALLS_SHORT,
        Statistic.MEAN,
        "" if met else f"the mean is {mean}",
        inside,
    )


def _of_each(
    asked: AskedTest | DoneTest, done: DoneTest, results: Results, limit: Limit, statistic: Statistic
) -> Judged:
    """Each result against the limit; of a share or a number of them how many pass, and none may be worse than the floor."""
    verdicts = [(one, _meets(done, value, limit)) for one, value in results.counted]
    for _, met in verdicts:
        if isinstance(met, NotKnown):
            return Judged(Outcome.NOT_TOLD, statistic, met.why)
    # a pull-off value whose glue gave way is what the coating bore at least
    only_more = [one.id for one, met in verdicts if not met and glue_failed(one)]
    short = [one for one, met in verdicts if not met and one.id not in only_more]
    passed = len(verdicts) - len(short) - len(only_more)
    needed = _needed(asked, len(verdicts), statistic)
    floor = asked.floor if isinstance(asked, AskedTest) else None
    under = [] if floor is None else _under(done, results, floor)
    if passed >= needed and not under:
        return Judged(Outcome.MEETS, statistic)
    if passed + len(only_more) >= needed and not under:
        why = f"at {', '.join(only_more)} the glue failed, and the value is a lower bound"
        return Judged(Outcome.NOT_TOLD, statistic, why)
    told = ", ".join(f"{one.id} {one.value}" for one in (short or under))
    return Judged(Outcome.FALLS_SHORT, statistic, f"{told}")


def _needed(asked: AskedTest | DoneTest, number: int, statistic: Statistic) -> int:
    if isinstance(asked, AskedTest) and statistic is Statistic.SHARE and asked.share is not None:
        share = asked.share.to("%") / _PERCENT * number
        return -(-share.numerator // share.denominator)
    if isinstance(asked, AskedTest) and statistic is Statistic.NUMBER and asked.passing is not None:
        return asked.passing
    return number


def _under(done: DoneTest, results: Results, floor: str) -> list[SpecimenResult]:
    """The results that are worse than the floor."""
    worst = read_result(floor)
    higher = method_row(done.method)["direction"] == "higher"
    limit = Limit(alone=worst) if isinstance(worst, Rated) else Limit(low=worst) if higher else Limit(high=worst)
    return [one for one, value in results.counted if _meets(done, value, limit) is False]


def glue_failed(result: SpecimenResult) -> bool:
    """True where more than half of a pull-off broke in the glue (Y) or at the dolly (Z)."""
    most = Fraction(table("evidence_limits").row("id", "glue_share")["value"])
    return glue_share(result) > most


def glue_share(result: SpecimenResult) -> Fraction:
    """The share of a pull-off in % that broke in the glue, or between glue and coat or dolly; 0 where none is stated."""
    total = Fraction(0)
    for part in (result.mode or "").split(","):
        name, _, share = part.strip().removesuffix("%").strip().rpartition(" ")
        if "Y" in name.upper() and share.replace(".", "", 1).isdigit():
            total += Fraction(share)
    return total


def _usual(done: DoneTest, results: Results) -> Statistic:
    """The statistic of the method; of ratings each, for they have no mean."""
    if results.mean is None:
        return Statistic.EACH
    return Statistic(method_row(done.method)["statistic"])


def _meets(done: DoneTest, value: Value, limit: Limit) -> bool | NotKnown:
    return meets(done.method, value, limit, done.standard or "")


def _guard(done: DoneTest, mean: Measured) -> Fraction:
    stated = read_result(done.uncertainty) if done.uncertainty is not None else None
    return stated.number if isinstance(stated, Measured) and stated.unit == mean.unit else Fraction(0)


def _moved(value: Measured, by: Fraction) -> Measured:
    return Measured(value.number + by, value.unit, "")


def _digits(mean: Fraction, values: Sequence[Measured]) -> str:
    """The mean with one place more than the finest result."""
    places = max(len(value.digits.partition(".")[2]) for value in values) + 1
    return f"{float(mean):.{places}f}"
