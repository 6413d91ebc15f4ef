"""HAZ041 The safety data sheet is that of the product as it is made

Checks
    Each product: its safety data sheet states revision and date, the date is not later than today, the product is not newer than the sheet (`formulated`), and the language of the sheet, where stated, is that of the documents.
Why
    A sheet of an older formulation, or in a language nobody at the part reads, tells of hazards that are not those in the pack.
Passes
    products.base.formulated: 2026-02-01

    products.base.hazards.safety_data_sheet.language: en
Fails
    products.base.formulated: 2026-02-02    # at products.base.hazards.safety_data_sheet.date

    products.clear.hazards.safety_data_sheet.date: 2027-01-01    # at products.clear.hazards.safety_data_sheet.date

    without products.base.hazards.safety_data_sheet.revision    # at products.base.hazards.safety_data_sheet.revision
    without products.primer.hazards.safety_data_sheet.date    # at products.primer.hazards.safety_data_sheet.date

    Given second good
    products.gloss.hazards.safety_data_sheet.language: de    # at products.gloss.hazards.safety_data_sheet.language
    products.mastic.formulated: 2026-03-01    # at products.mastic.hazards.safety_data_sheet.date
To put right
    Obtain the current sheet in the language of the workshop; state its revision, date and language.
"""

from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("HAZ041", on=Product, severity=WARNING, source=LOGIC)
def data_sheet_current(product: Product, spec: Spec, on: date) -> Problems:
    sheet = product.hazards.safety_data_sheet if product.hazards is not None else None
    if sheet is None:
        return
    at = ("hazards", "safety_data_sheet")
    if sheet.revision is None:
        yield Problem((*at, "revision"), f"the safety data sheet of {product.id} is named without its revision")
    if sheet.date is None:
        yield Problem((*at, "date"), f"the safety data sheet of {product.id} is named without its date")
    elif sheet.date > on:
        yield Problem((*at, "date"), f"the safety data sheet of {product.id} is dated {sheet.date}, after {on}")
    elif product.formulated is not None and product.formulated > sheet.date:
        what = f"{product.id} was formulated on {product.formulated}, after its safety data sheet of {sheet.date}"
        yield Problem((*at, "date"), what)
    language = spec.project.language.value
    if sheet.language is not None and sheet.language.lower() != language:
        what = f"the safety data sheet of {product.id} is in {sheet.language}, the documents in {language}"
        yield Problem((*at, "language"), what)
