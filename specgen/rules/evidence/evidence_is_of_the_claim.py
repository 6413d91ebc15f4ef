"""EVD003 The report behind a claim is of what is claimed

Checks
    Each claim that names a report: the panels are of this product in its present formulation, applied as it is sold, with the coats, DFT, substrate and preparation claimed; method, standard, edition, variant, exposure and age are those of the claim, and the exposure lasted as long. A claim that names no coats is of the product alone, inside its own DFT limits. Each mismatch is named.
Why
    A report is true of the panels it describes. Of another film, another substrate or last year's formulation it proves nothing, and a customer's laboratory finds the difference.
Passes
    Given a claim with its report
    products.barrier.claims.salt.test.after.duration: 240 h

    Given a claim with its report
    products.barrier.claims.salt.test.condition.film: 76..90 um
Fails
    Given a claim with its report
    products.barrier.claims.salt.test.after.duration: 481 h    # at products.barrier.claims.salt.evidence

    Given a claim with its report
    products.barrier.claims.salt.test.condition.substrate: aluminium    # at products.barrier.claims.salt.evidence

    Given a claim with its report
    products.barrier.claims.salt.test.condition.film: 91..110 um    # at products.barrier.claims.salt.evidence

    Given a claim with its report
    products.barrier.formulated: 2025-06-03    # at products.barrier.claims.salt.evidence

    Given a claim with its report
    reports.lab-12.series.scribed.coats.coat.film: 121 um    # at products.barrier.claims.salt.evidence    # also EVD015 at reports.lab-12.series.scribed.coats.coat.film_max

    Given a claim with its report
    reports.lab-12.series.scribed.coats.coat.product: Primer of another maker    # at products.barrier.claims.salt.evidence
To put right
    Claim what was tested, or have tested what is claimed and name that report.
"""

from specgen.facts.tests.evidence import evidence_of
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule("EVD003", on=Product, severity=ERROR, source=LOGIC)
def evidence_is_of_the_claim(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.claims:
        if claim.evidence is None or claim.test is None:
            continue
        unlike = evidence_of(spec, product.id, claim.id).unlike
        if unlike:
            told = "; ".join(str(one) for one in unlike)
            what = f"the report {claim.evidence.report} is no evidence for the claim {claim.id} of {product.id}: {told}"
            yield Problem(("claims", claim.id, "evidence"), what)
