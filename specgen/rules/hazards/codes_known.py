"""HAZ005 Every code of the label is known

Checks
    Each H, EUH and P statement and each pictogram against the published tables of wordings.
Why
    A mistyped code has no wording, so the document would print a hazard without its text.
Passes
    products.base.hazards.precautions: [P210, P211, P251, P261, P410+P412]
Fails
    products.primer.hazards.supplemental: [EUH205, EUH999]    # at products.primer.hazards.supplemental

    products.barrier.hazards.precautions: [P210, P261, P280, P999]    # at products.barrier.hazards.precautions    # also HAZ016 at products.barrier.hazards.precautions

    products.base.hazards.statements: [H222, H229, H319, H336, H999]    # at products.base.hazards.statements

    Given second good
    products.gloss.hazards.pictograms: [GHS02, GHS07, GHS10]    # at products.gloss.hazards.pictograms    # also HAZ012 at products.gloss.hazards.pictograms
To put right
    Correct the code from section 2 of the safety data sheet.
"""

from specgen.model.field_types import nearest_of
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.trade.codes import parts

_KNOWN = {
    "statements": "h_statements",
    "supplemental": "euh_statements",
    "precautions": "p_statements",
    "pictograms": "",
}
_NAMES = {
    "statements": "H statements",
    "supplemental": "EUH statements",
    "precautions": "P statements",
    "pictograms": "pictograms",
}


def _pictograms() -> list[str]:
    """Every pictogram that a class or a rule of precedence names."""
    named = {code for row in table("label_elements").rows for code in parts(row["pictograms"])}
    return sorted(named | {"GHS01", "GHS03"})


@rule(
    "HAZ005",
    on=Product,
    severity=WARNING,
    source=cite("CLP", "Annexes III and IV", Basis.REGULATION),
)
def codes_known(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None:
        return
    for part, known in _KNOWN.items():
        rows = [row["id"] for row in table(known).rows] if known else _pictograms()
        for code in getattr(product.hazards, part):
            if code not in rows:
                yield Problem(
                    ("hazards", part), f"{code} is not in the published table of {_NAMES[part]}", nearest_of(code, rows)
                )
