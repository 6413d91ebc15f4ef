"""A computed figure with all it takes to compute it again by hand.

Documents print the result; the annex of workings prints formula, inputs and source. The formula text is what is
computed. Called by every module of `trade`, by rules that judge a figure, and by `views`.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NamedTuple

from specgen.standards.citations import Citation
from specgen.trade.formula import WorkingError, constants, evaluate, names, sign, write
from specgen.units.display import unit_sign
from specgen.units.locale import ENGLISH, N_, Locale, N_n
from specgen.units.quantity import Quantity
from specgen.units.rounding import no_finer, round_half_up, significant

__all__ = ["HELD_BY_MAKER", "Audience", "Input", "Working", "WorkingError", "work"]

Audience = Literal["customer", "maker"]

HELD_BY_MAKER = N_("inputs withheld by the manufacturer")

# What is counted has a word for a unit, and one of it is not "1 cans".
_COUNTED = {
    "can": N_n("can", "cans"),
    "coat": N_n("coat", "coats"),
    "pass": N_n("cross coat", "cross coats"),
    "stroke": N_n("stroke", "strokes"),
    "tin": N_n("tin", "tins"),
}

# A decimal up to this long is printed in full; a longer one is cut where the result no longer feels it.
_FULL_PLACES = 6
_FEWEST_DIGITS, _MOST_DIGITS = 4, 12

# What follows from measured lengths, flows and evaporation is never known to more digits than these; films, counts and
# contents of packs are added up from whole figures.
_MEASURED = frozenset({"area", "mass", "air_flow"})
_CARRIED_DIGITS = 3


class Input(NamedTuple):
    """One figure that goes into a formula, under `symbol`, counted in `unit` (empty for a bare number).

    `origin` says where it stands: a path in the sources, `table:NAME` or `working:ID`.
    """

    symbol: str
    name: str
    value: Quantity | Fraction
    unit: str
    origin: str
    audience: Audience = "customer"

    @property
    def number(self) -> Fraction:
        """The figure in `unit`, exact. Raises KeyError where the unit is not one of the quantity's kind."""
        return self.value.to(self.unit) if isinstance(self.value, Quantity) else self.value

    @property
    def sign(self) -> str:
        """The symbol as printed."""
        return sign(self.symbol)


class Working(NamedTuple):
    """A result in `unit`, printed to `places` digits after the point, with its formula, inputs and source."""

    id: str
    name: str
    formula: str
    inputs: tuple[Input, ...]
    result: Quantity | Fraction
    unit: str
    places: int
    source: Citation
    note: str = ""

    @property
    def number(self) -> Fraction:
        """The result in `unit`, exact and not rounded."""
        return self.result.to(self.unit) if isinstance(self.result, Quantity) else self.result

    @property
    def quantity(self) -> Quantity:
        """The result where it carries a unit of a kind. Raises TypeError for a bare number."""
        if not isinstance(self.result, Quantity):
            raise TypeError(f"{self.id} is a bare number")
        return self.result

    @property
    def rounded(self) -> Decimal:
        """The result in `unit`, rounded half up to `places`, or to as many digits as such a result carries: the figure every
        document prints."""
        return self._rounded(self.number)

    def _rounded(self, number: Fraction) -> Decimal:
        if isinstance(self.result, Quantity) and self.result.kind in _MEASURED:
            return no_finer(number, self.places, _CARRIED_DIGITS)
        return round_half_up(number, self.places)

    @property
    def held_by_maker(self) -> bool:
        """True where an input is the maker's: a customer then sees the result and HELD_BY_MAKER, never the formula."""
        return any(entry.audience == "maker" for entry in self.inputs)

    def shown_inputs(self) -> tuple[Input, ...]:
        """What a customer may see: all inputs or none, for the result and the others would give the hidden one back."""
        return () if self.held_by_maker else self.inputs

    def printed(self, language: Locale = ENGLISH) -> str:
        """The result with its unit, rounded half up, as it stands in a document."""
        rounded = self.rounded
        return _with_unit(str(rounded), Fraction(rounded), self.unit, language)

    def printed_inputs(self, language: Locale = ENGLISH) -> tuple[tuple[Input, str], ...]:
        """Each input with its figure and unit as printed; recomputing from these figures gives `printed()`."""
        figures = self._figures()
        return tuple(
            (entry, _with_unit(figures[entry.symbol], entry.number, entry.unit, language)) for entry in self.inputs
        )

    def formula_text(self, language: Locale = ENGLISH) -> str:
        """The formula in symbols, as written by hand."""
        return language.figures(write(self.formula, language=language))

    def substituted(self, language: Locale = ENGLISH) -> str:
        """The formula with the figures of `printed_inputs` in place of the symbols."""
        figures = {symbol: _enclosed(figure) for symbol, figure in self._figures().items()}
        return language.figures(write(self.formula, figures, language=language))

    def _figures(self) -> dict[str, str]:
        whole = {entry.symbol: _in_full(entry) for entry in self.inputs}
        endless = {entry.symbol: entry.number for entry in self.inputs if whole[entry.symbol] is None}
        wanted = self.rounded
        for digits in range(_FEWEST_DIGITS, _MOST_DIGITS + 1):
            cut = {symbol: significant(number, digits) for symbol, number in endless.items()}
            values = {entry.symbol: entry.number for entry in self.inputs} | {
                key: Fraction(value) for key, value in cut.items()
            }
            try:
                again = evaluate(self.formula, values)
            except WorkingError:
                # Two cut figures may cancel to a zero divisor; the next digit tells them apart.
                continue
            if self._rounded(again) == wanted:
                return {symbol: figure or _minus(f"{cut[symbol]:f}") for symbol, figure in whole.items()}
        # Exactly on the edge of a rounding no cut decimal gives the result back, so the figure stands as a fraction.
        return {symbol: figure or _as_fraction(endless[symbol]) for symbol, figure in whole.items()}


def work(
    id: str,
    name: str,
    formula: str,
    inputs: tuple[Input, ...],
    *,
    places: int,
    source: Citation,
    kind: str = "",
    unit: str = "",
    note: str = "",
) -> Working:
    """Work `formula` out: its result counts in `unit`, as a quantity of `kind`, or as a bare number where `kind` is
    empty.

    A formula holds no figure but 1 that `note` does not explain. Raises WorkingError for a division by zero, a name
    without a value, an input that the formula leaves out or that comes twice, and a result beyond 10^12.
    """
    values = {entry.symbol: entry.number for entry in inputs}
    if len(values) != len(inputs):
        raise WorkingError(f"two inputs of {name} share a symbol")
    try:
        known = names(formula)
    except RecursionError:
        raise WorkingError(f"{name} has more terms than can be followed; split it") from None
    if left_out := [entry.name for entry in inputs if entry.symbol not in known]:
        raise WorkingError(f"{', '.join(left_out)} does not stand in the formula of {name}")
    if unexplained := _unexplained(formula, note):
        raise WorkingError(f"the note on {name} does not explain {', '.join(unexplained)}")
    try:
        number = evaluate(formula, values)
    except WorkingError as error:
        raise WorkingError(f"{name} cannot be calculated: {error.what}") from None
    except RecursionError:
        raise WorkingError(f"{name} has more terms than can be followed; split it") from None
    result = Quantity.of(kind, number, unit) if kind else number
    return Working(id, name, formula, inputs, result, unit, places, source, note)


@lru_cache(maxsize=5_000)
def _unexplained(formula: str, note: str) -> tuple[str, ...]:
    """The figures of a formula, 1 apart, that its note does not name."""
    explained = set(re.findall(r"\d+", note))
    return tuple(str(figure) for figure in sorted(constants(formula) - {1}) if str(figure) not in explained)


def _in_full(entry: Input) -> str | None:
    """The figure in full: as its author wrote it, or as a short decimal; None where it has no such form."""
    number, value = entry.number, entry.value
    if isinstance(value, Quantity) and value.digits and value.unit == entry.unit and Fraction(value.digits) == number:
        return _minus(value.digits)
    for places in range(_FULL_PLACES + 1):
        if Fraction(figure := round_half_up(number, places)) == number:
            return _minus(str(figure))
    return None


def _as_fraction(number: Fraction) -> str:
    return _minus(f"{number.numerator} ÷ {number.denominator}")


def _minus(figure: str) -> str:
    return figure.replace("-", "−")


def _enclosed(figure: str) -> str:
    return f"({figure})" if "−" in figure or "÷" in figure else figure


def _with_unit(figure: str, number: Fraction, unit: str, language: Locale) -> str:
    shown = language.figures(_minus(figure))
    if not unit:
        return shown
    word = language.plural(*_COUNTED[unit], number) if unit in _COUNTED else unit_sign(unit, number, language)
    return f"{shown}\N{NO-BREAK SPACE}{word}"
