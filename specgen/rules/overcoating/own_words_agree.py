"""OVR008 What a product may and must not go over do not contradict each other

Checks
    The generic types under may_go_over of each product, against those under not_over.
Why
    One reader takes the leave and another the ban, and each has the data on his side.
Passes
    products.base.may_go_over: [epoxy_2k]
    products.base.not_over: [oil_alkyd, nitrocellulose]

    products.barrier.not_over: [oil_alkyd]
Fails
    products.barrier.may_go_over: [epoxy_2k, oil_alkyd]
    products.barrier.not_over: [oil_alkyd]    # at products.barrier.not_over

    Given second good
    products.touch-up.may_go_over: [oil_alkyd, nitrocellulose]
    products.touch-up.not_over: [nitrocellulose, oil_alkyd]    # at products.touch-up.not_over
To put right
    Take the type out of the one list or of the other.
"""

from specgen.facts.pairs.families import paint_name
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule("OVR008", on=Product, severity=ERROR, source=LOGIC)
def own_words_agree(product: Product, spec: Spec, on: date) -> Problems:
    both = [paint_name(family) for family in product.may_go_over if family in product.not_over]
    if both:
        yield Problem(("not_over",), f"{product.id} may go over {', '.join(both)}, and must not")
