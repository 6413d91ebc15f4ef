"""DOC007 The name of a product agrees with its generic type

Checks
    The name of each product: a kind of paint it names is that of its generic type or of one of its roles.
Why
    The name is read on the can and in the order, the generic type decides what may lie on what: where they part, every answer on compatibility is for another paint.
Passes
    products.primer.name: Example epoxy primer

    products.barrier.name: Barrier coat for epoxy and polyurethane
Fails
    products.barrier.name: Example alkyd primer    # at products.barrier.name

    products.clear.name: Example epoxy clear    # at products.clear.name
To put right
    Correct the generic type by the data sheet, or the name.
"""

from specgen.facts.layer.said import kinds_not_of
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("DOC007", on=Product, severity=WARNING, source=LOGIC)
def name_agrees_with_type(product: Product, spec: Spec, on: date) -> Problems:
    held = [(product.binder, role) for role in product.roles]
    for kind in kinds_not_of(product.name, held):
        yield Problem(("name",), f"the name of {product.id} says {kind}; its generic type is {product.binder}")
