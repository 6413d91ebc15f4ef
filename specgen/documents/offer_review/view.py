"""The review of one offer as finished text: a summary by coat, every clause with what is offered, and what the rules find with the
products in place. The template `offer_review/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.clauses import alternative_named, clause_name, clause_value, value_in_words
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.parties import PartyView, contact_line, party
from specgen.documents.parts.place_words import coats_in_words, place_in_words, products_in_words
from specgen.documents.parts.results import result_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.tested import asked_words, nearest_words
from specgen.documents.parts.wording import Words
from specgen.facts.offered import (
    Answer,
    CoatOffered,
    Verdict,
    coats_offered,
    missing_by,
    open_coats,
    systems_asked,
    verdict_by,
)
from specgen.facts.tests.qualification import Qualified, of_offer
from specgen.findings import Finding, Severity
from specgen.model.file_names import sheet_number
from specgen.model.offer import Offer
from specgen.model.spec import Spec
from specgen.units.locale import N_

_VERDICTS = {
    Verdict.MEETS: N_("meets"),
    Verdict.FALLS_SHORT: N_("FALLS SHORT"),
    Verdict.NOT_SHOWN: N_("not shown"),
}
_WEIGHTS = {Severity.WARNING: N_("does not comply"), Severity.NOTE: N_("to be clarified")}
# These are the clauses themselves, which stand in a table of their own.
_CLAUSES = "REQ"


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferReview:
    """The whole document. `answer` is the outcome in a sentence; `coats` has a table of clauses for each coat offered, `tests`
    are those of all coats together."""

    number: str
    title: str
    owner: str
    supplier: str
    offered: str
    answers: str
    on: str
    answer: str
    remarks: str
    maker: PartyView
    customer: PartyView
    call: str
    summary: TableView
    coats: tuple[TableView, ...]
    tests: TableView
    together: TableView
    missing: TableView
    program: str


def offer_review(offer: Offer, context: Context) -> OfferReview:
    """The view of an offer in a specification that checks without errors."""
    spec, words = context.spec, context.words
    coats, tests = tuple(coats_offered(offer, spec)), tuple(of_offer(offer, spec))
    found = [one for one in context.findings if _of(one, offer) and not one.id.startswith(_CLAUSES)]
    missed = _not_offered(offer, coats, spec, words)
    return OfferReview(
        number=offer.document.number,
        title=offer.document.title,
        owner=offer.document.owner,
        supplier=offer.supplier,
        offered=offer.date.isoformat(),
        answers=_specification(offer, spec),
        on=context.day.isoformat(),
        answer=_answer(coats, tests, found, missed, words),
        remarks=offer.remarks or "",
        maker=party(spec.project.maker),
        customer=party(spec.project.customer),
        call=contact_line(spec.project.maker.contact),
        summary=_summary(coats, tests, missed, spec, words),
        coats=tuple(_clauses(coat, spec, words) for coat in coats),
        tests=_tests(tests, spec, words),
        together=_together(found, offer, coats, spec, words),
        missing=_missing(coats, tests, spec, words),
        program=context.program,
    )


def _of(found: Finding, offer: Offer) -> bool:
    return found.path.split(".")[:2] == ["offers", offer.id] and found.severity in _WEIGHTS


def _specification(offer: Offer, spec: Spec) -> str:
    if offer.job is not None:
        control = spec.jobs[offer.job].document
        return f"{control.number}, {control.title}"
    return ", ".join(system.title for system in systems_asked(offer, spec))


def _not_offered(offer: Offer, coats: tuple[CoatOffered, ...], spec: Spec, words: Words) -> tuple[tuple[str, str], ...]:
    """System and coat of each open coat that the offer leaves out."""
    held = {(one.system.id, one.layer.id) for one in coats}
    return tuple(
        (system.title, _coat(system.id, layer.id, spec, words))
        for system, layer in open_coats(offer, spec)
        if (system.id, layer.id) not in held
    )


def _coat(system: str, layer: str, spec: Spec, words: Words) -> str:
    return next(coat_name(number, one, words) for number, one in numbered(spec.systems[system]) if one.id == layer)


def _answer(
    coats: tuple[CoatOffered, ...],
    tests: tuple[Qualified, ...],
    found: list[Finding],
    missed: tuple[tuple[str, str], ...],
    words: Words,
) -> str:
    """Whether the offer complies, in a sentence or two."""
    verdicts = [answer.verdict for coat in coats for answer in coat.answers]
    verdicts += [verdict_by(test.standing) for test in tests]
    short, open_yet = verdicts.count(Verdict.FALLS_SHORT), verdicts.count(Verdict.NOT_SHOWN)
    unfit = sum(one.severity is Severity.WARNING for one in found)
    said = []
    if short:
        said.append(words.plural("It falls short in {number} clause.", "It falls short in {number} clauses.", short))
    if unfit:
        text = words.plural("In the system {number} fault is found.", "In the system {number} faults are found.", unfit)
        said.append(text)
    if missed:
        said.append(words.plural("{number} coat is not offered.", "{number} coats are not offered.", len(missed)))
    if open_yet:
        said.append(words.plural("{number} clause is not shown.", "{number} clauses are not shown.", open_yet))
    if short or unfit or missed:
        return " ".join((words("The offer does not comply with the specification."), *said))
    if open_yet:
        return " ".join((words("Nothing in the offer falls short, but it is not shown to comply in full."), *said))
    return words("The offer complies with the specification in every clause.")


def _summary(
    coats: tuple[CoatOffered, ...],
    tests: tuple[Qualified, ...],
    missed: tuple[tuple[str, str], ...],
    spec: Spec,
    words: Words,
) -> TableView:
    columns = [
        Column(words("System"), "w-25"),
        Column(words("Coat"), "w-15"),
        Column(words("Product offered")),
        Column(words("Meets"), "w-8", numeric=True),
        Column(words("Falls short"), "w-10", numeric=True),
        Column(words("Not shown"), "w-10", numeric=True),
    ]
    rows = [
        (
            coat.system.title,
            _coat(coat.system.id, coat.layer.id, spec, words),
            _product(coat, spec),
            *(str(len(coat.those(verdict))) for verdict in Verdict),
        )
        for coat in coats
    ]
    for title in dict.fromkeys(test.system.title for test in tests):
        verdicts = [verdict_by(test.standing) for test in tests if test.system.title == title]
        counted = (str(verdicts.count(verdict)) for verdict in Verdict)
        rows.append((title, words("all coats"), words("tests of the whole system"), *counted))
    rows.extend((system, coat, words("not offered"), "–", "–", "–") for system, coat in missed)
    return table_view(words("Clauses by coat"), columns, rows)


def _product(coat: CoatOffered, spec: Spec) -> str:
    product = spec.products[coat.entry.product]
    variant = product.variant(coat.entry.variant) if coat.entry.variant else None
    return f"{product.name}, {variant.name}" if variant is not None else product.name


def _clauses(coat: CoatOffered, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Clause"), "w-20"),
        Column(words("Required"), "w-20"),
        Column(words("Offered"), "w-20"),
        Column(words("Result"), "w-12"),
        Column(words("Stated at")),
    ]
    caption = words("{coat}: {product}").format(
        coat=_coat(coat.system.id, coat.layer.id, spec, words), product=_product(coat, spec)
    )
    if coat.alternative:
        named = alternative_named(coat.layer, coat.alternative, words)
        caption = words("{caption}, held against the alternative {named}").format(caption=caption, named=named)
    rows = [
        (
            clause_name(answer.clause, words),
            clause_value(answer.clause, words),
            _offered(answer, words),
            words(_VERDICTS[answer.verdict]),
            _stated_at(answer, spec, words),
        )
        for answer in coat.answers
    ]
    return table_view(caption, columns, rows)


def _stated_at(answer: Answer, spec: Spec, words: Words) -> str:
    """`volume solids without propellant, data sheet DS-210`; what stands elsewhere by its place in words."""
    if answer.offered is None:
        return "–"
    if answer.path[0] == "offers":
        return words("the offer")
    place = place_in_words(".".join(answer.path), spec, words)
    if answer.path[0] != "products":
        return place
    product = spec.products[answer.path[1]]
    of = words(" of ") + words("the {named}").format(named=f"product {product.name}")
    return words("{what}, data sheet {number}").format(what=place.removesuffix(of), number=sheet_number(product))


def _offered(answer: Answer, words: Words) -> str:
    offered = answer.offered if isinstance(answer.offered, tuple) else (answer.offered,)
    return ", ".join(value_in_words(answer.clause.asked, one, words) for one in offered if one is not None) or words(
        "not stated"
    )


def _tests(tests: tuple[Qualified, ...], spec: Spec, words: Words) -> TableView:
    """The tests on panels with every coat: by the reports among the sources, whoever had them done."""
    columns = [
        Column(words("Test required")),
        Column(words("Nearest test there is"), "w-35"),
        Column(words("Measured"), "w-15"),
        Column(words("Result"), "w-10"),
    ]
    rows = [
        (
            asked_words(one.test, words),
            nearest_words(one.shown, words, spec),
            result_words(one.shown.tested.done, words) if one.shown.tested is not None else "–",
            words(_VERDICTS[verdict_by(one.standing)]),
        )
        for one in tests
    ]
    return table_view(words("Tests of all coats together, held against the reports there are"), columns, rows)


def _together(
    found: list[Finding], offer: Offer, coats: tuple[CoatOffered, ...], spec: Spec, words: Words
) -> TableView:
    """What the rules find, with systems and coats by what this page calls them."""
    columns = [Column(words("Coat"), "w-15"), Column(words("Result"), "w-15"), Column(words("Finding"))]
    named = {coat.entry.id: _coat(coat.system.id, coat.layer.id, spec, words) for coat in coats}
    rows = []
    for one in sorted(found, key=lambda one: -one.severity.weight):
        steps = one.path.split(".")
        coat = named.get(steps[3], "") if len(steps) > 3 else words("all coats")
        text = one.what.partition(": ")[2] or one.what
        for system in systems_asked(offer, spec):
            text = coats_in_words(text, system, words)
        rows.append((coat, words(_WEIGHTS[one.severity]), products_in_words(text, spec)))
    return table_view(words("The specification with the products offered in place"), columns, rows)


def _missing(coats: tuple[CoatOffered, ...], tests: tuple[Qualified, ...], spec: Spec, words: Words) -> TableView:
    columns = [Column(words("Coat"), "w-15"), Column(words("Clause")), Column(words("To be handed in"), "w-30")]
    rows = [row for coat in coats for row in _asked(coat, spec, words)]
    rows += [
        (words("all coats"), asked_words(one.test, words), words(missing_by(one.standing)))
        for one in tests
        if verdict_by(one.standing) is Verdict.NOT_SHOWN
    ]
    return table_view(words("What the supplier is asked for"), columns, rows)


def _asked(coat: CoatOffered, spec: Spec, words: Words) -> Iterator[tuple[str, str, str]]:
    for answer in coat.those(Verdict.NOT_SHOWN):
        yield (
            _coat(coat.system.id, coat.layer.id, spec, words),
            clause_value(answer.clause, words),
            words(answer.missing),
        )
