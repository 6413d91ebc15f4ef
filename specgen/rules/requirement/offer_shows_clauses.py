"""REQ007 An offer shows what is required

Checks
    Each product offered: for every clause of the requirement the product or the offer states a value, and for every test there is a report with its result.
Why
    A clause of which nothing is handed in is open, and a tender is not decided on open clauses.
Passes
    Given an offer for a coat without a product
    without systems.open.layers.prime.required.tests
    without offers.bid.layers.prime.tests
Fails
    Given an offer for a coat without a product
    systems.open.layers.prime.required.gloss: 10..30 GU    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    systems.open.layers.prime.required.text: Free of lead and chromate.    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    without offers.bid.layers.prime.tests    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    without offers.bid.layers.prime.tests.salt.report    # at offers.bid.layers.prime
To put right
    Ask the supplier for what is missing.
"""

from specgen.facts.offered import Verdict, coats_offered
from specgen.facts.requirement import CLAUSE_NAMES
from specgen.model.offer import Offer
from specgen.rules.kit import LOGIC, NOTE, Problem, Problems, Spec, date, rule


@rule("REQ007", on=Offer, severity=NOTE, source=LOGIC)
def offer_shows_clauses(offer: Offer, spec: Spec, on: date) -> Problems:
    for coat in coats_offered(offer, spec):
        open_yet = coat.those(Verdict.NOT_SHOWN)
        if open_yet:
            told = "; ".join(f"{CLAUSE_NAMES[one.clause.asked]}: {one.missing} is missing" for one in open_yet)
            yield Problem(
                ("layers", coat.entry.id),
                f"{coat.entry.product} for the coat {coat.layer.id} is not shown to meet: {told}",
            )
