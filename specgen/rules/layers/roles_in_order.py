"""LAY001 Coats follow in the usual order

Checks
    The order of the roles of the coats from the substrate outwards: wash primer, adhesion promoter, primer, body filler, surfacer, sealer, basecoat, topcoat, clearcoat. Body filler may also be applied beneath the primer.
Why
    A coat in the wrong position is applied to a surface it was not made for: a primer over a topcoat seals nothing, and a basecoat beneath a surfacer is sanded away.
Passes
    systems.cab.layers.primer.role: primer

    Given second good
    systems.deck.layers.second.role: surfacer

    Given second good
    products.mastic.roles: [primer, body-filler]
    systems.deck.layers.first.role: body-filler
    jobs.rails.inspection.film.gauge: {principle: destructive}
    jobs.rails.inspection.first.gauge: {principle: destructive}

    Given second good
    systems.deck.layers.first.role: surfacer
    systems.deck.layers.second.role: surfacer
Fails
    systems.cab.layers.primer.role: sealer    # also LAY004 at systems.cab.layers.primer.role
    systems.cab.layers.base.role: primer    # at systems.cab.layers.base.role    # also LAY004 at systems.cab.layers.base.role    # also LAY003 at systems.cab.layers.clear.role

    Given second good
    systems.deck.layers.first.role: surfacer
    systems.deck.layers.second.role: primer    # at systems.deck.layers.second.role

    products.base.roles: [topcoat]
    products.clear.roles: [sealer]
    systems.cab.layers.base.role: topcoat
    systems.cab.layers.clear.role: sealer    # at systems.cab.layers.clear.role
To put right
    Put the coats in order from the substrate outwards, or correct the role.
"""

from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule

_RANK = {role: rank for rank, role in enumerate(Role)}
# Body shops fill bare metal or cured primer, and both are in the books.
_EITHER_WAY = {Role.PRIMER, Role.BODY_FILLER}


@rule("LAY001", on=System, severity=WARNING, source=PRACTICE)
def roles_in_order(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if {below.role, above.role} <= _EITHER_WAY:
            continue
        if _RANK[above.role] < _RANK[below.role]:
            what = f"the {above.role} {above.id} is applied over the {below.role} {below.id}"
            yield Problem(("layers", above.id, "role"), what)
