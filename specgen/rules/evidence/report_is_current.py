"""EVD009 A report is looked at anew after some years

Checks
    Each claim that is printed: its report was issued within the time of common practice before the day of assessment, and states the formulation tested where the product states its own.
Why
    Raw materials change without a new formulation, and methods are revised; what was true of the product years ago is no longer sure.
Passes
    Given a claim with its report
    reports.lab-12.dates: {started: 2021-10-12, ended: 2021-11-02, issued: 2021-12-01}
Fails
    Given a claim with its report
    reports.lab-12.dates: {started: 2021-10-12, ended: 2021-11-02, issued: 2021-11-20}    # at products.barrier.claims.salt.evidence.report
To put right
    Have the test repeated, or decide in writing that the report still holds and waive this finding until a day.
"""

from specgen.facts.tests.evidence import evidence_of
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, date, rule, table

_LIMITS = table("evidence_limits")


@rule("EVD009", on=Product, severity=WARNING, source=_LIMITS.citation)
def report_is_current(product: Product, spec: Spec, on: date) -> Problems:
    years = int(_LIMITS.row("id", "report_age")["value"])
    oldest = (on.year - years, on.month, on.day)
    for claim in product.claims:
        found = evidence_of(spec, product.id, claim.id)
        if found.tested is not None and found.stands and _day(found.tested.report.dates.issued) < oldest:
            report = found.tested.report
            what = f"the report {report.id} behind the claim {claim.id} of {product.id} was issued on {report.dates.issued}, more than {years} years ago"
            yield Problem(("claims", claim.id, "evidence", "report"), what)


def _day(day: date) -> tuple[int, int, int]:
    return day.year, day.month, day.day
