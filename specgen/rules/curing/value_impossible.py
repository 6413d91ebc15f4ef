"""CUR003 Application values belong to the curing kind and the pack

Checks
    Mixing on anything but a liquid two-pack, activation on anything but a capsule can, can handling on a liquid, a pack that the curing kind does not come in.
Why
    A step that the product cannot have sends the painter looking for a hardener that is not there, or hides the step that is.
Passes
    products.primer.application.cross_coats: 3
Fails
    products.primer.application.activation: {usable_for: 36 h}    # at products.primer.application.activation

    products.barrier.application.shake: 2 min    # at products.barrier.application.shake
To put right
    Delete the value, or correct the curing kind or the pack of the product.
"""

from specgen.facts.product.curing import CANNOT_BY_FORM, CANNOT_BY_KIND, FORM_OF_KIND, states
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule("CUR003", on=Product, severity=ERROR, source=LOGIC)
def value_impossible(product: Product, spec: Spec, on: date) -> Problems:
    form = FORM_OF_KIND.get(product.curing, product.pack.form)
    if form is not product.pack.form:
        what = f"a product that is {product.curing} does not come as {product.pack.form}"
        yield Problem(("pack", "form"), what)
        return
    ruled_out = dict.fromkeys((*CANNOT_BY_KIND[product.curing], *CANNOT_BY_FORM[form]))
    for path in ruled_out:
        if states(product, path):
            what = f"{path[-1]} cannot be stated for a product that is {product.curing} and comes as {form}"
            yield Problem(path, what)
