"""The published windows by temperature, and what a family is called in them. Called by the rules of this folder."""

from __future__ import annotations

from fractions import Fraction

from specgen.facts.placing import jobs_painted_with
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.standards.citations import LOGIC, PRACTICE, Citation
from specgen.standards.tables import Row, table
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up

_WINDOWS = table("recoat_windows")
_GROUPS = table("overcoat_groups")


def family_names(family: str) -> dict[str, Citation]:
    """What a window table may call a family, each with the word it is taken for it on.

    A coat with blocked hardener is taken like its two-pack parent, which is common practice.
    """
    names: dict[str, Citation] = {family: LOGIC}
    for row in _GROUPS.rows:
        if row["member"] == family and row["home"] == "binder_families":
            names.setdefault(row["id"], _GROUPS.row_citation(row))
    if "epoxy" in names:
        names.setdefault("epoxy_2k", PRACTICE)
    return names


def band_of(air: Quantity) -> Row | None:
    """The band of the published windows of polyurethane a temperature lies in; None below the first and above the last.

    The bands are of whole degrees, and a temperature is rounded to one: 90 degF belongs to the band that ends at 32 degC.
    """
    return next((row for row in bands() if in_band(row, air)), None)


def in_band(row: Row, air: Quantity) -> bool:
    """True where a temperature lies in the band of a row."""
    return int(row["surface_from_C"]) <= round_half_up(air.to("degC"), 0) <= int(row["surface_to_C"])


def bands() -> tuple[Row, ...]:
    """From cool to hot."""
    return tuple(row for row in _WINDOWS.rows if row["surface_from_C"])


def shrinkage(stated: Quantity, real: Quantity, column: str) -> Fraction | None:
    """How much shorter (below 1) or longer the published time is at `real` than at `stated`; None where a band is missing."""
    here, there = band_of(stated), band_of(real)
    if here is None or there is None:
        return None
    return Fraction(there[column]) / Fraction(here[column])


def warmest_part(system: System, spec: Spec) -> Quantity | None:
    """The warmest part, else air, of any job with the system."""
    highs = []
    for job in jobs_painted_with(system, spec):
        if job.climate is None:
            continue
        kept = job.climate.surface or job.climate.air
        if kept is not None and kept.high is not None:
            highs.append(kept.high)
    return max(highs, default=None)
