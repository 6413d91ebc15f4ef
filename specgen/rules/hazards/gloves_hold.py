"""HAZ038 No glove is named that does not hold

Checks
    Gloves stated for work with the wet product, against what the product contains (table gloves_unfit): natural latex against solvents, isocyanate or epoxy, vinyl against ketones, esters, aromatics or isocyanate, and nitrile against ketones or esters where neither splashes nor a breakthrough time is named. That a glove does hold is never said: the safety data sheet and the manufacturer of the glove decide.
Why
    A glove that lets the product through holds it against the skin, and is worse than none.
Passes
    products.clear.hazards.protection.spray.gloves: butyl 0.5 mm, EN ISO 374-1 type A, breakthrough class 3; never natural latex

    Given a job that states its spray air
    products.barrier.hazards.protection.spray.gloves: nitrile 0.5 mm, EN ISO 374-1 type A, breakthrough time 30 min

    Given second good
    products.gloss.hazards.protection.spray.gloves: butyl 0.5 mm, EN ISO 374-1, class 3 (latex gloves are unsuitable)
Fails
    products.clear.hazards.protection.spray.gloves: natural latex 0.1 mm, EN ISO 374-1 type A, breakthrough class 3    # at products.clear.hazards.protection.spray.gloves

    products.base.hazards.protection.spray.gloves: nitrile or latex, splash only    # at products.base.hazards.protection.spray.gloves

    Given second good
    products.mastic.hazards.protection.spray.gloves: latex 0.4 mm, EN ISO 374-1, splash only    # at products.mastic.hazards.protection.spray.gloves
    products.gloss.hazards.protection.mix: {id: mix, task: clean-up, gloves: "PVC 0.4 mm, EN ISO 374-1, splash only"}    # at products.gloss.hazards.protection.mix.gloves

    Given a job that states its spray air
    products.barrier.hazards.protection.spray.gloves: nitrile 0.4 mm, EN ISO 374-1    # at products.barrier.hazards.protection.spray.gloves    # also HAZ029 at products.barrier.hazards.protection.spray.gloves
To put right
    Take material, thickness and breakthrough time from section 8 of the safety data sheet, and hold them against the table of the glove's manufacturer.
"""

from specgen.facts.product.declared import wet_work
from specgen.facts.product.gloves import unfit_gloves
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule, table


@rule("HAZ038", on=Product, severity=WARNING, source=PRACTICE)
def gloves_hold(product: Product, spec: Spec, on: date) -> Problems:
    for entry in wet_work(product.hazards) if product.hazards is not None else ():
        for row in unfit_gloves(product, entry.gloves) if entry.gloves is not None else ():
            what = f"gloves stated for {entry.task} with {product.id}: {entry.gloves}; {row['why']}"
            source = table("gloves_unfit").row_citation(row)
            yield Problem(("hazards", "protection", entry.id, "gloves"), what, source=source)
