"""USU006 The usual number of cross coats gives the film of the product

Checks
    The DFT per cross coat times the usual number of cross coats, at its most against the minimum DFT of the product and at its least against the maximum.
Why
    Whoever follows the number on the data sheet ends outside the DFT on the same sheet.
Passes
    products.base.application.cross_coats: 2

    products.base.application.cross_coats: 3

    products.base.application.cross_coats: 1..2
Fails
    products.base.application.cross_coats: 1    # at products.base.application.cross_coats

    products.base.application.cross_coats: 4    # at products.base.application.cross_coats

    products.clear.application.cross_coats: 5..6    # at products.clear.application.cross_coats
To put right
    Correct the number of cross coats, the DFT per cross coat or the DFT limits from the product's own tests.
"""

from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Quantity, Spec, date, rule


@rule("USU006", on=Product, severity=WARNING, source=LOGIC)
def cross_coats_give_film(product: Product, spec: Spec, on: date) -> Problems:
    count = product.application.cross_coats if product.application is not None else None
    each, least, most = product.film.per_pass, product.film.min, product.film.max
    if count is None or each is None:
        return
    path = ("application", "cross_coats")
    if least is not None and count.high is not None and (thick := _times(each, count.high)) < least:
        yield Problem(path, f"{count} cross coats of {each} give at most {thick}; the minimum DFT is {least}")
    elif most is not None and (thin := _times(each, count.low)) > most:
        yield Problem(path, f"{count} cross coats of {each} give at least {thin}; the maximum DFT is {most}")


def _times(each: Quantity, count: int) -> Quantity:
    return Quantity.of(each.kind, each.number * count, each.unit)
