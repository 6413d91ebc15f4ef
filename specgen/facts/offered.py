"""What an offer answers, coat by coat, and clause by clause whether the product offered meets what is required of it.

A clause is met or fallen short of by figures the product or the offer states, with the place of each; where nothing is stated
the clause is not shown. Of several ways to meet a requirement the one that the product comes nearest to is taken. Asked by the
rules on offers and by the offer review.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from enum import StrEnum
from typing import NamedTuple

from specgen.facts.layer.figures import solids_sprayed
from specgen.facts.pairs.families import NOT_NAMED, binder_family
from specgen.facts.requirement import Asked, Clause, Value, clauses
from specgen.facts.tests.said import asked_said
from specgen.facts.tests.shown import Shown, Standing, shown
from specgen.model.film import FilmLimits
from specgen.model.offer import Offer, OfferedCoat
from specgen.model.product import Colour, Product, Variant
from specgen.model.requirement import Requirement
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.test_required import AskedTest, RequiredTest
from specgen.model.walk import Path
from specgen.trade.known import NotKnown
from specgen.trade.working import Working
from specgen.units.display import show, show_range
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

_NO_REPORT = N_("the test report, with laboratory and date")
_NOT_HANDED_IN = N_("the test report itself")
_MISSING = {
    Standing.OTHER_PANELS: N_("a test report of the panels and conditions required"),
    Standing.IN_WORDS: N_("a person's assessment of the answer"),
    Standing.NOT_TOLD: N_("a person's assessment of the answer"),
}


class Verdict(StrEnum):
    """Whether a clause is met."""

    MEETS = "meets"
    FALLS_SHORT = "falls short"
    NOT_SHOWN = "not shown"


_BY_STANDING = {Standing.SHOWN: Verdict.MEETS, Standing.FALLS_SHORT: Verdict.FALLS_SHORT}


def verdict_by(standing: Standing) -> Verdict:
    """Whether a test that is required is met, by the reports there are."""
    return _BY_STANDING.get(standing, Verdict.NOT_SHOWN)


def missing_by(standing: Standing) -> str:
    """What is to be handed in on a test; empty where it is shown or falls short."""
    return "" if standing in _BY_STANDING else _MISSING.get(standing, _NO_REPORT)


class Answer(NamedTuple):
    """One clause with what is offered for it and whether that meets it.

    `offered` is the value, a list of values or the words, None where nothing is stated; `path` is its address from the top of
    the sources, or that of the place where it is missing; `missing` says what is to be handed in.
    """

    clause: Clause
    verdict: Verdict
    offered: Value | tuple[Value, ...] | None
    path: Path
    missing: str = ""


class CoatOffered(NamedTuple):
    """An entry of an offer with the coat it is for. `alternative` is the one it is held against, empty for the requirement."""

    entry: OfferedCoat
    system: System
    layer: Layer
    alternative: str
    answers: tuple[Answer, ...]

    def those(self, verdict: Verdict) -> tuple[Answer, ...]:
        return tuple(answer for answer in self.answers if answer.verdict is verdict)


def required_in_figures(clause: Clause) -> str:
    """What a clause asks for, as a finding says it."""
    text = in_figures(clause.asked, clause.value)
    return f"at most {text}" if clause.asked in {Asked.VOC, Asked.THINNER} else text


def offered_in_figures(answer: Answer) -> str:
    """What is offered for a clause, as a finding says it."""
    offered = answer.offered if isinstance(answer.offered, tuple) else (answer.offered,)
    return ", ".join(in_figures(answer.clause.asked, one) for one in offered if one is not None) or "not met"


def in_figures(asked: Asked, value: Value) -> str:
    """A value required or offered, as a finding says it."""
    match value:
        case Quantity():
            return show(value)
        case Range():
            return show_range(value)
        case Colour():
            return f"{value.standard} {value.number}"
        case AskedTest():
            return asked_said(value)
    return binder_family(value)["name"] if asked is Asked.GENERIC_TYPE else str(value)


def systems_asked(offer: Offer, spec: Spec) -> tuple[System, ...]:
    """The systems of the specification that an offer answers."""
    if offer.job is not None:
        return tuple(spec.systems_of(spec.jobs[offer.job]))
    return (spec.systems[offer.system],) if offer.system is not None else ()


def open_coats(offer: Offer, spec: Spec) -> Iterator[tuple[System, Layer]]:
    """The coats the specification leaves open."""
    for system in systems_asked(offer, spec):
        yield from ((system, layer) for layer in system.layers if layer.product is None)


def coat_of(entry: OfferedCoat, offer: Offer, spec: Spec) -> tuple[System, Layer] | None:
    """The coat an entry is for; None where the specification has none of that id, or has it in several systems."""
    found = [
        (system, layer)
        for system in systems_asked(offer, spec)
        if entry.system in {None, system.id} or offer.job is None
        for layer in system.layers
        if layer.id == (entry.layer or entry.id)
    ]
    return found[0] if len(found) == 1 else None


def coats_offered(offer: Offer, spec: Spec) -> Iterator[CoatOffered]:
    """The entries that are for an open coat of the specification, each assessed."""
    for entry in offer.layers:
        at = coat_of(entry, offer, spec)
        if at is not None and at[1].product is None:
            yield _assessed(entry, *at, offer, spec)


def with_offered(offer: Offer, spec: Spec) -> Spec:
    """The specification with the products of the offer in the place of what is required."""
    for system in systems_asked(offer, spec):
        taken = {one.layer.id: one.entry for one in coats_offered(offer, spec) if one.system.id == system.id}
        layers = tuple(_named(layer, taken[layer.id]) if layer.id in taken else layer for layer in system.layers)
        spec = spec.with_system(system.model_copy(update={"layers": layers})) if taken else spec
    return spec


def _named(layer: Layer, entry: OfferedCoat) -> Layer:
    film = layer.film
    if entry.film is not None:
        stated = {name: getattr(one, name) for one in (layer.film, entry.film) for name in one.model_fields_set}
        film = FilmLimits.model_construct(**stated)
    changed = {"product": entry.product, "variant": entry.variant, "film": film, "required": None}
    return layer.model_copy(update=changed)


def _assessed(entry: OfferedCoat, system: System, layer: Layer, offer: Offer, spec: Spec) -> CoatOffered:
    ways = layer.required.choices() if layer.required is not None else iter([("", Requirement())])
    product = spec.products[entry.product]
    of = _Offered(
        entry,
        product,
        product.variant(entry.variant) if entry.variant else None,
        ("offers", offer.id, "layers", entry.id),
        spec,
    )
    found = [CoatOffered(entry, system, layer, id, tuple(_answers(layer, way, of))) for id, way in ways]
    return min(found, key=lambda one: (len(one.those(Verdict.FALLS_SHORT)), len(one.those(Verdict.NOT_SHOWN))))


def answer_of(clause: Clause, product: Product, variant: Variant | None, at: Path) -> Answer:
    """What the product that a coat names answers to a clause; `at` is the address of the coat."""
    entry = OfferedCoat.model_construct(id=at[-1], product=product.id)
    return _ANSWERED[clause.asked](clause, _Offered(entry, product, variant, at))


class _Offered(NamedTuple):
    entry: OfferedCoat
    product: Product
    variant: Variant | None
    at: Path
    spec: Spec | None = None

    @property
    def of_product(self) -> Path:
        return ("products", self.product.id)

    @property
    def of_variant(self) -> Path:
        return (*self.of_product, "variants", self.variant.id) if self.variant is not None else (*self.at, "variant")


def _answers(layer: Layer, way: Requirement, of: _Offered) -> Iterator[Answer]:
    for clause in clauses(layer, way):
        yield _ANSWERED[clause.asked](clause, of)


def _answer(
    clause: Clause, met: bool | None, offered: Value | tuple[Value, ...] | None, path: Path, missing: str = ""
) -> Answer:
    verdict = Verdict.NOT_SHOWN if met is None else Verdict.MEETS if met else Verdict.FALLS_SHORT
    return Answer(clause, verdict, offered, path, missing if met is None else "")


def _role(clause: Clause, of: _Offered) -> Answer:
    return _answer(clause, clause.value in of.product.roles, of.product.roles, (*of.of_product, "roles"))


def _type(clause: Clause, of: _Offered) -> Answer:
    binder = of.product.binder
    met = None if binder == NOT_NAMED else binder == clause.value
    return _answer(clause, met, binder, (*of.of_product, "binder"), "the generic type of the product")


def _solids(clause: Clause, of: _Offered) -> Answer:
    found = solids_sprayed(of.product, of.variant)
    path = (*of.of_product, "solids", "sprayed")
    if isinstance(found, NotKnown) or not isinstance(clause.value, Range):
        return _answer(clause, None, None, path, "the volume solids without propellant")
    if isinstance(found, Working):
        return _answer(clause, _inside(found.quantity, clause.value), found.quantity, (*of.of_product, "composition"))
    stated = found.value
    met = _inside(stated, clause.value) if isinstance(stated, Quantity) else None
    offered = stated if isinstance(stated, Quantity) else None
    return _answer(clause, met, offered, tuple(found.origin.split(".")), "the volume solids as a figure")


def _inside(value: Quantity, asked: Range) -> bool:
    return (asked.low is None or value >= asked.low) and (asked.high is None or value <= asked.high)


def _voc(clause: Clause, of: _Offered) -> Answer:
    content = of.product.voc.content if of.product.voc is not None else None
    met = content <= clause.value if content is not None and isinstance(clause.value, Quantity) else None
    return _answer(clause, met, content, (*of.of_product, "voc", "content"), "the VOC content, ready for use")


def _colour(clause: Clause, of: _Offered) -> Answer:
    colour = of.variant.colour if of.variant is not None else None
    asked = clause.value
    met = None
    if colour is not None and isinstance(asked, Colour):
        met = (colour.standard.casefold(), colour.number) == (asked.standard.casefold(), asked.number)
    missing = "the colour of the variant" if of.variant is not None else "the variant offered, with its colour"
    return _answer(
        clause, met, colour, (*of.of_variant, "colour") if of.variant is not None else of.of_variant, missing
    )


def _gloss(clause: Clause, of: _Offered) -> Answer:
    gloss = of.variant.gloss if of.variant is not None else None
    met = clause.value.holds_all_of(gloss) if gloss is not None and isinstance(clause.value, Range) else None
    missing = "the gloss of the variant" if of.variant is not None else "the variant offered, with its gloss"
    return _answer(clause, met, gloss, (*of.of_variant, "gloss") if of.variant is not None else of.of_variant, missing)


def _curing(clause: Clause, of: _Offered) -> Answer:
    return _answer(clause, of.product.curing is clause.value, of.product.curing, (*of.of_product, "curing"))


def _pack(clause: Clause, of: _Offered) -> Answer:
    form = of.product.pack.form
    return _answer(clause, form is clause.value, form, (*of.of_product, "pack", "form"))


def _film(clause: Clause, of: _Offered) -> Answer:
    """The film offered lies inside the one required; where the offer states none, the product allows the one required."""
    asked, own = clause.value, of.entry.film
    if not isinstance(asked, Range):
        return _answer(clause, None, None, of.at, "the DFT")
    if own is not None and (own.min is not None or own.max is not None):
        offered = Range("thickness", own.min, own.max)
        low = asked.low is None or own.min is None or own.min >= asked.low
        high = asked.high is None or own.max is None or own.max <= asked.high
        return _answer(clause, low and high, offered, (*of.at, "film"))
    allowed = of.product.film
    if allowed.min is None and allowed.max is None:
        return _answer(clause, None, None, (*of.of_product, "film"), "the DFT limits of the product")
    low = asked.low is None or allowed.min is None or allowed.min <= asked.low
    high = asked.high is None or allowed.max is None or asked.high <= allowed.max
    offered = Range("thickness", allowed.min, allowed.max)
    return _answer(clause, low and high, offered, (*of.of_product, "film"))


def _method(clause: Clause, of: _Offered) -> Answer:
    methods = of.product.application.methods if of.product.application is not None else ()
    met = clause.value in methods if methods else None
    path = (*of.of_product, "application", "methods")
    return _answer(clause, met, methods or None, path, "the application methods of the product")


def _thinner(clause: Clause, of: _Offered) -> Answer:
    mixing = of.product.application.mixing if of.product.application is not None else None
    most = mixing.thinner_max if mixing is not None else None
    met = most >= clause.value if most is not None and isinstance(clause.value, Quantity) else None
    path = (*of.of_product, "application", "mixing", "thinner_max")
    return _answer(clause, met, most, path, "the maximum thinner of the product")


def _test(clause: Clause, of: _Offered) -> Answer:
    """What a report among the sources shows. Of a test in words a person has entered the report that the supplier's word rests on.

    The supplier's word alone shows nothing, nor does a report that is named and not handed in.
    """
    asked = clause.value
    if not isinstance(asked, RequiredTest):
        return _answer(clause, None, None, of.at)
    handed = next((one for one in of.entry.tests if one.id == asked.id), None)
    if handed is not None and not handed.passed:
        told = ", ".join(part for part in (handed.result, handed.report) if part) or None
        return _answer(clause, met=False, offered=told, path=(*of.at, "tests", handed.id))
    if asked.method is not None and of.spec is not None:
        return _by_report(clause, shown(asked, of.product, of.spec), of)
    if handed is None:
        return _answer(clause, None, None, (*of.at, "tests"), _NO_REPORT)
    report = of.spec.reports[handed.evidence.report] if of.spec is not None and handed.evidence is not None else None
    named = handed.report or (report.number if report is not None else None)
    told = ", ".join(part for part in (handed.result, named) if part) or None
    lacking = N_("the result of the test") if handed.result is None else _NOT_HANDED_IN if report is None else ""
    return _answer(clause, None if lacking else True, told, (*of.at, "tests", handed.id), lacking)


def _by_report(clause: Clause, found: Shown, of: _Offered) -> Answer:
    if found.tested is None:
        return _answer(clause, None, None, (*of.at, "tests"), _NO_REPORT)
    done, report = found.tested.done, found.tested.report
    told = ", ".join([*(one.value for one in done.results if one.excluded is None), report.number])
    path = ("reports", report.id, "tests", done.id)
    return Answer(clause, verdict_by(found.standing), told, path, missing_by(found.standing))


def _text(clause: Clause, of: _Offered) -> Answer:
    """Words are weighed by a person."""
    missing = "a person's assessment of the answer" if of.entry.text is not None else "an answer"
    return _answer(clause, None, of.entry.text, (*of.at, "text"), missing)


_ANSWERED: Mapping[Asked, Callable[[Clause, _Offered], Answer]] = {
    Asked.ROLE: _role,
    Asked.GENERIC_TYPE: _type,
    Asked.SOLIDS: _solids,
    Asked.VOC: _voc,
    Asked.COLOUR: _colour,
    Asked.GLOSS: _gloss,
    Asked.CURING: _curing,
    Asked.PACK: _pack,
    Asked.FILM: _film,
    Asked.METHOD: _method,
    Asked.THINNER: _thinner,
    Asked.TEST: _test,
    Asked.TEXT: _text,
}
