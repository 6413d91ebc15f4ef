"""FLM009 The DFT per cross coat from a can is in the usual range

Checks
    The DFT per cross coat of each product in an aerosol can, and of its variants, against the usual DFT of one cross coat from a can; that of a basecoat or an adhesion promoter is thinner, that of a surfacer or a zinc-rich paint may be thicker.
Why
    Below the usual range the spray arrives half dry and the surface feels like sandpaper; above it the coat sags on a vertical panel. A figure far outside is most often the DFT of the whole coat.
Passes
    products.base.film.per_pass: 12 um

    products.primer.film.per_pass: 20 um

    products.base.film.per_pass: 8 um
    systems.cab.layers.base.passes: 3

    products.barrier.film.per_pass: 60 um

    without products.clear.film.per_pass

    products.base.film.per_pass: 4 um
    products.base.application.cross_coats: 5
    systems.cab.layers.base.passes: 5
Fails
    products.primer.film.per_pass: 21 um    # at products.primer.film.per_pass    # also USU006 at products.primer.application.cross_coats
    systems.cab.layers.primer.passes: 3

    products.primer.variants.grey.overrides: {per_pass: 6 um}    # at products.primer.variants.grey.overrides.per_pass
    systems.cab.layers.primer.passes: 10

    products.base.film.per_pass: 3 um    # at products.base.film.per_pass
    products.base.variants.standard.overrides: {per_pass: 8 um}
    products.base.application.cross_coats: 7
    systems.cab.layers.base.passes: 3

    products.primer.variants.red: {id: red, name: red, order_number: EX-101, overrides: {per_pass: 21 um}}    # at products.primer.variants.red.overrides.per_pass

    products.primer.variants.grey.overrides: {per_pass: 21 um}    # at products.primer.variants.grey.overrides.per_pass
    products.primer.variants.red: {id: red, name: red, order_number: EX-101, overrides: {per_pass: 20 um}}
    systems.cab.layers.primer.passes: 3
To put right
    Confirm the figure on a weighed panel and accept the finding with a waiver that names the panel; or correct the figure.
"""

from collections.abc import Iterator

from specgen.model.product import PackForm
from specgen.rules.kit import PRACTICE, WARNING, Path, Problem, Problems, Product, Quantity, Role, Spec, date, rule
from specgen.trade.passes import usual_film_per_pass

_BY_ROLE = {
    Role.ADHESION_PROMOTER: "cross coat of adhesion promoter from a can",
    Role.SURFACER: "cross coat of surfacer from a can",
    Role.BASECOAT: "cross coat of basecoat from a can",
}
_BY_BINDER = {
    "basecoat": "cross coat of basecoat from a can",
    "zinc_organic": "cross coat of zinc-rich paint from a can",
    "zinc_silicate": "cross coat of zinc-rich paint from a can",
}


@rule("FLM009", on=Product, severity=WARNING, source=PRACTICE)
def film_per_pass_is_usual(product: Product, spec: Spec, on: date) -> Problems:
    if product.pack.form is not PackForm.AEROSOL:
        return
    low, high = (limit.quantity for limit in usual_film_per_pass(_row(product)))
    for path, film in _films(product):
        if not low <= film <= high:
            yield Problem(path, f"DFT per cross coat {film}; from a can {low} to {high} is usual")


def _row(product: Product) -> str:
    """The row of the table for what the product is made to be."""
    by_role = next((found for role, found in _BY_ROLE.items() if role in product.roles), None)
    return by_role or _BY_BINDER.get(product.binder, "cross coat from a can")


def _films(product: Product) -> Iterator[tuple[Path, Quantity]]:
    if product.film.per_pass is not None:
        yield ("film", "per_pass"), product.film.per_pass
    for variant in product.variants:
        if variant.overrides is not None and variant.overrides.per_pass is not None:
            yield ("variants", variant.id, "overrides", "per_pass"), variant.overrides.per_pass
