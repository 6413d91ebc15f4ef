"""How much water a coat with a blocked hardener needs, and how long the air takes to bring it: an estimate, never a property.

The water has to reach the surface and go through a film that has skinned already, so the time grows with the square of the
film and falls with the vapour pressure, not with the relative humidity. Wherever the product has one measured time it is
carried over from its own film and air (`carried_over`); the film model (`through_the_film`) is left for products that have
none. It leaves out the reaction itself, the released ketone, solvent still leaving and pigment: a lower bound of the time,
uncertain by about three times either way. Called by facts on the air of a job and by the command on climate.
"""

from __future__ import annotations

from fractions import Fraction

from specgen.standards.citations import ARITHMETIC, PRACTICE
from specgen.standards.tables import table
from specgen.trade.given import Source, take, take_cell
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_

_TABLE = "moisture_cure"
ESTIMATE = N_("an estimate, not a property of the product; it may be three times too long or too short")


def water_demand(
    id: str, film: Source, density: Source, reactive: Source, ratio: Source, equivalent: Source, *, one_for_one: bool
) -> Working:
    """Water in g/m2 that a coat needs to release its hardener.

    `film` dry (um), `density` of the dry film (g/mL), `reactive` share of the resin in the dry film (%), `ratio` hardener
    equivalents for each of the resin (a number), `equivalent` weight of the resin (g/mol). `one_for_one`: aldimine with
    isocyanate. Source: balance of equivalents.
    """
    water = "water_for_one" if one_for_one else "water_for_two"
    inputs = (
        take("d", "DFT", film, "thickness", "um"),
        take("rho", "density of the dry film", density, "density", "g/mL"),
        take("x", "resin in the dry film", reactive, "share", "%"),
        take("s", "hardener equivalents for each of the resin", ratio),
        _figure("m_w", "water for each equivalent", water, "molar_mass", "g/mol"),
        take("E", "equivalent weight of the resin", equivalent, "molar_mass", "g/mol"),
    )
    formula, name = "d * rho * x / 100 * s * m_w / E", N_("water needed by the coat")
    note = N_("100: per cent")
    return work(id, name, formula, inputs, kind="surface_density", unit="g/m2", places=2, source=ARITHMETIC, note=note)


def carried_over(
    id: str, measured: Source, measured_film: Source, measured_vapour: Source, film: Source, vapour: Source
) -> Working:
    """The time for the water, in minutes, carried over from one measured time to another film (um) and vapour pressure (kPa).

    Source: diffusion through a film that has skinned; common practice, no source.
    """
    inputs = (
        take("t_0", "measured time", measured, "duration", "min"),
        take("d", "DFT", film, "thickness", "um"),
        take("d_0", "DFT it was measured at", measured_film, "thickness", "um"),
        take("p_0", "vapour pressure it was measured at", measured_vapour, "pressure", "kPa"),
        take("p", "vapour pressure", vapour, "pressure", "kPa"),
    )
    return _minutes(id, N_("time for the water, carried over"), "t_0 * d * d / (d_0 * d_0) * p_0 / p", inputs)


def through_the_film(
    id: str, demand: Source, film: Source, vapour: Source, *, polyurethane: bool, in_flight: Source | None = None
) -> Working:
    """The time for the water, in minutes, through still air and half the film. `in_flight`: share taken up in flight (%), else none.

    Source: boundary layer and diffusion with the figures of the table moisture_cure; estimate.
    """
    resistance = "resistance_polyurethane" if polyurethane else "resistance_epoxy"
    inputs = (
        _in_flight(in_flight),
        take("W", "water needed by the coat", demand, "surface_density", "g/m2"),
        _figure("beta", "vapour transfer to the surface, 10⁻⁸ kg/(m² s Pa)", "boundary_layer"),
        take("d", "DFT", film, "thickness", "um"),
        _figure("mu", "vapour resistance factor of the film", resistance),
        _figure("delta", "vapour permeability of air, 10⁻¹⁰ kg/(m s Pa)", "vapour_in_air"),
        take("p", "vapour pressure", vapour, "pressure", "kPa"),
    )
    formula = "(1 - phi / 100) * W * (100 / beta + d * mu / (200 * delta)) / (60 * p)"
    note = N_("100 and 200: per cent, powers of ten of the units, and half the film; 60: seconds in a minute")
    return _minutes(id, N_("time for the water through the film"), formula, inputs, note)


def waiting_time(id: str, water: Source, drying: Source | None = None) -> Working:
    """The wait before the next coat, in minutes: the longer of water and drying, times the factor of the table. Estimate."""
    factor = _figure("n", "factor on the estimate", "safety")
    arrived = take("t_w", "time for the water", water, "duration", "min")
    if drying is None:
        return _minutes(id, N_("estimated wait"), "n * t_w", (factor, arrived))
    dried = take("t_d", "drying time", drying, "duration", "min")
    return _minutes(id, N_("estimated wait"), "n * max(t_w, t_d)", (factor, arrived, dried))


def vapour_for_wait(id: str, estimate: Source, vapour: Source, wait: Source) -> Working:
    """The vapour pressure in kPa at which `wait` (min) is enough, where `estimate` (min) holds at `vapour`. Estimate."""
    inputs = (
        take("t_w", "estimated time", estimate, "duration", "min"),
        take("p", "vapour pressure", vapour, "pressure", "kPa"),
        take("t", "wanted interval", wait, "duration", "min"),
    )
    name = N_("minimum vapour pressure")
    return work(id, name, "t_w * p / t", inputs, kind="pressure", unit="kPa", places=3, source=PRACTICE, note=ESTIMATE)


def released_in_can(id: str, water: Source, fill: Source, equivalents: Source) -> Working:
    """Share of the hardener in % that the free water of a can releases at most: what shelf life has to allow for.

    `water` free water (ppm by mass, a number), `fill` (g), `equivalents` of hardener in the can (mol, a number).
    Source: balance of equivalents.
    """
    inputs = (
        take("w", "free water, parts in a million by mass", water),
        take("m", "contents of the can", fill, "mass", "g"),
        _figure("m_w", "water for each equivalent", "water_for_two", "molar_mass", "g/mol"),
        take("n", "hardener in the can, mol of equivalents", equivalents),
    )
    name, note = N_("hardener released in the can"), N_("10000: parts in a million for each per cent")
    formula = "w * m / (10000 * m_w * n)"
    return work(id, name, formula, inputs, kind="percentage", unit="%", places=1, source=ARITHMETIC, note=note)


def uncertainty() -> Fraction:
    """How many times too long or too short an estimate may be."""
    return Fraction(table(_TABLE).row("id", "uncertainty")["figure"])


def _figure(symbol: str, name: str, id: str, kind: str = "", unit: str = "") -> Input:
    return take_cell(symbol, name, _TABLE, table(_TABLE).row("id", id), "figure", kind, unit)


def _in_flight(share: Source | None) -> Input:
    name = "share of the water taken up in flight"
    if share is None:
        return _figure("phi", name, "taken_in_flight", "share", "%")
    return take("phi", name, share, "share", "%")


def _minutes(id: str, name: str, formula: str, inputs: tuple[Input, ...], note: str = "") -> Working:
    whole = f"{note}; {ESTIMATE}" if note else ESTIMATE
    return work(id, name, formula, inputs, kind="duration", unit="min", places=0, source=PRACTICE, note=whole)
