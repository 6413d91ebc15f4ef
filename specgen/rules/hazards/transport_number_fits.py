"""HAZ048 A dangerous goods number stands with its class, and with the flammability declared

Checks
    Where a product that is no aerosol states its transport: a number of the list for paint (such as UN 1263, UN 3082) with another class than its own; the number of an aerosol; a class 3 where the classification holds no flammable liquid and no flash point up to 60 °C; a flammable liquid of category 1 or 2 beneath a number of class 8 or 9 that does not name fire. A flammable liquid of category 3 may travel as environmentally hazardous where it is thick. A number that is not on the list is not assessed. The list is not verified against the published text, so this is a warning.
Why
    Number and class are printed on the drum side by side: where they disagree the load is refused, or solvent is stowed as if it could not burn.
Passes
    products.barrier.hazards.transport: {un_number: UN 1263, transport_class: "3"}

    products.barrier.hazards.transport: {un_number: UN 3469, transport_class: "3"}

    products.barrier.hazards.transport: {un_number: UN 3082, transport_class: "9"}

    products.barrier.hazards.transport: {un_number: UN 2924, transport_class: "8"}

    Given second good
    products.gloss.hazards.classification.liquid.category: 2
    products.gloss.hazards.signal_word: Danger
    products.gloss.hazards.statements: [H225, H317]
    products.gloss.hazards.transport: {un_number: UN 3470, transport_class: "8"}

    products.base.hazards.transport: {un_number: UN 1950, transport_class: "2.1"}
Fails
    products.barrier.hazards.transport: {un_number: UN 1263, transport_class: "8"}    # at products.barrier.hazards.transport.transport_class

    products.barrier.hazards.transport: {un_number: UN 3082, transport_class: "3"}    # at products.barrier.hazards.transport.transport_class

    products.barrier.hazards.transport: {un_number: UN 1950, transport_class: "2.1"}    # at products.barrier.hazards.transport.un_number

    Given second good
    products.gloss.hazards.classification.liquid.category: 2
    products.gloss.hazards.signal_word: Danger
    products.gloss.hazards.statements: [H225, H317]
    products.gloss.hazards.transport: {un_number: UN 3082, transport_class: "9"}    # at products.gloss.hazards.transport.un_number

    Given second good
    products.gloss.hazards.classification: [{id: skin, hazard_class: skin_sensitisation, category: "1"}]
    products.gloss.hazards.statements: [H317]
    products.gloss.hazards.pictograms: [GHS07]
    products.gloss.hazards.precautions: [P261, P280]
    products.gloss.hazards.transport: {un_number: UN 1263, transport_class: "3"}    # at products.gloss.hazards.transport.un_number
To put right
    Take number and class from section 14 of the safety data sheet; where they are right, mend the classification or the flash point.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.facts.usual import proportion
from specgen.model.hazards import Hazards
from specgen.rules.kit import WARNING, Concern, Problem, Problems, Product, Quantity, Spec, date, rule, table

_NUMBERS = table("transport_numbers")
_LIQUIDS, _BURNS_FIRST = "flammable_liquids", {"1", "2"}


@rule("HAZ048", on=Product, severity=WARNING, concern=Concern.SAFETY, source=_NUMBERS.citation)
def transport_number_fits(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    stated = hazards.transport if hazards is not None else None
    if hazards is None or stated is None or package_of(product) == "aerosol":
        return
    number, path = stated.un_number, ("hazards", "transport")
    row = next((row for row in _NUMBERS.rows if row["un"] == number), None)
    if row is None:
        return
    if row["class"] == "2":
        yield Problem((*path, "un_number"), f"{product.id} is no aerosol, but is declared as {number}, {row['name']}")
        return
    if stated.transport_class is not None and stated.transport_class != row["class"]:
        what = f"{product.id} is declared as class {stated.transport_class}; {number}, {row['name']}, is class {row['class']}"
        yield Problem((*path, "transport_class"), what)
    said = f"{product.id} is declared as {number}, {row['name']}, class {row['class']}"
    if row["class"] == "3" and _does_not_burn(hazards):
        what = f"{said}; its classification holds no flammable liquid"
        yield Problem((*path, "un_number"), what)
    elif row["class"] != "3" and "flammable" not in row["name"] and _categories(hazards) & _BURNS_FIRST:
        category = min(_categories(hazards))
        yield Problem((*path, "un_number"), f"{said}, but it is a flammable liquid of category {category}")


def _categories(hazards: Hazards) -> set[str]:
    return {entry.category for entry in hazards.classification if entry.hazard_class == _LIQUIDS}


def _does_not_burn(hazards: Hazards) -> bool:
    """True where classes are stated, none of them a flammable liquid, and no flash point tells otherwise."""
    most = Quantity.of("temperature", proportion("flash_high"), "degC")
    flashes = hazards.flash_point is not None and hazards.flash_point <= most
    return bool(hazards.classification) and not _categories(hazards) and not flashes
