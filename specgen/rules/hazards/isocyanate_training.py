"""HAZ019 Isocyanate products carry the training statement

Checks
    In the EU and for professional use, a product with isocyanate and 0.1 % or more of free monomeric diisocyanates carries the sentence of the law among its cautions. A content that is not stated is taken as 0.1 % or more.
Why
    Without the training the product may not be used; users learn of the requirement from this sentence.
Passes
    products.clear.hazards.isocyanates: {monomer: 0.25 %}

    products.clear.hazards.isocyanates: {monomer: 0.09 %}
    without products.clear.hazards.cautions

    products.clear.users: public
    without products.clear.hazards.cautions
    products.clear.hazards.precautions: [P102, P210, P211, P251, P410+P412, P501]

    products.clear.hazards.cautions: [{id: first, task: any, text: Keep the booth running.}, {id: training, task: any, text: As from 24 August 2023 adequate training is required before industrial or professional use.}]
Fails
    without products.clear.hazards.cautions    # at products.clear.hazards.cautions

    products.clear.hazards.isocyanates: {monomer: 0.1 %}
    without products.clear.hazards.cautions    # at products.clear.hazards.cautions

    without products.clear.hazards.isocyanates
    products.clear.hazards.cautions.training.text: As from 24 August 2023 training is required.    # at products.clear.hazards.cautions    # also HAZ020 at products.clear.hazards.isocyanates.monomer_at_limit
To put right
    Add the sentence verbatim to the cautions: As from 24 August 2023 adequate training is required before industrial or professional use.
"""

from specgen.facts.product.hazards import hazards_of
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule
from specgen.trade.hazard_class import Element


@rule(
    "HAZ019",
    on=Product,
    severity=ERROR,
    source=cite("REACH", "Annex XVII, entry 74", Basis.REGULATION),
    waivable=False,
)
def isocyanate_training(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None:
        return
    wanted = hazards_of(spec, product.id, on).training
    printed = " ".join(" ".join(caution.text for caution in product.hazards.cautions).split()).casefold()
    if isinstance(wanted, Element) and wanted.note.casefold() not in printed:
        what = f"the cautions of {product.id} do not contain the training statement; {'; '.join(wanted.reasons)}"
        yield Problem(("hazards", "cautions"), what, source=wanted.source)
