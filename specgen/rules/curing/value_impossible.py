"""CUR003 Application values match the curing type and the pack

Checks
    Mixing on anything but a liquid two-pack, activation on anything but a capsule can, can handling on a liquid, a pack in which the curing type is not supplied.
Why
    A step that is impossible for the product sends the painter looking for a hardener that is not there, or hides the step that is.
Passes
    products.primer.application.cross_coats: 3
Fails
    products.primer.application.activation: {usable_for: 36 h}    # at products.primer.application.activation

    products.barrier.application.shake: 2 min    # at products.barrier.application.shake

    Given second good
    products.touch-up.application.mixing: {stir: well}    # at products.touch-up.application.mixing

    products.barrier.pack.form: aerosol    # at products.barrier.pack.form    # also CUR004 at products.barrier.application.clear_valve    # also CUR004 at products.barrier.application.distance    # also CUR004 at products.barrier.application.flash_between_passes    # also CUR004 at products.barrier.application.overlap    # also CUR004 at products.barrier.application.shake    # also FLM015 at products.barrier.solids.sprayed    # also HAZ006 at products.barrier.hazards.classification    # also HAZ007 at products.barrier.hazards.statements    # also HAZ008 at products.barrier.hazards.classification.liquid.hazard_class    # also HAZ008 at products.barrier.hazards.statements    # also HAZ032 at products.barrier.hazards.storage_max    # also USU001 at products.barrier.pack.fill    # also VOC001 at products.barrier.voc.categories.eu.category

    products.base.application.activation: {usable_for: 36 h}    # at products.base.application.activation
To put right
    Delete the value, or correct the curing type or the pack of the product.
"""

from specgen.facts.product.curing import CANNOT_BY_FORM, CANNOT_BY_KIND, FORM_OF_KIND, states
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule("CUR003", on=Product, severity=ERROR, source=LOGIC)
def value_impossible(product: Product, spec: Spec, on: date) -> Problems:
    form = FORM_OF_KIND.get(product.curing, product.pack.form)
    if form is not product.pack.form:
        what = f"the curing type {product.curing} is not supplied in the pack form {product.pack.form}"
        yield Problem(("pack", "form"), what)
        return
    ruled_out = dict.fromkeys((*CANNOT_BY_KIND[product.curing], *CANNOT_BY_FORM[form]))
    for path in ruled_out:
        if states(product, path):
            what = f"{path[-1]} cannot be stated for the curing type {product.curing} in the pack form {form}"
            yield Problem(path, what)
