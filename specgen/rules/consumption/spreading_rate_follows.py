"""USE004 A spreading rate agrees with volume solids and DFT

Checks
    A spreading rate of a product, rounded or cut off at its own last digit, against the rate calculated from volume solids and DFT. With losses included it may only be lower. The factor 1604 of printed tables and the exact one are both accepted.
Why
    Paint is ordered by this figure; one that does not agree with the solids belongs to another DFT or another product.
Passes
    products.barrier.coverage: [{id: litre, spreading_rate: 6.3 m2/L, film: 80 um, losses: excluded}]

    products.barrier.coverage: [{id: gallon, spreading_rate: 255 ft2/gal, film: 80 um, losses: excluded}]

    products.barrier.coverage: [{id: litre, spreading_rate: 4.4 m2/L, film: 80 um, losses: included}]

    products.barrier.coverage: [{id: litre, spreading_rate: 6.2 m2/L, film: 80 um, losses: excluded}]

    products.barrier.coverage: [{id: litre, spreading_rate: 6.3 m2/L, film: 80 um, losses: included}]

    products.base.coverage: [{id: can, area_per_pack: 1.2 m2, film: 20 um, losses: included}]

    products.barrier.coverage: [{id: gallon, spreading_rate: 254.65 ft2/gal, film: 80 um, losses: excluded}]

    products.barrier.coverage: [{id: gallon, spreading_rate: 254 ft2/gal, film: 80 um, losses: excluded}]
Fails
    products.barrier.coverage: [{id: litre, spreading_rate: 8.0 m2/L, film: 80 um, losses: excluded}]    # at products.barrier.coverage.litre.spreading_rate

    products.barrier.coverage: [{id: litre, spreading_rate: 7 m2/L, film: 80 um, losses: included}]    # at products.barrier.coverage.litre.spreading_rate

    products.barrier.coverage: [{id: thin, spreading_rate: 6.2 m2/L, film: 80 um, losses: excluded}, {id: litre, spreading_rate: 6.1 m2/L, film: 80 um, losses: excluded}]    # at products.barrier.coverage.litre.spreading_rate

    products.barrier.coverage: [{id: litre, spreading_rate: 6.4 m2/L, film: 80 um, losses: included}]    # at products.barrier.coverage.litre.spreading_rate

    products.barrier.coverage: [{id: gallon, spreading_rate: 253 ft2/gal, film: 80 um, losses: excluded}]    # at products.barrier.coverage.gallon.spreading_rate

    without products.base.solids
    products.base.coverage: [{id: litre, spreading_rate: 7 m2/L, film: 20 um, losses: included}, {id: more, spreading_rate: 8 m2/L, film: 20 um, losses: included}]    # note at products.base.coverage.litre.spreading_rate    # note at products.base.coverage.more.spreading_rate    # also USE009 at products.base.solids.in_can
To put right
    Calculate it again: m2/L is 10 times the volume solids in percent over the DFT in um; round once, at the end.
"""

from fractions import Fraction

from specgen.facts.layer.figures import solids_in_can
from specgen.model.product import Losses
from specgen.rules.kit import ERROR, LOGIC, NOTE, Concern, Problem, Problems, Product, Quantity, Spec, date, rule, show
from specgen.trade.consumption import spreading_rate, spreading_rate_us
from specgen.trade.given import Given, rounding_of
from specgen.trade.known import NotKnown
from specgen.trade.working import Working


@rule("USE004", on=Product, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def spreading_rate_follows(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.coverage:
        stated, film = claim.spreading_rate, claim.film
        if stated is None or film is None or film.base == 0:
            continue
        path = ("coverage", claim.id, "spreading_rate")
        solids = solids_in_can(product, None)
        if isinstance(solids, NotKnown) and solids.is_fault:
            continue  # the rules on solids say so
        if isinstance(solids, NotKnown):
            what = f"the spreading rate of {product.id} cannot be assessed: its volume solids are not known"
            yield Problem(path, what, "write solids.in_can", severity=NOTE)
            continue
        room, rates = rounding_of(stated), _worked_out(solids, film, stated.unit)
        too_high = stated.number - room > max(rates)
        too_low = claim.losses is Losses.EXCLUDED and stated.number + 2 * room < min(
            rates
        )  # cut off, it is up to a digit lower
        if too_high or too_low:
            computed = show(Quantity.of("spreading_rate", rates[0], stated.unit))
            what = f"spreading rate {show(stated)} at a DFT of {show(film)}; the volume solids give {computed} without loss"
            yield Problem(path, what)


def _worked_out(solids: Given | Working, film: Quantity, unit: str) -> tuple[Fraction, ...]:
    """The theoretical rate in `unit`: exact, and for gallons also with the factor of printed tables."""
    exact = spreading_rate("spreading-rate", solids, film).quantity.to(unit)
    return (exact, spreading_rate_us("spreading-rate-us", solids, film).number) if unit == "ft2/gal" else (exact,)
