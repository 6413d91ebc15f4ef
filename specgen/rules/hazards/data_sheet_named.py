"""HAZ003 The safety data sheet is named

Checks
    Every product names its safety data sheet by number.
Why
    The job document is only a summary; whoever needs more must know which safety data sheet to consult.
Passes
    products.base.hazards.safety_data_sheet: {number: SDS-200, revision: "1", date: 2026-01-15}
Fails
    without products.base.hazards.safety_data_sheet    # at products.base.hazards.safety_data_sheet

    Given second good
    without products.touch-up.hazards.safety_data_sheet    # at products.touch-up.hazards.safety_data_sheet
To put right
    Write number, revision and date of the current safety data sheet, and where it can be obtained.
"""

from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ003",
    on=Product,
    severity=ERROR,
    source=cite("REACH", "Art. 31", Basis.REGULATION),
    waivable=False,
)
def data_sheet_named(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or product.hazards.safety_data_sheet is None:
        yield Problem(("hazards", "safety_data_sheet"), f"the product {product.id} names no safety data sheet")
