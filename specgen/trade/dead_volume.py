"""Dead volume: the paint that fills the profile of a blasted surface before any film stands above it.

Three conventions are in use and differ by half: at a 75 um profile 50, 35 and 75 um. A figure without its convention
means nothing, so there is no default. 1 mL on 1 m2 is 1 um: the result is a dry film in um. Called by `consumption`
and the rules on it.
"""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from specgen.standards.citations import Basis, cite
from specgen.standards.tables import Row, table
from specgen.trade.given import Source, amount, take, take_cell
from specgen.trade.working import Working, WorkingError, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_BY_ROUGHNESS, _BY_BAND = "dead_volume_by_roughness", "dead_volume_by_profile_band"
_WHOLE = cite("SURFACE-PROFILE-ARTICLE", "whole profile height", Basis.SECONDARY)
_NAME = N_("dead volume, as DFT")


class DeadVolume(StrEnum):
    """The convention; the value is the wording that is printed."""

    BY_ROUGHNESS = N_("in proportion to the roughness Rz")
    BY_BAND = N_("by band of the profile height")
    WHOLE_PROFILE = N_("the whole profile height")


def dead_volume(id: str, profile: Source, convention: DeadVolume) -> Working:
    """Dry film in um lost in the profile; counted for the first coat only.

    `profile` is Rz or the profile height. Raises WorkingError where it lies beyond a table by bands.
    """
    match convention:
        case DeadVolume.BY_ROUGHNESS:
            return _in_proportion(id, profile)
        case DeadVolume.BY_BAND:
            return _by_band(id, profile)
        case DeadVolume.WHOLE_PROFILE:
            height = take("h", "profile height", profile, "thickness", "um")
            return work(
                id, _NAME, "h", (height,), kind="thickness", unit="um", places=0, source=_WHOLE, note=str(convention)
            )


def _in_proportion(id: str, profile: Source) -> Working:
    found = table(_BY_ROUGHNESS)
    # The published rows lie on one line through zero, so any of them gives the proportion.
    last = found.rows[-1]
    inputs = (
        take("Rz", "roughness", profile, "thickness", "um"),
        take_cell("DV_t", "dead volume in the table", _BY_ROUGHNESS, last, "dead_volume_um", "thickness", "um"),
        take_cell("Rz_t", "at the roughness", _BY_ROUGHNESS, last, "Rz_um", "thickness", "um"),
    )
    note = str(DeadVolume.BY_ROUGHNESS)
    return work(
        id, _NAME, "Rz * DV_t / Rz_t", inputs, kind="thickness", unit="um", places=0, source=found.citation, note=note
    )


def _by_band(id: str, profile: Source) -> Working:
    found, height = table(_BY_BAND), amount(profile)
    if not isinstance(height, Quantity) or height.kind != "thickness":
        raise TypeError("the profile height is not a thickness")
    row = _band(found.rows, height.base)
    if row is None:
        raise WorkingError(f"a profile of {height} is outside the table, which ends at {found.rows[-1]['to_um']} um")
    inputs = (take_cell("DV", "dead volume in the table", _BY_BAND, row, "dead_volume_um", "thickness", "um"),)
    surface = row["surface"]
    note = phrase(
        "{convention}: {height} lies in {low} to {high} um, {surface}",
        convention=phrase(DeadVolume.BY_BAND.value),
        height=height,
        low=row["from_um"],
        high=row["to_um"],
        surface=phrase(surface),
    )
    return work(id, _NAME, "DV", inputs, kind="thickness", unit="um", places=0, source=found.citation, note=note)


def _band(rows: tuple[Row, ...], height: Fraction) -> Row | None:
    """The band of a height; on the border of two the deeper one, for paint short is worse than paint over."""
    held = [row for row in rows if Fraction(row["from_um"]) <= height <= Fraction(row["to_um"])]
    return held[-1] if held else None
