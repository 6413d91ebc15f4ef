"""REQ006 A product offered meets what is required

Checks
    Each product offered, clause by clause, against the requirement of its coat or the alternative it comes nearest to: coat type, generic type, volume solids, VOC, colour, gloss, curing, pack, DFT, application, thinner and tests.
Why
    What falls short at the offer is found at the handover otherwise, on a painted structure.
Passes
    Given an offer for a coat without a product
    systems.open.layers.prime.required.solids: min 50 %

    Given an offer for a coat without a product
    systems.open.layers.prime.required: {generic_type: epoxy_wb, alternatives: [{id: epoxy, generic_type: epoxy_2k}]}
Fails
    Given an offer for a coat without a product
    systems.open.layers.prime.required.solids: min 51 %    # at offers.bid.layers.prime.product

    Given an offer for a coat without a product
    systems.open.layers.prime.required.voc: 449 g/L    # at offers.bid.layers.prime.product

    Given an offer for a coat without a product
    systems.open.layers.prime.role: sealer    # at offers.bid.layers.prime.product

    Given an offer for a coat without a product
    offers.bid.layers.prime.tests.salt: {id: salt, passed: no, result: rust at the scribe}    # at offers.bid.layers.prime.product

    Given an offer for a coat without a product
    systems.open.layers.prime.required.curing: oxidative    # at offers.bid.layers.prime.product
    systems.open.layers.prime.required.pack: aerosol    # also REQ006 at offers.bid.layers.prime.product
To put right
    Ask the supplier for another product, or decide in writing to accept what falls short and change the requirement.
"""

from specgen.facts.offered import Verdict, coats_offered, offered_in_figures, required_in_figures
from specgen.facts.requirement import CLAUSE_NAMES
from specgen.model.offer import Offer
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, date, rule


@rule("REQ006", on=Offer, severity=WARNING, source=LOGIC)
def offer_meets_clauses(offer: Offer, spec: Spec, on: date) -> Problems:
    for coat in coats_offered(offer, spec):
        for answer in coat.those(Verdict.FALLS_SHORT):
            offered, required = offered_in_figures(answer), required_in_figures(answer.clause)
            what = f"{coat.entry.product} for the coat {coat.layer.id}, {CLAUSE_NAMES[answer.clause.asked]}: {offered}; required: {required}"
            yield Problem(("layers", coat.entry.id, "product"), what)
