"""FLM017 The composition adds up

Checks
    The mass shares of a composition add up to 100 %, within half a unit of the last digit of each; no substance is named twice; no density is zero.
Why
    Solids, coverage and emissions are calculated from the composition; if a component is missing or counted twice, all of them are wrong.
Passes
    products.primer.composition.solvent.mass_share: 40.0 %

    products.primer.composition.gas.mass_share: 31 %
    products.primer.composition.solvent.mass_share: 39 %

    products.primer.composition.solvent.mass_share: 39.7 %
    products.primer.composition.gas.mass_share: 29.7 %
Fails
    products.primer.composition.gas.mass_share: 25 %    # at products.primer.composition    # also USE009 at products.primer.composition

    products.primer.composition.solvent.name: propellant    # at products.primer.composition.gas.name

    products.primer.composition.gas.density: 0 g/mL    # at products.primer.composition.gas.density    # also USE009 at products.primer.composition

    products.primer.composition.solids.density: 0 g/mL    # at products.primer.composition.solids.density    # also USE009 at products.primer.composition    # also USE009 at products.primer.composition

    products.primer.composition.gas.mass_share: 28.4 %    # at products.primer.composition    # also USE009 at products.primer.composition

    products.primer.composition.solvent.mass_share: 39.7 %
    products.primer.composition.gas.mass_share: 29.6 %    # at products.primer.composition    # also USE009 at products.primer.composition
To put right
    Complete or correct the list; combine two lines for the same substance.
"""

from specgen.rules.kit import ERROR, LOGIC, Concern, Problem, Problems, Product, Spec, date, rule
from specgen.trade.solids import sum_of_shares


@rule("FLM017", on=Product, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def composition_adds_up(product: Product, spec: Spec, on: date) -> Problems:
    if not product.composition:
        return
    whole, rounding = sum_of_shares([line.mass_share for line in product.composition])
    if abs(whole.to("%") - 100) > rounding:
        yield Problem(("composition",), f"the mass shares add up to {whole}, not to 100 %")
    names: set[str] = set()
    for line in product.composition:
        if line.name.lower() in names:
            yield Problem(("composition", line.id, "name"), f"{line.name} is named twice")
        names.add(line.name.lower())
        if line.density.base == 0:
            yield Problem(("composition", line.id, "density"), f"{line.name} has a density of zero")
