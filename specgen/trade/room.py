"""Vapour in a room whose air is mixed: how it rises while the work goes on, and when the room may be entered again.

A mixed room is a picture: at the spray cone, in pits and over sills the air is far worse. With isocyanate the measured
clearance time that is posted at the booth decides, never this. Called by the rules on hazards, the method statement and
the schedule.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from specgen.standards.citations import ARITHMETIC
from specgen.standards.tables import table
from specgen.trade.exposure import ExposureLimit
from specgen.trade.given import Source, take
from specgen.trade.known import NotKnown
from specgen.trade.vapour import mixing_factor
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_, phrase

_MINUTES = N_("60: minutes in an hour")
POSTED_TIME_DECIDES = (
    "With isocyanate the clearance time measured and posted for this booth or room takes precedence; "
    "the figure is no substitute for it."
)


class Remaining(NamedTuple):
    """What hangs in the air when the work ends: concentration in mg/m3, the limit to come down to."""

    substance: str
    concentration: Source
    limit: ExposureLimit
    molar_mass: Source | None = None


class ReEntry(NamedTuple):
    """Time in minutes for each substance to fall to its limit, and the longest; none can be judged where one cannot."""

    each: tuple[Working | NotKnown, ...]
    longest: Working | NotKnown
    parts: tuple[Working, ...]
    caution: str


def concentration_in_room(
    id: str, release: Source, flow: Source, room: Source, mixing: Source, time: Source, start: Source | None = None
) -> Working:
    """Concentration in mg/m3 after `time` with a steady release, from nothing or from `start`.

    Source: balance of a well-mixed room. Raises WorkingError for no flow.
    """
    first = take("G", "emitted", release, "release_rate", "mg/h")
    return _filling(id, "concentration in the room", first, flow, room, mixing, time, start, ("concentration", "mg/m3"))


def share_in_room(
    id: str, vapour: Source, flow: Source, room: Source, mixing: Source, time: Source, start: Source | None = None
) -> Working:
    """Vapour share in ppm after `time` with a steady flow of vapour; else as `concentration_in_room`."""
    first = take("G", "vapour emitted", vapour, "air_flow", "m3/h")
    return _filling(id, "vapour in the room", first, flow, room, mixing, time, start, ("vapour_share", "ppm"))


def clearing_time(id: str, start: Source, wanted: Source, flow: Source, room: Source, mixing: Source) -> Working:
    """Minutes until the air has come down from one concentration to another, in mg/m3; 0 where it is there already.

    Source: balance of a well-mixed room. Raises WorkingError for no flow, or a wanted concentration of nothing.
    """
    inputs = (
        *_room(flow, room, mixing),
        take("C_0", "concentration at the end of spraying", start, "concentration", "mg/m3"),
        take("C", "required concentration", wanted, "concentration", "mg/m3"),
    )
    return _clearing(id, "re-entry time", inputs)


def clearing_time_of_index(
    id: str, start: Source, wanted: Source, flow: Source, room: Source, mixing: Source
) -> Working:
    """The same for the sum of concentrations over their limits, both bare numbers."""
    inputs = (
        *_room(flow, room, mixing),
        take("C_0", "sum of the ratios to the limits at the end of spraying", start),
        take("C", "required sum of the ratios", wanted),
    )
    return _clearing(id, "re-entry time", inputs)


def re_entry(
    id: str, remaining: Sequence[Remaining], flow: Source, room: Source, mixing: Source, *, isocyanates: bool
) -> ReEntry:
    """When the room may be entered without breathing protection: every substance at or below its limit."""
    each: list[Working | NotKnown] = []
    parts: list[Working] = []
    for number, entry in enumerate(remaining, start=1):
        wanted = entry.limit.in_air(f"{id}.limit_{number}", entry.molar_mass)
        if isinstance(wanted, NotKnown):
            each.append(wanted)
            continue
        if isinstance(wanted, Working):
            parts.append(wanted)
        each.append(clearing_time(f"{id}.{number}", entry.concentration, wanted, flow, room, mixing))
    caution = POSTED_TIME_DECIDES if isocyanates else ""
    return ReEntry(tuple(each), _longest(f"{id}.longest", each), tuple(parts), caution)


def posted_clearance(place: str) -> str:
    """How long a booth, a spray room or an open workshop usually takes, as the authority says it.

    Raises KeyError for a place that is not in the table clearance_times.
    """
    row = table("clearance_times").row("place", place)
    return f"{row['low_min']} to {row['high_min']} min" if row["low_min"] else f"{row['high_min']} min"


def usual_clearance() -> int:
    """Minutes an open workshop usually takes to clear, where nobody has measured it."""
    return int(table("clearance_times").row("place", "open workshop, not measured")["high_min"])


def _room(flow: Source, room: Source, mixing: Source) -> tuple[Input, Input, Input]:
    return (
        take("Q", "air flow", flow, "air_flow", "m3/h"),
        take("V", "room volume", room, "room_volume", "m3"),
        mixing_factor(mixing),
    )


def _filling(
    id: str,
    name: str,
    release: Input,
    flow: Source,
    room: Source,
    mixing: Source,
    time: Source,
    start: Source | None,
    result: tuple[str, str],
) -> Working:
    kind, unit = result
    gone = "exp(Q * t / (60 * K * V))"
    inputs: tuple[Input, ...] = (release, *_room(flow, room, mixing), take("t", "time", time, "duration", "min"))
    # A share of the air comes out as a bare ratio and is counted in parts of a million.
    parts = " * 1000000" if unit == "ppm" else ""
    formula = f"G * K / Q * (1 - 1 / {gone}){parts}"
    if start is not None:
        inputs = (*inputs, take("C_0", "at the start", start, kind, unit))
        formula = f"{formula} + C_0 / {gone}"
    note = f"{_MINUTES}; 1000000: parts in a million" if parts else _MINUTES
    return work(id, name, formula, inputs, kind=kind, unit=unit, places=2, source=ARITHMETIC, note=note)


def _clearing(id: str, name: str, inputs: tuple[Input, ...]) -> Working:
    formula = "60 * K * V / Q * ln(max(C_0 / C, 1))"
    return work(id, name, formula, inputs, kind="duration", unit="min", places=1, source=ARITHMETIC, note=_MINUTES)


def _longest(id: str, each: Sequence[Working | NotKnown]) -> Working | NotKnown:
    known = [entry for entry in each if isinstance(entry, Working)]
    gaps = [entry for entry in each if isinstance(entry, NotKnown)]
    if gaps or not known:
        missing = tuple(item for gap in gaps for item in gap.missing)
        return NotKnown("re-entry time", "not every substance can be assessed", missing, tuple(known))
    inputs = tuple(
        take(f"t_{n}", phrase("time of substance {n}", n=n), entry, "duration", "min")
        for n, entry in enumerate(known, 1)
    )
    formula = f"max({', '.join(entry.symbol for entry in inputs)})" if len(known) > 1 else "t_1"
    name = N_("re-entry time")
    return work(id, name, formula, inputs, kind="duration", unit="min", places=1, source=ARITHMETIC)
