"""Consumption of liquid paint: spreading rates and litres.

Called by the data sheet, the list of materials and the rules on consumption. Loss comes in one of two types, see
`loss`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from specgen.standards.citations import ARITHMETIC, LOGIC, cite
from specgen.standards.tables import table
from specgen.trade.film import ON_AREA, PERCENT
from specgen.trade.given import Source, take, take_cell
from specgen.trade.loss import Loss
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_, listed, phrase

_CONSTANTS = "spreading_constants"
_LITRES = cite("PAINT-SCHOOL-SLIDES", "paint consumption")
_THOUSAND = listed("{first}; {more}", [PERCENT, N_("1000: mL in a litre"), ON_AREA])


def spreading_rate(id: str, volume_solids: Source, film: Source) -> Working:
    """Theoretical spreading rate in m2/L at a dry film. Raises WorkingError for a film of nothing.

    Source: spreading-rate example; 1 L at 100 % volume solids covers 1000 m2 at 1 um, exactly.
    """
    inputs = (_constant("metric"), _solids(volume_solids), take("DFT", "dry film thickness", film, "thickness", "um"))
    return _spreading_rate(id, inputs, "m2/L", 2)


def spreading_rate_us(id: str, volume_solids: Source, film: Source) -> Working:
    """Theoretical spreading rate in ft2/gal at a dry film, with the 1604 of printed tables (exactly 1604.1667).

    Raises WorkingError for a film of nothing.
    """
    inputs = (
        _constant("US, as printed"),
        _solids(volume_solids),
        take("DFT", "dry film thickness", film, "thickness", "mil"),
    )
    return _spreading_rate(id, inputs, "ft2/gal", 0)


def practical_spreading_rate(id: str, theoretical: Source, loss: Loss, unit: str = "m2/L") -> Working:
    """Spreading rate in `unit`, m2/L or ft2/gal, after loss in either convention. Source: paint-school slides."""
    inputs = (take("TSR", "theoretical spreading rate", theoretical, "spreading_rate", unit), loss.entry())
    places = 2 if unit == "m2/L" else 0
    name, formula = N_("practical spreading rate"), f"TSR * {loss.reaching}"
    return work(
        id, name, formula, inputs, kind="spreading_rate", unit=unit, places=places, source=_LITRES, note=PERCENT
    )


def film_volume(id: str, area: Source, film: Source) -> Working:
    """Litres of dry film on an area, whatever the paint; exact."""
    inputs = (take("A", "area", area, "area", "m2"), take("DFT", "dry film thickness", film, "thickness", "um"))
    note = listed("{first}; {more}", [N_("1000: mL in a litre"), ON_AREA])
    name = N_("volume of dry film")
    return work(id, name, "A * DFT / 1000", inputs, kind="volume", unit="L", places=2, source=ARITHMETIC, note=note)


class Demand(NamedTuple):
    """An area and the dry film it is to carry. Dead volume is a demand of its own, once, for the first coat."""

    area: Source
    film: Source


def litres(
    id: str,
    demands: Sequence[Demand],
    volume_solids: Source,
    loss: Loss | None = None,
) -> Working:
    """Litres of paint as supplied for all demands together. Raises WorkingError for no demand or a loss of 100 %.

    Source: paint-school slides.
    """
    entries, films = demanded(demands)
    inputs = (*entries, _solids(volume_solids))
    formula = f"({films}) / 1000 * 100 / VS"
    if loss is not None:
        inputs, formula = (*inputs, loss.entry()), f"{formula} * {loss.factor}"
    name = "paint required" if loss is not None else "paint required, without loss"
    return work(id, name, formula, inputs, kind="volume", unit="L", places=1, source=_LITRES, note=_THOUSAND)


def packs(id: str, needed: Source, pack: Source, delivered: Source) -> Working:
    """Whole tins that give the litres needed, summed before this one rounding up; `delivered` is the share that comes out.

    Raises WorkingError for an empty pack.
    """
    inputs = (
        take("V", "paint required", needed, "volume", "L"),
        take("P", "volume of a tin", pack, "volume", "L"),
        take("d", "dispensed share of the contents", delivered, "share", "%"),
    )
    formula = "ceil(V / (P * d / 100))"
    return work(id, "tins required", formula, inputs, unit="tin", places=0, source=LOGIC, note=PERCENT)


def demanded(demands: Sequence[Demand]) -> tuple[tuple[Input, ...], str]:
    """The inputs of all demands and the volume of dry film they ask for, in mL, as a formula.

    Raises WorkingError for none.
    """
    if not demands:
        raise WorkingError("there is no area to coat")
    inputs: list[Input] = []
    for number, demand in enumerate(demands, start=1):
        inputs.append(take(f"A_{number}", phrase("area {number}", number=number), demand.area, "area", "m2"))
        inputs.append(
            take(f"DFT_{number}", phrase("DFT on area {number}", number=number), demand.film, "thickness", "um")
        )
    return tuple(inputs), " + ".join(f"A_{number} * DFT_{number}" for number in range(1, len(demands) + 1))


def _spreading_rate(id: str, inputs: tuple[Input, ...], unit: str, places: int) -> Working:
    name, formula, source = "theoretical spreading rate", "K * VS / 100 / DFT", table(_CONSTANTS).citation
    return work(id, name, formula, inputs, kind="spreading_rate", unit=unit, places=places, source=source, note=PERCENT)


def _constant(system: str) -> Input:
    row = table(_CONSTANTS).row("system", system)
    name = phrase(
        "spreading rate at one unit of DFT and 100 % volume solids, in {counted_in}", counted_in=row["counted_in"]
    )
    return take_cell("K", name, _CONSTANTS, row, "constant")


def _solids(volume_solids: Source) -> Input:
    return take("VS", "volume solids", volume_solids, "share", "%")
