"""The claims of a product that a test report stands behind: each with its method, the panels it is true of, the result and the report.

A claim without evidence is not printed, nor one that its report does not bear out; the rules EVD and TST tell its author. Called by
`data_sheet`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from specgen.documents.parts.results import result_words
from specgen.documents.parts.short_names import without_maker
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.tested import cure_words, method_words, panel_condition, report_words
from specgen.documents.parts.wording import Words
from specgen.facts.tests.evidence import Evidence, evidence_of
from specgen.facts.tests.fit import Tested
from specgen.model.product import Claim, Product
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class Claims:
    """The table, what all its panels share, and the reports it names, each in full."""

    table: TableView
    cure: str
    reports: tuple[str, ...]


def claims(product: Product, spec: Spec, words: Words) -> Claims:
    """The claims that may be printed; none of a product that makes none."""
    words = words.with_one_film()
    shown = [(claim, found) for claim in product.claims if (found := evidence_of(spec, product.id, claim.id)).printed]
    every = [side for _, found in shown for side in (found.tested, found.against) if side is not None]
    cures = {cure_words(side.series, words) for side in every}
    columns = (
        Column(words("Claim"), "w-24"),
        Column(words("Test"), "w-29"),
        Column(words("Panels tested")),
        Column(words("Result; report"), "w-18"),
    )
    # the sheet names its maker
    called = without_maker([one.name for one in spec.products.values()], spec.project.maker.name)
    rows, last = [], None
    for claim, found in shown:
        rows.append(_row(claim, found, spec, words, called, cured=len(cures) > 1, last=last))
        last = found.tested
    return Claims(
        table=table_view(words("Performance claims"), columns, rows),
        cure=cures.pop() if len(cures) == 1 else "",
        reports=tuple(dict.fromkeys(report_words(side.report, words) for side in every)),
    )


def _row(
    claim: Claim,
    found: Evidence,
    spec: Spec,
    words: Words,
    called: Mapping[str, str],
    *,
    cured: bool,
    last: Tested | None,
) -> tuple[str, ...]:
    """One claim; panels that are those of the `last` one are not told again."""
    tested = found.tested
    assert tested is not None  # noqa: S101  # a claim that is printed has one
    sides = [tested] if found.against is None else [tested, found.against]
    return (
        claim.text,
        method_words(tested.done, words),
        _both(
            [
                words("the panels of the claim above")
                if last is not None and side.series is last.series
                else panel_condition(side.series, words, spec, cured=cured, called=called)
                for side in sides
            ],
            words,
        ),
        f"{_both([result_words(side.done, words) for side in sides], words)}; {tested.report.number}",
    )


def _both(sides: list[str], words: Words) -> str:
    """One side, or both of a comparison on lines of their own."""
    return "\n".join([sides[0], *(words("compared with: {}").format(side) for side in sides[1:])])
