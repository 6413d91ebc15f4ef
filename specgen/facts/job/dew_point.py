"""How far above the dew point a surface has to stay where nothing else is stated. Asked by the rules on it and on amine blush."""

from __future__ import annotations

from specgen.standards.tables import Row, table
from specgen.units.quantity import Quantity

_US = "degF"


def least_margin(kept: Quantity | None) -> tuple[Quantity, Row]:
    """The general minimum for a margin as it is written, with its row: 5 degF for one in degF, 3 K for any other.

    The two are near each other and neither is the other converted; each body of practice is held to its own.
    """
    american = kept is not None and kept.unit == _US
    row = table("climate_limits").row("id", "dew_point_margin_us" if american else "dew_point_margin")
    return Quantity.of("temperature_difference", int(row["least"]), _US if american else "K", row["least"]), row
