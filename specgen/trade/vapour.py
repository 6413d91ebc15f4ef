"""Vapours in air: volumes by the ideal gas law, ppm and mg/m3, explosive limits of mixtures, isocyanate counted as NCO.

The temperature is part of a figure: the US counts ppm at 25 degC, Europe at 20 degC. Called by `exposure`,
`ventilation` and `room`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

from specgen.standards.citations import ARITHMETIC, Basis, cite
from specgen.standards.tables import table
from specgen.trade.given import Source, take, take_cell
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import phrase

At = Literal["20", "25", "21.1"]
"""Temperature in degC of the table molar_volumes; 21.1 degC (70 degF) is that of the US ventilation rule."""

_VOLUMES = "molar_volumes"
_MEMORY_OF_RULE = cite("29-CFR-1910-94", "(c)(6)(ii)", Basis.MEMORY)


class Fuel(NamedTuple):
    """One flammable vapour: what is let off in an hour, its molar mass, its lower explosive limit and in whose words."""

    name: str
    release: Source
    molar_mass: Source
    explosive_limit: Source
    document: str = ""


def share_to_concentration(id: str, share: Source, molar_mass: Source, at: At = "20") -> Working:
    """A vapour share in ppm as mg/m3 at a temperature. Source: ideal gas law."""
    inputs = (take("p", "share of the air", share, "vapour_share", "ppm"), _mass(molar_mass), molar_volume(at))
    name, formula = "concentration", "p * M / V_m"
    return work(id, name, formula, inputs, kind="concentration", unit="mg/m3", places=2, source=ARITHMETIC)


def concentration_to_share(id: str, concentration: Source, molar_mass: Source, at: At = "20") -> Working:
    """A concentration in mg/m3 as ppm at a temperature. Source: ideal gas law."""
    inputs = (take("C", "concentration", concentration, "concentration", "mg/m3"), _mass(molar_mass), molar_volume(at))
    name, formula = "share of the air", "C * V_m / M"
    return work(id, name, formula, inputs, kind="vapour_share", unit="ppm", places=3, source=ARITHMETIC)


def vapour_flow(id: str, fuels: Sequence[Fuel], at: At = "20") -> Working:
    """Vapour of all fuels in m3/h. Source: ideal gas law."""
    inputs, moles = _moles(fuels)
    formula = f"({' + '.join(moles)}) * V_m / 1000"
    return work(
        id,
        "vapour emitted",
        formula,
        (*inputs, molar_volume(at)),
        kind="air_flow",
        unit="m3/h",
        places=3,
        source=ARITHMETIC,
        note="1000: litres in a cubic metre",
    )


def mixture_explosive_limit(id: str, fuels: Sequence[Fuel]) -> Working:
    """Lower explosive limit of the mixed vapours in % by volume, by Le Chatelier's rule; it lies between its parts."""
    inputs, moles = _moles(fuels)
    limits = [
        take(f"L_{n}", _limit_of(fuel), fuel.explosive_limit, "vapour_share", "%")
        for n, fuel in enumerate(fuels, start=1)
    ]
    shares = [f"{mole} / {limit.symbol}" for mole, limit in zip(moles, limits, strict=True)]
    formula = f"({' + '.join(moles)}) / ({' + '.join(shares)})"
    name, taken = "lower explosive limit of the mixture", (*inputs, *limits)
    return work(id, name, formula, taken, kind="vapour_share", unit="%", places=2, source=ARITHMETIC)


def vapour_of_liquid(id: str, density: Source, molar_mass: Source, at: At = "20") -> Working:
    """Vapour that a litre of solvent gives, in m3, a bare number. Source: ideal gas law."""
    inputs = (take("rho", "density", density, "density", "g/mL"), _mass(molar_mass), molar_volume(at))
    # g/mL is kg/L and L/mol is m3/kmol, so the thousands cancel.
    return work(id, "vapour per litre", "rho * V_m / M", inputs, unit="m3/L", places=3, source=ARITHMETIC)


def air_for_liquid(id: str, vapour: Source, explosive_limit: Source, share: Source, unit: str = "m3/L") -> Working:
    """Fresh air for a volume of solvent, to stay at a share of the lower explosive limit, as the US rule counts it.

    `vapour` is a bare number in `unit` (m3/L, or ft3/gal), as is the result. Source: 29 CFR 1910.94(c)(6)(ii), from
    memory; it differs from the exact balance by at most 2 %.
    """
    inputs = (
        take("f", "share of the lower explosive limit", share, "share", "%"),
        take("V", "vapour per unit of solvent", vapour, "", unit),
        take("L", "lower explosive limit", explosive_limit, "vapour_share", "%"),
    )
    name, formula, note = "air per unit of solvent", "100 / f * (100 - L) * V / L", "100: percent"
    return work(id, name, formula, inputs, unit=unit, places=1, source=_MEMORY_OF_RULE, note=note)


def as_nco(id: str, concentration: Source, molar_mass: Source, groups: int) -> Working:
    """A concentration of an isocyanate counted as NCO, in mg/m3; `groups` is the number of NCO groups of a molecule."""
    row = table("isocyanate_group").row("id", "NCO")
    inputs = (
        take("C", "concentration of the isocyanate", concentration, "concentration", "mg/m3"),
        take("n", "NCO groups per molecule", groups),
        take_cell("M_NCO", "molar mass of the NCO group", "isocyanate_group", row, "molar_mass", "molar_mass", "g/mol"),
        _mass(molar_mass),
    )
    name, formula = "concentration as NCO", "C * n * M_NCO / M"
    return work(id, name, formula, inputs, kind="concentration", unit="mg/m3", places=4, source=ARITHMETIC)


def molar_volume(at: At) -> Input:
    """The volume of a mole at a temperature, as an input of a formula."""
    row = table(_VOLUMES).row("temperature_degc", at)
    name = phrase("molar volume at {at} °C and 101.325 kPa", at=at)
    return take_cell("V_m", name, _VOLUMES, row, "litres_per_mole", "molar_volume", "L/mol")


def mixing_factor(mixing: Source) -> Input:
    """How many times more air a room needs because it does not mix fully; the span of practice is in mixing_factors.

    Raises WorkingError below 1: no air mixes better than fully.
    """
    found = take("K", "mixing factor", mixing)
    if found.number < 1:
        raise WorkingError("the mixing factor is below 1, but mixing cannot be better than complete")
    return found


def counted_at(jurisdiction: str) -> At | None:
    """The temperature at which a jurisdiction counts ppm; None where it was not read."""
    row = next((row for row in table(_VOLUMES).rows if jurisdiction in row["used_by"].split()), None)
    if row is None:
        return None
    return "25" if row["temperature_degc"] == "25" else "20"


def _limit_of(fuel: Fuel) -> str:
    if not fuel.document:
        return phrase("{name}, lower explosive limit", name=fuel.name)
    return phrase("{name}, lower explosive limit by {document}", name=fuel.name, document=fuel.document)


def _mass(molar_mass: Source) -> Input:
    return take("M", "molar mass", molar_mass, "molar_mass", "g/mol")


def _moles(fuels: Sequence[Fuel]) -> tuple[list[Input], list[str]]:
    inputs, moles = [], []
    for number, fuel in enumerate(fuels, start=1):
        inputs.append(
            take(f"G_{number}", phrase("{name}, emitted", name=fuel.name), fuel.release, "release_rate", "g/h")
        )
        inputs.append(
            take(f"M_{number}", phrase("{name}, molar mass", name=fuel.name), fuel.molar_mass, "molar_mass", "g/mol")
        )
        moles.append(f"G_{number} / M_{number}")
    return inputs, moles
