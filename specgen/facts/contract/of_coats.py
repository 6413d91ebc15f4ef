"""The limits of a clause on coats and their products: film, number of coats, generic type, solids, VOC, colour, gloss, tests.

Called by `limits`. A coat whose product is not chosen answers with what it requires of one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.facts.contract.held import Ground, Held, Ours, Value, Verdict, held_films, verdict_of
from specgen.facts.layer.film import Limit, film_limit
from specgen.facts.layer.sums import film_sum, sum_of, total_film
from specgen.facts.offered import Answer, answer_of, required_in_figures
from specgen.facts.offered import Verdict as Offered
from specgen.facts.pairs.layers import PARENT
from specgen.facts.requirement import CLAUSE_NAMES, Asked, Clause, clauses
from specgen.facts.tests.evidence import evidence_of
from specgen.facts.tests.said import asked_said
from specgen.facts.tests.spoken import asked_tests
from specgen.facts.tests.standards import standards_in
from specgen.model.contract_document import ClauseLimit
from specgen.model.product import Role
from specgen.model.requirement import Requirement
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.test_required import AskedTest
from specgen.model.walk import Path
from specgen.units.count import Count
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

_LIMITS: tuple[Limit, ...] = ("min", "nominal", "max")
_OF_THE_LAYER = {Asked.ROLE, Asked.FILM, Asked.METHOD, Asked.THINNER}
_CLEAR = {Role.CLEARCOAT, Role.CAVITY_WAX}
TOTAL = N_("Total DFT")
FILM = N_("DFT of a coat")
COATS = N_("Number of coats")
COAT = N_("Coat type")


def held_by_coats(limit: ClauseLimit, ground: Ground) -> Iterator[Held]:
    for system in ground.systems:
        if limit.total is not None:
            yield from held_films(limit.total, _total(system, ground.spec), ("systems", system.id, "total"), TOTAL)
        concerned = [layer for layer in system.layers if limit.coat in {None, layer.role}]
        layers = ("systems", system.id, "layers")
        if limit.coat is not None and not concerned:
            yield Held(COAT, limit.coat, None, layers, Verdict.NOT_ANSWERED)
            continue
        if limit.coats is not None:
            yield _coats(limit.coats, concerned, system)
        if limit.film is not None:
            yield from _films(limit, concerned, system, ground.spec)
    if limit.product is not None:
        yield from _products(limit.product, limit.coat, ground)


def _total(system: System, spec: Spec) -> dict[str, Ours]:
    found: dict[str, Ours] = {}
    for bound in _LIMITS:
        film = total_film(system, spec, bound)
        if film is None:
            continue
        stated = getattr(system.total, bound, None) is not None
        summed = None if stated else film_sum(system, spec, bound)
        path = ("systems", system.id, "total", bound) if stated else ("systems", system.id, "layers")
        found[bound] = Ours(film, path, borrowed=summed is not None and bool(summed.borrowed))
    return found


def _coats(asked: Count, layers: Sequence[Layer], system: System) -> Held:
    """The coats the layers say they are laid in; one each where they do not say."""
    low = sum(layer.coats.low if layer.coats is not None else 1 for layer in layers)
    highs = [layer.coats.high if layer.coats is not None else 1 for layer in layers]
    high = None if None in highs else sum(one for one in highs if one is not None)
    ours = Count(low, high)
    met: bool | None = asked.holds_all_of(ours)
    if not met and (high is None or high >= asked.low) and (asked.high is None or low <= asked.high):
        # some of what is left open would do
        met = None
    why = N_("the number of coats is left open") if met is None else ""
    return Held(COATS, asked, ours, ("systems", system.id, "layers"), verdict_of(met), why)


def _films(limit: ClauseLimit, layers: Sequence[Layer], system: System, spec: Spec) -> Iterator[Held]:
    """Coat by coat; where several of one type meet a minimum only together, nobody can tell of which the clause speaks."""
    asked = limit.film
    if asked is None:
        return
    for layer in layers:
        found = {bound: film for bound in _LIMITS if (film := film_limit(system, layer, spec, bound)) is not None}
        ours = {str(bound): Ours(film.value, film.path, film.borrowed) for bound, film in found.items()}
        at = ("systems", system.id, "layers", layer.id, "film")
        for held in held_films(asked, ours, at, FILM):
            together = limit.coat is not None and len(layers) > 1 and held.asked is not asked.max
            if held.verdict is Verdict.NOT_MET and together and _enough(layers, system, spec, held.asked):
                yield held._replace(verdict=Verdict.NOT_TOLD, why=N_("several coats are of this type"))
            else:
                yield held


def _enough(layers: Sequence[Layer], system: System, spec: Spec, asked: Value) -> bool:
    films = [film.value for layer in layers if (film := film_limit(system, layer, spec, "min")) is not None]
    return bool(films) and isinstance(asked, Quantity) and sum_of(films) >= asked


def _products(asked: Requirement, coat: Role | None, ground: Ground) -> Iterator[Held]:
    concerned = [
        (system, layers)
        for system in ground.systems
        if (layers := [layer for layer in system.layers if coat in {None, layer.role}])
    ]
    if not concerned:
        return
    for clause in (one for one in clauses(concerned[0][1][0], asked) if one.asked not in _OF_THE_LAYER):
        if clause.asked is Asked.TEST:
            yield _test(clause, concerned, ground)
            continue
        found = [
            _of_layer(clause, layer, system, ground.spec)
            for system, layers in concerned
            for layer in _seen(clause, layers, coat)
        ]
        # of several colours on one job nobody can tell which parts the clause means
        mixed = clause.asked is Asked.COLOUR and any(one.verdict is Verdict.MET for one in found)
        for held in dict.fromkeys(found):
            if mixed and held.verdict is Verdict.NOT_MET:
                yield held._replace(
                    verdict=Verdict.NOT_TOLD, why=N_("other parts of the job have the colour asked for")
                )
            else:
                yield held


def _seen(clause: Clause, layers: Sequence[Layer], coat: Role | None) -> Sequence[Layer]:
    """The coats a clause on colour or gloss speaks of where it names none: the last with a colour, and the last of all."""
    if coat is not None or clause.asked not in {Asked.COLOUR, Asked.GLOSS}:
        return layers
    coloured = [layer for layer in layers if layer.role not in _CLEAR] or list(layers)
    return (coloured if clause.asked is Asked.COLOUR else layers)[-1:]


def _of_layer(clause: Clause, layer: Layer, system: System, spec: Spec) -> Held:
    at = ("systems", system.id, "layers", layer.id)
    if layer.product is None:
        return _of_requirement(clause, layer, system)
    answer = answer_of(clause, spec.product_of(layer), spec.variant_of(layer), at)
    verdict, why = verdict_of(answer.verdict is Offered.MEETS), ""
    if answer.verdict is Offered.NOT_SHOWN:
        verdict, why = Verdict.NOT_TOLD, N_("it is not stated") if answer.offered is None else N_("a person judges it")
    elif verdict is Verdict.NOT_MET and (doubt := _doubt(answer)):
        verdict, why = Verdict.NOT_TOLD, doubt
    what = CLAUSE_NAMES[clause.asked]
    return Held(what, clause.value, answer.offered, answer.path, verdict, why, of=clause.asked)


def _doubt(answer: Answer) -> str:
    """Why a value that differs may be what is asked for all the same; empty where it cannot."""
    asked, offered = answer.clause.value, answer.offered
    if answer.clause.asked is Asked.COLOUR:
        one, other = (str(getattr(value, "standard", "")).casefold() for value in (asked, offered))
        return N_("the colours are of two standards") if one != other else ""
    # taken like its two-pack parent, which is common practice
    blocked = answer.clause.asked is Asked.GENERIC_TYPE and PARENT.get(str(offered)) == asked
    return N_("it is that type with a blocked hardener") if blocked else ""


def _of_requirement(clause: Clause, layer: Layer, system: System) -> Held:
    """What the coat requires of the product to be offered, where it asks for as much in every alternative."""
    at = ("systems", system.id, "layers", layer.id, "required")
    what = CLAUSE_NAMES[clause.asked]
    ways = [way for _, way in layer.required.choices()] if layer.required is not None else []
    ours = [one for way in ways for one in clauses(layer, way) if one.asked is clause.asked]
    if not ours or len(ours) < len(ways):
        why = N_("the coat does not require it")
        return Held(what, clause.value, None, at, Verdict.NOT_ANSWERED, why, of=clause.asked)
    found = tuple(dict.fromkeys(one.value for one in ours))
    verdict = verdict_of(all(_as_narrow(one, clause) for one in ours))
    return Held(what, clause.value, found, (*at, clause.asked.value), verdict, of=clause.asked)


def _as_narrow(own: Clause, asked: Clause) -> bool:
    if isinstance(own.value, Range) and isinstance(asked.value, Range):
        return asked.value.holds_all_of(own.value)
    if isinstance(own.value, Quantity) and isinstance(asked.value, Quantity):
        return own.value <= asked.value
    return required_in_figures(own) == required_in_figures(asked)


def _test(clause: Clause, concerned: Sequence[tuple[System, Sequence[Layer]]], ground: Ground) -> Held:
    """Where the job has the test, by its method or its standard: required, at an inspection point, or behind a claim that is printed.

    The place is shown; whether its result is the one asked for is the reader's to judge.
    """
    asked, what = clause.value, CLAUSE_NAMES[Asked.TEST]
    places = list(_places_of_tests(concerned, ground))
    # the test itself before another that is assessed after the same exposure
    by_method = (place for place in places if _one_method(asked, place[1]))
    by_standard = (place for place in places if _standards(asked) & _standards(place[1]))
    path, found = next(by_method, None) or next(by_standard, (("jobs", ground.job.id, "inspection"), None))
    if found is None:
        return Held(what, asked, None, path, Verdict.NOT_ANSWERED, of=Asked.TEST)
    return Held(what, asked, found, path, Verdict.NOT_TOLD, N_("compare the results"), of=Asked.TEST)


def _one_method(asked: Value, found: Value) -> bool:
    if not isinstance(asked, AskedTest) or not isinstance(found, AskedTest):
        return False
    return asked.method is not None and asked.method == found.method


def _standards(test: Value) -> set[str]:
    text = asked_said(test) if isinstance(test, AskedTest) else str(test)
    return {one.standard for one in standards_in(text)}


def _places_of_tests(
    concerned: Sequence[tuple[System, Sequence[Layer]]], ground: Ground
) -> Iterator[tuple[Path, AskedTest | str]]:
    job = ground.job
    for asked in asked_tests(job):
        yield ("jobs", job.id, *asked.path), asked.test
    for system, layers in concerned:
        ids = {layer.id for layer in layers}
        for asked in asked_tests(system):
            if asked.path[0] != "layers" or asked.path[1] in ids:
                yield ("systems", system.id, *asked.path), asked.test
        for product in (ground.spec.products[layer.product] for layer in layers if layer.product is not None):
            for asked in asked_tests(product):
                if evidence_of(ground.spec, product.id, asked.path[1]).printed:
                    yield ("products", product.id, *asked.path), asked.test
    for point in job.inspection:
        text = ", ".join(one for one in (point.check, point.method, point.criterion.text) if one)
        yield ("jobs", job.id, "inspection", point.id), text
