"""The qualification matrix of one job, or of one offer for it, as finished text: what is required, what a report shows, gaps first, and
what to test next.

The template `qualification_matrix/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.parties import PartyView, contact_line, party
from specgen.documents.parts.results import limit_words, result_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.tested import condition_words, method_words, nearest_words, report_words
from specgen.documents.parts.wording import Words
from specgen.facts.tests.qualification import Bid, Qualified, qualified
from specgen.facts.tests.shown import Standing
from specgen.model.spec import Spec
from specgen.units.locale import N_
from specgen.units.quantity import Range

_SAID: Mapping[Standing, str] = {
    Standing.FALLS_SHORT: N_("FALLS SHORT"),
    Standing.NOT_TESTED: N_("NOT TESTED"),
    Standing.OTHER_PANELS: N_("NOT SHOWN: other panels or conditions"),
    Standing.NOT_TOLD: N_("cannot be told"),
    Standing.IN_WORDS: N_("to be assessed by a person"),
    Standing.SHOWN: N_("shown"),
}
_GAPS = {Standing.FALLS_SHORT, Standing.NOT_TESTED, Standing.OTHER_PANELS}


@dataclass(frozen=True, slots=True, kw_only=True)
class QualificationMatrix:
    """The whole document. `supplier` and the specification he `answers` are empty where it is of no offer; `answer` is how it stands in a
    sentence or two; `reports` are those named, each in full."""

    number: str
    title: str
    owner: str
    on: str
    supplier: str
    answers: str
    customer: PartyView
    call: str
    answer: str
    matrix: TableView
    missing: TableView
    reports: tuple[str, ...]
    program: str


def qualification_matrix(bid: Bid, context: Context) -> QualificationMatrix:
    """The view of a job that requires tests, or of one offer for it, in a specification that checks without errors."""
    spec, words = context.spec, context.words
    found = qualified(bid, spec)
    job, control = bid.job, bid.offer.document if bid.offer is not None else bid.job.document
    named = dict.fromkeys(report_words(one.shown.tested.report, words) for one in found if one.shown.tested is not None)
    return QualificationMatrix(
        number=control.number,
        title=control.title,
        owner=control.owner,
        on=context.day.isoformat(),
        supplier=bid.offer.supplier if bid.offer is not None else "",
        answers=f"{job.document.number}, {job.document.title}" if bid.offer is not None else "",
        customer=party(spec.project.customer),
        call=contact_line(spec.project.maker.contact),
        answer=_answer(found, words),
        matrix=_matrix(found, spec, words.with_one_film()),
        missing=_missing(found, spec, words.with_one_film()),
        reports=tuple(named),
        program=context.program,
    )


def _answer(found: Sequence[Qualified], words: Words) -> str:
    gaps = sum(one.standing in _GAPS for one in found)
    shown = sum(one.standing is Standing.SHOWN for one in found)
    rest = len(found) - gaps - shown
    said = [words.plural("{number} test is shown by a report.", "{number} tests are shown by reports.", shown)]
    if gaps:
        said.insert(
            0, words.plural("{number} required test is not shown.", "{number} required tests are not shown.", gaps)
        )
    if rest:
        said.append(
            words.plural("{number} is to be assessed by a person.", "{number} are to be assessed by a person.", rest)
        )
    return " ".join(said)


def _matrix(found: Sequence[Qualified], spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Standing"), "w-12"),
        Column(words("Required of"), "w-15"),
        Column(words("Test and panels required")),
        Column(words("Acceptance criterion"), "w-12"),
        Column(words("Nearest test there is"), "w-30"),
        Column(words("Result"), "w-12"),
    ]
    several = len({one.system.id for one in found}) > 1
    rows = [
        (
            words(_SAID[one.standing]),
            f"{_of(one, words, several=several)}\n{_products(one, spec, words)}",
            _asked(one, spec, words),
            limit_words(one.test, words),
            nearest_words(one.shown, words, spec),
            result_words(one.shown.tested.done, words) if one.shown.tested is not None else "–",
        )
        for one in found
    ]
    return table_view("", columns, rows)


def _of(one: Qualified, words: Words, *, several: bool) -> str:
    if one.layer is None:
        return one.system.title if several else words("whole system")
    number = next(number for number, layer in numbered(one.system) if layer.id == one.layer.id)
    return coat_name(number, one.layer, words)


def _products(one: Qualified, spec: Spec, words: Words) -> str:
    return " + ".join(spec.products[coat].name for coat in one.coats) or words("no product chosen")


def _asked(one: Qualified, spec: Spec, words: Words) -> str:
    said = (method_words(one.test, words), condition_words(one.test.condition, words, spec))
    return "; ".join(part for part in said if part)


def _missing(found: Sequence[Qualified], spec: Spec, words: Words) -> TableView:
    """What to test next, the longest exposure first: it decides when the last report is there."""
    columns = [
        Column(words("Test"), "w-30"),
        Column(words("Coats on the panels")),
        Column(words("Panels required"), "w-15"),
        Column(words("Number of panels"), "w-10", numeric=True),
        Column(words("Exposure"), "w-10", numeric=True),
        Column(words("Acceptance criterion"), "w-15"),
    ]
    gaps = [one for one in found if one.standing in _GAPS]
    gaps.sort(key=lambda one: _longest(one), reverse=True)
    rows = [
        (
            method_words(one.test, words),
            _products(one, spec, words),
            condition_words(one.test.condition, words, spec),
            str(one.panels),
            words.phrase(one.exposure) or "–",
            limit_words(one.test, words),
        )
        for one in gaps
    ]
    return table_view(words("Tests to be done, the longest first"), columns, rows)


def _longest(one: Qualified) -> float:
    exposure = one.exposure
    most = (exposure.high or exposure.low) if isinstance(exposure, Range) else exposure
    return float(most.base) if most is not None else 0
