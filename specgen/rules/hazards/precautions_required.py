"""HAZ015 Mandatory precautionary statements are present

Checks
    On an aerosol can P210, P251 and P410+P412, with P211 where it is flammable; for the general public P501, and on a can P102. Where the product is hazardous to the aquatic environment, P273 and where required P391: these may be left out of a full label, so they give a warning, and none where six statements stand there already.
Why
    They state how not to ignite a can and how not to burst it.
Passes
    products.base.hazards.precautions: [P210, P211, P251, P261, P410+P412]

    products.barrier.hazards.classification.water: {id: water, hazard_class: aquatic_chronic, category: "3"}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H412]
    products.barrier.hazards.precautions: [P210, P261, P273, P280]

    products.barrier.hazards.classification.water: {id: water, hazard_class: aquatic_chronic, category: "3"}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H412]
    products.barrier.hazards.precautions: [P210, P233, P261, P264, P280, P370+P378]
Fails
    products.base.hazards.precautions: [P210, P251]    # at products.base.hazards.precautions    # also HAZ015 at products.base.hazards.precautions

    products.base.users: public    # at products.base.hazards.precautions    # also HAZ015 at products.base.hazards.precautions

    products.barrier.hazards.classification.water: {id: water, hazard_class: aquatic_chronic, category: "3"}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H412]    # warning at products.barrier.hazards.precautions

    Given second good
    products.touch-up.hazards.precautions: [P210, P251, P410+P412]    # at products.touch-up.hazards.precautions

    without products.base.hazards.classification
    products.base.hazards.precautions: [P211, P251, P410+P412]    # at products.base.hazards.precautions    # also HAZ006 at products.base.hazards.classification
To put right
    Copy the precautionary statements from section 2 of the safety data sheet.
"""

from specgen.facts.product.declared import aerosol_category_declared, differences, in_europe
from specgen.facts.product.hazard_facts import known_classes, package_of
from specgen.rules.kit import ERROR, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.trade.codes import parts
from specgen.trade.hazard_class import Classification, elements_of, source_of_cell


@rule(
    "HAZ015",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, Table 2.3.1, and Article 28(2)", Basis.REGULATION),
    waivable=False,
)
def precautions_required(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None:
        return
    path, declared = ("hazards", "precautions"), product.hazards.precautions
    found = {entry.code: entry.source for entry in differences(product, spec) if entry.verdict == "missing"}
    category = aerosol_category_declared(product)
    if package_of(product) == "aerosol" and not product.hazards.classification and category is not None:
        row = elements_of(Classification("aerosols", category))
        for code in (*parts(row["prevention"]), *parts(row["storage"])):
            found.setdefault(code, source_of_cell(row, "prevention", code))
    for code in sorted(found):
        if code.startswith("P") and code not in declared:
            yield Problem(path, f"precautionary statement {code} of {product.id} is missing", source=found[code])
    if not in_europe(spec) or len(declared) >= int(table("precaution_rules").row("id", "most")["value"]):
        return
    for entry in known_classes(product):
        if not entry.hazard_class.startswith("aquatic"):
            continue
        row = elements_of(entry)
        for code in (*parts(row["prevention"]), *parts(row["response"])):
            if code not in (*declared, *found):
                what = f"{product.id} is hazardous to the aquatic environment but does not carry {code}"
                yield Problem(path, what, severity=WARNING, source=source_of_cell(row, "prevention", code))
