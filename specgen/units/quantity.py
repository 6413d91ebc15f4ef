"""A number with its unit, as an author writes it, compared exactly.

The grammar is our own and strict: a number, a space, a known unit (`60 um`); two of them make a range (`40..60 um`, or by its
middle `50 +- 10 um`), one of them bounds it (`min 40 um`, `max 60 um`). Months are calendar arithmetic, not a unit: see
`CalendarSpan`.
Called by the model's field types and by `trade`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache, total_ordering

from specgen.units.kinds import AMBIGUOUS, KINDS, MINUTES_OF_A_YEAR, UNITS, Kind
from specgen.units.rounding import plain_text, round_half_up

# Twelve digits hold every figure of the trade; more are a slip, and 10^400 must not reach the arithmetic.
_NUMBER = r"-?\d{1,12}(?:\.\d{1,9})?"
_OF_TWO_WORDS = "|".join(re.escape(unit) for unit, said in UNITS.items() if " " in unit and said.meaning)
_UNIT = rf"{_OF_TWO_WORDS}|\S+"
_SINGLE = re.compile(rf"({_NUMBER}) ({_UNIT})", re.ASCII)
_BETWEEN = re.compile(rf"({_NUMBER})(?: ({_UNIT}?))?\s?\.\.\s?({_NUMBER}) ({_UNIT})", re.ASCII)
# a range as it is often written and not read: `40-60 um`, `40 to 60 um`, `40...60 um`
_LOOSE = re.compile(rf"({_NUMBER})(?: ?[-–] ?| to |\.\.\.)(\d{{1,12}}(?:\.\d{{1,9}})?) ?({_UNIT})", re.ASCII)
_BOUND = re.compile(rf"(min|max) ({_NUMBER}) ({_UNIT})", re.ASCII)
_AROUND = re.compile(rf"({_NUMBER})(?: ({_UNIT}))? (?:\+-|±) ({_NUMBER}) ({_UNIT})", re.ASCII)
_SPAN = re.compile(r"(\d{1,4}) (months?|years?)", re.ASCII)


# The units whose degrees are as large as a kelvin.
_KELVIN = {(unit, "K") for unit in UNITS if UNITS[unit].meaning == "degC"}


class QuantityError(ValueError):
    """The text is not a quantity of the kind asked for. `what` says why, `remedy` what to write instead."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what = what
        self.remedy = remedy


@total_ordering
@dataclass(frozen=True, slots=True, eq=False)
class Quantity:
    """`number` in `unit`; `base` is the same amount in the kind's base unit, and decides every comparison.

    `digits` is the number as the author wrote it, kept for printing.
    """

    kind: str
    number: Fraction
    unit: str
    base: Fraction
    digits: str

    @classmethod
    def of(cls, kind: str, number: Fraction | int, unit: str, digits: str = "") -> Quantity:
        """A computed quantity. Raises KeyError for a kind or unit that is not known."""
        value = number if isinstance(number, Fraction) else Fraction(number)
        known = KINDS[kind]
        if unit == known.base:
            return cls(kind, value, unit, value, digits)
        factor, offset = known.scale(unit)
        return cls(kind, value, unit, value * factor + offset, digits)

    def to(self, unit: str) -> Fraction:
        """The number in another unit of the same kind, exact."""
        if unit == self.unit:
            return self.number
        known = KINDS[self.kind]
        if unit == known.base:
            return self.base
        factor, offset = known.scale(unit)
        return (self.base - offset) / factor

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Quantity) and (self.kind, self.base) == (other.kind, other.base)

    def __lt__(self, other: Quantity) -> bool:
        if self.kind != other.kind:
            raise TypeError(f"a {self.kind} and a {other.kind} have no order")
        return self.base < other.base

    def __hash__(self) -> int:
        return hash((self.kind, self.base))

    def __str__(self) -> str:
        return f"{self.digits or plain_text(self.number)} {self.unit}"


@dataclass(frozen=True, slots=True)
class Range:
    """An accepted set of one kind: from `low` to `high`, both included; an absent side is open."""

    kind: str
    low: Quantity | None
    high: Quantity | None

    def holds(self, value: Quantity) -> bool:
        return (self.low is None or self.low <= value) and (self.high is None or value <= self.high)

    def holds_all_of(self, other: Range) -> bool:
        """True where every value that `other` accepts is accepted here."""
        low_ok = self.low is None or (other.low is not None and self.low <= other.low)
        high_ok = self.high is None or (other.high is not None and other.high <= self.high)
        return low_ok and high_ok

    def meets(self, other: Range) -> bool:
        """True where some value is accepted by both."""
        above = self.high is None or other.low is None or other.low <= self.high
        return above and (self.low is None or other.high is None or self.low <= other.high)

    def __str__(self) -> str:
        if self.low is not None and self.high is not None:
            if self.low.unit == self.high.unit:
                return f"{self.low.digits}..{self.high.digits} {self.high.unit}"
            return f"{self.low}..{self.high}"
        return f"min {self.low}" if self.low is not None else f"max {self.high}"


@total_ordering
@dataclass(frozen=True, slots=True, eq=False)
class CalendarSpan:
    """Whole months by the calendar; `text` is what the author wrote."""

    months: int
    text: str

    def __eq__(self, other: object) -> bool:
        return isinstance(other, CalendarSpan) and self.months == other.months

    def __lt__(self, other: CalendarSpan) -> bool:
        return self.months < other.months

    def __hash__(self) -> int:
        return hash(self.months)

    def __str__(self) -> str:
        return self.text


@lru_cache(maxsize=20_000)
def parse_quantity(kind: str, text: str) -> Quantity:
    """One value of a kind, `60 um`. Raises QuantityError."""
    found = _SINGLE.fullmatch(text)
    if not found:
        raise _not_a_quantity(KINDS[kind], text)
    return _quantity(KINDS[kind], found[1], found[2])


@lru_cache(maxsize=20_000)
def parse_range(kind: str, text: str) -> Range:
    """An accepted set, `40..60 um`, `50 +- 10 um`, `min 40 um` or `max 60 um`. Raises QuantityError."""
    known = KINDS[kind]
    if found := _BOUND.fullmatch(text):
        bound = _quantity(known, found[2], found[3])
        return Range(kind, bound, None) if found[1] == "min" else Range(kind, None, bound)
    if found := _BETWEEN.fullmatch(text):
        low = _quantity(known, found[1], found[2] or found[4])
        high = _quantity(known, found[3], found[4])
        if low > high:
            raise QuantityError(f"the range {text} runs backwards", "write the lower limit first")
        return Range(kind, low, high)
    if found := _AROUND.fullmatch(text):
        return _around(known, text, found)
    if _SINGLE.fullmatch(text):
        value = _quantity(known, *_SINGLE.fullmatch(text).groups())  # type: ignore[union-attr]  # matched just above
        raise QuantityError(
            f"{text} does not say whether it is a lower or an upper limit",
            f"write min {value}, max {value}, or both limits as in {_example(known)}",
        )
    raise _not_a_quantity(known, text, ranged=True)


def parse_one_or_range(kind: str, text: str) -> Quantity | Range:
    """One value or an accepted set. Raises QuantityError."""
    return parse_quantity(kind, text) if _SINGLE.fullmatch(text) else parse_range(kind, text)


def as_range(value: Quantity | Range) -> Range:
    """What is accepted: a value accepts itself."""
    return value if isinstance(value, Range) else Range(value.kind, value, value)


def lower(value: Quantity | Range) -> Quantity:
    """The lower end, or the only one there is."""
    return _end(value, first="low", second="high")


def upper(value: Quantity | Range) -> Quantity:
    """The upper end, or the only one there is."""
    return _end(value, first="high", second="low")


def middle(value: Quantity | Range) -> Quantity:
    """What is reckoned with where a figure is stated with its tolerance: halfway, or the only end there is."""
    if isinstance(value, Quantity) or value.low is None or value.high is None:
        return lower(value)
    return Quantity.of(value.kind, (value.low.number + value.high.to(value.low.unit)) / 2, value.low.unit)


def _end(value: Quantity | Range, first: str, second: str) -> Quantity:
    if isinstance(value, Quantity):
        return value
    ends: list[Quantity | None] = [getattr(value, first), getattr(value, second)]
    return next(end for end in ends if end is not None)


def _around(kind: Kind, text: str, found: re.Match[str]) -> Range:
    """A middle and how far either side; the tolerance of a temperature may be in kelvin."""
    middle, unit, room, of_room = found[1], found[2] or found[4], found[3], found[4]
    if UNITS.get(of_room) != UNITS.get(unit) and not (kind.name == "temperature" and (unit, of_room) in _KELVIN):
        raise QuantityError(f"{text} is in two units", f"write both figures in {unit}")
    if Fraction(room) <= 0:
        raise QuantityError(f"{text} has a tolerance of nothing", "write how far the value may lie on either side")
    places = max(len(figure.partition(".")[2]) for figure in (middle, room))
    low, high = (round_half_up(Fraction(middle) + side * Fraction(room), places) for side in (-1, 1))
    return Range(kind.name, _quantity(kind, f"{low:f}", unit), _quantity(kind, f"{high:f}", unit))


def parse_span(text: str) -> CalendarSpan:
    """Months or years, `24 months`. Raises QuantityError."""
    found = _SPAN.fullmatch(text)
    if not found or found[1].startswith("0"):
        raise QuantityError(f"{text} is not a number of months or years", "write it as in 24 months or 2 years")
    return CalendarSpan(int(found[1]) * (12 if found[2].startswith("year") else 1), text)


def _quantity(kind: Kind, digits: str, unit: str) -> Quantity:
    if unit not in kind.units:
        known = f"use one of: {', '.join(kind.offered)}"
        raise QuantityError(f"{unit} is not a unit of {_name(kind)}", AMBIGUOUS.get((kind.name, unit), known))
    value = Quantity.of(kind.name, Fraction(digits), unit, digits)
    for bound, beyond in ((kind.lowest, "below"), (kind.highest, "above")):
        if bound is not None and (value.base < bound if beyond == "below" else value.base > bound):
            limit = _bound_in_words(kind, bound)
            raise QuantityError(f"{value} is {beyond} what {_a(kind)} can be ({limit})", "check number and unit")
    return value


def _bound_in_words(kind: Kind, bound: Fraction) -> str:
    """A bound of a kind, as in `100 %`; the longest duration in years."""
    if kind.name == "duration" and bound:
        return f"{plain_text(bound / MINUTES_OF_A_YEAR)} years"
    return f"{plain_text(bound)} {kind.base}"


def _not_a_quantity(kind: Kind, text: str, *, ranged: bool = False) -> QuantityError:
    example = _example(kind) if ranged else f"{_example(kind).split('..')[1]}"
    if ranged and (found := _LOOSE.fullmatch(text)) and found[3] in kind.units:
        return QuantityError(
            f"{text} is not {_a(kind)}", f"write a range with two dots: {found[1]}..{found[2]} {found[3]}"
        )
    if re.fullmatch(_NUMBER, text, re.ASCII):
        return QuantityError(f"{text} has no unit", f"write the unit after a space, as in {example}")
    if re.fullmatch(rf"{_NUMBER}\S+", text, re.ASCII) and ".." not in text:
        if "," in text:
            return QuantityError(f"{text} has a comma in its number", f"write the decimal point, as in {example}")
        return QuantityError(f"{text} has no space between number and unit", f"write it as in {example}")
    if re.match(r"-?\d+,\d", text):
        return QuantityError(f"{text} has a comma in its number", f"write the decimal point, as in {example}")
    if re.match(r"[<>≤≥=~±]", text):
        return QuantityError(f"{text} uses a sign where a word is read", f"write min, max or a range, as in {example}")
    if not ranged and (_BETWEEN.fullmatch(text) or _BOUND.fullmatch(text)):
        return QuantityError(f"{text} is a range where one value is required", f"write one value, as in {example}")
    return QuantityError(f"{text[:60]} is not {_a(kind)}", f"write a number, a space and a unit, as in {example}")


def _example(kind: Kind) -> str:
    return f"{'..'.join(kind.example)} {kind.base}"


def _a(kind: Kind) -> str:
    name = _name(kind)
    return f"an {name}" if name[0] in "aeio" else f"a {name}"


def _name(kind: Kind) -> str:
    return kind.name.replace("_", " ")
