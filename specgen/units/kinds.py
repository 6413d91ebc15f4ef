"""The kinds of quantity a source may hold, each with the units it accepts.

A kind is more than a dimension: a temperature and a temperature difference, a film and a length, a share by mass and a relative
humidity are different things with different units. Called by `quantity`, and by the model for its field types.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from specgen.units.known_units import scale


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of quantity.

    `units` maps what an author may write to the unit expression behind it; the first is the base in which values are compared.
    `lowest` and `highest`, in the base unit, are bounds of sense: outside them a value is a slip of the pen.
    """

    name: str
    units: Mapping[str, str]
    lowest: Fraction | None = Fraction(0)
    highest: Fraction | None = None
    difference: bool = field(default=False)

    @property
    def base(self) -> str:
        return next(iter(self.units))

    def scale(self, unit: str) -> tuple[Fraction, Fraction]:
        """Factor and offset from `unit` to the base unit; a difference has no offset."""
        factor, offset = scale(self.units[unit], self.units[self.base])
        return factor, Fraction(0) if self.difference else offset


_HUNDRED = Fraction(100)
_LENGTH = {"mm": "mm", "cm": "cm", "m": "m", "in": "inch", "ft": "ft"}
_TIME = {
    "min": "minute",
    "s": "s",
    "h": "hour",
    "d": "day",
    "day": "day",
    "days": "day",
    "week": "week",
    "weeks": "week",
}
_PERCENT = {"%": "percent"}

_TABLE = (
    Kind(
        "thickness",
        {"um": "um", "µm": "um", "μm": "um", "mm": "mm", "mil": "mil", "mils": "mil"},
        highest=Fraction(100_000),
    ),
    Kind("length", _LENGTH, highest=Fraction(1_000_000)),
    Kind("area", {"m2": "m2", "m²": "m2", "cm2": "cm2", "ft2": "ft2"}, highest=Fraction(1_000_000)),
    Kind("volume", {"mL": "mL", "ml": "mL", "L": "L", "l": "L", "gal": "gallon"}, highest=Fraction(10**10)),
    Kind("mass", {"g": "g", "kg": "kg", "mg": "mg", "oz": "oz", "lb": "lb"}, highest=Fraction(10**10)),
    Kind("density", {"g/mL": "g/mL", "g/cm3": "g/cm**3", "kg/L": "kg/L", "lb/gal": "lb/gallon"}, highest=Fraction(25)),
    Kind("share", _PERCENT, highest=_HUNDRED),
    Kind("percentage", _PERCENT, highest=Fraction(1000)),
    Kind("humidity", {"%": "percent", "%RH": "percent"}, highest=_HUNDRED),
    Kind(
        "temperature",
        {"degC": "degC", "°C": "degC", "degF": "degF", "°F": "degF"},
        lowest=Fraction(-273),
        highest=Fraction(2000),
    ),
    Kind(
        "temperature_difference",
        {
            "K": "kelvin",
            "degC": "kelvin",
            "°C": "kelvin",
            "degF": "delta_degree_Fahrenheit",
            "°F": "delta_degree_Fahrenheit",
        },
        highest=Fraction(500),
        difference=True,
    ),
    Kind("duration", _TIME, highest=Fraction(60 * 24 * 366 * 30)),
    Kind("spreading_rate", {"m2/L": "m2/L", "ft2/gal": "ft2/gallon"}, highest=Fraction(10_000)),
    Kind("spray_rate", {"g/s": "g/s"}, highest=Fraction(1000)),
    Kind("speed", {"m/s": "m/s", "m/min": "m/minute", "ft/min": "ft/minute"}, highest=Fraction(1000)),
    Kind("pressure", {"bar": "bar", "kPa": "kPa", "MPa": "MPa", "psi": "psi"}, highest=Fraction(10_000)),
    Kind("voc_content", {"g/L": "g/L", "lb/gal": "lb/gallon"}, highest=Fraction(3000)),
    Kind("surface_density", {"mg/m2": "mg/m2", "g/m2": "g/m2"}, highest=Fraction(10**6)),
    Kind("gloss", {"GU": "GU"}, highest=Fraction(2000)),
    Kind("heat", {"kJ/g": "kilojoule_per_gram"}, highest=Fraction(200)),
    Kind(
        "air_flow",
        {"m3/h": "m3/hour", "m³/h": "m3/hour", "m3/min": "m3/minute", "ft3/min": "ft3/minute"},
        highest=Fraction(10**9),
    ),
    Kind("room_volume", {"m3": "m3", "m³": "m3", "L": "L", "ft3": "ft3"}, highest=Fraction(10**7)),
    Kind(
        "concentration", {"mg/m3": "mg/m3", "mg/m³": "mg/m3", "ug/m3": "ug/m3", "g/m3": "g/m3"}, highest=Fraction(10**7)
    ),
    # A share of the air by volume: a limit of exposure in ppm and an explosive limit in % are of one kind.
    Kind("vapour_share", {"ppm": "part_per_million", "%": "percent"}, highest=Fraction(10**6)),
    Kind(
        "release_rate", {"g/h": "g/hour", "mg/h": "mg/hour", "g/min": "g/minute", "g/s": "g/s"}, highest=Fraction(10**9)
    ),
    Kind("molar_mass", {"g/mol": "g/mol"}, highest=Fraction(100_000)),
    Kind("molar_volume", {"L/mol": "L/mol"}, highest=Fraction(1000)),
)

KINDS: Mapping[str, Kind] = {kind.name: kind for kind in _TABLE}
