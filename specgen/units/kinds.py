"""The units an author may write, each with what it means and how it is printed, and the kinds of quantity that accept them.

A kind is more than a dimension: a temperature and a temperature difference, a film and a length, a share by mass and a relative
humidity are different things with different units. Called by `quantity` and `display`, and by the model for its field types.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from specgen.units.known_units import scale
from specgen.units.locale import N_n


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit as it is written: `sign` is what a document prints, `meaning` its expression in `units.txt`.

    `meaning` is empty for a unit that no author writes and only a working counts in, as a bare number. `many` is the word for
    more than one, where the unit is a word.
    """

    sign: str
    meaning: str = ""
    many: str = ""


_DAY, _WEEK = N_n("day", "days"), N_n("week", "weeks")


UNITS: Mapping[str, Unit] = {
    "um": Unit("µm", "um"),
    "µm": Unit("µm", "um"),  # the micro sign
    "μm": Unit("µm", "um"),  # the Greek letter
    "mm": Unit("mm", "mm"),
    "cm": Unit("cm", "cm"),
    "m": Unit("m", "m"),
    "in": Unit("in", "inch"),
    "ft": Unit("ft", "ft"),
    "mil": Unit("mil", "mil"),
    "mils": Unit("mil", "mil"),
    "m2": Unit("m²", "m2"),
    "m²": Unit("m²", "m2"),
    "cm2": Unit("cm²", "cm2"),
    "ft2": Unit("ft²", "ft2"),
    "mL": Unit("mL", "mL"),
    "ml": Unit("mL", "mL"),
    "L": Unit("L", "L"),
    "l": Unit("L", "L"),
    "gal": Unit("gal", "gallon"),
    "m3": Unit("m³", "m3"),
    "m³": Unit("m³", "m3"),
    "ft3": Unit("ft³", "ft3"),
    "g": Unit("g", "g"),
    "kg": Unit("kg", "kg"),
    "mg": Unit("mg", "mg"),
    "oz": Unit("oz", "oz"),
    "lb": Unit("lb", "lb"),
    "g/mL": Unit("g/mL", "g/mL"),
    "g/cm3": Unit("g/cm³", "g/cm**3"),
    "kg/L": Unit("kg/L", "kg/L"),
    "g/L": Unit("g/L", "g/L"),
    "lb/gal": Unit("lb/gal", "lb/gallon"),
    "%": Unit("%", "percent"),
    "%RH": Unit("% RH", "percent"),
    "ppm": Unit("ppm", "part_per_million"),
    "degC": Unit("°C", "degC"),
    "°C": Unit("°C", "degC"),
    "degF": Unit("°F", "degF"),
    "°F": Unit("°F", "degF"),
    "K": Unit("K", "kelvin"),
    "min": Unit("min", "minute"),
    "s": Unit("s", "s"),
    "h": Unit("h", "hour"),
    "d": Unit("d", "day"),
    "day": Unit(_DAY[0], "day", _DAY[1]),
    "days": Unit(_DAY[0], "day", _DAY[1]),
    "week": Unit(_WEEK[0], "week", _WEEK[1]),
    "weeks": Unit(_WEEK[0], "week", _WEEK[1]),
    "m2/L": Unit("m²/L", "m2/L"),
    "ft2/gal": Unit("ft²/gal", "ft2/gallon"),
    "g/s": Unit("g/s", "g/s"),
    "g/min": Unit("g/min", "g/minute"),
    "g/h": Unit("g/h", "g/hour"),
    "mg/h": Unit("mg/h", "mg/hour"),
    "m/s": Unit("m/s", "m/s"),
    "m/min": Unit("m/min", "m/minute"),
    "ft/min": Unit("ft/min", "ft/minute"),
    "bar": Unit("bar", "bar"),
    "kPa": Unit("kPa", "kPa"),
    "MPa": Unit("MPa", "MPa"),
    "psi": Unit("psi", "psi"),
    "mg/m2": Unit("mg/m²", "mg/m2"),
    "g/m2": Unit("g/m²", "g/m2"),
    "GU": Unit("GU", "GU"),
    "kJ/g": Unit("kJ/g", "kilojoule_per_gram"),
    "m3/h": Unit("m³/h", "m3/hour"),
    "m³/h": Unit("m³/h", "m3/hour"),
    "m3/min": Unit("m³/min", "m3/minute"),
    "ft3/min": Unit("ft³/min", "ft3/minute"),
    "mg/m3": Unit("mg/m³", "mg/m3"),
    "mg/m³": Unit("mg/m³", "mg/m3"),
    "ug/m3": Unit("µg/m³", "ug/m3"),
    "g/m3": Unit("g/m³", "g/m3"),
    "g/mol": Unit("g/mol", "g/mol"),
    "L/mol": Unit("L/mol", "L/mol"),
    "m3/L": Unit("m³/L"),
    "ft3/gal": Unit("ft³/gal"),
    "g O3/g": Unit("g O₃/g"),
    "t": Unit("t"),
    "mg/kg": Unit("mg/kg"),
    "mg/L": Unit("mg/L"),
}
"""As written, to what it means and how it is printed. A unit without a line here is in no kind and cannot be printed."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of quantity.

    `units` are those of `UNITS` that an author may write; the first is the base in which values are compared. `lowest` and
    `highest`, in the base unit, are bounds of polarity: outside them a value is a slip of the pen.
    """

    name: str
    units: tuple[str, ...]
    lowest: Fraction | None = Fraction(0)
    highest: Fraction | None = None
    difference: bool = field(default=False)

    @property
    def base(self) -> str:
        return self.units[0]

    def scale(self, unit: str) -> tuple[Fraction, Fraction]:
        """Factor and offset from `unit` to the base unit; a difference has none. Raises KeyError for a unit of another kind."""
        if unit not in self.units:
            raise KeyError(f"{unit} is no unit of the kind {self.name}")
        factor, offset = scale(UNITS[unit].meaning, UNITS[self.base].meaning)
        return factor, Fraction(0) if self.difference else offset


_HUNDRED = Fraction(100)
_LENGTH = ("mm", "cm", "m", "in", "ft")
_TIME = (
    "min",
    "s",
    "h",
    "d",
    "day",
    "days",
    "week",
    "weeks",
)
_PERCENT = ("%",)

_TABLE = (
    Kind(
        "thickness",
        ("um", "µm", "μm", "mm", "mil", "mils"),
        highest=Fraction(100_000),
    ),
    Kind("length", _LENGTH, highest=Fraction(1_000_000)),
    Kind("area", ("m2", "m²", "cm2", "ft2"), highest=Fraction(1_000_000)),
    Kind("volume", ("mL", "ml", "L", "l", "gal"), highest=Fraction(10**10)),
    Kind("mass", ("g", "kg", "mg", "oz", "lb"), highest=Fraction(10**10)),
    Kind("density", ("g/mL", "g/cm3", "kg/L", "lb/gal"), highest=Fraction(25)),
    Kind("share", _PERCENT, highest=_HUNDRED),
    Kind("percentage", _PERCENT, highest=Fraction(1000)),
    Kind("humidity", ("%", "%RH"), highest=_HUNDRED),
    Kind(
        "temperature",
        ("degC", "°C", "degF", "°F"),
        lowest=Fraction(-273),
        highest=Fraction(2000),
    ),
    Kind(
        "temperature_difference",
        (
            "K",
            "degC",
            "°C",
            "degF",
            "°F",
        ),
        highest=Fraction(500),
        difference=True,
    ),
    Kind("duration", _TIME, highest=Fraction(60 * 24 * 366 * 30)),
    Kind("spreading_rate", ("m2/L", "ft2/gal"), highest=Fraction(10_000)),
    Kind("spray_rate", ("g/s",), highest=Fraction(1000)),
    Kind("speed", ("m/s", "m/min", "ft/min"), highest=Fraction(1000)),
    Kind("pressure", ("bar", "kPa", "MPa", "psi"), highest=Fraction(10_000)),
    Kind("voc_content", ("g/L", "lb/gal"), highest=Fraction(3000)),
    Kind("surface_density", ("mg/m2", "g/m2"), highest=Fraction(10**6)),
    Kind("gloss", ("GU",), highest=Fraction(2000)),
    Kind("heat", ("kJ/g",), highest=Fraction(200)),
    Kind(
        "air_flow",
        ("m3/h", "m³/h", "m3/min", "ft3/min"),
        highest=Fraction(10**9),
    ),
    Kind("room_volume", ("m3", "m³", "L", "ft3"), highest=Fraction(10**7)),
    Kind("concentration", ("mg/m3", "mg/m³", "ug/m3", "g/m3"), highest=Fraction(10**7)),
    # A share of the air by volume: a limit of exposure in ppm and an explosive limit in % are of one kind.
    Kind("vapour_share", ("ppm", "%"), highest=Fraction(10**6)),
    Kind("release_rate", ("g/h", "mg/h", "g/min", "g/s"), highest=Fraction(10**9)),
    Kind("molar_mass", ("g/mol",), highest=Fraction(100_000)),
    Kind("molar_volume", ("L/mol",), highest=Fraction(1000)),
)

KINDS: Mapping[str, Kind] = {kind.name: kind for kind in _TABLE}
