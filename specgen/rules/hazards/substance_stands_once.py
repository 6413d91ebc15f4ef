"""HAZ045 Name and CAS number of a component tell the same substance

Checks
    The components of a product: no CAS number stands twice, and a name that the tables know stands with the number they give for it. A name that they know without its number is told for information.
Why
    The limits for mixtures look at each component by itself: half of a substance in each of two lines is below a limit that the whole reaches. By the number of another substance it is given that one's hazards in place of its own.
Passes
    products.primer.composition.solvent: {id: solvent, name: mixed isomers of xylene, cas: 1330-20-7, kind: solvent, mass_share: 5 %, density: 0.87 g/mL}
    products.primer.composition.solids.mass_share: 65 %

    products.primer.composition.solvent: {id: solvent, name: Methyl isobutyl ketone, cas: 108-10-1, kind: solvent, mass_share: 0.9 %, density: 0.80 g/mL}
    products.primer.composition.solids.mass_share: 69.1 %

    products.primer.composition.solvent: {id: solvent, name: white spirit, cas: 64742-95-6, kind: solvent, mass_share: 40 %, density: 0.80 g/mL}
Fails
    products.primer.composition.solvent: {id: solvent, name: cyclohexanone, cas: 108-10-1, kind: solvent, mass_share: 0.9 %, density: 0.80 g/mL}    # at products.primer.composition.solvent.cas
    products.primer.composition.solids.mass_share: 69.1 %

    products.primer.composition.solvent: {id: solvent, name: cyclohexanone, kind: solvent, mass_share: 40 %, density: 0.95 g/mL}    # note at products.primer.composition.solvent

    products.primer.composition.solvent: {id: solvent, name: white spirit, cas: 64742-95-6, kind: solvent, mass_share: 30 %, density: 0.80 g/mL}
    products.primer.composition.more: {id: more, name: naphtha, cas: 64742-95-6, kind: solvent, mass_share: 10 %, density: 0.80 g/mL}    # at products.primer.composition.more.cas

    Given second good
    products.touch-up.composition.solvent: {id: solvent, name: acetone, kind: solvent, mass_share: 40 %, density: 6.6 lb/gal}    # note at products.touch-up.composition.solvent
To put right
    Give each substance one line with its whole share, its name and its own CAS number.
"""

from specgen.facts.product.substances import names_of, numbers_of
from specgen.model.product import Component
from specgen.rules.kit import LOGIC, NOTE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("HAZ045", on=Product, severity=WARNING, source=LOGIC)
def substance_stands_once(product: Product, spec: Spec, on: date) -> Problems:
    by_number: dict[str, Component] = {}
    for line in product.composition:
        path, numbers = ("composition", line.id), numbers_of(line.name)
        if line.cas is None:
            if numbers:
                what = f"{line.name} in {product.id} states no CAS number, so its harmonised class and its limits are not looked up"
                yield Problem(
                    path, what, f"State the number; the tables give {' or '.join(sorted(numbers))}.", severity=NOTE
                )
            continue
        other = by_number.setdefault(line.cas, line)
        if other is not line:
            what = (
                f"{line.cas} stands in two lines of {product.id}, {other.id} and {line.id}; each is looked at by itself"
            )
            yield Problem((*path, "cas"), what)
        if numbers and line.cas not in numbers and not _one_of_a_kind(line):
            named = ", ".join(sorted(names_of(line.cas))) or "no substance the tables know"
            what = f"{line.name} in {product.id} has the number {line.cas}, which is {named}; the tables give {' or '.join(sorted(numbers))}"
            yield Problem((*path, "cas"), what)


def _one_of_a_kind(line: Component) -> bool:
    """True where the number is of one member of what the name says, as o-xylene is one of xylene."""
    return any(line.name.casefold() in name for name in names_of(line.cas or ""))
