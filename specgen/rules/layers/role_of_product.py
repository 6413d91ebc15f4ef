"""LAY004 A product is used in a role its manufacturer states

Checks
    The role of each coat is among the roles its product states.
Why
    Outside its stated roles the product has not been tested and its manufacturer does not answer for it.
Passes
    systems.chassis.layers.barrier.role: topcoat
Fails
    systems.chassis.layers.barrier.role: surfacer    # at systems.chassis.layers.barrier.role

    systems.cab.layers.clear.role: topcoat    # at systems.cab.layers.clear.role    # also LAY002 at systems.cab.layers.base.role

    Given second good
    systems.deck.layers.second.role: sealer    # at systems.deck.layers.second.role
To put right
    Choose a product with that role, or correct the role of the coat.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("LAY004", on=System, severity=ERROR, source=LOGIC)
def role_of_product(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        roles = spec.product_of(layer).roles
        if layer.role not in roles:
            what = (
                f"the product {layer.product} is not stated for the role {layer.role}; roles stated: {', '.join(roles)}"
            )
            yield Problem(("layers", layer.id, "role"), what)
