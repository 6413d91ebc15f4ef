"""Passes and coats: how much film one brings and how many a target needs.

Called by the work instruction, and by the rules that ask whether a target can be reached.
"""

from __future__ import annotations

from specgen.standards.citations import ARITHMETIC, LOGIC
from specgen.standards.tables import table
from specgen.trade.film import PERCENT
from specgen.trade.given import Given, Source, from_table, take
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_


def film_of_passes(id: str, per_pass: Source, passes: Source) -> Working:
    """The dry film of a number of passes, in um."""
    inputs = (_per_pass(per_pass), take("n", "number of cross coats", passes))
    return work(id, "DFT of the cross coats", "p * n", inputs, kind="thickness", unit="um", places=0, source=LOGIC)


def passes_for(id: str, target: Source, per_pass: Source) -> Working:
    """The least number of passes that reach the target. Raises WorkingError where a pass brings nothing."""
    inputs = (_target(target), _per_pass(per_pass))
    return work(id, "number of cross coats", "ceil(DFT / p)", inputs, unit="pass", places=0, source=LOGIC)


def usual_film_per_pass(row: str = "cross coat from a can") -> tuple[Given, Given]:
    """The lowest and highest usual film of one pass, in um, from the table of common practice.

    Raises KeyError for another row.
    """
    name = "film_per_cross_coat"
    found = table(name).row("coat", row)
    low, high = (from_table(name, found, column, "thickness", "um") for column in ("low_um", "high_um"))
    return low, high


def coats_for(
    id: str,
    target: Source,
    most_per_coat: Source | None = None,
    sag_limit: Source | None = None,
    volume_solids: Source | None = None,
    thinner: Source | None = None,
) -> Working:
    """The least number of coats that reach the target, no coat above `most_per_coat` (dry) or the sag limit (wet).

    The sag limit needs the volume solids of the paint as it lies on the surface. Raises WorkingError where no limit
    is given, or a sag limit without volume solids.
    """
    inputs, limits = [_target(target)], []
    if most_per_coat is not None:
        inputs.append(take("M", "maximum DFT per coat", most_per_coat, "thickness", "um"))
        limits.append("M")
    if sag_limit is not None:
        if volume_solids is None:
            raise WorkingError("the volume solids that convert the sag limit (WFT) to a DFT are not stated")
        inputs.append(take("W", "sag limit (WFT)", sag_limit, "thickness", "um"))
        inputs.append(take("VS", "volume solids", volume_solids, "share", "%"))
        if thinner is not None:
            inputs.append(take("t", "thinner added, by volume", thinner, "percentage", "%"))
        limits.append("W * VS / 100" if thinner is None else "W * VS / (100 + t)")
    if not limits:
        raise WorkingError("neither the maximum DFT per coat nor a sag limit is stated")
    limit = limits[0] if len(limits) == 1 else f"min({', '.join(limits)})"
    note = PERCENT if sag_limit is not None else ""
    return work(
        id,
        "number of coats",
        f"ceil(DFT / ({limit}))",
        tuple(inputs),
        unit="coat",
        places=0,
        source=ARITHMETIC,
        note=note,
    )


def film_per_coat(id: str, target: Source, coats: Source, *, passes: bool = False) -> Working:
    """The film that each of equal coats (or of equal passes) must bring, in um. Raises WorkingError for none."""
    name, many = (
        (N_("DFT per cross coat"), N_("number of cross coats"))
        if passes
        else (N_("DFT per coat"), N_("number of coats"))
    )
    inputs = (_target(target), take("N", many, coats))
    return work(
        id,
        name,
        "DFT / N",
        inputs,
        kind="thickness",
        unit="um",
        places=1,
        source=ARITHMETIC,
    )


def _target(target: Source) -> Input:
    return take("DFT", "target DFT", target, "thickness", "um")


def _per_pass(film: Source) -> Input:
    return take("p", "DFT per cross coat", film, "thickness", "um")
