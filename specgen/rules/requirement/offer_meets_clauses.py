"""REQ006 A product offered meets what is required

Checks
    Each product offered, clause by clause, against the requirement of its coat or the alternative it comes nearest to: coat type, generic type, volume solids, VOC, colour, gloss, curing, pack, DFT, application, thinner and tests; and the tests of all coats together, by the reports there are.
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

    Given an offer for a coat without a product
    systems.open.tests: [{id: rust, method: rust_grade, standard: ISO 4628-3, after: {method: nss, duration: 480 h}, limit: Ri 0}]
    reports.lab-31.tests.rust.results: [{id: P1, value: Ri 0}, {id: P2, value: Ri 1}, {id: P3, value: Ri 0}]    # at offers.bid
To put right
    Ask the supplier for another product, or decide in writing to accept what falls short and change the requirement.
"""

from specgen.facts.offered import Verdict, coats_offered, offered_in_figures, required_in_figures, verdict_by
from specgen.facts.requirement import CLAUSE_NAMES
from specgen.facts.tests.qualification import of_offer
from specgen.facts.tests.said import asked_said
from specgen.model.offer import Offer
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, date, rule


@rule("REQ006", on=Offer, severity=WARNING, source=LOGIC)
def offer_meets_clauses(offer: Offer, spec: Spec, on: date) -> Problems:
    for coat in coats_offered(offer, spec):
        for answer in coat.those(Verdict.FALLS_SHORT):
            offered, required = offered_in_figures(answer), required_in_figures(answer.clause)
            what = f"{coat.entry.product} for the coat {coat.layer.id}, {CLAUSE_NAMES[answer.clause.asked]}: {offered}; required: {required}"
            yield Problem(("layers", coat.entry.id, "product"), what)
    for test in of_offer(offer, spec):
        if verdict_by(test.standing) is Verdict.FALLS_SHORT and test.shown.tested is not None and test.shown.judged:
            report, why = test.shown.tested.report.number, test.shown.judged.why
            what = f"the coats offered for {test.system.id} together, Test: {why} in {report}; required: {asked_said(test.test)}"
            yield Problem((), what)
