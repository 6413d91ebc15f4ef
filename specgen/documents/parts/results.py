"""Results of a test as printed: the mean with its spread, or the rating of each panel, and what passes. Called by the data sheet, the
report of a test and the qualification matrix.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.documents.parts.wording import Words
from specgen.facts.tests.gloss_stated import mean_gloss
from specgen.facts.tests.outcome import Results, limit_of, results_of
from specgen.model.test_report import DoneTest
from specgen.model.test_required import AskedTest, Statistic
from specgen.model.test_value import Limit, Measured, Value
from specgen.units.display import unit_sign
from specgen.units.locale import N_

_JUDGED_BY: Mapping[Statistic, str] = {
    Statistic.MEAN: N_("mean"),
    Statistic.EACH: N_("each result"),
    Statistic.SHARE: N_("at least {share} of the results"),
    Statistic.NUMBER: N_("at least {passing} results"),
}


def result_words(done: DoneTest, words: Words) -> str:
    """`mean 0.73 mm (0.6 to 0.9 mm, n = 3)`, `class 0, 1, 0 (n = 3)`; mean gloss before and after, and what is not counted with its
    cause, follow."""
    results = results_of(done)
    said = _of_numbers(results, words) if results.mean is not None else _of_ratings(results, words)
    before, after = mean_gloss(done, before=True), mean_gloss(done, before=False)
    if before is not None and after is not None:
        text = words("gloss {before} before, {after} after")
        said += f"; {text.format(before=words.phrase(before), after=words.phrase(after))}"
    for one in results.left_out:
        text = words("not counted: {id} {value} ({cause})")
        said += "; " + text.format(id=one.id, value=one.value, cause=one.excluded or "")
    return said


def _of_numbers(results: Results, words: Words) -> str:
    mean, least, most = results.mean, results.least, results.most
    assert mean is not None and least is not None and most is not None  # noqa: S101, PT018  # asked where there is a mean
    if results.number == 1:
        return words("{value} (one result)").format(value=value_words(least, words))
    text = words("mean {mean} ({least} to {most}, n\N{NO-BREAK SPACE}=\N{NO-BREAK SPACE}{number})")
    return text.format(
        mean=value_words(mean, words),
        least=words.figures(least.digits),
        most=value_words(most, words),
        number=results.number,
    )


def _of_ratings(results: Results, words: Words) -> str:
    said = list(dict.fromkeys(value_words(value, words) for _, value in results.counted))
    if len(said) == 1:
        return words("{rating} on each (n\N{NO-BREAK SPACE}=\N{NO-BREAK SPACE}{number})").format(
            rating=said[0], number=results.number
        )
    listed = ", ".join(value_words(value, words) for _, value in results.counted)
    return words("{rating} (n\N{NO-BREAK SPACE}=\N{NO-BREAK SPACE}{number})").format(
        rating=listed, number=results.number
    )


def value_words(value: Value, words: Words) -> str:
    """`1.4 mm`, `class 1`, `0(S0)`."""
    if isinstance(value, Measured):
        unit = f"\N{NO-BREAK SPACE}{unit_sign(value.unit, value.number, words.translate)}" if value.unit else ""
        return f"{words.figures(value.digits)}{unit}"
    return str(value)


def limit_words(asked: AskedTest | DoneTest, words: Words) -> str:
    """`at most 1.0 mm, mean of 3`, `class 0 to 1, each result`; the words of a limit that is one in words."""
    limit = limit_of(asked)
    said = asked.limit or "" if limit is None else _limit(limit, words)
    if not said:
        return ""
    statistic = _statistic(asked, words)
    return f"{said}, {statistic}" if statistic else said


def _limit(limit: Limit, words: Words) -> str:
    if limit.alone is not None:
        return words("{} or better").format(value_words(limit.alone, words))
    if limit.low is not None and limit.high is not None:
        return words("{low} to {high}").format(low=value_words(limit.low, words), high=value_words(limit.high, words))
    if limit.low is not None:
        return words("at least {}").format(value_words(limit.low, words))
    return words("at most {}").format(value_words(limit.high, words)) if limit.high is not None else ""


def _statistic(asked: AskedTest | DoneTest, words: Words) -> str:
    if asked.statistic is None:
        return ""
    said = words(_JUDGED_BY[asked.statistic])
    if not isinstance(asked, AskedTest):
        return said
    said = said.format(share=words.phrase(asked.share), passing=asked.passing or "")
    if asked.floor is not None:
        said = words("{statistic}, none worse than {floor}").format(statistic=said, floor=asked.floor)
    if asked.specimens is not None:
        said = words("{statistic} (of {number})").format(statistic=said, number=asked.specimens)
    return said
