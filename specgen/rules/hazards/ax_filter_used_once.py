"""HAZ042 An AX filter is not kept for another day

Checks
    Respiratory protection with a filter of type AX: its words do not have it changed by the week, the month or a number of hours, or used again.
Why
    Low-boiling vapour that an AX filter has taken up moves on through it while it lies there, and is breathed the next day.
Passes
    products.primer.hazards.protection.spray.respiratory: "half mask with AX-P3 filters, EN 14387, single use"

    products.primer.hazards.protection.spray.respiratory: "half mask with AX-P3 filters, never used again after the job"
Fails
    products.primer.hazards.protection.spray.respiratory: "half mask with AX-P3 filters, EN 14387, changed weekly"    # at products.primer.hazards.protection.spray.respiratory

    Given second good
    products.touch-up.hazards.protection.spray.respiratory: "half mask AXP3, EN 14387; replace the filter after 40 hours"    # at products.touch-up.hazards.protection.spray.respiratory
To put right
    Have a new AX filter fitted for each job, or state supplied air.
"""

import re

from specgen.facts.product.declared import names_ax
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, date, rule, table

_KEPT = re.compile(
    r"\b(?:chang|replac|renew)\w*\b[^.;]*\b(?:week|weekly|month|monthly|days|[0-9]+ ?(?:h|hours))\b|\b(?:re-?us(?:e|ed|able)|used again)\b",
    re.I,
)


@rule(
    "HAZ042",
    on=Product,
    severity=WARNING,
    source=table("protective_equipment").row_citation(table("protective_equipment").row("id", "breath_low_boiling")),
)
def ax_filter_used_once(product: Product, spec: Spec, on: date) -> Problems:
    for entry in product.hazards.protection if product.hazards is not None else ():
        text = entry.respiratory
        if (
            text is not None
            and names_ax(text)
            and _KEPT.search(text)
            and not re.search(r"\b(?:not|never)\b", text, re.I)
        ):
            what = f"AX filters for {entry.task} with {product.id} are kept for another day: {text}"
            yield Problem(("hazards", "protection", entry.id, "respiratory"), what)
