"""CUR007 Free water in the can leaves enough of the hardener blocked

Checks
    Where a can with a blocked hardener states its free water, its contents by mass, the hardener in it and how much of that may be released within the shelf life: how much the free water releases at most, by the balance of equivalents.
Why
    Water that comes with pigment, solvent or propellant releases hardener in the closed can; what is used up is missing in the film, and the can gels before its day.
Passes
    products.primer.moisture_cure: {free_water: 100, can_contents: 320 g, can_equivalents: 0.0674, release_allowed: 10 %}

    products.primer.moisture_cure: {free_water: 500, can_contents: 320 g}
Fails
    products.primer.moisture_cure: {free_water: 500, can_contents: 320 g, can_equivalents: 0.0674, release_allowed: 10 %}    # at products.primer.moisture_cure.free_water

    products.primer.moisture_cure: {free_water: 200, can_contents: 320 g, can_equivalents: 0.0674, release_allowed: 10 %}    # at products.primer.moisture_cure.free_water
To put right
    Drier raw materials, a water scavenger, or a shorter shelf life that storage tests bear out.
"""

from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.moisture_cure import released_in_can


@rule("CUR007", on=Product, severity=WARNING, source=LOGIC)
def water_in_the_can(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.moisture_cure
    if stated is None:
        return
    water, fill, mol, allowed = stated.free_water, stated.can_contents, stated.can_equivalents, stated.release_allowed
    if water is None or fill is None or mol is None or allowed is None:
        return
    id = f"products.{product.id}.released_in_can"
    released = worked_out("hardener released in the can", lambda: released_in_can(id, water, fill, mol))
    if not isinstance(released, NotKnown) and released.number > allowed.to("%"):
        what = f"the free water in the can releases up to {released.printed()} of the hardener; {allowed} is allowed"
        yield Problem(("moisture_cure", "free_water"), what)
