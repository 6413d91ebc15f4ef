"""Logarithm and exponential to a fixed number of digits, the same on every machine.

A room clears exponentially, so a time to re-entry cannot be an exact fraction. The decimal module rounds both functions
correctly at any precision asked for; what is left is the bound stated below. Called by `formula` and by nothing else.
"""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction
from functools import lru_cache

PLACES = 30
"""Digits after the point of a result. Its error is below 10^-30, or, for an exponential above 1, that times the result."""

LARGEST_EXPONENT = 200
"""After so many air changes nothing is left that a person could measure; beyond it an input is a slip of the pen."""

# the times of a job are asked of the same few temperatures again and again
_KEPT = 10_000

# 200 digits before the point never occur (exp(200) has 87); what is left over guards the last of the 30 places.
_CONTEXT = Context(prec=150, rounding=ROUND_HALF_EVEN)


@lru_cache(maxsize=_KEPT)
def natural_logarithm(number: Fraction) -> Fraction:
    """ln of `number`, off by less than 10^-30. Raises ValueError where it is not above nothing."""
    if number <= 0:
        raise ValueError("the logarithm of nothing, or less, is asked for")
    return _cut(_CONTEXT.ln(_decimal(number)))


@lru_cache(maxsize=_KEPT)
def exponential(number: Fraction) -> Fraction:
    """e to the power of `number`, off by less than 10^-30 times the larger of 1 and the result.

    Raises ValueError beyond 200 on either side.
    """
    if abs(number) > LARGEST_EXPONENT:
        raise ValueError(f"the exponential of more than {LARGEST_EXPONENT} is asked for")
    return _cut(_CONTEXT.exp(_decimal(number)))


def _decimal(number: Fraction) -> Decimal:
    return _CONTEXT.divide(Decimal(number.numerator), Decimal(number.denominator))


def _cut(result: Decimal) -> Fraction:
    return Fraction(result.quantize(Decimal(1).scaleb(-PLACES), context=_CONTEXT))
