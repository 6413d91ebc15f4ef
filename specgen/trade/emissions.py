"""VOC of a mixture by the forms of the EU and the US, and the mass let off on a job.

Which form is meant is always named: the same paint has three figures. Composition is the maker's: hand it over as
`Given` with the audience "maker". Called by the rules on VOC, by the data sheet and by the list of materials.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

from specgen.standards.citations import ARITHMETIC, Basis, Citation, cite
from specgen.trade.given import Source, take
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_, listed, phrase

Counts = Literal["voc", "exempt", "water", "solids"]

_EU = cite("DIR-2004-42", "Annex II B, definition of VOC content", Basis.REGULATION)
# The variables of 59.104 were read, its fractions are pictures: the weaker word stands.
_US = cite("40-CFR-59-B", "59.104(a)(1)", Basis.MEMORY)
_US_MULTISTAGE = cite("40-CFR-59-B", "59.104(a)(2)", Basis.MEMORY)
_ACTUAL = cite("ISO-11890-2", "ready for use", Basis.MEMORY)

_LITRE = listed("{first}; {more}", [N_("1000: mL in a litre"), N_("100: percent")])


class Part(NamedTuple):
    """One part of a product ready for use, propellant included.

    `counts`: "exempt" is a solvent that the US leaves out of VOC; in the EU it counts like any other. `into_film` is True
    for a volatile that reacts into the film and is not counted. `density` is needed of water and of exempt solvents.
    """

    name: str
    share: Source
    counts: Counts
    density: Source | None = None
    into_film: bool = False


def voc_eu(id: str, parts: Sequence[Part], density: Source, *, water_subtracted: bool = True) -> Working:
    """VOC content in g/L of the product ready for use, as Directive 2004/42/EC counts it.

    No solvent is exempt; the volume of water is taken out of the litre, except for preparatory products (subcategory a).
    Raises WorkingError where water has no density or fills the litre.
    """
    out: tuple[Counts, ...] = ("water",) if water_subtracted else ()
    name = "VOC content, EU" + (", less water" if water_subtracted else "")
    return _content(id, name, parts, density, ("voc", "exempt"), out, _EU)


def voc_us(id: str, parts: Sequence[Part], density: Source) -> Working:
    """Regulatory VOC in g/L, less water and exempt solvents by mass and by volume. Source: 40 CFR 59.104(a)(1).

    Raises WorkingError where water or an exempt solvent has no density or they fill the litre.
    """
    return _content(id, "VOC content, US, less water and exempt", parts, density, ("voc",), ("water", "exempt"), _US)


def voc_us_actual(id: str, parts: Sequence[Part], density: Source) -> Working:
    """Actual VOC in g/L of the product as it is, exempt solvents not counted. From memory."""
    return _content(id, "VOC content, US, actual", parts, density, ("voc",), (), _ACTUAL)


def voc_multistage(id: str, base_coat: Source, mid_coats: Sequence[Source], clear_coat: Source) -> Working:
    """VOC in g/L of a topcoat system of several stages: base coat, mid coats and clear, the clear counted twice.

    Source: 40 CFR 59.104(a)(2).
    """
    mids = tuple(
        take(f"M_{n}", phrase("VOC of mid coat {n}", n=n), mid, "voc_content", "g/L")
        for n, mid in enumerate(mid_coats, 1)
    )
    inputs = (
        take("B", "VOC of the basecoat", base_coat, "voc_content", "g/L"),
        *mids,
        take("C", "VOC of the clearcoat", clear_coat, "voc_content", "g/L"),
        take("m", "number of mid coats", len(mid_coats)),
    )
    above = " + ".join(["B", *(entry.symbol for entry in mids), "2 * C"])
    note = "2: the clearcoat is counted twice; 3: basecoat and clearcoat twice"
    name, formula = "VOC content, US, multistage", f"({above}) / (m + 3)"
    return work(id, name, formula, inputs, kind="voc_content", unit="g/L", places=0, source=_US_MULTISTAGE, note=note)


def voc_released(id: str, mass: Source, parts: Sequence[Part], *, exempt_counts: bool) -> Working:
    """Mass of VOC in g that a mass of product lets off, propellant included; `exempt_counts` is True in the EU."""
    counted: tuple[Counts, ...] = ("voc", "exempt") if exempt_counts else ("voc",)
    shares = _shares(parts, counted)
    if not shares:
        raise WorkingError("the composition names no VOC")
    inputs = (take("m", "mass of product", mass, "mass", "g"), *shares)
    formula = f"m * ({' + '.join(entry.symbol for entry in shares)}) / 100"
    name = "VOC emission"
    return work(id, name, formula, inputs, kind="mass", unit="g", places=0, source=ARITHMETIC, note="100: percent")


def voc_released_by_volume(id: str, volume: Source, actual: Source) -> Working:
    """Mass of VOC in g that a volume of product lets off, from its VOC in g/L of the product as it is.

    A figure less water or exempt solvents is too high for this.
    """
    inputs = (
        take("V", "volume of product", volume, "volume", "L"),
        take("C", "VOC content as supplied", actual, "voc_content", "g/L"),
    )
    return work(id, "VOC emission", "V * C", inputs, kind="mass", unit="g", places=0, source=ARITHMETIC)


def _content(
    id: str,
    name: str,
    parts: Sequence[Part],
    density: Source,
    counted: tuple[Counts, ...],
    out: tuple[Counts, ...],
    source: Citation,
) -> Working:
    shares = _shares(parts, counted)
    if not shares:
        raise WorkingError("the composition names no VOC")
    inputs: list[Input] = [take("rho", "density of the product", density, "density", "g/mL"), *shares]
    formula = f"1000 * rho * ({' + '.join(entry.symbol for entry in shares)}) / 100"
    volumes = []
    for number, part in enumerate(parts, start=1):
        if part.counts not in out:
            continue
        if part.density is None:
            raise WorkingError(f"the density of {part.name} is not stated")
        inputs.append(take(f"w_{number}", phrase("{name}, share by mass", name=part.name), part.share, "share", "%"))
        inputs.append(take(f"rho_{number}", phrase("{name}, density", name=part.name), part.density, "density", "g/mL"))
        volumes.append(f"w_{number} / rho_{number}")
    if volumes:
        formula = f"{formula} / (1 - rho * ({' + '.join(volumes)}) / 100)"
    found = work(id, name, formula, tuple(inputs), kind="voc_content", unit="g/L", places=0, source=source, note=_LITRE)
    if found.number < 0:
        raise WorkingError(f"water and exempt solvents exceed one litre: the figures of {name} do not fit")
    return found


def _shares(parts: Sequence[Part], counted: tuple[Counts, ...]) -> list[Input]:
    return [
        take(f"w_{number}", phrase("{name}, share by mass", name=part.name), part.share, "share", "%")
        for number, part in enumerate(parts, start=1)
        if part.counts in counted and not part.into_film
    ]
