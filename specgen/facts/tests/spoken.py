"""Where the sources speak of tests: typed (`asked_tests`), and in words (`spoken`).

Each rule on tests goes over these places alone, so that none reads a place another does not. Values in words are read by `in_words`,
standards by `standards`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.facts.job.looked_for import words_of
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.model.test_required import AskedTest
from specgen.model.walk import Path


class Spoken(NamedTuple):
    """One text. `path` is from the record on; `around` is what is said beside it of the same test; `family` the generic type, where one is.

    `claimed` is True for what the maker says of his product, False for what is asked of it; `words_alone` where no test with its
    method is typed beside it, so that the words have to say all.
    """

    path: Path
    text: str
    around: str
    family: str = ""
    claimed: bool = False
    words_alone: bool = False


def spoken(record: Node, spec: Spec) -> Iterator[Spoken]:
    """Every place of a record that speaks of tests, in the order of the sources."""
    if isinstance(record, Product):
        if record.about is not None:
            yield Spoken(("about",), record.about, "", record.binder, claimed=True, words_alone=True)
        for claim in record.claims:
            alone = claim.test is None or claim.test.method is None
            path = ("claims", claim.id, "text")
            yield Spoken(path, claim.text, "", record.binder, claimed=True, words_alone=alone)
    for asked in asked_tests(record):
        around = " ".join(text for text in (asked.test.test, asked.test.limit) if text)
        if asked.test.test is not None:
            yield Spoken((*asked.path, "test"), asked.test.test, around, asked.family)
        if asked.test.limit is not None and asked.test.method is None:
            yield Spoken((*asked.path, "limit"), asked.test.limit, around, asked.family)
    if isinstance(record, Job):
        for point in record.inspection:
            if point.criterion.text is not None:
                yield Spoken(("inspection", point.id, "criterion", "text"), point.criterion.text, words_of(point))


class Asked(NamedTuple):
    """A test that is asked or claimed. `path` is from the record on; `family` the generic type it is asked of, where one is."""

    path: Path
    test: AskedTest
    family: str = ""
    claimed: bool = False


def asked_tests(record: Node) -> Iterator[Asked]:
    """Every test of a record: of its claims, of coats whose product is not chosen, of the system, the job and its points."""
    match record:
        case Product():
            for claim in record.claims:
                if claim.test is not None:
                    yield Asked(("claims", claim.id, "test"), claim.test, record.binder, claimed=True)
        case System():
            for layer in record.layers:
                if layer.required is None:
                    continue
                at = ("layers", layer.id, "required")
                others = [((*at, "alternatives", one.id), one) for one in layer.required.alternatives]
                for path, required in ((at, layer.required), *others):
                    for test in required.tests:
                        yield Asked((*path, "tests", test.id), test, required.generic_type or "")
            for test in record.tests:
                yield Asked(("tests", test.id), test)
        case Job():
            for test in record.tests:
                yield Asked(("tests", test.id), test)
            for point in record.inspection:
                if point.test is not None:
                    yield Asked(("inspection", point.id, "test"), point.test)
