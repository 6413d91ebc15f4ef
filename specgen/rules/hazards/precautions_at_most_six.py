"""HAZ017 No more than six precautionary statements without a reason

Checks
    The number of P statements declared, in the EU and Great Britain.
Why
    Beyond six they are not read; the law requires a reason for more.
Passes
    products.primer.hazards.precautions: [P210, P211, P251, P261, P280, P410+P412]

    products.primer.hazards.precautions: [P210, P211, P251, P261, P272, P280, P410+P412]
    products.primer.hazards.precautions_reason: all of them are asked for

    Given second good
    products.mastic.hazards.precautions: [P210, P233, P240, P261, P264, P272, P280]
Fails
    products.primer.hazards.precautions: [P210, P211, P251, P261, P272, P280, P410+P412]    # at products.primer.hazards.precautions

    products.barrier.hazards.precautions: [P210, P233, P240, P261, P264, P272, P280]    # at products.barrier.hazards.precautions
To put right
    Omit the least important ones, or state under precautions_reason why the hazards need more.
"""

from specgen.facts.product.declared import in_europe
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table


@rule(
    "HAZ017",
    on=Product,
    severity=WARNING,
    source=cite("CLP", "Article 28(3)", Basis.REGULATION),
)
def precautions_at_most_six(product: Product, spec: Spec, on: date) -> Problems:
    hazards, row = product.hazards, table("precaution_rules").row("id", "most")
    if hazards is None or not in_europe(spec) or hazards.precautions_reason is not None:
        return
    count = len(hazards.precautions)
    if count > int(row["value"]):
        source = table("precaution_rules").row_citation(row)
        what = f"{product.id} declares {count} P statements without a reason; the maximum is {row['value']}"
        yield Problem(("hazards", "precautions"), what, source=source)
