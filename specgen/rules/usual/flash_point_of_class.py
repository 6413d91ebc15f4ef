"""USU016 The flash point agrees with the flammable class

Checks
    The flash point of a product that declares a class of flammable liquids: below 23 degC for category 1 or 2, from 23 to 60 degC for category 3.
Why
    Store, transport and booth go by the category; a flash point that belongs to another one has a slip, or the class has.
Passes
    products.barrier.hazards.flash_point: 23 degC

    products.barrier.hazards.flash_point: 60 degC

    Given second good
    products.gloss.hazards.flash_point: 100 degF
Fails
    products.barrier.hazards.flash_point: 22 degC    # at products.barrier.hazards.flash_point

    products.barrier.hazards.flash_point: 61 degC    # at products.barrier.hazards.flash_point
To put right
    Take flash point and category from sections 9 and 2 of the safety data sheet.
"""

from specgen.facts.usual import proportion
from specgen.rules.kit import WARNING, Basis, Concern, Problem, Problems, Product, Quantity, Spec, cite, date, rule


@rule(
    "USU016",
    on=Product,
    severity=WARNING,
    concern=Concern.SAFETY,
    source=cite("CLP", "Annex I, table 2.6.1", Basis.REGULATION),
)
def flash_point_of_class(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    if hazards is None or hazards.flash_point is None:
        return
    low, high = (Quantity.of("temperature", proportion(f"flash_{end}"), "degC") for end in ("low", "high"))
    for entry in hazards.classification:
        if entry.hazard_class != "flammable_liquids":
            continue
        point = hazards.flash_point
        fits = low <= point <= high if entry.category == "3" else point < low
        if not fits:
            asked = f"{low} to {high}" if entry.category == "3" else f"below {low}"
            what = f"flash point {point}; flammable liquids of category {entry.category} have one of {asked}"
            yield Problem(("hazards", "flash_point"), what)
