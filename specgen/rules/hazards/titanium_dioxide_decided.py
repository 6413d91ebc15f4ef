"""HAZ034 The use of EUH211 is decided

Checks
    A product with 1 % or more of titanium dioxide records, in the EU, whether EUH211 is kept or dropped, with date and authority. The statement was annulled; until the text of the law without it has been read, this is told for information. EUH211 is not a statement of Great Britain.
Why
    Annexes I and II of (EU) 2020/217, from which the statement came, are annulled (notice C/2025/6670), while a consolidated text of 2026 still prints it. Without a record it is not clear whether it was dropped or forgotten.
Passes
    products.barrier.hazards.titanium_dioxide_decision: dropped after the judgment of 2025-08-01, by the classifier

    Given second good
    products.touch-up.composition.solids.cas: 13463-67-7

    products.primer.composition.solids.cas: 13463-67-7
    products.primer.hazards.titanium_dioxide_decision: kept on 2025-09-01, by the classifier
    products.primer.hazards.supplemental: [EUH205, EUH211]
Fails
    products.primer.composition.solids.cas: 13463-67-7    # at products.primer.hazards.titanium_dioxide_decision

    project.jurisdictions: [GB]
    products.barrier.hazards.supplemental: [EUH205, EUH211]    # at products.barrier.hazards.supplemental    # also VOC001 at products.barrier.voc.categories    # also VOC001 at products.base.voc.categories    # also VOC001 at products.clear.voc.categories    # also VOC001 at products.primer.voc.categories
To put right
    Record the decision under titanium_dioxide_decision.
"""

from specgen.facts.product.hazards import hazards_of
from specgen.rules.kit import NOTE, Problem, Problems, Product, Spec, date, rule, table
from specgen.trade.known import NotKnown

CODE = "EUH211"


@rule(
    "HAZ034",
    on=Product,
    severity=NOTE,
    source=table("euh_triggers").row_citation(table("euh_triggers").row("id", CODE)),
)
def titanium_dioxide_decided(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    if hazards is None:
        return
    found = hazards_of(spec, product.id, on).supplemental
    if hazards.titanium_dioxide_decision is None:
        for entry in found:
            if isinstance(entry, NotKnown) and entry.what == CODE:
                what = f"{product.id} contains titanium dioxide, but no decision on {CODE} is recorded: {entry.why}"
                yield Problem(("hazards", "titanium_dioxide_decision"), what)
    if CODE in hazards.supplemental and "EU" not in spec.project.jurisdictions:
        yield Problem(
            ("hazards", "supplemental"),
            f"{CODE} of {product.id} is not a statement of {', '.join(spec.project.jurisdictions)}",
        )
