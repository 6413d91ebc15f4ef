"""Formulas as text: computed over exact fractions, and written out as a person writes them by hand.

The text of a formula is what is computed and what is printed, so the two cannot drift apart. Only names, whole
numbers, the four operations, parentheses and ceil(), min(), max(), ln(), exp() are read; nothing is ever handed to
Python to run. ln and exp alone are not exact: see `transcendental`. Called by `working`.
"""

from __future__ import annotations

import ast
import math
import operator
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from functools import lru_cache

from specgen.trade.transcendental import exponential, natural_logarithm
from specgen.units.locale import ENGLISH, N_, Locale

# A formula put together: from the values of its symbols to its result.
_Reckon = Callable[[Mapping[str, Fraction]], Fraction]

# No area, volume, film or time of the trade comes near this; beyond it an input is a slip of the pen.
LARGEST = Fraction(10**12)

_SIGNS: Mapping[type[ast.operator], str] = {ast.Add: "+", ast.Sub: "−", ast.Mult: "×", ast.Div: "÷"}
_OPERATIONS: Mapping[type[ast.operator], Callable[[Fraction, Fraction], Fraction]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
}
_STRENGTH: Mapping[type[ast.operator], int] = {ast.Add: 0, ast.Sub: 0, ast.Mult: 1, ast.Div: 1}
_ATOM = 2
_CALLS: Mapping[str, str] = {
    "ceil": N_("rounded up"),
    "min": N_("smallest of"),
    "max": N_("largest of"),
    "ln": "ln",
    "exp": "exp",
}
_OF_ONE = frozenset({"ceil", "ln", "exp"})
_GREEK: Mapping[str, str] = {"alpha": "α", "pi": "π", "phi": "φ", "rho": "ρ"}

_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


class WorkingError(ValueError):
    """A working that cannot be done. `what` says why, in a sentence part that a finding can print."""

    def __init__(self, what: str) -> None:
        super().__init__(what)
        self.what = what


def sign(symbol: str) -> str:
    """The symbol as printed: rho_nv is ρ_nv, A_1 is A₁, VS stays VS."""
    first, blank, rest = symbol.partition("_")
    lowered = rest.translate(_LOWERED) if rest.isdecimal() else blank + rest
    return _GREEK.get(first, first) + lowered


@lru_cache(maxsize=2_000)
def names(formula: str) -> tuple[str, ...]:
    """The symbols of a formula, each once, as they stand from left to right. Raises WorkingError."""
    return tuple(dict.fromkeys(node.id for node in _leaves(_read(formula)) if isinstance(node, ast.Name)))


@lru_cache(maxsize=2_000)
def constants(formula: str) -> frozenset[int]:
    """The whole numbers written in a formula. Raises WorkingError."""
    found = (node.value for node in _leaves(_read(formula)) if isinstance(node, ast.Constant))
    return frozenset(value for value in found if isinstance(value, int))


def evaluate(formula: str, values: Mapping[str, Fraction]) -> Fraction:
    """The formula worked out exactly.

    Raises WorkingError for an unknown name, a division by zero, a result beyond 10^12.
    """
    result = _reckoner(formula)(values)
    if abs(result) > LARGEST:
        raise WorkingError(f"{write(formula)} comes to more than {LARGEST}")
    return result


def write(formula: str, figures: Mapping[str, str] | None = None, language: Locale = ENGLISH) -> str:
    """The formula with ×, ÷ and −, and `figures` in place of the symbols they name. Raises WorkingError."""
    return _text(_read(formula), figures or {}, language)[0]


@lru_cache(maxsize=2_000)
def _read(formula: str) -> ast.expr:
    try:
        tree = ast.parse(formula, mode="eval").body
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        raise WorkingError(f"the formula {formula[:60]!r} cannot be read") from None
    _refuse_strangers(tree, formula)
    return tree


def _refuse_strangers(node: ast.expr, formula: str) -> None:
    match node:
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _SIGNS:
            _refuse_strangers(left, formula)
            _refuse_strangers(right, formula)
        case ast.Call(func=ast.Name(id=call), args=args, keywords=[]) if call in _CALLS and args:
            if call == "ceil" and len(args) != 1:
                raise WorkingError(f"the formula {formula[:60]!r} rounds up more than one figure at once")
            if call in _OF_ONE and len(args) != 1:
                raise WorkingError(f"the formula {formula[:60]!r} takes {call} of more than one figure at once")
            for argument in args:
                _refuse_strangers(argument, formula)
        case ast.Name():
            pass
        # A bool is an int to Python; a decimal figure would be a float, and belongs into an input with its source.
        case ast.Constant(value=int() as value) if not isinstance(value, bool):
            pass
        case _:
            raise WorkingError(
                f"the formula {formula[:60]!r} holds more than names, whole numbers, + - * / ceil min max"
            )


def _leaves(node: ast.expr) -> Iterator[ast.Name | ast.Constant]:
    match node:
        case ast.BinOp(left=left, right=right):
            yield from _leaves(left)
            yield from _leaves(right)
        case ast.Call(args=args):
            for argument in args:
                yield from _leaves(argument)
        case ast.Name() | ast.Constant():
            yield node


@lru_cache(maxsize=2_000)
def _reckoner(formula: str) -> _Reckon:
    """What works the formula out; put together once, for a job asks the same formula of every part and coat."""
    return _of(_read(formula))


def _of(node: ast.expr) -> _Reckon:
    match node:
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return _division(_of(left), _of(right), right)
        case ast.BinOp(left=left, op=op, right=right):
            return _operation(_OPERATIONS[type(op)], _of(left), _of(right))
        case ast.Call(func=ast.Name(id=call), args=args):
            return _called(call, [_of(argument) for argument in args])
        case ast.Name(id=name):
            return _named(name)
        case ast.Constant(value=int() as value):
            number = Fraction(value)
            return lambda _: number
    raise AssertionError(node)  # _refuse_strangers lets nothing else through


def _named(name: str) -> _Reckon:
    def value(values: Mapping[str, Fraction]) -> Fraction:
        if name not in values:
            raise WorkingError(f"{sign(name)} stands in the formula and has no value")
        return values[name]

    return value


def _operation(operate: Callable[[Fraction, Fraction], Fraction], left: _Reckon, right: _Reckon) -> _Reckon:
    return lambda values: operate(left(values), right(values))


def _division(left: _Reckon, right: _Reckon, divisor: ast.expr) -> _Reckon:
    def quotient(values: Mapping[str, Fraction]) -> Fraction:
        dividend, by = left(values), right(values)
        if by == 0:
            raise WorkingError(f"{_text(divisor, {}, ENGLISH)[0]} is zero, and the working divides by it")
        return dividend / by

    return quotient


def _called(call: str, arguments: list[_Reckon]) -> _Reckon:
    first = arguments[0]
    match call:
        case "ceil":
            return lambda values: Fraction(math.ceil(first(values)))
        case "min":
            return lambda values: min(argument(values) for argument in arguments)
        case "max":
            return lambda values: max(argument(values) for argument in arguments)
    function = natural_logarithm if call == "ln" else exponential

    def found(values: Mapping[str, Fraction]) -> Fraction:
        try:
            return function(first(values))
        except ValueError as error:
            raise WorkingError(str(error)) from None

    return found


def _text(node: ast.expr, figures: Mapping[str, str], language: Locale) -> tuple[str, int]:
    """The text of a part, and how strongly it holds together: what is weaker than its neighbour needs parentheses."""
    match node:
        case ast.BinOp(left=left, op=op, right=right):
            strength = _STRENGTH[type(op)]
            first, first_strength = _text(left, figures, language)
            second, second_strength = _text(right, figures, language)
            first = f"({first})" if first_strength < strength else first
            # A calculator works from left to right: what follows − or ÷ keeps its parentheses even at equal strength.
            tight = second_strength < strength or (second_strength == strength and isinstance(op, ast.Sub | ast.Div))
            second = f"({second})" if tight else second
            return f"{first} {_SIGNS[type(op)]} {second}", strength
        case ast.Call(func=ast.Name(id=call), args=args):
            inside = "; ".join(_text(argument, figures, language)[0] for argument in args)
            return f"{language(_CALLS[call])} ({inside})", _ATOM
        case ast.Name(id=name):
            return figures.get(name, sign(name)), _ATOM
        case ast.Constant(value=value):
            return str(value), _ATOM
    raise AssertionError(node)  # _refuse_strangers lets nothing else through
