"""What stands behind a claim of a product: the test of a report that it names, and why that is no evidence where it is none.

One answer for the rules, the data sheet and the qualification matrix: a claim is printed where `evidence_of` has no reason against it.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from specgen.facts.memo import memoised
from specgen.facts.tests.doubtful import doubt_of_claim, doubt_of_results
from specgen.facts.tests.fit import (
    Mismatch,
    Tested,
    mismatches,
    tests_of,
    unequal,
)
from specgen.facts.tests.outcome import Judged, Outcome, judged
from specgen.facts.tests.plausible import Doubt
from specgen.model.product import Claim, Product
from specgen.model.spec import Spec
from specgen.model.test_report import LabReport
from specgen.standards.reads import remembered
from specgen.standards.tables import table


class Evidence(NamedTuple):
    """The test behind a claim, and behind the other side of a comparison; None where the claim names none that is there.

    `unlike` is what of it is not as claimed, `unequal` what the two sides of a comparison do not share, `alone` the word that compares
    where the claim names no other side. `judged` is what the results come to against the limit claimed, `doubt` why a value claimed or
    measured is unusual.
    """

    tested: Tested | None
    against: Tested | None = None
    unlike: tuple[Mismatch, ...] = ()
    unequal: tuple[Mismatch, ...] = ()
    alone: str = ""
    judged: Judged | None = None
    doubt: Doubt | None = None

    @property
    def stands(self) -> bool:
        """True where the claim may be printed with it, whatever the result."""
        return self.tested is not None and not (self.unlike or self.unequal or self.alone)

    @property
    def printed(self) -> bool:
        """True where documents may print the claim: its report stands behind it and bears it out, or a person can see that it does; and
        no value of it is unusual without somebody who confirmed it."""
        if not self.stands or self.judged is None or self.doubt is not None:
            return False
        return self.judged.outcome is Outcome.MEETS or self.judged.in_words


@memoised
def evidence_of(spec: Spec, product_id: str, claim_id: str) -> Evidence:
    """What stands behind a claim of a product."""
    product = spec.products[product_id]
    claim = next(claim for claim in product.claims if claim.id == claim_id)
    compares = comparing_word(claim.text)
    named = claim.evidence
    report = spec.reports.get(named.report) if named is not None else None
    doubt = doubt_of_claim(claim, product)
    if named is None or report is None or claim.test is None:
        return Evidence(None, alone=compares if named is None or named.than is None else "", doubt=doubt)
    found = {tested.done.id: tested for tested in tests_of(report)}
    tested = found.get(named.test) if named.test is not None else _nearest(claim, product, report)
    against = found.get(named.than) if named.than is not None else None
    if tested is None:
        return Evidence(None, doubt=doubt)
    return Evidence(
        tested,
        against,
        mismatches(claim.test, product, tested),
        tuple(unequal(tested, against)) if against is not None else (),
        compares if against is None else "",
        judged(claim.test, tested.done),
        doubt or doubt_of_results(claim, product, tested),
    )


def _nearest(claim: Claim, product: Product, report: LabReport) -> Tested | None:
    """Of the tests of a report the one that differs least from the claim, the first of several."""
    asked = claim.test
    assert asked is not None  # noqa: S101  # asked where there is one
    tests = tests_of(report)
    if len(tests) == 1:
        return tests[0]
    return min(tests, key=lambda tested: len(mismatches(asked, product, tested)), default=None)


def comparing_word(text: str) -> str:
    """The word of a text that puts the product above others, as in best or better than; empty where none does."""
    found = _compares().search(text)
    return found[0] if found is not None else ""


@remembered
def _compares() -> re.Pattern[str]:
    rows = table("comparing_words").rows
    return re.compile("|".join(rf"(?<![\w-])(?:{row['pattern']})(?![\w-])" for row in rows), re.IGNORECASE)
