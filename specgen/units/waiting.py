"""A time as somebody who waits reads it: whole minutes up to three hours, hours to a tenth above. Called by findings and reports."""

from __future__ import annotations

from fractions import Fraction

from specgen.units.display import show
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up

_IN_MINUTES = 180


def show_wait(time: Quantity) -> str:
    """As the author wrote it; a computed time in minutes or hours."""
    return show(time) if time.digits else show_minutes(time.to("min"))


def show_minutes(number: Fraction) -> str:
    """A number of minutes."""
    if number <= _IN_MINUTES:
        return f"{round_half_up(number, 0)} min"
    return f"{round_half_up(number / 60, 1).normalize():f} h"
