"""LAY003 A clearcoat is last and over colour

Checks
    A clearcoat that is the first coat on the substrate, that is applied over a primer, surfacer or sealer, or that is not the last coat.
Why
    A clearcoat on bare metal or primer lets sunlight through to what is beneath, which chalks and loses adhesion; a coat over the clearcoat hides it.
Passes
    systems.cab.layers.clear.passes: 3

    products.base.roles: [topcoat]
    systems.cab.layers.base.role: topcoat
Fails
    without systems.cab.layers.primer    # at systems.cab.layers.clear.role
    without systems.cab.layers.base
    without systems.cab.total
    jobs.refit.inspection.primer-film.after: clear    # also LAY005 at systems.cab.layers.clear.product    # also INS013 at jobs.refit.inspection.primer-film.criterion.max    # also DOC005 at systems.cab.title

    without systems.cab.layers.base    # at systems.cab.layers.clear.role
    without systems.cab.total

    products.base.roles: [basecoat, surfacer]
    systems.cab.layers.base.role: surfacer    # at systems.cab.layers.clear.role

    systems.cab.layers.over: {id: over, role: basecoat, product: base, variant: standard, film: {min: 15 um, nominal: 20 um, max: 30 um}, passes: 2}    # at systems.cab.layers.clear.role
    without systems.cab.total    # also LAY001 at systems.cab.layers.over.role    # also LAY002 at systems.cab.layers.over.role    # also LAY007 at systems.cab.layers.clear.overcoat_interval    # also REL003 at systems.cab.handle_after
To put right
    Apply the clearcoat last, over a basecoat or topcoat.
"""

from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule

_CARRIES_CLEAR = {Role.BASECOAT, Role.TOPCOAT, Role.CLEARCOAT}


@rule("LAY003", on=System, severity=WARNING, source=PRACTICE)
def clearcoat_in_place(system: System, spec: Spec, on: date) -> Problems:
    for index, layer in enumerate(system.layers):
        if layer.role is not Role.CLEARCOAT:
            continue
        path = ("layers", layer.id, "role")
        if index == 0:
            yield Problem(path, f"the clearcoat {layer.id} is the first coat on the substrate")
        elif system.layers[index - 1].role not in _CARRIES_CLEAR:
            below = system.layers[index - 1]
            yield Problem(path, f"the clearcoat {layer.id} is applied over the {below.role} {below.id}")
        if any(above.role is not Role.CLEARCOAT for above in system.layers[index + 1 :]):
            yield Problem(path, f"the clearcoat {layer.id} is not the last coat")
