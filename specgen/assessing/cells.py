"""Figures, days and words as they stand in the cells of a file of readings. What can be read two ways is not read.

Called by the readers and by whoever judges a row.
"""

from __future__ import annotations

import re
from datetime import date, datetime, time
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from specgen.model.field_types import ID_PATTERN
from specgen.trade.verdict import Verdict
from specgen.units.kinds import AMBIGUOUS, KINDS, SPELLINGS
from specgen.units.quantity import Quantity, QuantityError, parse_quantity

_FIGURE = re.compile(r"([-+\u2212]?)\s?([0-9][0-9.,]*)\s*([^\d\s].*)?", re.ASCII)
_PLAIN = re.compile(r"\d{1,12}(?:\.\d{1,9})?", re.ASCII)
_COMMA = re.compile(r"\d{1,12},\d{1,9}", re.ASCII)
_THOUSAND = re.compile(r"[1-9]\d{0,2},\d{3}", re.ASCII)
_NINES = re.compile(r"9{4,}(?:[.,]9+)?", re.ASCII)
_ISO = re.compile(r"(\d{4})-(\d{2})-(\d{2})(?:[ T](\d{2}:\d{2})(?::\d{2})?)?", re.ASCII)
_DOTS = re.compile(r"(\d{1,2})\.(\d{1,2})\.(\d{4})(?: (\d{2}:\d{2})(?::\d{2})?)?", re.ASCII)
_SLASHES = re.compile(r"(\d{1,2})/(\d{1,2})/(\d{4})(?: (\d{2}:\d{2})(?::\d{2})?)?", re.ASCII)

_UNDER = re.compile(rf"(?:conforming|accepted) under (?:the )?(?:concession )?(?P<id>{ID_PATTERN})", re.IGNORECASE)

_UNKNOWN = frozenset({"n/a", "na", "n.a", "none", "unknown", "not known", "not stated", "tbc", "tbd"})
_YES = frozenset({"conforming", "pass", "passed", "ok", "accepted"})
_NO = frozenset({"not conforming", "fail", "failed", "not ok", "rejected"})


class Dates(StrEnum):
    """How days with strokes are read: 03/04/2026 is two days to two readers."""

    ISO = "iso"
    DAY_FIRST = "day-first"
    MONTH_FIRST = "month-first"


class CellError(ValueError):
    """A cell that is not read; `what` says why in a sentence part."""

    def __init__(self, what: str) -> None:
        super().__init__(what)
        self.what = what


def is_formula(text: str) -> bool:
    """`=B2*25.4`; a figure with a sign in front is none."""
    return text.startswith(("=", "@")) or (text[:1] in "+-" and bool(re.match(r"[+-]\s*[A-Za-z(]", text)))


def says_nothing(text: str) -> bool:
    """True for an empty cell, and for what people put into one where they know nothing: a stroke, a question mark, `n/a`."""
    return not any(sign.isalnum() for sign in text) or text.strip(" .").casefold() in _UNKNOWN


def given(text: str) -> str:
    """A cell; empty where it says nothing, so that `?` is nobody's name."""
    return "" if says_nothing(text) else text


def shows_nothing(text: str) -> bool:
    """True for the row of nines of a gauge that is off the part or past its range."""
    found = _FIGURE.fullmatch(text) if "9999" in text else None
    return found is not None and bool(_NINES.fullmatch(found[2]))


def number_of(text: str) -> tuple[Fraction, str, str]:
    """The number of a cell, its digits with a decimal point, and the unit behind it, which may be empty. Raises CellError."""
    found = _FIGURE.fullmatch(text)
    if found is None:
        raise CellError(f"{_short(text)} is no number")
    sign, digits, unit = found[1], found[2], (found[3] or "").strip()
    if _COMMA.fullmatch(digits):
        if _THOUSAND.fullmatch(digits):
            raise CellError(f"{_short(text)} is a thousand to one reader and a decimal to another")
        digits = digits.replace(",", ".")
    if not _PLAIN.fullmatch(digits):
        raise CellError(f"{_short(text)} is no number with one decimal sign")
    digits = f"-{digits}" if sign in {"-", "\N{MINUS SIGN}"} else digits
    return Fraction(digits), digits, unit


@lru_cache(maxsize=50_000)
def figure_of(kind: str, text: str, unit: str) -> Quantity:
    """A cell as a quantity; `unit` is that of its column, which the unit in the cell goes before. Raises CellError."""
    _, digits, own = number_of(text)
    written = unit_of(kind, own or unit)
    if not written:
        raise CellError(f"{_short(text)} has no unit, in the cell, its heading or the column unit")
    try:
        return parse_quantity(kind, f"{digits} {written}")
    except QuantityError as fault:
        raise CellError(f"{fault.what}; {fault.remedy}") from None


def unit_of(kind: str, written: str) -> str:
    """The unit in its one form where it is one of the kind; as written where it is not."""
    plain = written.strip().removesuffix(".")
    if plain not in KINDS[kind].units and plain.lower() in KINDS[kind].units:
        plain = plain.lower()
    plain = SPELLINGS.get(plain, plain)
    if (kind, plain) in AMBIGUOUS and plain in {"C", "F"}:
        # in a column of temperatures there is nothing else it could mean
        return f"deg{plain}"
    return plain


@lru_cache(maxsize=50_000)
def day_of(text: str, dates: Dates = Dates.ISO) -> datetime:
    """A day, at midnight where no time is stated. Raises CellError."""
    for pattern, order in ((_ISO, (1, 2, 3)), (_DOTS, (3, 2, 1)), (_SLASHES, _order(text, dates))):
        if (found := pattern.fullmatch(text)) and order:
            year, month, day = (int(found[group]) for group in order)
            try:
                at = time.fromisoformat(found[4]) if found[4] else time.min
                return datetime.combine(date(year, month, day), at)
            except ValueError:
                break
    if _SLASHES.fullmatch(text):
        raise CellError(f"{_short(text)} is one of two days; write 2026-11-20, or say --dates day-first or month-first")
    raise CellError(f"{_short(text)} is no day; write it as in 2026-11-20 or 2026-11-20 14:05")


def day_read(text: str, dates: Dates) -> datetime | None:
    """The day of a cell; None for an empty one, and for one that cannot be read, which is told where its row is used."""
    try:
        return day_of(text, dates) if text else None
    except CellError:
        return None


def has_time(text: str) -> bool:
    return ":" in text


@lru_cache(maxsize=50_000)
def verdict_of(text: str) -> Verdict | None:
    """What a person judged, where a cell says it; else None."""
    said = " ".join(text.lower().replace("-", " ").split())
    if said in _YES:
        return Verdict.CONFORMING
    return Verdict.NOT_CONFORMING if said in _NO else None


@lru_cache(maxsize=50_000)
def is_word(text: str) -> bool:
    """True for what a person judged, under a concession or not; any other cell is read as a figure."""
    return verdict_of(text) is not None or bool(concession_of(text))


def concession_of(text: str) -> str:
    """The id of the concession a person accepts under, `conforming under door-sag`; empty where a cell names none."""
    found = _UNDER.fullmatch(text.strip())
    return found["id"] if found is not None else ""


def _order(text: str, dates: Dates) -> tuple[int, int, int] | None:
    """Groups of year, month and day in a day with strokes; None where it can be read two ways."""
    found = _SLASHES.fullmatch(text)
    if found is None:
        return None
    if dates is Dates.DAY_FIRST or (dates is Dates.ISO and int(found[1]) > 12):
        return (3, 2, 1)
    if dates is Dates.MONTH_FIRST or (dates is Dates.ISO and int(found[2]) > 12):
        return (3, 1, 2)
    return None


def _short(text: str) -> str:
    return repr(text if len(text) <= 40 else f"{text[:37]}...")
