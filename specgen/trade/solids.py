"""Volume solids: from the composition, of a mix, and what a can holds of them.

The composition of a product is its maker's: hand it over as `Given` with the audience "maker". Ideal mixing is taken
throughout: volumes add up. Called by the data sheet and by the rules on film, consumption and claims.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.standards.citations import ARITHMETIC, Basis, cite
from specgen.trade.film import PERCENT
from specgen.trade.given import Source, amount, rounding_of, take
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_COMPOSITION = cite("ISO-3233-3", "principle", Basis.MEMORY)

_WHOLE = Quantity.of("share", 100, "%")


class Component(NamedTuple):
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
    inputs = _composition(components)
    formula = f"100 / ({_volume(components, lambda _: True)})"
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
    name = N_("volume solids without propellant")
    return _share_by_volume(id, name, components, "solids", lambda component: component.role != "propellant")


def mixed_volume_solids(id: str, parts: Sequence[tuple[Source, Source]]) -> Working:
    """Volume solids in percent of packs mixed by volume; each part is (volume parts, volume solids). From memory."""
    inputs, volumes, solids = [], [], []
    for number, (volume, share) in enumerate(parts, start=1):
        inputs.append(take(f"V_{number}", phrase("volume parts of pack {number}", number=number), volume))
        inputs.append(
            take(f"VS_{number}", phrase("volume solids of pack {number}", number=number), share, "share", "%")
        )
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
    inputs = _composition(components, counted)
    part = _volume(components, lambda component: component.role == role)
    if not part:
        raise WorkingError(f"the composition names no {role}")
    formula = f"100 * ({part}) / ({_volume(components, counted)})"
    return work(id, name, formula, inputs, kind="share", unit="%", places=1, source=_COMPOSITION, note=PERCENT)


def _composition(
    components: Sequence[Component], counted: Callable[[Component], bool] = lambda _: True
) -> tuple[Input, ...]:
    """The inputs of the components counted. Raises WorkingError where the shares of all do not add up."""
    whole, rounding = sum_of_shares([_percent(component.share) for component in components])
    if abs(whole.base - _WHOLE.base) > rounding:
        raise WorkingError(f"the shares by mass add up to {whole}, not to {_WHOLE}")
    inputs = []
    for number, component in enumerate(components, start=1):
        if counted(component):
            name = component.name
            share, density = phrase("{name}, share by mass", name=name), phrase("{name}, density", name=name)
            inputs.append(take(f"w_{number}", share, component.share, "share", "%"))
            inputs.append(take(f"rho_{number}", density, component.density, "density", "g/mL"))
    return tuple(inputs)


def _volume(components: Sequence[Component], counted: Callable[[Component], bool]) -> str:
    """The volume of the components counted per 100 g of contents, as a formula."""
    kept = [number for number, component in enumerate(components, start=1) if counted(component)]
    return " + ".join(f"w_{number} / rho_{number}" for number in kept)


def _percent(share: Source) -> Quantity:
    found = amount(share)
    if not isinstance(found, Quantity):
        raise TypeError("a share by mass is a bare number, where a percentage is taken")
    return found
