"""USU013 The DFT figures of a product stand in a usual proportion

Checks
    Of a product that states a nominal DFT: its minimum, at least a quarter of it, and its maximum, at most four times, body filler left out; the DFT for full hiding, a fifth to two and a half times. The maximum DFT in one coat, at most the maximum DFT. The sag limit as dry film, at most three times the maximum DFT.
Why
    One product is applied in one order of thickness. A figure several times larger or smaller than the others is the one with the slip, and the coats of a system are held against it.
Passes
    products.base.film: {min: 10 um, nominal: 20 um, max: 80 um, per_pass: 10 um}

    products.primer.film.hiding: 10 um

    products.barrier.film.max_single_coat: 120 um

    products.base.film: {min: 15 um, max: 90 um, per_pass: 10 um}

    Given a body filler under a primer
    products.barrier.film: {min: 40 um, nominal: 400 um, max: 2000 um, max_single_coat: 2000 um}
Fails
    products.base.film: {min: 4.9 um, nominal: 20 um, max: 30 um, per_pass: 10 um}    # at products.base.film.min

    products.base.film: {min: 15 um, nominal: 20 um, max: 81 um, per_pass: 10 um}    # at products.base.film.max

    products.primer.variants.grey.overrides: {hiding: 9 um}    # at products.primer.variants.grey.overrides.hiding

    products.base.film.hiding: 3.9 um    # at products.base.film.hiding

    products.barrier.film.max_single_coat: 121 um    # at products.barrier.film.max_single_coat

    products.barrier.film.sag_limit_wet: 1000 um    # at products.barrier.film.sag_limit_wet
To put right
    Correct the figure from the product's own panels.
"""

from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.usual import proportion
from specgen.rules.kit import (
    LOGIC,
    PRACTICE,
    WARNING,
    Path,
    Problem,
    Problems,
    Product,
    Quantity,
    Role,
    Spec,
    date,
    rule,
    show,
)
from specgen.units.quantity import middle


@rule("USU013", on=Product, severity=WARNING, source=PRACTICE)
def film_in_proportion(product: Product, spec: Spec, on: date) -> Problems:
    film = product.film
    if film.nominal is not None:
        if not _runs_out(product):
            yield from _apart(("film", "min"), "minimum DFT", film.min, film.nominal, proportion("film_min"), None)
            yield from _apart(("film", "max"), "maximum DFT", film.max, film.nominal, None, proportion("film_max"))
        for path, hiding in _hiding(product):
            yield from _apart(
                path, "DFT for full hiding", hiding, film.nominal, proportion("hiding_min"), proportion("hiding_max")
            )
    if film.max is None:
        return
    if film.max_single_coat is not None and film.max_single_coat > film.max:
        what = f"maximum DFT in one coat {film.max_single_coat}; maximum DFT {film.max}"
        yield Problem(("film", "max_single_coat"), what, source=LOGIC)
    solids = product.solids.sprayed if product.solids is not None else None
    if film.sag_limit_wet is not None and solids is not None:
        dry = Quantity.of("thickness", film.sag_limit_wet.number * middle(solids).base / 100, film.sag_limit_wet.unit)
        if dry.base > proportion("sag") * film.max.base:
            what = f"sag limit {film.sag_limit_wet} wet, {show(dry)} dry; maximum DFT {film.max}"
            yield Problem(("film", "sag_limit_wet"), what)


def _runs_out(product: Product) -> bool:
    """True for a body filler, which fills a dent and runs out to nothing at its edge."""
    return product.binder == "polyester_putty" or Role.BODY_FILLER in product.roles


def _apart(
    path: Path, called: str, value: Quantity | None, nominal: Quantity, least: Fraction | None, most: Fraction | None
) -> Iterator[Problem]:
    if value is None:
        return
    below = least is not None and value.base < least * nominal.base
    if below or (most is not None and value.base > most * nominal.base):
        yield Problem(path, f"{called} {value}; nominal DFT {nominal}")


def _hiding(product: Product) -> Iterator[tuple[Path, Quantity]]:
    if product.film.hiding is not None:
        yield ("film", "hiding"), product.film.hiding
    for variant in product.variants:
        if variant.overrides is not None and variant.overrides.hiding is not None:
            yield ("variants", variant.id, "overrides", "hiding"), variant.overrides.hiding
