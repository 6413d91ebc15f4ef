"""What a coat is called in a text: by its role, with its number where two coats of a system have one role.

Called by the words of pages and by whoever judges readings.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.model.product import Role
from specgen.model.system import Layer, System
from specgen.units.locale import N_, phrase

ROLES: Mapping[Role, str] = {
    Role.WASH_PRIMER: N_("wash primer"),
    Role.ADHESION_PROMOTER: N_("adhesion promoter"),
    Role.PRIMER: N_("primer"),
    Role.BODY_FILLER: N_("body filler"),
    Role.SURFACER: N_("surfacer"),
    Role.SEALER: N_("sealer"),
    Role.SEAM_SEALER: N_("seam sealer"),
    Role.INTERMEDIATE: N_("intermediate coat"),
    Role.UNDERBODY: N_("underbody coating"),
    Role.TANK_LINING: N_("tank lining"),
    Role.ANTIFOULING: N_("antifouling"),
    Role.CAVITY_WAX: N_("cavity wax"),
    Role.BASECOAT: N_("basecoat"),
    Role.TOPCOAT: N_("topcoat"),
    Role.CLEARCOAT: N_("clearcoat"),
}


def coat_called(layer: Layer, system: System) -> str:
    """`surfacer`; `2 basecoat` where the system has another."""
    role = phrase(ROLES[layer.role])
    if all(one.role is not layer.role for one in system.layers if one.id != layer.id):
        return role
    number = next(number for number, one in enumerate(system.layers, 1) if one.id == layer.id)
    return phrase(N_("{number} {role}"), number=number, role=role)
