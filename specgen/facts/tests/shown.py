"""How a required test stands by the reports there are: shown, short of its limit, or not shown, with the nearest test there is.

One answer for the qualification matrix and for the review of an offer.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import StrEnum
from typing import NamedTuple

from specgen.facts.tests.fit import Mismatch, Tested, mismatches, reports_of, tests_of
from specgen.facts.tests.outcome import Judged, Outcome, judged
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.test_required import CoatAsked, Condition, Obligation, RequiredTest, Tester

_NOT_BINDING = {Obligation.ADVISED, Obligation.INFORMATION}
_ON_SITE = {Tester.APPLICATOR, Tester.CUSTOMER}


class Standing(StrEnum):
    """How a required test stands, the gravest first."""

    FALLS_SHORT = "falls short"
    NOT_TESTED = "not tested"
    OTHER_PANELS = "other panels or conditions"
    NOT_TOLD = "cannot be told"
    IN_WORDS = "in words"
    SHOWN = "shown"


class Shown(NamedTuple):
    """How a test stands; the nearest test there is with what it lacks, and what its results come to."""

    standing: Standing
    tested: Tested | None = None
    unlike: tuple[Mismatch, ...] = ()
    judged: Judged | None = None


def supplier_shows(test: RequiredTest) -> bool:
    """True for a test that binds and that is done on panels beforehand: not by the applicator or the customer at the job."""
    return test.obligation not in _NOT_BINDING and test.by not in _ON_SITE


def made_on_the_work(test: RequiredTest) -> bool:
    """True for a test that binds and that the applicator or the customer makes at the job."""
    return test.obligation not in _NOT_BINDING and test.by in _ON_SITE


def shown(test: RequiredTest, product: Product, spec: Spec, system: Sequence[str] = ()) -> Shown:
    """The nearest test on panels with the product; where a `system` is tested, with these products as its coats."""
    if test.method is None:
        return Shown(Standing.IN_WORDS)
    asked = _of_system(test, system) if system else test
    near = [(tested, mismatches(asked, product, tested, claimed=False)) for tested in _alike(test, product, spec)]
    if not near:
        return Shown(Standing.NOT_TESTED)
    ranked = [(tested, unlike, judged(test, tested.done)) for tested, unlike in near]
    tested, unlike, result = min(ranked, key=lambda one: (len(one[1]), one[2].outcome is not Outcome.MEETS))
    return Shown(_standing(unlike, result), tested, unlike, result)


def _standing(unlike: tuple[Mismatch, ...], result: Judged) -> Standing:
    if unlike:
        return Standing.OTHER_PANELS
    by_outcome = {Outcome.MEETS: Standing.SHOWN, Outcome.FALLS_SHORT: Standing.FALLS_SHORT}
    return by_outcome.get(result.outcome, Standing.IN_WORDS if result.in_words else Standing.NOT_TOLD)


def _alike(test: RequiredTest, product: Product, spec: Spec) -> Iterator[Tested]:
    """The tests by the same method after the same kind of exposure, on panels with the product."""
    exposed = test.after.method if test.after is not None else None
    for report in reports_of(product, spec):
        for tested in tests_of(report):
            after = tested.done.after.method if tested.done.after is not None else None
            if (tested.done.method, after) == (test.method, exposed) and not tested.series.control:
                yield tested


def _of_system(test: RequiredTest, coats: Sequence[str]) -> RequiredTest:
    """The test with the coats of the candidate on its panels, where it names none itself."""
    condition = test.condition if test.condition is not None else Condition()
    if condition.coats:
        return test
    asked = tuple(CoatAsked.model_construct(id=f"coat-{number}", product=coat) for number, coat in enumerate(coats, 1))
    return test.model_copy(update={"condition": condition.model_copy(update={"coats": asked})})
