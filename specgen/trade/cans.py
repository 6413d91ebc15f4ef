"""What an aerosol can covers, how many cans a job takes, and what film a coverage claim comes down to.

1 mL of dry solids on 1 m2 is 1 um of dry film: everything here follows from that. Called by the list of materials,
the data sheet and the rules on claims.
"""

from __future__ import annotations

from collections.abc import Sequence

from specgen.standards.citations import ARITHMETIC
from specgen.standards.tables import table
from specgen.trade.consumption import Demand, demanded
from specgen.trade.film import PERCENT
from specgen.trade.given import Given, Source, from_table, take
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_, listed

_NOTE = listed("{first}; {more}", [PERCENT, N_("1 mL of dry solids on 1 m² is 1 µm")])
# What a can puts on the surface, in mL of dry solids.
_DELIVERED = "S * d / 100 * TE / 100"


def area_per_can(id: str, solids: Source, delivered: Source, transfer: Source, film: Source) -> Working:
    """The area in m2 that one can covers at a dry film. `solids` is the volume of dry solids in the can.

    Raises WorkingError for a film of nothing.
    """
    inputs = (*_from_can(solids, delivered, transfer), take("DFT", "dry film thickness", film, "thickness", "um"))
    name, formula = N_("coverage per can"), f"{_DELIVERED} / DFT"
    return work(id, name, formula, inputs, kind="area", unit="m2", places=2, source=ARITHMETIC, note=_NOTE)


def cans(id: str, demands: Sequence[Demand], solids: Source, delivered: Source, transfer: Source) -> Working:
    """The least number of cans for all demands of one product, summed before the one rounding up.

    Raises WorkingError for no demand, and where a can brings nothing to the surface.
    """
    entries, films = demanded(demands)
    inputs = (*entries, *_from_can(solids, delivered, transfer))
    formula = f"ceil(({films}) / ({_DELIVERED}))"
    return work(id, "cans required", formula, inputs, unit="can", places=0, source=ARITHMETIC, note=_NOTE)


def empty_time(id: str, net_mass: Source, delivered: Source, spray_rate: Source) -> Working:
    """How long a can sprays without a pause, in s. Raises WorkingError for a spray rate of zero."""
    inputs = (
        take("m", "net mass", net_mass, "mass", "g"),
        take("d", "dispensed share of the contents", delivered, "share", "%"),
        take("q", "spray rate", spray_rate, "spray_rate", "g/s"),
    )
    name, formula = "time to empty a can", "m * d / 100 / q"
    return work(id, name, formula, inputs, kind="duration", unit="s", places=0, source=ARITHMETIC, note=PERCENT)


def usual_transfer(work_piece: str) -> tuple[Given, Given]:
    """The lowest and highest usual transfer efficiency of a can on a kind of work piece; common practice.

    Raises KeyError for a row the table does not have.
    """
    name = "transfer_efficiency_aerosol"
    row = table(name).row("method", work_piece)
    low, high = (from_table(name, row, column, "share", "%") for column in ("low_pct", "high_pct"))
    return low, high


def _from_can(solids: Source, delivered: Source, transfer: Source) -> tuple[Input, ...]:
    return (
        take("S", "volume of dry solids in a can", solids, "volume", "mL"),
        take("d", "dispensed share of the contents", delivered, "share", "%"),
        take("TE", "transfer efficiency", transfer, "share", "%"),
    )
