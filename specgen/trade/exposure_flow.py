"""Air flow that keeps vapours, and isocyanate as NCO, at their limits of exposure: one by one and all together.

Only half of the matter, so nothing outside calls it but `ventilation`, which sets the explosive limit beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from specgen.standards.citations import ARITHMETIC, Citation
from specgen.trade.codes import weakest
from specgen.trade.exposure import ExposureLimit, exposure_limits, nco_limits
from specgen.trade.given import Given, Source, take
from specgen.trade.known import NotKnown
from specgen.trade.physical import physical
from specgen.trade.vapour import mixing_factor
from specgen.trade.working import Working, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity


class Vapour(NamedTuple):
    """One vapour let off by the job; None and empty where it is not known or no limit was read.

    `source` is on whose word the explosive limit stands, `document` how that is called; `burns` is False where it is
    stated that it does not, which needs no explosive limit.
    """

    name: str
    release: Source
    molar_mass: Source | None
    explosive_limit: Source | None
    limits: tuple[ExposureLimit, ...]
    source: Citation = ARITHMETIC
    document: str = ""
    burns: bool | None = None


class Isocyanate(NamedTuple):
    """All isocyanate in the mist, counted as NCO in mg/h, prepolymer included; None where it is not known."""

    release: Source | None
    limits: tuple[ExposureLimit, ...]


class SubstanceFlow(NamedTuple):
    """The flow that keeps one substance at one of its limits."""

    substance: str
    limit: ExposureLimit
    flow: Working | NotKnown


def vapour_of(name: str, cas: str, release: Source, jurisdiction: str, on: date, burns: bool | None = None) -> Vapour:
    """A solvent or propellant with molar mass, explosive limit (the lowest that is no slip) and limits of exposure."""
    limits = exposure_limits(jurisdiction, on, cas)
    found = physical(cas)
    mass = found.molar_mass if found is not None else None
    lowest = found.explosive if found is not None else None
    if lowest is None:
        return Vapour(name, release, mass, None, limits, burns=burns)
    return Vapour(name, release, mass, lowest.figure, limits, lowest.source, lowest.document, burns)


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
    """The sum over all vapours, each against its lowest 8 h limit: their effects are taken to add up.

    Where the limit of one is not known, the sum of the others stands among the workings: it is needed at the least.
    """
    what = N_("air flow for all vapours together")
    inputs = [mixing_factor(mixing)]
    terms, missing, sources = [], [], []
    for number, vapour in enumerate(vapours, start=1):
        lasting = [limit for limit in vapour.limits if limit.lasting]
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
        of = phrase(
            "limit of {substance}, {body}, {period}", substance=limit.substance, body=limit.body, period=limit.period
        )
        inputs.append(take(f"C_{number}", of, lowest, "concentration", "mg/m3"))
        terms.append(f"G_{number} / C_{number}")
    why = "a limit was not read for every vapour"
    if not terms:
        return NotKnown(what, why, tuple(missing))
    name = N_("air flow for all vapours together, at least") if missing else what
    formula, source = f"K * ({' + '.join(terms)})", weakest(sources)
    flow = work(f"{id}.together", name, formula, tuple(inputs), kind="air_flow", unit="m3/h", places=0, source=source)
    return NotKnown(what, why, tuple(missing), (flow,)) if missing else flow


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


def largest(id: str, name: str, at_least: str, flows: Sequence[Working | NotKnown]) -> Working | NotKnown:
    """The largest flow; one that cannot be judged might be the largest, so then the largest known is needed `at_least`."""
    gaps = [flow for flow in flows if isinstance(flow, NotKnown)]
    known = [part for flow in flows for part in (flow.workings if isinstance(flow, NotKnown) else (flow,))]
    missing, why = (
        tuple(dict.fromkeys(item for gap in gaps for item in gap.missing)),
        "not all the flows to compare are known",
    )
    if not known:
        return NotKnown(name, why, missing)
    inputs = tuple(take(f"Q_{n}", flow.name, flow, "air_flow", "m3/h") for n, flow in enumerate(known, start=1))
    formula = f"max({', '.join(entry.symbol for entry in inputs)})" if len(known) > 1 else "Q_1"
    source, told = weakest(flow.source for flow in known), at_least if gaps else name
    most = work(id, told, formula, inputs, kind="air_flow", unit="m3/h", places=0, source=source)
    return NotKnown(name, why, missing, (most,)) if gaps else most


def _base(value: Given | Working) -> Quantity:
    found = value.value if isinstance(value, Given) else value.result
    if not isinstance(found, Quantity):
        raise TypeError("a limit is a bare number, where a quantity is taken")
    return found
