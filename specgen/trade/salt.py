"""Soluble salt on a surface from what it does to the water that took it up. Called by the assessment of readings.

The figures of the table salt_measurement are from memory: whoever prints the result says that they are not verified.
"""

from __future__ import annotations

from specgen.standards.tables import table
from specgen.trade.given import Source, take, take_cell
from specgen.trade.working import Working, work
from specgen.units.locale import N_

_TABLE = "salt_measurement"


def salt_on_surface(id: str, rise: Source, water: Source) -> Working:
    """The mass of mixed salts on an area, in mg/m2, from the rise of conductivity over that of the water used, in µS/cm, and the amount
    of water on the patch. Source: ISO 8502-9."""
    found = table(_TABLE)
    factor, patch = (found.row("what", what) for what in ("c for mixed salts", "patch area"))
    inputs = (
        take_cell("c", N_("factor of mixed salts, in kg/(m² S)"), _TABLE, factor, "value"),
        take("V", N_("water on the patch"), water, "volume", "mL"),
        take("G", N_("rise of conductivity"), rise, "conductivity", "uS/cm"),
        take_cell("A", N_("area of the patch, in mm²"), _TABLE, patch, "value"),
    )
    return work(
        id,
        N_("soluble salts on the surface"),
        "c * V * G / A * 100",
        inputs,
        kind="surface_density",
        unit="mg/m2",
        places=1,
        source=found.row_citation(factor),
        note=N_("100: 1 mL on 1 mm² is 1 m, 1 µS/cm is 0.0001 S/m, 1 kg is 1000000 mg"),
    )
