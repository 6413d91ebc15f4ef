"""HAZ017 No more than six precautions without a reason

Checks
    The number of P statements declared, in the EU and Great Britain.
Why
    Beyond six nobody reads them; the law asks for a reason.
Passes
    products.primer.hazards.precautions: [P210, P211, P251, P261, P280, P410+P412]
Fails
    products.primer.hazards.precautions: [P210, P211, P251, P261, P272, P280, P410+P412]    # at products.primer.hazards.precautions
To put right
    Leave out what matters least, or state under precautions_reason why the hazards need more.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.rules.hazards.declared import in_europe
from specgen.standards.citations import Basis, cite
from specgen.standards.tables import table


@rule(
    "HAZ017",
    on=Product,
    severity=Severity.WARNING,
    concern=Concern.SAFETY,
    source=cite("CLP", "Article 28(3)", Basis.REGULATION),
)
def precautions_at_most_six(product: Product, spec: Spec) -> Iterator[Problem]:
    hazards, row = product.hazards, table("precaution_rules").row("id", "most")
    if hazards is None or not in_europe(spec) or hazards.precautions_reason is not None:
        return
    count = len(hazards.precautions)
    if count > int(row["value"]):
        source = table("precaution_rules").row_citation(row)
        what = f"{product.id} declares {count} P statements without a reason; the label carries at most {row['value']}"
        yield Problem(("hazards", "precautions"), what, source=source)
