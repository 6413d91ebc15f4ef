"""How far above the dew point a surface has to stay where nothing else is stated, and the table of dew points.

Asked by the rules on it and on amine blush, and by the method statement.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from specgen.standards.tables import Row, table
from specgen.trade.moist_air import HIGHEST, LOWEST, Air, dew_point_over_water, vapour_pressure
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

_US = "degF"


def least_margin(kept: Quantity | None) -> tuple[Quantity, Row]:
    """The general minimum for a margin as it is written, with its row: 5 degF for one in degF, 3 K for any other.

    The two are near each other and neither is the other converted; each body of practice is held to its own.
    """
    american = kept is not None and kept.unit == _US
    row = table("climate_limits").row("id", "dew_point_margin_us" if american else "dew_point_margin")
    return Quantity.of("temperature_difference", int(row["least"]), _US if american else "K", row["least"]), row


class DewPoints(NamedTuple):
    """The dew points over water of air of one temperature, one for each humidity asked for."""

    air: Quantity
    dew_points: tuple[Working, ...]


def dew_point_table(airs: Iterable[int], humidities: Sequence[int]) -> tuple[DewPoints, ...]:
    """A line for each whole degree (degC) that the formula holds for, with the humidities (%) across."""
    shares = [Quantity.of("humidity", share, "%", str(share)) for share in humidities]
    lines = []
    for number in airs:
        if LOWEST <= number <= HIGHEST:
            air = Quantity.of("temperature", number, "degC", str(number))
            found = (dew_point_over_water("dew_point", vapour_pressure("vapour", Air(air, share))) for share in shares)
            lines.append(DewPoints(air, tuple(found)))
    return tuple(lines)


def both_general(said: Quantity, margin: Quantity) -> bool:
    """The general minimum of either unit: 5 degF and 3 K are taken as one."""
    return said >= least_margin(said)[0] and margin <= least_margin(margin)[0]
