"""Air flow that keeps vapours, and isocyanate as NCO, at their limits of exposure: one by one and all together.

Only half of the matter, so nothing outside calls it but `ventilation`, which sets the explosive limit beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from specgen.standards.citations import ARITHMETIC, Citation
from specgen.standards.tables import table
from specgen.trade.codes import weakest
from specgen.trade.exposure import LONG, ExposureLimit, exposure_limits, nco_limits
from specgen.trade.given import Given, Source, from_table, take
from specgen.trade.known import NotKnown
from specgen.trade.vapour import mixing_factor
from specgen.trade.working import Working, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_HEATS = "heat_of_combustion"


@dataclass(frozen=True, slots=True)
class Vapour:
    """One vapour let off by the job; None and empty where it is not known or no limit was read."""

    name: str
    release: Source
    molar_mass: Source | None
    explosive_limit: Source | None
    limits: tuple[ExposureLimit, ...]
    source: Citation = ARITHMETIC


@dataclass(frozen=True, slots=True)
class Isocyanate:
    """All isocyanate in the mist, counted as NCO in mg/h, prepolymer included; None where it is not known."""

    release: Source | None
    limits: tuple[ExposureLimit, ...]


@dataclass(frozen=True, slots=True)
class SubstanceFlow:
    """The flow that keeps one substance at one of its limits."""

    substance: str
    limit: ExposureLimit
    flow: Working | NotKnown


def vapour_of(name: str, cas: str, release: Source, jurisdiction: str, on: date) -> Vapour:
    """A solvent or propellant with molar mass, explosive limit (the lower of two published) and limits of exposure."""
    limits = exposure_limits(jurisdiction, on, cas)
    row = next((row for row in table(_HEATS).rows if row["cas"] == cas), None)
    if row is None:
        return Vapour(name, release, None, None, limits)
    mass = from_table(_HEATS, row, "molar_mass", "molar_mass", "g/mol")
    columns = [column for column in ("lfl_iec", "lfl_nfpa") if row[column]]
    lowest = min((from_table(_HEATS, row, c, "vapour_share", "%") for c in columns), key=_base, default=None)
    basis = row["lfl_basis"] or "memory"
    source = table(_HEATS).row_citation({**row, "basis": basis})
    return Vapour(name, release, mass, lowest, limits, source)


def isocyanate(release: Source | None, jurisdiction: str, on: date) -> Isocyanate:
    """Isocyanate with the limits that hold for all of it, as NCO."""
    return Isocyanate(release, nco_limits(jurisdiction, on))


def flow_to_limit(
    id: str,
    name: str,
    release: Source,
    molar_mass: Source | None,
    limit: ExposureLimit,
    mixing: Source,
    parts: list[Working],
) -> SubstanceFlow:
    """The flow in m3/h that holds one substance at one limit; the limit worked out in mg/m3 is added to `parts`."""
    in_air = limit.in_air(f"{id}.limit.{limit.id}", molar_mass)
    if isinstance(in_air, NotKnown):
        return SubstanceFlow(name, limit, in_air)
    if isinstance(in_air, Working):
        parts.append(in_air)
    inputs = (
        take("G", phrase("{name}, emitted", name=name), release, "release_rate", "mg/h"),
        mixing_factor(mixing),
        take(
            "C",
            phrase(
                "limit of {substance}, {body}, {period}",
                substance=limit.substance,
                body=limit.body,
                period=limit.period,
            ),
            in_air,
            "concentration",
            "mg/m3",
        ),
    )
    what = phrase("air flow for {name}, {body}, {period}", name=name, body=limit.body, period=limit.period)
    flow = work(
        f"{id}.{limit.id}", what, "G * K / C", inputs, kind="air_flow", unit="m3/h", places=0, source=limit.source
    )
    return SubstanceFlow(name, limit, flow)


def flow_for_all(id: str, vapours: Sequence[Vapour], mixing: Source) -> Working | NotKnown:
    """The sum over all vapours, each against its lowest 8 h limit: their effects are taken to add up."""
    what = N_("air flow for all vapours together")
    inputs = [mixing_factor(mixing)]
    terms, missing, sources = [], [], []
    for number, vapour in enumerate(vapours, start=1):
        lasting = [limit for limit in vapour.limits if limit.period == LONG]
        known: list[tuple[ExposureLimit, Given | Working]] = []
        for limit in lasting:
            in_air = limit.in_air(f"{id}.limit.{limit.id}", vapour.molar_mass)
            if not isinstance(in_air, NotKnown):
                known.append((limit, in_air))
        if not known:
            missing.append(f"8 h TWA limit of {vapour.name}")
            continue
        limit, lowest = min(known, key=lambda pair: _base(pair[1]))
        sources.append(limit.source)
        inputs.append(
            take(f"G_{number}", phrase("{name}, emitted", name=vapour.name), vapour.release, "release_rate", "mg/h")
        )
        name = phrase(
            "limit of {substance}, {body}, {period}", substance=limit.substance, body=limit.body, period=limit.period
        )
        inputs.append(take(f"C_{number}", name, lowest, "concentration", "mg/m3"))
        terms.append(f"G_{number} / C_{number}")
    if missing or not terms:
        return NotKnown(what, "a limit was not read for every vapour", tuple(missing))
    formula = f"K * ({' + '.join(terms)})"
    source = weakest(sources)
    return work(f"{id}.together", what, formula, tuple(inputs), kind="air_flow", unit="m3/h", places=0, source=source)


def flow_for_nco(id: str, found: Isocyanate | None, mixing: Source, parts: list[Working]) -> tuple[SubstanceFlow, ...]:
    """The flow in m3/h to each limit of isocyanate as NCO; empty where the job lets off none."""
    if found is None:
        return ()
    if found.release is None:
        why = "the NCO emission is not known"
        gap = NotKnown("air flow for isocyanate", why, ("NCO emission",))
        return tuple(SubstanceFlow("isocyanate as NCO", limit, gap) for limit in found.limits)
    name = N_("isocyanate as NCO")
    return tuple(flow_to_limit(id, name, found.release, None, limit, mixing, parts) for limit in found.limits)


def largest(id: str, name: str, flows: Sequence[Working | NotKnown]) -> Working | NotKnown:
    """The largest flow; one that cannot be judged might be the largest, so then none can."""
    known = [flow for flow in flows if isinstance(flow, Working)]
    gaps = [flow for flow in flows if isinstance(flow, NotKnown)]
    if gaps or not known:
        missing = tuple(dict.fromkeys(item for gap in gaps for item in gap.missing))
        return NotKnown(name, "not all the flows to compare are known", missing, tuple(known))
    inputs = tuple(take(f"Q_{n}", flow.name, flow, "air_flow", "m3/h") for n, flow in enumerate(known, start=1))
    formula = f"max({', '.join(entry.symbol for entry in inputs)})" if len(known) > 1 else "Q_1"
    source = weakest(flow.source for flow in known)
    return work(id, name, formula, inputs, kind="air_flow", unit="m3/h", places=0, source=source)


def _base(value: Given | Working) -> Quantity:
    found = value.value if isinstance(value, Given) else value.result
    if not isinstance(found, Quantity):
        raise TypeError("a limit is a bare number, where a quantity is taken")
    return found
