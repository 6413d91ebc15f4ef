"""EVD010 The results of the report bear the claim out

Checks
    Each claim with a report that is of what is claimed: its results, as the statistic of the claim or of the method takes them, meet the limit claimed. Of numbers that is the mean unless the claim says otherwise, of ratings each; results are compared as observed. A limit in words is told as a note: the result is printed beside it, and a person holds the two together.
Why
    A claim that is better than its report is no claim but a hope, and the report is handed in with it.
Passes
    Given a claim with its report
    products.barrier.claims.salt.test.limit: max 1.4 mm

    Given a claim with its report
    products.barrier.claims.salt.test.statistic: each
    products.barrier.claims.salt.test.limit: max 1.6 mm
Fails
    Given a claim with its report
    products.barrier.claims.salt.test.limit: max 1.3 mm    # at products.barrier.claims.salt.test.limit

    Given a claim with its report
    products.barrier.claims.salt.test.statistic: each
    products.barrier.claims.salt.test.limit: max 1.5 mm    # at products.barrier.claims.salt.test.limit

    Given a claim with its report
    products.barrier.claims.salt.test.limit: hardly any creep    # note at products.barrier.claims.salt.test.limit

    Given a claim with its report
    without products.barrier.claims.salt.test.limit    # warning at products.barrier.claims.salt.test.limit
To put right
    Claim what was measured.
"""

from specgen.facts.tests.evidence import evidence_of
from specgen.facts.tests.outcome import Outcome
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("EVD010", on=Product, severity=ERROR, source=LOGIC)
def result_meets_claim(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.claims:
        found = evidence_of(spec, product.id, claim.id)
        if found.judged is None or found.tested is None or claim.test is None or found.unlike:
            continue
        at, report = ("claims", claim.id, "test", "limit"), found.tested.report.id
        if found.judged.outcome is Outcome.FALLS_SHORT:
            what = f"the claim {claim.id} of {product.id} is better than its report {report}: {found.judged.why}; claimed: {claim.test.limit}"
            yield Problem(at, what)
        elif found.judged.outcome is Outcome.NOT_TOLD:
            what = f"whether the report {report} bears out the claim {claim.id} of {product.id} cannot be told: {found.judged.why}"
            yield Problem(at, what, severity=NOTE if found.judged.in_words else WARNING)
