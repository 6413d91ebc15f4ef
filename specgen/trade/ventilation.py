"""Air flow for spraying, always for both hazards at once: explosion and exposure.

A flow below a quarter of the explosive limit is dozens of times too small for the lungs, so a statement on the explosive
limit alone is an error; one record holds both and there is no function for one of them. Dilution is no control for
isocyanates: they need the booth and air-fed breathing protection whatever the flow. Called by the rules on hazards,
the method statement and the risk part of a plan.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from specgen.standards.citations import ARITHMETIC
from specgen.standards.tables import Row, table
from specgen.trade.codes import weakest
from specgen.trade.exposure_flow import (
    Isocyanate,
    SubstanceFlow,
    Vapour,
    flow_for_all,
    flow_for_nco,
    flow_to_limit,
    largest,
)
from specgen.trade.given import Source, take, take_cell
from specgen.trade.known import NotKnown
from specgen.trade.vapour import At, Fuel, mixture_explosive_limit, vapour_flow
from specgen.trade.working import Working, work
from specgen.units.locale import N_

_SHARES = "explosive_limit_shares"
NO_CONTROL_FOR_ISOCYANATE = (
    "Dilution ventilation is not a control for isocyanates: "
    "a booth and air-fed breathing apparatus are required at any flow."
)


class AirFlow(NamedTuple):
    """Flows in m3/h: `explosion` to a share of the lower explosive limit, `each` to every limit of every vapour,
    `together` to the 8 h limits of all vapours at once, `nco` to each limit of isocyanate (empty without any), `needed`
    the largest of all; `times` is how many times the breath asks for more than the explosive limit.

    `parts` are the workings that the others are built on, for the annex.
    """

    explosion: Working | NotKnown
    each: tuple[SubstanceFlow, ...]
    together: Working | NotKnown
    nco: tuple[SubstanceFlow, ...]
    needed: Working | NotKnown
    times: Working | NotKnown
    parts: tuple[Working, ...]
    caution: str


def share_for_spraying(jurisdiction: str) -> Row:
    """The row of the table explosive_limit_shares for spraying under a law: its own, else that of common practice."""
    own = (row for row in table(_SHARES).rows if jurisdiction in row["used_by"].split())
    return next(own, None) or table(_SHARES).row("id", "spraying_practice")


def air_flow(
    id: str,
    vapours: Sequence[Vapour],
    mixing: Source,
    *,
    isocyanates: Isocyanate | None = None,
    share: str = "spraying",
    at: At = "20",
) -> AirFlow:
    """The air flow a job needs, for the explosive limit and for the lungs.

    `mixing` is the factor for air that does not mix well, a bare number of 1 or more; `share` is a row of the table
    explosive_limit_shares. Where a limit is not known the flow it would ask for cannot be
    judged, and neither can the flow needed.
    """
    parts: list[Working] = []
    explosion = _explosion(id, vapours, share, at, parts)
    each = [
        flow_to_limit(id, v.name, v.release, v.molar_mass, limit, mixing, parts) for v in vapours for limit in v.limits
    ]
    together = flow_for_all(id, vapours, mixing)
    nco = flow_for_nco(id, isocyanates, mixing, parts)
    flows = [explosion, together, *(entry.flow for entry in (*each, *nco))]
    if isocyanates is not None and not nco:
        flows.append(NotKnown("air flow for isocyanate", "no limit or emission of NCO is known", ("NCO",)))
    needed = largest(f"{id}.needed", N_("air flow required"), N_("air flow required, at least"), flows)
    breath = largest(
        f"{id}.breath",
        N_("air flow for the exposure limits"),
        N_("air flow for the exposure limits, at least"),
        flows[1:],
    )
    if isinstance(breath, Working):
        parts.append(breath)
    caution = NO_CONTROL_FOR_ISOCYANATE if isocyanates is not None else ""
    times = _times(f"{id}.times", breath, explosion)
    return AirFlow(explosion, tuple(each), together, nco, needed, times, tuple(parts), caution)


def _explosion(id: str, vapours: Sequence[Vapour], share: str, at: At, parts: list[Working]) -> Working | NotKnown:
    """Vapour over its share of the limit: the little that the vapour itself takes up is left on the safe side.

    What each vapour asks for adds up, so the known ones are the least where one is not known. What is stated not to burn
    asks for nothing.
    """
    what, missing = N_("air flow for the explosive limit"), []
    why = "the explosive limit of the mixed vapours is not known"
    fuels, burning = [], [vapour for vapour in vapours if vapour.burns is not False]
    for vapour in burning:
        if vapour.molar_mass is None or vapour.explosive_limit is None:
            missing.append(f"molar mass and lower explosive limit of {vapour.name}")
        else:
            fuels.append(Fuel(vapour.name, vapour.release, vapour.molar_mass, vapour.explosive_limit, vapour.document))
    if not fuels:
        return NotKnown(what, why, tuple(missing))
    row = table(_SHARES).row("id", share)
    vapour_in, limit = vapour_flow(f"{id}.vapour", fuels, at), mixture_explosive_limit(f"{id}.limit", fuels)
    parts += [vapour_in, limit]
    inputs = (
        take("V", "vapour emitted", vapour_in, "air_flow", "m3/h"),
        take("L", "lower explosive limit of the mixture", limit, "vapour_share", "%"),
        take_cell("f", "allowed share of the limit", _SHARES, row, "share", "share", "%"),
    )
    known = [vapour.source for vapour in burning if vapour.explosive_limit is not None]
    source, note = weakest([table(_SHARES).row_citation(row), *known]), "100: percent, twice"
    name, formula = N_("air flow for the explosive limit, at least") if missing else what, "V * 100 / L * 100 / f"
    flow = work(
        f"{id}.explosion", name, formula, inputs, kind="air_flow", unit="m3/h", places=0, source=source, note=note
    )
    return NotKnown(what, why, tuple(missing), (flow,)) if missing else flow


def _times(id: str, breath: Working | NotKnown, explosion: Working | NotKnown) -> Working | NotKnown:
    name = N_("ratio of the air flows for exposure limits and explosive limit")
    if isinstance(breath, NotKnown) or isinstance(explosion, NotKnown):
        return NotKnown(name, "one of the two flows is not known")
    inputs = (
        take("Q_B", "air flow for the exposure limits", breath, "air_flow", "m3/h"),
        take("Q_E", "air flow for the explosive limit", explosion, "air_flow", "m3/h"),
    )
    return work(id, name, "Q_B / Q_E", inputs, places=1, source=ARITHMETIC)
