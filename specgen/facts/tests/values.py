"""What a test method makes of a value: whether its unit or rating belongs to the method, and whether a result meets a limit.

Every answer is on the method's own scale: a class of ISO 2409 is never read as a class of ASTM D3359.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from enum import StrEnum
from typing import NamedTuple

from specgen.facts.tests.standards import standard_row, standards_in
from specgen.model.test_value import Limit, Measured, Rated, Value
from specgen.standards.citations import LOGIC, Citation
from specgen.standards.tables import Row, cell_citation, table
from specgen.trade.known import NotKnown
from specgen.units.kinds import KINDS
from specgen.units.quantity import Quantity

NUMBER = "number"


class Unfit(StrEnum):
    """Why a value is none of a method."""

    UNIT_MISSING = "unit missing"
    DIMENSION = "wrong dimension"
    OFF_SCALE = "off the scale"
    FORMULA = "formula missing"
    REVERSED = "scale reversed"


class Misfit(NamedTuple):
    """A value that cannot be a result of the method. `said` is a sentence on it, `source` on whose word."""

    why: Unfit
    said: str
    source: Citation


class Rank(NamedTuple):
    """A step of a scale, best first: one number, or two that are compared one by one."""

    scale: str
    steps: tuple[int, ...]

    def no_worse_than(self, other: Rank) -> bool | None:
        """None where the two have no order: better in one and worse in the other, or on other scales."""
        if self.scale != other.scale:
            return None
        pairs = list(zip(self.steps, other.steps, strict=True))
        if all(mine <= theirs for mine, theirs in pairs):
            return True
        return False if all(mine >= theirs for mine, theirs in pairs) else None


def method_row(method: str) -> Row:
    """The row of a method. Raises KeyError for one that is not known."""
    return table("test_methods").row("id", method)


def kinds_of(method: str) -> tuple[str, ...]:
    """Kinds of quantity its results may be in; `number` for a bare one."""
    return tuple(method_row(method)["kinds"].split())


def scales_of(method: str, standard: str = "") -> tuple[str, ...]:
    """The scales its ratings may be on: that of the standard where one is named, else all of the method."""
    for named in standards_in(standard):
        row = standard_row(named.standard, method)
        if row is not None:
            return (row["scale"],) if row["scale"] else ()
    return tuple(method_row(method)["scales"].split())


def amount(method: str, value: Value) -> Quantity | None:
    """A measured value as a quantity of a kind the method may be in; None for a rating, or where its unit is of none."""
    if not isinstance(value, Measured) or not value.unit:
        return None
    for kind in kinds_of(method):
        if kind != NUMBER and value.unit in KINDS[kind].units:
            return Quantity.of(kind, value.number, value.unit, value.digits)
    return None


def ranks(method: str, value: Value, standard: str = "") -> tuple[Rank, ...]:
    """The value on each scale of the method that holds it; empty where none does."""
    word, code = _code(value)
    if code is None:
        return ()
    found = []
    for scale in scales_of(method, standard):
        names = table("test_scale_names").row("scale", scale)
        others = {row["word"] for row in table("test_scale_names").rows if row["word"]} - {names["word"]}
        if word and word in others and word != names["word"]:
            continue
        steps = [row["rank"] for row in _of_scale(scale) if row["code"] == _plain(code, scale)]
        found += [Rank(scale, tuple(int(step) for step in rank.split())) for rank in steps]
    return tuple(found)


def _code(value: Value) -> tuple[str, str | None]:
    if isinstance(value, Rated):
        return value.word, value.code
    return "", value.digits if not value.unit else None


def _of_scale(scale: str) -> list[Row]:
    return [row for row in table("test_scales").rows if row["scale"] == scale]


def _plain(code: str, scale: str) -> str:
    """A rating without what only says of which kind the damage is: rust in spots, flaking down to the substrate."""
    if scale == "d610":
        return re.sub(r"-?[SGPH]$", "", code)
    return re.sub(r"(?<=\))[ab]$", "", code)


def fits(method: str, value: Value, standard: str = "") -> Misfit | None:
    """Why a value cannot be a result of the method; None where it can."""
    kinds, scales = kinds_of(method), scales_of(method, standard)
    if ranks(method, value, standard) or amount(method, value) is not None:
        return None
    if isinstance(value, Measured) and not value.unit and NUMBER in kinds:
        return None
    name = method_row(method)["quantity"]
    if isinstance(value, Measured) and value.unit:
        if value.unit == "dE" and method == "colour":
            said = f"{value} does not say by which formula: dE*ab, dE00 or dECMC"
            return Misfit(Unfit.FORMULA, said, cell_citation("test_methods", "colour", "needs"))
        return Misfit(Unfit.DIMENSION, f"{value} is no {name}, which is given in {in_words(method, scales)}", LOGIC)
    if scales or (standard and not kinds):
        if not scales:
            return None
        return Misfit(Unfit.OFF_SCALE, f"{value} is not on the scale: {_scales(scales)}", _source(scales))
    if isinstance(value, Rated):
        return Misfit(Unfit.DIMENSION, f"{value} is no {name}, which is given in {in_words(method, scales)}", LOGIC)
    return Misfit(Unfit.UNIT_MISSING, f"{value} has no unit; {name} is given in {in_words(method, scales)}", LOGIC)


def limit_fits(method: str, limit: Limit, standard: str = "") -> Iterator[Misfit]:
    """Why a limit cannot be one of the method: each value that is none of it, and a scale run the wrong way."""
    for value in limit.stated:
        misfit = fits(method, value, standard)
        if misfit is not None:
            yield misfit
            return
    yield from _reversed(method, limit, standard)


def _reversed(method: str, limit: Limit, standard: str) -> Iterator[Misfit]:
    """One bound of a rating that accepts the worse end: `min` on a scale whose lower numbers are better, or `max` on another."""
    if limit.alone is not None or (limit.low is None) == (limit.high is None):
        return
    value, better = (limit.low, "lower") if limit.low is not None else (limit.high, "higher")
    if value is None or amount(method, value) is not None:
        return
    on = [rank.scale for rank in ranks(method, value, standard)]
    names = [table("test_scale_names").row("scale", scale) for scale in on]
    if names and all(name["better"] == better for name in names):
        written = f"{'min' if limit.low is not None else 'max'} {value}"
        best = f"{'max' if limit.low is not None else 'min'} {value}"
        said = f"{written} accepts what is worse: of {names[0]['name']}, {better} is better, so write {best}"
        yield Misfit(Unfit.REVERSED, said, _source(on))


def meets(method: str, result: Value, limit: Limit, standard: str = "") -> bool | NotKnown:
    """Whether a result is one that passes. Not known where the two are in other units or on other scales."""
    what = f"whether {result} passes"
    for value in (result, *limit.stated):
        misfit = fits(method, value, standard)
        if misfit is not None:
            return NotKnown(what, misfit.said)
    wrong = next(limit_fits(method, limit, standard), None)
    if wrong is not None:
        return NotKnown(what, wrong.said)
    measured = amount(method, result) or _bare(method, result)
    if measured is not None:
        return _measured_meets(method, measured, limit, what)
    return _rated_meets(method, ranks(method, result, standard), limit, standard, what)


def _bare(method: str, value: Value) -> Quantity | None:
    """A bare number of a method that gives bare numbers, compared as a share is."""
    if isinstance(value, Measured) and not value.unit and NUMBER in kinds_of(method):
        return Quantity.of("percentage", value.number, "%", value.digits)
    return None


def _measured_meets(method: str, result: Quantity, limit: Limit, what: str) -> bool | NotKnown:
    for value, lower in ((limit.low, True), (limit.high, False)):
        if value is None:
            continue
        bound = amount(method, value) or _bare(method, value)
        if bound is None or bound.kind != result.kind:
            return NotKnown(what, f"the result is in {result.unit} and the limit is {value}")
        if (result < bound) if lower else (result > bound):
            return False
    if limit.alone is not None:
        return NotKnown(what, f"the limit {limit.alone} does not say whether it is a lower or an upper one")
    return True


def _rated_meets(method: str, result: Sequence[Rank], limit: Limit, standard: str, what: str) -> bool | NotKnown:
    bounds = [found for value in limit.stated if (found := ranks(method, value, standard))]
    if len(bounds) < len(limit.stated):
        return NotKnown(what, "the result is a rating and the limit is none")
    common = {rank.scale for rank in result}
    for bound in bounds:
        common &= {rank.scale for rank in bound}
    if len(common) != 1:
        why = "result and limit are on other scales" if not common else "more than one scale has these ratings"
        return NotKnown(what, why, missing=("the standard",) if common else ())
    (scale,) = common
    mine = next(rank for rank in result if rank.scale == scale)
    ends = [next(rank for rank in bound if rank.scale == scale) for bound in bounds]
    # of a range of ratings what is better than its better end passes too
    worst = max(ends, key=lambda rank: rank.steps)
    answer = mine.no_worse_than(worst)
    return (
        answer if answer is not None else NotKnown(what, f"{' and '.join(map(str, limit.stated))} has no order with it")
    )


def in_words(method: str, scales: Sequence[str] = ()) -> str:
    """What its results are given in: `MPa, kPa, bar, psi or kgf/cm2`, `class 0 to 5 of ISO 2409`."""
    units = [unit for kind in kinds_of(method) if kind != NUMBER for unit in KINDS[kind].offered]
    said = [*dict.fromkeys(units), *(table("test_scale_names").row("scale", scale)["name"] for scale in scales)]
    if NUMBER in kinds_of(method):
        said.append("a number")
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} or {said[-1]}"


def _scales(scales: Sequence[str]) -> str:
    return "; ".join(table("test_scale_names").row("scale", scale)["name"] for scale in scales)


def _source(scales: Sequence[str]) -> Citation:
    names = table("test_scale_names")
    return names.row_citation(names.row("scale", scales[0]))
