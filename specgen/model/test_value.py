"""The result of a test and the limit it is held against, as an author writes them: `5.2 MPa`, `class 1`, `4B`, `min 5 MPa`, `class 0..1`.

A value is a number with its unit or a rating. What the method makes of it (its dimension, its scale, which way is better) is
answered in `facts.tests`; here it is read by itself. A limit that is one rating alone accepts that rating or a better one.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Annotated

from specgen.model.field_types import Strict, refuse
from specgen.units.kinds import SPELLINGS, UNITS
from specgen.units.rounding import plain_text

_NUMBER = r"-?\d{1,12}(?:\.\d{1,9})?"
_OF_TWO_WORDS = "|".join(
    re.escape(unit) for unit in sorted(UNITS, key=len, reverse=True) if " " in unit and UNITS[unit].meaning
)
_UNIT = rf"{_OF_TWO_WORDS}|\S+"
_MEASURED = re.compile(rf"(?P<number>{_NUMBER})(?: (?P<unit>{_UNIT}))?", re.ASCII)
# A rating: a class, a grade, blisters by number and size, a count of damage with its size; half steps where a scale has them.
_WORDS = "class|grade|rating|level|degree|Ri|Re"
_CODE = r"\d{1,2}(?:\.5)? ?\(S\d(?:\.5)?\)[ab]?|\d{1,2}(?:\.5)?(?:-?[A-Z]{1,2})?|[A-H]{1,2}|HB|none|pass|fail"
_RATED = re.compile(rf"(?:(?P<word>{_WORDS}) ?)?(?P<code>{_CODE})")
_BOUND = re.compile(r"(?P<which>min|max) (?P<value>.+)")
_BETWEEN = re.compile(r"(?P<low>.+?) ?\.\. ?(?P<high>.+)")
_AROUND = re.compile(
    rf"(?P<middle>{_NUMBER})(?: (?P<unit>{_UNIT}))? (?:\+-|±) (?P<room>{_NUMBER}) (?P<of_room>{_UNIT})"
)
_AS_WRITTEN = "write a number, a space and a unit as in 5.2 MPa, or a rating as in class 1, 4B or 0(S0)"
_AS_LIMIT = "write min 5 MPa, max 3 mm, 80..90 GU, class 0..1, min 4B, or one rating as in 0(S0) for that or better"
LONGEST = 60


@dataclass(frozen=True, slots=True)
class Measured:
    """A number in a unit, in the one spelling of it; a bare number has none and may be a rating: the method decides."""

    number: Fraction
    unit: str
    digits: str

    def __str__(self) -> str:
        many = UNITS[self.unit].many if self.unit and self.number != 1 else ""
        return f"{self.digits} {many or self.unit}".rstrip()


@dataclass(frozen=True, slots=True)
class Rated:
    """A step of a scale. `word` is the one before it, as in class or Ri; empty where there is none."""

    word: str
    code: str

    def __str__(self) -> str:
        return f"{self.word} {self.code}".lstrip()


Value = Measured | Rated


@dataclass(frozen=True, slots=True)
class Limit:
    """What passes: from `low` to `high` as written, both included; an absent side is open. `alone` is one rating: that or better."""

    low: Value | None = None
    high: Value | None = None
    alone: Value | None = None

    @property
    def stated(self) -> tuple[Value, ...]:
        """Every value it names, in the order they stand."""
        return tuple(value for value in (self.low, self.high, self.alone) if value is not None)


@lru_cache(maxsize=20_000)
def read_result(text: str) -> Value:
    """One result. Raises the fault of a field."""
    value = _value(text)
    if value is None:
        raise _not_read(text, "the result of a test", _AS_WRITTEN)
    return value


@lru_cache(maxsize=20_000)
def read_limit(text: str) -> Limit:
    """What passes. Raises the fault of a field."""
    if found := _BOUND.fullmatch(text):
        value = _value(found["value"])
        if value is not None:
            return Limit(low=value) if found["which"] == "min" else Limit(high=value)
        raise _not_read(found["value"], "a value of a test", _AS_LIMIT)
    elif found := _AROUND.fullmatch(text):
        return _around(text, found)
    elif found := _BETWEEN.fullmatch(text):
        low, high = _ends(found["low"], found["high"])
        if low is not None and high is not None:
            if _backwards(low, high):
                raise refuse(f"the range {text} runs backwards", "write the lower limit first")
            return Limit(low, high)
    else:
        value = _value(text)
        if isinstance(value, Measured) and value.unit:
            raise refuse(
                f"{text} does not say whether it is a lower or an upper limit",
                f"write min {value}, max {value}, or both limits as in 80..90 GU",
            )
        if value is not None:
            return Limit(alone=value)
    raise _not_read(text, "the limit of a test", _AS_LIMIT)


def _value(text: str) -> Value | None:
    if found := _MEASURED.fullmatch(text):
        written = found["unit"] or ""
        unit = SPELLINGS.get(written, written)
        if not unit or (unit in UNITS and UNITS[unit].meaning):
            return Measured(Fraction(found["number"]), unit, found["number"])
    if found := _RATED.fullmatch(text):
        return Rated(found["word"] or "", found["code"].replace(" ", ""))
    return None


def _ends(low: str, high: str) -> tuple[Value | None, Value | None]:
    """Both ends of a range; a unit or a word stated once holds for both."""
    first, second = _value(low), _value(high)
    if isinstance(first, Measured) and not first.unit and isinstance(second, Measured):
        first = Measured(first.number, second.unit, first.digits)
    if isinstance(first, Rated) and first.word and isinstance(second, Measured) and not second.unit:
        second = Rated(first.word, second.digits)
    elif isinstance(first, Rated) and first.word and isinstance(second, Rated) and not second.word:
        second = Rated(first.word, second.code)
    return first, second


def _backwards(low: Value, high: Value) -> bool:
    if not isinstance(low, Measured) or not isinstance(high, Measured):
        return False
    return low.unit == high.unit and low.number > high.number


def _around(text: str, found: re.Match[str]) -> Limit:
    middle, room = _value(found["middle"]), _value(f"{found['room']} {found['of_room']}")
    stated = _value(f"{found['middle']} {found['unit'] or found['of_room']}")
    if middle is None or not isinstance(room, Measured) or not isinstance(stated, Measured) or stated.unit != room.unit:
        raise _not_read(text, "the limit of a test", _AS_LIMIT)
    if room.number <= 0:
        raise refuse(f"{text} has a tolerance of nothing", "write how far the value may lie on either side")
    low, high = stated.number - room.number, stated.number + room.number
    return Limit(Measured(low, room.unit, plain_text(low)), Measured(high, room.unit, plain_text(high)))


def _not_read(text: str, what: str, remedy: str) -> Exception:
    shown = text if len(text) <= LONGEST else text[:LONGEST] + "…"
    found = _MEASURED.fullmatch(text)
    if found is not None and found["unit"]:
        return refuse(f"{found['unit']} is not a unit known here, in '{shown}'", _near(found["unit"]) or remedy)
    if re.match(rf"{_NUMBER}[^\W\d]", text) and not _RATED.fullmatch(text):
        return refuse(f"'{shown}' has no space between number and unit", remedy)
    if re.match(r"[<>≤≥=~]", text):
        return refuse(f"'{shown}' uses a sign where a word is read", remedy)
    return refuse(f"'{shown}' is not {what}", remedy)


def _near(unit: str) -> str:
    """What to write for a unit spelt in other letters: Mpa for MPa. Two units that part by letters alone are not guessed."""
    alike = {SPELLINGS.get(known, known) for known in UNITS if known.casefold() == unit.casefold()}
    return f"write {alike.pop()}" if len(alike) == 1 else ""


def _checked_result(text: str) -> str:
    read_result(text)
    return text


TestResult = Annotated[
    str,
    Strict(
        "result of a test such as 5.2 MPa or class 1",
        _checked_result,
        lambda: {"type": ["string", "integer", "number"]},
    ),
]
"""The text as written, which is sure to be read by `read_result`."""

_AXES = ("L*", "a*", "b*")
_LIGHTEST, _FARTHEST = 100, 200


@lru_cache(maxsize=20_000)
def read_lab(text: str) -> tuple[Fraction, Fraction, Fraction]:
    """L*, a* and b* of one colour, `52.10 3.20 -10.40`. Raises the fault of a field."""
    parts = text.split()
    if len(parts) != len(_AXES) or not all(re.fullmatch(_NUMBER, part, re.ASCII) for part in parts):
        raise refuse(
            f"'{text[:LONGEST]}' is no colour", "write L*, a* and b* with blanks between, as in 52.10 3.20 -10.40"
        )
    lightness, a, b = (Fraction(part) for part in parts)
    if not 0 <= lightness <= _LIGHTEST or max(abs(a), abs(b)) > _FARTHEST:
        raise refuse(
            f"'{text}' is no colour: L* lies from 0 to 100, a* and b* within 200 of 0", "check the three numbers"
        )
    return lightness, a, b


def _checked_lab(text: str) -> str:
    read_lab(text)
    return text


ColourLab = Annotated[
    str, Strict("colour as L*, a* and b* such as 52.10 3.20 -10.40", _checked_lab, lambda: {"type": "string"})
]
"""The text as written, which is sure to be read by `read_lab`."""
