"""HAZ047 A CAS number has its check digit

Checks
    The CAS number of each component and of what is released during cure: its form, and its last digit, which follows from the others.
Why
    A mistyped number finds nothing in the tables: no harmonised class, no exposure limit, no explosive limit. The substance then looks harmless.
Passes
    products.primer.composition.solvent.cas: 64742-95-6

    products.primer.hazards.cure_releases: methyl isobutyl ketone
    products.primer.hazards.cure_release_cas: 108-10-1
Fails
    products.primer.composition.solvent.cas: 64742-95-5    # at products.primer.composition.solvent.cas

    products.primer.composition.solvent.cas: 204-658-1    # at products.primer.composition.solvent.cas

    products.primer.hazards.cure_releases: methyl isobutyl ketone
    products.primer.hazards.cure_release_cas: 108-10-2    # at products.primer.hazards.cure_release_cas

    Given second good
    products.touch-up.composition.solids.cas: 13463-76-7    # at products.touch-up.composition.solids.cas
To put right
    Copy the number from section 3 of the safety data sheet of the substance. A number of another register, as the EC number, is not a CAS number.
"""

from specgen.facts.product.substances import is_registry_number
from specgen.rules.kit import MEMORY, WARNING, Path, Problem, Problems, Product, Spec, date, rule


@rule("HAZ047", on=Product, severity=WARNING, source=MEMORY)
def registry_number_exists(product: Product, spec: Spec, on: date) -> Problems:
    for line in product.composition:
        yield from _wrong(("composition", line.id, "cas"), line.name, line.cas)
    if product.hazards is not None:
        released = product.hazards.cure_releases or "what is released during cure"
        yield from _wrong(("hazards", "cure_release_cas"), released, product.hazards.cure_release_cas)


def _wrong(path: Path, name: str, cas: str | None) -> Problems:
    if cas is not None and not is_registry_number(cas):
        yield Problem(path, f"{cas} of {name} is not a CAS number: its form or its check digit is wrong")
