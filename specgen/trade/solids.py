"""Volume solids: from the composition, from the VOC content, of a mix, and what a can holds of them.

The composition of a product is its maker's: hand it over as `Given` with the audience "maker". Ideal mixing is taken
throughout: volumes add up. Called by the data sheet and by the rules on film, consumption and claims.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from specgen.standards.citations import ARITHMETIC, Basis, cite
from specgen.trade.film import PERCENT
from specgen.trade.given import Source, amount, rounding_of, take
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.quantity import Quantity

_COMPOSITION = cite("ISO-3233-3", "principle", Basis.MEMORY)
_VOLATILES = cite("VOLUME-SOLIDS-ARTICLE", "volume solids from weight solids")
_FROM_VOC = cite("5-CCR-1001-29", "appendix E", Basis.REGULATION)
_ON_SOLIDS = cite("30-TAC-115-423", "", Basis.REGULATION)

_WHOLE = Quantity.of("share", 100, "%")


@dataclass(frozen=True, slots=True)
class Component:
    """One component of a can's contents: its share by mass of all contents, its density, and what becomes of it."""

    name: str
    share: Source
    density: Source
    role: Literal["solids", "solvent", "propellant"]


def sum_of_shares(shares: Sequence[Quantity]) -> tuple[Quantity, Fraction]:
    """The sum of the shares of a composition, and how far from 100 it may lie for being printed to so many digits.

    That is half a unit of the last digit of each share; a computed share is exact and is given no room.
    """
    whole = sum((share.to("%") for share in shares), Fraction(0))
    return Quantity.of("share", whole, "%"), sum((rounding_of(share) for share in shares), Fraction(0))


def mixture_density(id: str, components: Sequence[Component]) -> Working:
    """Density of the mixture in g/mL. Raises WorkingError where the shares do not add up to 100 %."""
    inputs, volume = _volumes(components, lambda _: True)
    formula = f"100 / ({volume})"
    return work(
        id, "density", formula, inputs, kind="density", unit="g/mL", places=3, source=_COMPOSITION, note=PERCENT
    )


def volume_solids(id: str, components: Sequence[Component]) -> Working:
    """Volume solids of all contents, propellant included, in percent.

    For can arithmetic; never for the comb. Raises WorkingError where the shares do not add up to 100 %. Source: the
    principle of ISO 3233-3, from memory.
    """
    return _share_by_volume(id, "volume solids of the contents", components, "solids", lambda _: True)


def propellant_free_volume_solids(id: str, components: Sequence[Component]) -> Working:
    """Volume solids of the paint without its propellant, in percent: what the comb and the wet film need."""
    name = "volume solids without propellant"
    return _share_by_volume(id, name, components, "solids", lambda component: component.role != "propellant")


def propellant_by_volume(id: str, components: Sequence[Component]) -> Working:
    """Share of the propellant by volume in all contents, in percent."""
    return _share_by_volume(id, "propellant by volume", components, "propellant", lambda _: True)


def volume_solids_without_propellant(id: str, volume_solids_of_can: Source, propellant: Source) -> Working:
    """Volume solids without propellant, in percent, from those of the contents and the propellant's share by volume."""
    inputs = (
        take("VS", "volume solids of the contents", volume_solids_of_can, "share", "%"),
        take("phi", "propellant by volume", propellant, "share", "%"),
    )
    name, formula = "volume solids without propellant", "VS * 100 / (100 - phi)"
    return work(id, name, formula, inputs, kind="share", unit="%", places=1, source=ARITHMETIC, note=PERCENT)


def volume_solids_from_volatiles(id: str, volatiles: Sequence[Component], density: Source) -> Working:
    """Volume solids in percent: all that is not volatile, from the volatiles' shares and the density of the paint."""
    parts = [f"w_{number} * rho / rho_{number}" for number in range(1, len(volatiles) + 1)]
    inputs = (take("rho", "density of the paint", density, "density", "g/mL"), *_composition(volatiles))
    name, formula = "volume solids", " - ".join(("100", *parts))
    return _sensible(work(id, name, formula, inputs, kind="share", unit="%", places=1, source=_VOLATILES, note=PERCENT))


def volume_solids_from_voc(id: str, voc: Source, solvent_density: Source) -> Working:
    """Volume solids in percent of a paint without water, from its VOC content, in the unit in which that is stated.

    Raises WorkingError where the VOC content is above the solvent's density. Source: 5 CCR 1001-29 appendix E.
    """
    inputs, density, note = _voc_and_density(voc, solvent_density)
    name, formula = "volume solids from the VOC content", f"100 - 100 * C / {density}"
    note = f"{PERCENT}; {note}" if note else PERCENT
    return _sensible(work(id, name, formula, inputs, kind="share", unit="%", places=1, source=_FROM_VOC, note=note))


def voc_on_solids(id: str, voc: Source, solvent_density: Source) -> Working:
    """Mass of VOC on the volume of solids, in the unit in which the VOC content is stated.

    Raises WorkingError where the VOC content is not below the solvent's density. Source: 30 TAC 115.423.
    """
    inputs, density, note = _voc_and_density(voc, solvent_density)
    unit, name = inputs[0].unit, "VOC on the volume of solids"
    places = 1 if unit == "lb/gal" else 0
    formula = f"C / (1 - C / {density})"
    found = work(id, name, formula, inputs, kind="voc_content", unit=unit, places=places, source=_ON_SOLIDS, note=note)
    if found.number < 0:
        raise WorkingError(
            "the VOC content is above the density of the solvents: the figures do not belong to one paint"
        )
    return found


def mixed_volume_solids(id: str, parts: Sequence[tuple[Source, Source]]) -> Working:
    """Volume solids in percent of packs mixed by volume; each part is (volume parts, volume solids). From memory."""
    inputs, volumes, solids = [], [], []
    for number, (volume, share) in enumerate(parts, start=1):
        inputs.append(take(f"V_{number}", f"volume parts of pack {number}", volume))
        inputs.append(take(f"VS_{number}", f"volume solids of pack {number}", share, "share", "%"))
        volumes.append(f"V_{number}")
        solids.append(f"V_{number} * VS_{number}")
    name, formula = "volume solids of the mix", f"({' + '.join(solids)}) / ({' + '.join(volumes)})"
    source = cite("ISO-3233-3", "mixing by volume", Basis.MEMORY)
    return work(id, name, formula, tuple(inputs), kind="share", unit="%", places=1, source=source)


def net_mass(id: str, net_volume: Source, density: Source) -> Working:
    """Net mass of a can in g from its net volume."""
    inputs = (take("V", "net volume", net_volume, "volume", "mL"), take("rho", "density", density, "density", "g/mL"))
    return work(id, "net mass", "V * rho", inputs, kind="mass", unit="g", places=1, source=ARITHMETIC)


def solids_from_mass(id: str, mass: Source, solids_by_mass: Source, solids_density: Source) -> Working:
    """Volume of dry solids in a can, in mL, from its net mass."""
    inputs = (
        take("m", "net mass", mass, "mass", "g"),
        take("w_nv", "solids by mass", solids_by_mass, "share", "%"),
        take("rho_nv", "density of the solids", solids_density, "density", "g/mL"),
    )
    name, formula = "volume of dry solids in a can", "m * w_nv / 100 / rho_nv"
    return work(id, name, formula, inputs, kind="volume", unit="mL", places=1, source=ARITHMETIC, note=PERCENT)


def solids_from_volume(id: str, net_volume: Source, volume_solids_of_can: Source) -> Working:
    """Volume of dry solids in a can, in mL, from its net volume and the volume solids of its contents, propellant
    included.
    """
    inputs = (
        take("V", "net volume", net_volume, "volume", "mL"),
        take("VS", "volume solids of the contents", volume_solids_of_can, "share", "%"),
    )
    name, formula = "volume of dry solids in a can", "V * VS / 100"
    return work(id, name, formula, inputs, kind="volume", unit="mL", places=1, source=ARITHMETIC, note=PERCENT)


def _share_by_volume(
    id: str, name: str, components: Sequence[Component], role: str, counted: Callable[[Component], bool]
) -> Working:
    inputs, whole = _volumes(components, counted)
    _, part = _volumes(components, lambda component: component.role == role)
    if not part:
        raise WorkingError(f"the composition names no {role}")
    formula = f"100 * ({part}) / ({whole})"
    return work(id, name, formula, inputs, kind="share", unit="%", places=1, source=_COMPOSITION, note=PERCENT)


def _volumes(components: Sequence[Component], counted: Callable[[Component], bool]) -> tuple[tuple[Input, ...], str]:
    """The inputs of the components counted, and their volume per 100 g of contents as a formula."""
    whole, rounding = sum_of_shares([_percent(component.share) for component in components])
    if abs(whole.base - _WHOLE.base) > rounding:
        raise WorkingError(f"the shares by mass add up to {whole}, not to {_WHOLE}")
    inputs = _composition(components)
    kept = [number for number, component in enumerate(components, start=1) if counted(component)]
    symbols = {f"{letter}_{number}" for number in kept for letter in ("w", "rho")}
    volume = " + ".join(f"w_{number} / rho_{number}" for number in kept)
    return tuple(entry for entry in inputs if entry.symbol in symbols), volume


def _composition(components: Sequence[Component]) -> tuple[Input, ...]:
    inputs = []
    for number, component in enumerate(components, start=1):
        inputs.append(take(f"w_{number}", f"{component.name}, share by mass", component.share, "share", "%"))
        inputs.append(take(f"rho_{number}", f"{component.name}, density", component.density, "density", "g/mL"))
    return tuple(inputs)


def _percent(share: Source) -> Quantity:
    found = amount(share)
    if not isinstance(found, Quantity):
        raise TypeError("a share by mass is a bare number, where a percentage is taken")
    return found


def _voc_and_density(voc: Source, solvent_density: Source) -> tuple[tuple[Input, Input], str, str]:
    """The inputs, the density in the unit of the VOC content as a formula, and the note that goes with it."""
    stated = amount(voc)
    american = isinstance(stated, Quantity) and stated.unit == "lb/gal"
    content = take("C", "VOC content", voc, "voc_content", "lb/gal" if american else "g/L")
    density = take("D", "density of the solvents", solvent_density, "density", "lb/gal" if american else "g/mL")
    if american:
        return (content, density), "D", ""
    return (content, density), "(1000 * D)", "1000: mL in a litre"


def _sensible(solids: Working) -> Working:
    if not 0 <= solids.number <= _WHOLE.base:
        raise WorkingError(f"{solids.name} come to {solids.printed()}: the figures do not belong to one paint")
    return solids
