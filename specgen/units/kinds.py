"""The units an author may write, each with what it means and how it is printed, and the kinds of quantity that accept them.

How else people spell a unit stands in `SPELLINGS`: read wherever the unit is, printed in the one form of the unit. A spelling
that means two things to two readers (C, m for minutes) is in neither; `AMBIGUOUS` says what to write instead.

A kind is more than a dimension: a temperature and a temperature difference, a film and a length, a share by mass and a relative
humidity are different things with different units. Called by `quantity` and `display`, and by the model for its field types.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
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
_MONTH, _YEAR = N_n("month", "months"), N_n("year", "years")
_SWING, _CYCLE = N_n("oscillation", "oscillations"), N_n("cycle", "cycles")
_RUB, _HOLIDAY = N_n("double rub", "double rubs"), N_n("holiday", "holidays")


_UNITS: Mapping[str, Unit] = {
    "um": Unit("µm", "um"),
    "mm": Unit("mm", "mm"),
    "cm": Unit("cm", "cm"),
    "m": Unit("m", "m"),
    "in": Unit("in", "inch"),
    "ft": Unit("ft", "ft"),
    "mil": Unit("mil", "mil"),
    "m2": Unit("m²", "m2"),
    "cm2": Unit("cm²", "cm2"),
    "ft2": Unit("ft²", "ft2"),
    "mL": Unit("mL", "mL"),
    "L": Unit("L", "L"),
    "fl oz": Unit("fl oz", "fluid_ounce"),
    "gal": Unit("US gal", "gallon"),
    "m3": Unit("m³", "m3"),
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
    "g/kg": Unit("g/kg", "g/kg"),
    "degC": Unit("°C", "degC"),
    "degF": Unit("°F", "degF"),
    "K": Unit("K", "kelvin"),
    "min": Unit("min", "minute"),
    "s": Unit("s", "s"),
    "h": Unit("h", "hour"),
    "day": Unit(_DAY[0], "day", _DAY[1]),
    "week": Unit(_WEEK[0], "week", _WEEK[1]),
    "month": Unit(_MONTH[0], "month", _MONTH[1]),
    "year": Unit(_YEAR[0], "year", _YEAR[1]),
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
    "kgf/cm2": Unit("kgf/cm²", "kilogram_force/cm2"),
    "J": Unit("J", "joule"),
    "kg.cm": Unit("kg·cm", "kilogram_force_centimetre"),
    "kg.m": Unit("kg·m", "kilogram_force_metre"),
    "in.lb": Unit("in·lb", "inch_pound"),
    "ft.lb": Unit("ft·lb", "foot_pound"),
    "mPa.s": Unit("mPa·s", "millipascal_second"),
    "KU": Unit("KU", "krebs_unit"),
    "kJ/m2": Unit("kJ/m²", "kilojoule_per_square_metre"),
    "oscillation": Unit(_SWING[0], "oscillation", _SWING[1]),
    "cycle": Unit(_CYCLE[0], "cycle", _CYCLE[1]),
    "double rub": Unit(_RUB[0], "double_rub", _RUB[1]),
    "holiday": Unit(_HOLIDAY[0], "holiday", _HOLIDAY[1]),
    "dE*ab": Unit("ΔEab", "colour_difference_ab"),
    "dE00": Unit("ΔE₀₀", "colour_difference_2000"),
    "dECMC": Unit("ΔE(CMC)", "colour_difference_cmc"),
    "dE": Unit("ΔE", "colour_difference"),
    "mg/m2": Unit("mg/m²", "mg/m2"),
    "g/m2": Unit("g/m²", "g/m2"),
    "ug/cm2": Unit("µg/cm²", "ug/cm2"),
    "uS/cm": Unit("µS/cm", "microsiemens_per_centimetre"),
    "V": Unit("V", "V"),
    "kV": Unit("kV", "kV"),
    "GU": Unit("GU", "GU"),
    "kJ/g": Unit("kJ/g", "kilojoule_per_gram"),
    "m3/h": Unit("m³/h", "m3/hour"),
    "m3/min": Unit("m³/min", "m3/minute"),
    "ft3/min": Unit("ft³/min", "ft3/minute"),
    "mg/m3": Unit("mg/m³", "mg/m3"),
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

SPELLINGS: Mapping[str, str] = {
    "µm": "um",  # the micro sign
    "μm": "um",  # the Greek letter
    "micron": "um",
    "microns": "um",
    "mils": "mil",
    "inch": "in",
    "inches": "in",
    "foot": "ft",
    "feet": "ft",
    "m²": "m2",
    "sq m": "m2",
    "cm²": "cm2",
    "ft²": "ft2",
    "sq ft": "ft2",
    "ml": "mL",
    "l": "L",
    "litre": "L",
    "litres": "L",
    "liter": "L",
    "liters": "L",
    "US fl oz": "fl oz",
    "US gal": "gal",
    "gallon": "gal",  # of the US, as gal is; printed as such
    "gallons": "gal",
    "US gallon": "gal",
    "US gallons": "gal",
    "m³": "m3",
    "ft³": "ft3",
    "lbs": "lb",
    "g/ml": "g/mL",
    "g/cm³": "g/cm3",
    "kg/l": "kg/L",
    "g/l": "g/L",
    "lbs/gal": "lb/gal",
    "lb/US gal": "lb/gal",
    "% RH": "%RH",
    "°C": "degC",
    "deg C": "degC",
    "°F": "degF",
    "deg F": "degF",
    "mins": "min",
    "minute": "min",
    "minutes": "min",
    "sec": "s",
    "second": "s",
    "seconds": "s",
    "hr": "h",
    "hrs": "h",
    "hour": "h",
    "hours": "h",
    "d": "day",
    "days": "day",
    "weeks": "week",
    "months": "month",
    "years": "year",
    "m²/L": "m2/L",
    "m2/l": "m2/L",
    "m²/l": "m2/L",
    "ft²/gal": "ft2/gal",
    "sq ft/gal": "ft2/gal",
    "µS/cm": "uS/cm",
    "mg/m²": "mg/m2",
    "g/m²": "g/m2",
    "µg/cm2": "ug/cm2",
    "µg/cm²": "ug/cm2",
    "m³/h": "m3/h",
    "m³/min": "m3/min",
    "ft³/min": "ft3/min",
    "cfm": "ft3/min",
    "N/mm2": "MPa",
    "N/mm²": "MPa",
    "MN/m2": "MPa",
    "kgf/cm²": "kgf/cm2",
    "kg/cm2": "kgf/cm2",  # a kilogram that pulls is a kilogram-force
    "kg/cm²": "kgf/cm2",
    "kgf.cm": "kg.cm",
    "kg·cm": "kg.cm",
    "kg-cm": "kg.cm",
    "kgf·cm": "kg.cm",
    "kgf.m": "kg.m",
    "kg·m": "kg.m",
    "in·lb": "in.lb",
    "in-lb": "in.lb",
    "in-lbs": "in.lb",
    "in.lbf": "in.lb",
    "in-lbf": "in.lb",
    "ft·lb": "ft.lb",
    "ft-lb": "ft.lb",
    "mPa·s": "mPa.s",
    "mPas": "mPa.s",
    "kJ/m²": "kJ/m2",
    "oscillations": "oscillation",
    "swing": "oscillation",
    "swings": "oscillation",
    "cycles": "cycle",
    "double rubs": "double rub",
    "holidays": "holiday",
    "pore": "holiday",
    "pores": "holiday",
    "pinhole": "holiday",
    "pinholes": "holiday",
    "dEab": "dE*ab",
    "ΔE*ab": "dE*ab",
    "ΔEab": "dE*ab",
    "ΔE00": "dE00",
    "ΔE": "dE",
    "mg/m³": "mg/m3",
    "µg/m³": "ug/m3",
    "g/m³": "g/m3",
}
"""As some write it, to the unit that it is: in every kind that accepts the unit, and printed as the unit is."""

AMBIGUOUS: Mapping[tuple[str, str], str] = {
    ("temperature", "C"): "write degC or °C",
    ("temperature", "F"): "write degF or °F",
    ("temperature_difference", "C"): "write K",
    ("temperature_difference", "F"): "write degF or °F",
    ("duration", "m"): "m is the metre: write min for minutes",
    ("volume", "oz"): "oz is a mass: write fl oz for a volume",
}
"""By kind and spelling what is not read because it can be read two ways, to what to write instead."""

UNITS: Mapping[str, Unit] = {**_UNITS, **{written: _UNITS[unit] for written, unit in SPELLINGS.items()}}
"""As written, to what it means and how it is printed. A unit without a line here is in no kind and cannot be printed."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of quantity.

    `units` are those of `UNITS` that an author may write, spellings included; the first is the base in which values are
    compared. `lowest` and `highest`, in the base unit, are bounds of polarity: outside them a value is a slip of the pen.
    """

    name: str
    units: tuple[str, ...]
    lowest: Fraction | None = Fraction(0)
    highest: Fraction | None = None
    difference: bool = field(default=False)

    @property
    def base(self) -> str:
        return self.units[0]

    @property
    def offered(self) -> tuple[str, ...]:
        """One spelling of each unit, for a remedy."""
        return tuple(unit for unit in self.units if unit not in SPELLINGS)

    @property
    def example(self) -> tuple[str, str]:
        """Two figures that an author may write, the smaller first."""
        return ("40", "60") if self.highest is None or self.highest >= _HUNDRED else ("1", "1.5")

    def scale(self, unit: str) -> tuple[Fraction, Fraction]:
        """Factor and offset from `unit` to the base unit; a difference has none. Raises KeyError for a unit of another kind."""
        if unit not in self.units:
            raise KeyError(f"{unit} is no unit of the kind {self.name}")
        factor, offset = scale(UNITS[unit].meaning, UNITS[self.base].meaning)
        return factor, Fraction(0) if self.difference else offset


_HUNDRED = Fraction(100)
MINUTES_OF_A_YEAR = Fraction(60 * 24 * 366)
"""Of the longest year, for the bound of a duration."""

_LENGTH = ("mm", "cm", "m", "in", "ft")
_TIME = ("min", "s", "h", "day", "week", "month", "year")
_PERCENT = ("%",)

_TABLE = (
    Kind(
        "thickness",
        ("um", "mm", "mil"),
        highest=Fraction(100_000),
    ),
    Kind("length", _LENGTH, highest=Fraction(1_000_000)),
    Kind("area", ("m2", "cm2", "ft2"), highest=Fraction(1_000_000)),
    Kind("volume", ("mL", "L", "fl oz", "gal"), highest=Fraction(10**10)),
    Kind("mass", ("g", "kg", "mg", "oz", "lb"), highest=Fraction(10**10)),
    Kind("density", ("g/mL", "g/cm3", "kg/L", "lb/gal"), highest=Fraction(25)),
    Kind("share", _PERCENT, highest=_HUNDRED),
    Kind("percentage", _PERCENT, highest=Fraction(1000)),
    Kind("humidity", ("%", "%RH"), highest=_HUNDRED),
    Kind(
        "temperature",
        ("degC", "degF"),
        lowest=Fraction(-273),
        highest=Fraction(2000),
    ),
    Kind(
        "temperature_difference",
        ("K", "degC", "degF"),
        highest=Fraction(500),
        difference=True,
    ),
    Kind("duration", _TIME, highest=150 * MINUTES_OF_A_YEAR),
    Kind("spreading_rate", ("m2/L", "ft2/gal"), highest=Fraction(10_000)),
    Kind("spray_rate", ("g/s",), highest=Fraction(1000)),
    Kind("speed", ("m/s", "m/min", "ft/min"), highest=Fraction(1000)),
    Kind("pressure", ("bar", "kPa", "MPa", "psi", "kgf/cm2"), highest=Fraction(10_000)),
    Kind("voc_content", ("g/L", "lb/gal"), highest=Fraction(3000)),
    Kind("surface_density", ("mg/m2", "g/m2", "ug/cm2"), highest=Fraction(10**6)),
    Kind("conductivity", ("uS/cm",), highest=Fraction(10**6)),
    Kind("voltage", ("V", "kV"), highest=Fraction(100_000)),
    Kind("gloss", ("GU",), highest=Fraction(2000)),
    Kind("heat", ("kJ/g",), highest=Fraction(200)),
    Kind(
        "air_flow",
        ("m3/h", "m3/min", "ft3/min"),
        highest=Fraction(10**9),
    ),
    Kind("room_volume", ("m3", "L", "ft3"), highest=Fraction(10**7)),
    Kind("concentration", ("mg/m3", "ug/m3", "g/m3"), highest=Fraction(10**7)),
    # A share of the air by volume: a limit of exposure in ppm and an explosive limit in % are of one kind.
    Kind("vapour_share", ("ppm", "%"), highest=Fraction(10**6)),
    # Water vapour in air, in a cubic metre and for each kilogram of dry air.
    Kind("absolute_humidity", ("g/m3",), highest=Fraction(1000)),
    Kind("humidity_ratio", ("g/kg",), highest=Fraction(1000)),
    Kind("release_rate", ("g/h", "mg/h", "g/min", "g/s"), highest=Fraction(10**9)),
    Kind("molar_mass", ("g/mol",), highest=Fraction(100_000)),
    Kind("molar_volume", ("L/mol",), highest=Fraction(1000)),
    Kind("impact", ("J", "kg.cm", "kg.m", "in.lb", "ft.lb"), highest=Fraction(10_000)),
    Kind("viscosity", ("mPa.s",), highest=Fraction(10**7)),
    Kind("krebs", ("KU",), highest=Fraction(1000)),
    Kind("radiant_exposure", ("kJ/m2",), highest=Fraction(10**7)),
    Kind("swings", ("oscillation",), highest=Fraction(100_000)),
    Kind("cycles", ("cycle",), highest=Fraction(100_000)),
    Kind("double_rubs", ("double rub",), highest=Fraction(100_000)),
    Kind("holidays", ("holiday",), highest=Fraction(100_000)),
    Kind("colour_difference_ab", ("dE*ab",), highest=Fraction(1000)),
    Kind("colour_difference_2000", ("dE00",), highest=Fraction(1000)),
    Kind("colour_difference_cmc", ("dECMC",), highest=Fraction(1000)),
    # a difference whose formula is not named: read, so that what is missing can be said
    Kind("colour_difference", ("dE",), highest=Fraction(1000)),
)


def _with_spellings(kind: Kind) -> Kind:
    spelt = (written for unit in kind.units for written in (unit, *(k for k, of in SPELLINGS.items() if of == unit)))
    return replace(kind, units=tuple(spelt))


KINDS: Mapping[str, Kind] = {kind.name: _with_spellings(kind) for kind in _TABLE}
