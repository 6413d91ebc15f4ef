"""Limits of exposure at work: which hold for a substance, in a jurisdiction, on a day.

Every limit carries its body, period and source; many are from memory and say so. Called by `ventilation`, by the rules
on hazards and by views.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from specgen.standards.citations import Citation
from specgen.standards.tables import Row, table
from specgen.trade.given import Given, Source
from specgen.trade.known import NotKnown
from specgen.trade.vapour import counted_at, share_to_concentration
from specgen.trade.working import Working
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

_LIMITS = "exposure_limits"
LONG = "8 h"


@dataclass(frozen=True, slots=True)
class ExposureLimit:
    """One limit, in ppm, in mg/m3 or in both, as its document prints it; `as_nco` counts all isocyanate as NCO.

    `since` and `until` are days, empty where none was read.
    """

    id: str
    substance: str
    jurisdiction: str
    body: str
    period: str
    ppm: Quantity | None
    concentration: Quantity | None
    as_nco: bool
    since: str
    until: str
    source: Citation

    def in_air(self, id: str, molar_mass: Source | None) -> Given | Working | NotKnown:
        """The limit in mg/m3: as printed, else from ppm at the temperature its jurisdiction counts at."""
        if self.concentration is not None:
            return Given(self.concentration, f"table:{_LIMITS}")
        if self.ppm is None or molar_mass is None:
            what = phrase("limit of {substance} in mg/m3", substance=self.substance)
            return NotKnown(what, "it is stated in ppm and the molar mass is not known", ("molar mass",))
        at = counted_at(self.jurisdiction)
        if at is None:
            what = phrase("limit of {substance} in mg/m3", substance=self.substance)
            why = f"the temperature at which {self.jurisdiction} converts ppm was not read"
            return NotKnown(what, why, ("temperature of the ppm",))
        return share_to_concentration(id, Given(self.ppm, f"table:{_LIMITS}"), molar_mass, at)


def exposure_limits(jurisdiction: str, on: date, cas: str) -> tuple[ExposureLimit, ...]:
    """The limits of one substance in a jurisdiction (EU, GB, US, CA-ON, NZ) on a day; empty where none was read."""
    return _found(jurisdiction, on, cas=cas, as_nco=False)


def nco_limits(jurisdiction: str, on: date) -> tuple[ExposureLimit, ...]:
    """The limits of a whole group counted as NCO, on a day: only these cover the prepolymer in the mist.

    The British ones name isocyanates, those of the EU diisocyanates; the US has none, only limits of single monomers.
    """
    return _found(jurisdiction, on, cas="", as_nco=True)


def _found(jurisdiction: str, on: date, *, cas: str, as_nco: bool) -> tuple[ExposureLimit, ...]:
    day = on.isoformat()
    return tuple(
        _limit(row)
        for row in table(_LIMITS).rows
        if row["jurisdiction"] == jurisdiction
        and row["cas"] == cas
        and (row["as_nco"] == "yes") == as_nco
        and (not row["from"] or row["from"] <= day)
        and (not row["until"] or day <= row["until"])
    )


def _limit(row: Row) -> ExposureLimit:
    return ExposureLimit(
        row["id"],
        row["substance"],
        row["jurisdiction"],
        row["body"],
        row["period"],
        _quantity("vapour_share", row["ppm"], "ppm"),
        _quantity("concentration", row["mg_m3"], "mg/m3"),
        row["as_nco"] == "yes",
        row["from"],
        row["until"],
        table(_LIMITS).row_citation(row),
    )


def _quantity(kind: str, text: str, unit: str) -> Quantity | None:
    return Quantity.of(kind, Fraction(text), unit, text) if text else None
