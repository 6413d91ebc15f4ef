"""LAY001 Coats follow in the usual order

Checks
    The order of the roles of the coats from the substrate outwards: wash primer, adhesion promoter, primer, body filler, surfacer, sealer, intermediate, basecoat, topcoat, clearcoat. Body filler may also be applied beneath the primer. A tank lining or an antifouling follows the primer or the intermediate coat, a seam sealer is overcoated with basecoat or topcoat, an underbody coating follows the primer, and cavity wax is last.
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

    Given second good
    products.mastic.roles: [primer, intermediate, tank-lining]
    systems.deck.layers.second.role: intermediate

    Given second good
    products.mastic.roles: [tank-lining]
    products.gloss.roles: [antifouling]
    systems.deck.layers.first.role: tank-lining
    systems.deck.layers.second.role: tank-lining
    systems.deck.layers.gloss.role: antifouling

    Given second good
    products.mastic.roles: [primer, underbody]
    systems.deck.layers.second.role: underbody
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

    Given second good
    products.mastic.roles: [primer, antifouling]
    systems.deck.layers.first.role: antifouling
    systems.deck.layers.second.role: primer    # at systems.deck.layers.second.role

    products.primer.roles: [surfacer]
    products.base.roles: [seam-sealer]
    products.clear.roles: [primer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.base.role: seam-sealer
    systems.cab.layers.clear.role: primer    # at systems.cab.layers.clear.role    # also DOC007 at products.clear.name

    Given second good
    products.mastic.roles: [primer, cavity-wax]
    systems.deck.layers.second.role: cavity-wax    # at systems.deck.layers.gloss.role
To put right
    Put the coats in order from the substrate outwards, or correct the role.
"""

from specgen.rules.kit import WARNING, Layer, Problem, Problems, Role, Row, Spec, System, date, rule, table

_PLACES = table("coat_places")


@rule("LAY001", on=System, severity=WARNING, source=_PLACES.citation)
def roles_in_order(system: System, spec: Spec, on: date) -> Problems:
    below: Layer | None = None
    for above in system.layers:
        if below is not None and int(_place(above.role)["to"]) < int(_place(below.role)["from"]):
            what = f"the {above.role} {above.id} is applied over the {below.role} {below.id}"
            yield Problem(("layers", above.id, "role"), what)
        if below is None or _place(above.role)["local"] == "no":
            below = above


def _place(role: Role) -> Row:
    return _PLACES.row("role", role.value)
