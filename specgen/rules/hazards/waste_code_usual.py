"""HAZ033 A waste code is one of the usual ones

Checks
    Stated waste codes, in the EU, against those usual for cans, tins and rags of this trade. That of waste paint without dangerous substances is usual for a liquid that declares no hazard class.
Why
    A wrong code sends a pressurised can into a shredder.
Passes
    products.base.hazards.waste_codes: ["16 05 04*", "15 01 10*"]

    Given second good
    products.gloss.hazards.waste_codes: ["08 01 12"]

    Given a water-borne paint that is not classified
    products.barrier.hazards.waste_codes: ["08 01 12"]
Fails
    products.base.hazards.waste_codes: ["08 01 12"]    # at products.base.hazards.waste_codes

    products.base.hazards.waste_codes: ["16 05 04*", "08 01 12"]    # at products.base.hazards.waste_codes

    products.clear.hazards.waste_codes: ["08 01 12", "16 05 04*"]    # at products.clear.hazards.waste_codes
To put right
    Ask the responsible authority; for emptied cans the codes differ between authorities.
"""

from specgen.model.field_types import nearest_of
from specgen.model.product import PackForm
from specgen.rules.kit import NOTE, Basis, Problem, Problems, Product, Spec, cite, date, rule, table

_WITHOUT_DANGER = {"08 01 12", "20 01 28"}


@rule(
    "HAZ033",
    on=Product,
    severity=NOTE,
    source=cite("DEC-2000-532", "", Basis.REGULATION),
)
def waste_code_usual(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or "EU" not in spec.project.jurisdictions:
        return
    declared = bool(product.hazards.classification or product.hazards.statements)
    mild = product.pack.form is not PackForm.AEROSOL and not declared
    rows = [row["code"] for row in table("waste_codes").rows if mild or row["code"] not in _WITHOUT_DANGER]
    for code in product.hazards.waste_codes:
        if code not in rows:
            what = f"{code} is not one of the waste codes usual for {product.pack.form} products"
            yield Problem(("hazards", "waste_codes"), what, nearest_of(code, rows))
