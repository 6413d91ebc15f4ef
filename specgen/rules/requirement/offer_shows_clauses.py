"""REQ007 An offer shows what is required

Checks
    Each product offered: for every clause of the requirement the product or the offer states a value, and for every test, of a coat or of all coats together, a report with its result is among the sources. The word of the supplier and the number of a report show nothing by themselves.
Why
    A clause of which nothing is handed in is open, and a tender is not decided on open clauses.
Passes
    Given an offer for a coat without a product
    without systems.open.layers.prime.required.tests
    without offers.bid.layers.prime.tests

    Given an offer for a coat without a product
    systems.open.tests: [{id: rust, method: rust_grade, standard: ISO 4628-3, after: {method: nss, duration: 480 h}, limit: Ri 0}]

    Given an offer for a coat without a product
    systems.open.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, by: applicator}, {id: cut, method: cross_cut, standard: ISO 2409, limit: class 0..1, obligation: advised}]
    jobs.refit.inspection.look.method: Visual; pull-off to ISO 4624 on one step
Fails
    Given an offer for a coat without a product
    systems.open.layers.prime.required.gloss: 10..30 GU    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    systems.open.layers.prime.required.text: Free of lead and chromate.    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    without offers.bid.layers.prime.tests    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    without offers.bid.layers.prime.tests.salt.evidence    # at offers.bid.layers.prime

    Given an offer for a coat without a product
    systems.open.tests: [{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa}]    # at offers.bid
To put right
    Ask the supplier for what is missing.
"""

from specgen.facts.offered import Verdict, coats_offered, missing_by, verdict_by
from specgen.facts.requirement import CLAUSE_NAMES
from specgen.facts.tests.qualification import of_offer
from specgen.facts.tests.said import asked_said
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
    lacking = [
        f"{asked_said(test.test)}: {missing_by(test.standing)} is missing"
        for test in of_offer(offer, spec)
        if verdict_by(test.standing) is Verdict.NOT_SHOWN
    ]
    if lacking:
        yield Problem((), f"the coats offered together are not shown to meet: {'; '.join(lacking)}")
