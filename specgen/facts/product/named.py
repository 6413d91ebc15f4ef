"""The substances a product names: on its label, by EUH208, as released on cure; and which the label has to name.

What is named is public, and is followed into the tables by the number of the component of that name, else by its name. Called
by the rule on names and by the pages that print them.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from specgen.facts.product.harmonised import left_out
from specgen.facts.product.hazard_facts import declared_classes
from specgen.facts.product.substances import Substance, names_of, numbers_of, substance
from specgen.model.product import Component, Product
from specgen.trade.hazard_class import Classification

# Classes whose substances the label of a mixture names, and from which share by mass a component is looked at.
_NAMED_FOR = {
    "acute_oral": "1",
    "acute_dermal": "1",
    "acute_inhalation": "1",
    "skin_corrosion": "1",
    "eye_damage": "1",
    "mutagenicity": "0.1",
    "carcinogenicity": "0.1",
    "reproductive": "0.1",
    "respiratory_sensitisation": "0.1",
    "skin_sensitisation": "0.1",
    "stot_single": "1",
    "stot_repeated": "1",
    "aspiration": "1",
}
_ONLY_CATEGORY_1 = frozenset({"skin_corrosion", "eye_damage"})


class Unnamed(NamedTuple):
    """A declared class that comes from components of which the label names none; `others_named` where it names something."""

    declared: Classification
    components: tuple[Component, ...]
    others_named: bool


def named_substances(product: Product, on: date) -> tuple[tuple[str, Substance], ...]:
    """Each name once, in the order stated, with what the tables say of it."""
    stated = product.hazards
    if stated is None:
        return ()
    released = (stated.cure_releases,) if stated.cure_releases else ()
    names = dict.fromkeys((*stated.named_on_label, *stated.sensitisers_named, *released))
    numbers = {line.name.casefold(): line.cas for line in product.composition if line.cas}
    if stated.cure_releases and stated.cure_release_cas:
        numbers[stated.cure_releases.casefold()] = stated.cure_release_cas
    return tuple((name, substance(numbers.get(name.casefold()) or _only(name), on)) for name in names)


def unnamed(product: Product, on: date) -> Iterator[Unnamed]:
    """Declared classes of health whose substances the label has to name, and does not. Source: CLP Article 18(3)."""
    stated = product.hazards
    if stated is None:
        return
    named = {name.casefold() for name in (*stated.named_on_label, *stated.sensitisers_named)}
    for declared in declared_classes(product):
        least = _least_named(declared)
        if least is None:
            continue
        found = tuple(
            line
            for line in product.composition
            if line.mass_share.to("%") >= Fraction(least) and any(_gives(c, declared) for c in _classes(line, on))
        )
        if found and not any(_is_named(line, named) for line in found):
            yield Unnamed(declared, found, bool(named))


def asks_for_names(product: Product) -> bool:
    """Whether a declared class asks for the name of a substance on the label. Source: CLP Article 18(3)(b)."""
    return any(_least_named(declared) is not None for declared in declared_classes(product))


def _least_named(declared: Classification) -> str | None:
    """From which share by mass, in percent, a component is looked at for a class; None where the class asks for no name."""
    if declared.hazard_class in _ONLY_CATEGORY_1 and not declared.category.startswith("1"):
        return None
    return _NAMED_FOR.get(declared.hazard_class)


def _only(name: str) -> str:
    numbers = numbers_of(name)
    return next(iter(numbers)) if len(numbers) == 1 else ""


def _classes(line: Component, on: date) -> tuple[Classification, ...]:
    own = (Classification(entry.hazard_class, entry.category, entry.statement or "") for entry in line.classes)
    return (*own, *left_out(line, on))


def _gives(found: Classification, declared: Classification) -> bool:
    if found.hazard_class != declared.hazard_class:
        return False
    if declared.hazard_class in _ONLY_CATEGORY_1 and not found.category.startswith("1"):
        return False
    return not declared.statement or not found.statement or found.statement == declared.statement


def _is_named(line: Component, named: set[str]) -> bool:
    """What no table knows by its number is taken as named where the label names anything, for it may go by another name there."""
    if not names_of(line.cas or ""):
        return bool(named)
    return line.name.casefold() in named or any(line.cas in numbers_of(name) or line.cas == name for name in named)
