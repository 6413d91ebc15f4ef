"""USU016 The flash point agrees with the flammable class

Checks
    The flash point of a liquid product, against the class of flammable liquids it declares: below 23 degC for category 1 or 2, from 23 to 60 degC for category 3. Where section 2 of its sheet is not given, the class is taken from H224, H225 or H226. A flash point of 60 degC and less with neither is a warning, below 23 degC an error.
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

    Given second good
    products.gloss.hazards.flash_point: 82 degC    # at products.gloss.hazards.flash_point

    without products.barrier.hazards.classification    # also HAZ006 note at products.barrier.hazards.classification
    products.barrier.hazards.flash_point: 61 degC    # at products.barrier.hazards.flash_point

    without products.barrier.hazards.classification    # also HAZ006 note at products.barrier.hazards.classification
    products.barrier.hazards.statements: [H315, H317, H319]
    products.barrier.hazards.flash_point: 60 degC    # warning at products.barrier.hazards.flash_point
To put right
    Take flash point and category from sections 9 and 2 of the safety data sheet; mind the unit, for 82 degF is 28 degC.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.facts.usual import proportion
from specgen.model.hazards import Hazards
from specgen.rules.kit import (
    ERROR,
    WARNING,
    Basis,
    Concern,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    cite,
    date,
    rule,
)

_BY_STATEMENT = {"H224": "1", "H225": "2", "H226": "3"}
_PATH = ("hazards", "flash_point")


@rule(
    "USU016",
    on=Product,
    severity=ERROR,
    concern=Concern.SAFETY,
    source=cite("CLP", "Annex I, table 2.6.1", Basis.REGULATION),
)
def flash_point_of_class(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    if hazards is None or hazards.flash_point is None or package_of(product) == "aerosol":
        return
    point = hazards.flash_point
    low, high = (Quantity.of("temperature", proportion(f"flash_{end}"), "degC") for end in ("low", "high"))
    categories = _categories(hazards)
    for category in categories:
        fits = low <= point <= high if category == "3" else point < low
        if not fits:
            asked = f"{low} to {high}" if category == "3" else f"below {low}"
            yield Problem(_PATH, f"flash point {point}; flammable liquids of category {category} have one of {asked}")
    if not categories and point <= high and (hazards.classification or hazards.statements):
        what = (
            f"flash point {point}, but no class of flammable liquids is declared; a liquid of {high} and less has one"
        )
        yield Problem(_PATH, what, severity=None if point < low else WARNING)


def _categories(hazards: Hazards) -> tuple[str, ...]:
    """Of flammable liquids, as declared; by the statements where no class is."""
    if hazards.classification:
        return tuple(entry.category for entry in hazards.classification if entry.hazard_class == "flammable_liquids")
    return tuple(_BY_STATEMENT[code] for code in hazards.statements if code in _BY_STATEMENT)
