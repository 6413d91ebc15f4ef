"""LAY002 A basecoat is followed by a clearcoat

Checks
    Each coat with the role basecoat: one of the later coats is a clearcoat.
Why
    A basecoat alone has no gloss and resists neither sunlight nor fuel.
Passes
    systems.cab.layers.clear.film: {min: 45 um, nominal: 50 um, max: 60 um}
    without systems.cab.total
Fails
    without systems.cab.layers.clear    # at systems.cab.layers.base.role
    without systems.cab.total    # also REL003 at systems.cab.handle_after    # also DOC005 at systems.cab.title

    products.clear.roles: [clearcoat, topcoat]
    systems.cab.layers.clear.role: topcoat    # at systems.cab.layers.base.role

    Given second good
    products.gloss.roles: [basecoat]
    systems.deck.layers.gloss.role: basecoat    # at systems.deck.layers.gloss.role
To put right
    Add a clearcoat as the last coat, or use a topcoat that needs none.
"""

from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule


@rule("LAY002", on=System, severity=WARNING, source=PRACTICE)
def basecoat_has_clearcoat(system: System, spec: Spec, on: date) -> Problems:
    for index, layer in enumerate(system.layers):
        if layer.role is Role.BASECOAT and all(above.role is not Role.CLEARCOAT for above in system.layers[index:]):
            yield Problem(("layers", layer.id, "role"), f"the basecoat {layer.id} has no clearcoat over it")
