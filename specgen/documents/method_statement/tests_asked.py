"""The tests that a job and its systems ask for, beside the inspection points: method, panels, what passes, and who does what.

Called by `method_statement`; a test of a coat whose product is not chosen stands among the clauses of that coat. Where products are
open, the tests a supplier has to show of all coats together stand beside those clauses, and the rest by the inspection points.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.documents.parts.results import limit_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.tested import condition_words, method_words, of_whom
from specgen.documents.parts.wording import Words
from specgen.facts.requirement import names_products
from specgen.facts.tests.shown import supplier_shows
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.test_required import RequiredTest


def tests_table(job: Job, spec: Spec, words: Words) -> TableView:
    """Every test of the job, then those of each system, once each; without those that a supplier shows with his offer."""
    offered = not names_products(job, spec)
    rest = [(of, test) for of, test in _asked(job, spec, words) if not (offered and supplier_shows(test))]
    return _table(words("Tests required"), rest, spec, words)


def tests_to_show(job: Job, spec: Spec, words: Words) -> TableView:
    """The tests of all coats together that a supplier shows with his offer."""
    shown = [(of, test) for of, test in _asked(job, spec, words) if supplier_shows(test)]
    return _table(words("Tests of all coats together, each shown by a test report"), shown, spec, words)


def _table(caption: str, tests: list[tuple[str, RequiredTest]], spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Tested"), "w-15"),
        Column(words("Test"), "w-30"),
        Column(words("Panels")),
        Column(words("Acceptance criterion"), "w-20"),
        Column(words("Done"), "w-12"),
    ]
    rows = [
        (
            of,
            method_words(test, words),
            condition_words(test.condition, words, spec),
            limit_words(test, words),
            of_whom(test, words),
        )
        for of, test in tests
    ]
    return table_view(caption, columns, rows)


def _asked(job: Job, spec: Spec, words: Words) -> Iterator[tuple[str, RequiredTest]]:
    yield from ((words("the job"), test) for test in job.tests)
    for system in spec.systems_of(job):
        yield from ((system.title, test) for test in system.tests)
