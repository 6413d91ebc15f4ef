"""USE001 A coverage figure states its DFT

Checks
    Each coverage of a product states an area per pack or per litre, the DFT it applies to, and whether spraying losses are included.
Why
    Two square metres from one can are a coat of ten micrometres or of fifty; without the DFT the figure promises nothing, and without a statement on losses it promises twice too much.
Passes
    products.base.coverage: [{id: can, area_per_pack: 1.2 m2, film: 20 um, losses: included}]

    products.base.coverage: [{id: litre, spreading_rate: 7 m2/L, film: 20 um, losses: excluded}]
Fails
    products.base.coverage: [{id: can, area_per_pack: 2 m2, losses: included}]    # at products.base.coverage.can.film

    products.base.coverage: [{id: can, area_per_pack: 1.2 m2, film: 20 um}]    # warning at products.base.coverage.can.losses

    products.base.coverage: [{id: can, film: 20 um, losses: included}]    # at products.base.coverage.can.area_per_pack

    products.base.coverage: [{id: can, area_per_pack: 1 m2, film: 0 um, losses: included}]    # at products.base.coverage.can.film    # also USU002 at products.base.coverage.can.film

    Given second good
    products.gloss.coverage: [{id: gallon, spreading_rate: 400 ft2/gal, film: 2 mil, losses: excluded}, {id: tin, area_per_pack: 300 ft2, losses: excluded}]    # at products.gloss.coverage.tin.film
To put right
    State square metres at a DFT, and whether losses are included or excluded.
"""

from specgen.rules.kit import ERROR, LOGIC, WARNING, Concern, Problem, Problems, Product, Spec, date, rule


@rule("USE001", on=Product, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def coverage_names_film(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.coverage:
        path = ("coverage", claim.id)
        if claim.area_per_pack is None and claim.spreading_rate is None:
            yield Problem((*path, "area_per_pack"), f"the coverage {claim.id} states no area per pack or per litre")
        if claim.film is None:
            yield Problem((*path, "film"), f"the coverage {claim.id} states no DFT")
        elif claim.film.base == 0:
            yield Problem((*path, "film"), f"the coverage {claim.id} is stated at a DFT of zero")
        if claim.losses is None:
            what = f"the coverage {claim.id} does not state whether losses are included"
            yield Problem((*path, "losses"), what, severity=WARNING)
