"""Times between stated temperatures.

Between two stated temperatures a time runs evenly in its logarithm; outside them nothing is given. A straight line would lie
above, on the safe side for a minimum and on the wrong side for a maximum. Called by facts on waits.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from specgen.standards.citations import ARITHMETIC
from specgen.trade.given import Source, amount, take
from specgen.trade.working import Working, WorkingError, work
from specgen.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Node:
    """A time stated at a temperature (degC)."""

    temperature: Source
    time: Source


def between(id: str, name: str, nodes: Sequence[Node], temperature: Source) -> Working:
    """The time at `temperature` in hours, between the two nodes beside it. Source: logarithm of the time, even in temperature.

    Raises WorkingError outside the nodes: nothing is stated there.
    """
    at = _degrees(temperature)
    ordered = sorted(nodes, key=lambda node: _degrees(node.temperature))
    for cool, warm in pairwise(ordered):
        if _degrees(cool.temperature) <= at <= _degrees(warm.temperature):
            inputs = (
                take("t", "temperature", temperature, "temperature", "degC"),
                take("t_1", "lower stated temperature", cool.temperature, "temperature", "degC"),
                take("t_2", "upper stated temperature", warm.temperature, "temperature", "degC"),
                take("x_1", "time at the lower", cool.time, "duration", "h"),
                take("x_2", "time at the upper", warm.time, "duration", "h"),
            )
            formula = "exp(((t_2 - t) * ln(x_1) + (t - t_1) * ln(x_2)) / (t_2 - t_1))"
            return work(id, name, formula, inputs, kind="duration", unit="h", places=1, source=ARITHMETIC)
    raise WorkingError("nothing is stated for that temperature, and nothing is carried past the stated ones")


def _degrees(value: Source) -> Fraction:
    figure = amount(value)
    if not isinstance(figure, Quantity):
        raise TypeError("a temperature is taken")
    return figure.to("degC")
