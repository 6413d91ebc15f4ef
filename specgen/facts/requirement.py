"""What a coat requires of a product, clause by clause, and which jobs name every product.

Asked by the performance specification, by the rules on offers and by the offer review, so that all of them speak of the same
clauses in the same order.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import StrEnum
from typing import NamedTuple

from specgen.facts.pairs.families import NOT_NAMED
from specgen.model.application import Method
from specgen.model.job import Job
from specgen.model.product import Colour, CuringKind, PackForm, Role
from specgen.model.requirement import Requirement
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.model.test_required import AskedTest
from specgen.model.walk import Path
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range


class Asked(StrEnum):
    """What a clause is on."""

    ROLE = "role"
    GENERIC_TYPE = "generic_type"
    SOLIDS = "solids"
    VOC = "voc"
    COLOUR = "colour"
    GLOSS = "gloss"
    CURING = "curing"
    PACK = "pack"
    FILM = "film"
    METHOD = "method"
    THINNER = "thinner"
    TEST = "test"
    TEXT = "text"


CLAUSE_NAMES: Mapping[Asked, str] = {
    Asked.ROLE: N_("Coat type"),
    Asked.GENERIC_TYPE: N_("Generic type"),
    Asked.SOLIDS: N_("Volume solids"),
    Asked.VOC: N_("VOC content, ready for use"),
    Asked.COLOUR: N_("Colour"),
    Asked.GLOSS: N_("Gloss (at 60°)"),
    Asked.CURING: N_("Curing"),
    Asked.PACK: N_("Pack"),
    Asked.FILM: N_("DFT in this coat"),
    Asked.METHOD: N_("Application"),
    Asked.THINNER: N_("Thinner, by volume of the paint"),
    Asked.TEST: N_("Test"),
    Asked.TEXT: N_("Further requirement"),
}

Value = str | Quantity | Range | Colour | CuringKind | PackForm | Role | Method | AskedTest


class Clause(NamedTuple):
    """One thing required. `path` leads to it from the layer; `value` is what is required."""

    asked: Asked
    path: Path
    value: Value


def clauses(layer: Layer, requirement: Requirement) -> Iterator[Clause]:
    """What the coat and this way of meeting its requirement ask for, in the order of a data sheet."""
    yield Clause(Asked.ROLE, ("role",), layer.role)
    if requirement.generic_type not in {None, NOT_NAMED}:
        yield Clause(Asked.GENERIC_TYPE, ("required", "generic_type"), str(requirement.generic_type))
    stated = (
        (Asked.SOLIDS, requirement.solids),
        (Asked.VOC, requirement.voc),
        (Asked.COLOUR, requirement.colour),
        (Asked.GLOSS, requirement.gloss),
        (Asked.CURING, requirement.curing),
        (Asked.PACK, requirement.pack),
    )
    for asked, value in stated:
        if value is not None:
            yield Clause(asked, ("required", asked.value), value)
    film = layer.film
    if film.min is not None or film.max is not None:
        yield Clause(Asked.FILM, ("film",), Range("thickness", film.min, film.max))
    if layer.method is not None:
        yield Clause(Asked.METHOD, ("method",), layer.method)
    if layer.thinner is not None:
        yield Clause(Asked.THINNER, ("thinner",), layer.thinner)
    for test in requirement.tests:
        yield Clause(Asked.TEST, ("required", "tests", test.id), test)
    if requirement.text is not None:
        yield Clause(Asked.TEXT, ("required", "text"), requirement.text)


def types_required(layer: Layer) -> tuple[str, ...]:
    """Each generic type that is accepted for a coat whose product is not chosen, `not-named` where one is left open."""
    if layer.required is None or layer.product is not None:
        return ()
    return tuple(dict.fromkeys(choice.generic_type or NOT_NAMED for _, choice in layer.required.choices()))


def names_products(job: Job, spec: Spec) -> bool:
    """True where every coat of the job names its product."""
    return all(layer.product is not None for layer in spec.layers_of(job))
