"""Which values belong to which curing kind: the table behind the rules CUR001 to CUR004.

Paths are relative to a product. `NEEDS` must be stated, `CANNOT` must not: a blocked hardener has no pot life, a liquid no valve.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.model.application import GUNS
from specgen.model.node import Node
from specgen.model.product import CuringKind, PackForm, Product
from specgen.model.walk import Path

_CAN_HANDLING: tuple[Path, ...] = (
    ("application", "shake"),
    ("application", "can_temperature"),
    ("application", "distance"),
    ("application", "overlap"),
    ("application", "flash_between_passes"),
    ("application", "clear_valve"),
)
_RESTART: Path = ("application", "restart")
_KEEPING: tuple[Path, ...] = (("application", "put_away"), _RESTART)
_ACTIVATION: tuple[Path, ...] = (("application", "activation"),)
_MIXING: tuple[Path, ...] = (("application", "mixing"),)

_STOVING: Path = ("stoving",)
_LIGHT: Path = ("light",)

NOZZLE: Path = ("application", "nozzle")
_BY_VOLUME: Path = ("application", "mixing", "ratio_by_volume")
_BY_MASS: Path = ("application", "mixing", "ratio_by_mass")

# What each pack asks for at the part.
NEEDS_BY_FORM: Mapping[PackForm, tuple[Path, ...]] = {
    PackForm.AEROSOL: _CAN_HANDLING,
    PackForm.LIQUID: (("application", "can_temperature"), NOZZLE),
}

CANNOT_BY_FORM: Mapping[PackForm, tuple[Path, ...]] = {
    PackForm.AEROSOL: (*_MIXING, NOZZLE),
    PackForm.LIQUID: (
        ("application", "shake"),
        ("application", "clear_valve"),
        _RESTART,
        *_ACTIVATION,
    ),
}

NEEDS_BY_KIND: Mapping[CuringKind, tuple[Path, ...]] = {
    CuringKind.LIQUID_TWO_PACK: (
        _BY_VOLUME,
        ("application", "mixing", "stir"),
        ("application", "mixing", "clock_starts"),
    ),
    CuringKind.CAPSULE_AEROSOL: (
        ("application", "activation", "action"),
        ("application", "activation", "shake_after"),
        ("application", "activation", "usable_for"),
    ),
    CuringKind.BLOCKED_AEROSOL: (*_KEEPING, ("climate", "humidity")),
    CuringKind.MOISTURE: (("climate", "humidity"),),
    CuringKind.OXIDATIVE: (),
    CuringKind.PHYSICAL: (),
    CuringKind.STOVED: (_STOVING,),
    CuringKind.LIGHT: (_LIGHT,),
}

CANNOT_BY_KIND: Mapping[CuringKind, tuple[Path, ...]] = {
    CuringKind.LIQUID_TWO_PACK: (*_ACTIVATION, _LIGHT),
    CuringKind.CAPSULE_AEROSOL: (*_MIXING, _RESTART, _STOVING, _LIGHT),
    CuringKind.BLOCKED_AEROSOL: (*_MIXING, *_ACTIVATION, _STOVING, _LIGHT),
    CuringKind.MOISTURE: (*_MIXING, *_ACTIVATION, _STOVING, _LIGHT),
    CuringKind.OXIDATIVE: (*_MIXING, *_ACTIVATION, _STOVING, _LIGHT),
    CuringKind.PHYSICAL: (*_MIXING, *_ACTIVATION, _STOVING, _LIGHT),
    CuringKind.STOVED: (*_ACTIVATION, _LIGHT),
    CuringKind.LIGHT: (*_MIXING, *_ACTIVATION, _STOVING),
}

# The pack a curing kind comes in; a kind that is not named comes in either.
FORM_OF_KIND: Mapping[CuringKind, PackForm] = {
    CuringKind.LIQUID_TWO_PACK: PackForm.LIQUID,
    CuringKind.CAPSULE_AEROSOL: PackForm.AEROSOL,
    CuringKind.BLOCKED_AEROSOL: PackForm.AEROSOL,
    CuringKind.STOVED: PackForm.LIQUID,
}


def needs(product: Product) -> tuple[Path, ...]:
    """What the product has to state, each once: no nozzle where none of its methods is with a spray gun, one ratio of the two."""
    methods = product.application.methods if product.application is not None else ()
    found = dict.fromkeys((*NEEDS_BY_KIND[product.curing], *NEEDS_BY_FORM[product.pack.form]))
    gunless = bool(methods) and not GUNS & set(methods)
    spared = ({NOZZLE} if gunless else set()) | ({_BY_VOLUME} if states(product, _BY_MASS) else set())
    return tuple(path for path in found if path not in spared)


def states(product: Product, path: Path) -> bool:
    """True where the product states a value at the path."""
    at: object = product
    for step in path:
        if not isinstance(at, Node) or step not in type(at).model_fields or not at.states(step):
            return False
        at = getattr(at, step)
    return True


def cured_by_moisture(product: Product) -> bool:
    """True where the moisture of the air cures the film or releases its hardener, so that dry air leaves it soft."""
    return product.curing in {CuringKind.BLOCKED_AEROSOL, CuringKind.MOISTURE}
