"""EVD001 A claim names the test report behind it

Checks
    Each claim of each product: it names a test with its method, and a test report that is a source. A claim that rests on words alone is told as a note. Without a report no document prints the claim.
Why
    Whoever publishes that a coating withstands something has to hold the proof beforehand; a claim without a test, a condition and a report cannot be checked by anybody, nor defended.
Passes
    Given a claim with its report
    products.barrier.claims.salt.text: "On blast-cleaned steel: after 480 h of salt spray, creep from the scribe 2 mm or less."
Fails
    Given a claim with its report
    without products.barrier.claims.salt.evidence    # at products.barrier.claims.salt.evidence

    Given a claim with its report
    products.barrier.claims.look: {id: look, text: Levels well., basis: Panels 12 to 18}    # note at products.barrier.claims.look.evidence

    Given a claim with its report
    products.barrier.claims.look: {id: look, text: Levels well.}    # at products.barrier.claims.look.evidence

    Given a claim with its report
    without products.barrier.claims.salt.test    # at products.barrier.claims.salt.test
To put right
    Write the report as a source (`specgen new report`), and name it under evidence; or take the claim out.
"""

from specgen.rules.kit import LOGIC, NOTE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("EVD001", on=Product, severity=WARNING, source=LOGIC)
def claim_has_report(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.claims:
        at = ("claims", claim.id)
        if claim.evidence is None:
            what = f"no test report stands behind the claim {claim.id} of {product.id}, so it is not printed"
            in_words = claim.basis is not None and claim.test is None
            yield Problem((*at, "evidence"), what, severity=NOTE if in_words else None)
        elif claim.test is None:
            what = f"the claim {claim.id} of {product.id} names a report and no test, so it is not printed"
            yield Problem((*at, "test"), what, "state method, condition and limit of the claim under test")
