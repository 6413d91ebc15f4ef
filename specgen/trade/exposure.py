"""Limits of exposure at work: which hold for a substance, in a jurisdiction, on a day, and what a list notes of the skin.

Every limit carries its body, period and source; those from memory say so. Where a country has none of its own for a
substance, those of the law it stands under hold, as the EU's do for a member state; its own may be stricter. Called by
`ventilation`, by the rules on hazards and by views.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from specgen.standards.citations import Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.codes import firmest
from specgen.trade.given import Given, Source
from specgen.trade.known import NotKnown
from specgen.trade.vapour import counted_at, share_to_concentration
from specgen.trade.working import Working
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

_LIMITS = "exposure_limits"
_LASTING = frozenset({"8 h", "up to 10 h"})
_SKIN = "skin"


class ExposureLimit(NamedTuple):
    """One limit, in ppm, in mg/m3 or in both, as its document prints it; `as_nco` counts all isocyanate as NCO.

    `since` and `until` are days, empty where none was read. `binding` is False for what is indicative or recommended.
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
    binding: bool = True

    @property
    def lasting(self) -> bool:
        """True for the mean of a working day; False for a short-term limit or a ceiling."""
        return self.period in _LASTING

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
    """The limits of one substance in a jurisdiction on a day, else those it stands under; empty where none was read.

    Without a registry number there are none: the rows without one are groups.
    """
    return _in_force(jurisdiction, on, cas, as_nco=False) if cas else ()


def nco_limits(jurisdiction: str, on: date) -> tuple[ExposureLimit, ...]:
    """The limits of a whole group counted as NCO, on a day: only these cover the prepolymer in the mist.

    The British ones name isocyanates, those of the EU diisocyanates; the US has none, only limits of single monomers.
    """
    return _in_force(jurisdiction, on, "", as_nco=True)


def laws_with_limits(jurisdictions: Sequence[str]) -> tuple[str, ...]:
    """Of the laws named those to go by: one with no limits of its own adds nothing to the law it stands under beside it."""
    return tuple(law for law in jurisdictions if has_own_limits(law) or law_above(law) not in jurisdictions)


def has_own_limits(jurisdiction: str) -> bool:
    """True where limits of this very jurisdiction are in the tables."""
    return jurisdiction in _laws()


@remembered
def law_above(jurisdiction: str) -> str:
    """The law a jurisdiction stands under; empty where it stands under none."""
    rows = table("exposure_laws").rows
    return next((row["under"] for row in rows if row["jurisdiction"] == jurisdiction), "")


@remembered
def skin_noted(cas: str) -> Citation | None:
    """Whose list notes that a substance is absorbed through the skin, the best confirmed; None where none does.

    It is true of the substance wherever the work is done, whatever the law and the day.
    """
    return _noted(_rows().get(cas, ())) if cas else None


@remembered
def isocyanate_skin_noted() -> Citation | None:
    """The same of isocyanates as a group."""
    return _noted([row for row in _rows().get("", ()) if row["as_nco"] == "yes"])


def _noted(rows: Sequence[Row]) -> Citation | None:
    noted = [table(_LIMITS).row_citation(row) for row in rows if _SKIN in row["notation"].split(", ")]
    return firmest(noted) if noted else None


@remembered
def _rows() -> Mapping[str, tuple[Row, ...]]:
    """The rows by registry number; all groups stand under the empty one."""
    found: dict[str, tuple[Row, ...]] = {}
    for row in table(_LIMITS).rows:
        found[row["cas"]] = (*found.get(row["cas"], ()), row)
    return found


@remembered
def _laws() -> frozenset[str]:
    return frozenset(row["jurisdiction"] for row in table(_LIMITS).rows)


@remembered
def _in_force(jurisdiction: str, on: date, cas: str, *, as_nco: bool) -> tuple[ExposureLimit, ...]:
    day = on.isoformat()
    found = tuple(
        _limit(row)
        for row in _rows().get(cas, ())
        if row["jurisdiction"] == jurisdiction
        and (row["as_nco"] == "yes") == as_nco
        and (row["ppm"] or row["mg_m3"])
        and (not row["from"] or row["from"] <= day)
        and (not row["until"] or day <= row["until"])
    )
    above = law_above(jurisdiction)
    return found if found or not above else _in_force(above, on, cas, as_nco=as_nco)


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
        row["force"] == "binding",
    )


def _quantity(kind: str, text: str, unit: str) -> Quantity | None:
    return Quantity.of(kind, Fraction(text), unit, text) if text else None
