"""WIN001 A stated overcoating interval is possible

Checks
    Each overcoating interval of a product: its maximum is above its minimum, and no second entry for the same next coat and the same air temperature contradicts it.
Why
    An interval whose minimum is its maximum cannot be met in practice; of two for the same case it is unclear which one the manufacturer meant.
Passes
    products.primer.overcoat.any-cold: {id: any-cold, next_coat: any, interval: 50 min..36 h, air: 10 degC}
    systems.cab.layers.primer.overcoat_interval: 1 h..24 h

    Given second good

    products.base.overcoat.clear.interval: max 24 h
Fails
    products.primer.overcoat.any-warm.interval: 2 h..2 h    # at products.primer.overcoat.any-warm.interval
    systems.cab.layers.primer.overcoat_interval: 2 h..2 h    # also INS015 at jobs.refit.inspection.primer-film.after

    products.primer.overcoat.again: {id: again, next_coat: any, interval: 1 h..36 h, air: 15 degC}    # at products.primer.overcoat.again.interval
    systems.cab.layers.primer.overcoat_interval: 1 h..24 h

    Given second good
    products.mastic.overcoat.itself-warm.interval: 3 h..3 h    # at products.mastic.overcoat.itself-warm.interval    # also WIN004 at systems.deck.layers.first.overcoat_interval    # also USU003 at products.mastic.overcoat.itself.interval
To put right
    Correct the entry from the manufacturer's data.
"""

from specgen.model.drying import OvercoatWindow
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Quantity, Spec, date, rule


@rule("WIN001", on=Product, severity=ERROR, source=LOGIC)
def window_possible(product: Product, spec: Spec, on: date) -> Problems:
    seen: dict[tuple[str, Quantity], OvercoatWindow] = {}
    for entry in product.overcoat:
        path, window = ("overcoat", entry.id, "interval"), entry.interval
        if window.low is not None and window.high is not None and window.low >= window.high:
            yield Problem(
                path, f"the maximum of the overcoating interval {window} of {product.id} is not above its minimum"
            )
        first = seen.setdefault((entry.next_coat, entry.air), entry)
        if first.interval != window:
            what = f"{first.id} and {entry.id} both apply to {entry.next_coat} at {entry.air}, but state {first.interval} and {window}"
            yield Problem(path, what)
