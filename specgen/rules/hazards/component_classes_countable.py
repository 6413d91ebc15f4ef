"""HAZ044 Classes and limits of a component can be counted with

Checks
    Each class of a component: its category is one of that class, a class with several statements in one category names the statement, and its limits are more than nothing. Several limits of one class are a ladder: the worse category begins at the higher share. A limit on an aquatic class is told, for there the law has M-factors; they are 1 or more.
Why
    A class that cannot be read counts nothing, and a step that begins above the worse one is never reached: either way the product seems milder than it is.
Passes
    products.primer.composition.solvent.classes: [{id: organs, hazard_class: stot_single, category: "1", limit: 60 %, limit_source: supplier}, {id: organs-less, hazard_class: stot_single, category: "2", limit: 59 %, limit_source: supplier}]

    products.primer.composition.gas.classes: [{id: water, hazard_class: aquatic_acute, category: "1", m_factor: 1}]
    products.primer.composition.gas.mass_share: 0.5 %
    products.primer.composition.solids.mass_share: 59.5 %
Fails
    products.primer.composition.solvent.classes: [{id: organs, hazard_class: stot_single, category: "1", limit: 60 %, limit_source: supplier}, {id: organs-less, hazard_class: stot_single, category: "2", limit: 60 %, limit_source: supplier}]    # at products.primer.composition.solvent.classes.organs-less.limit

    Given second good
    products.touch-up.composition.solvent.classes: [{id: organs-less, hazard_class: stot_single, category: "2", limit: 70 %, limit_source: supplier}, {id: organs, hazard_class: stot_single, category: "1", limit: 60 %, limit_source: supplier}]    # at products.touch-up.composition.solvent.classes.organs-less.limit

    products.primer.composition.solvent.classes: [{id: skin, hazard_class: skin_corrosion, category: "3"}]    # warning at products.primer.composition.solvent.classes.skin.category

    products.primer.composition.solvent.classes: [{id: eyes, hazard_class: eye_damage, category: "2"}, {id: airways, hazard_class: stot_single, category: "3"}]    # warning at products.primer.composition.solvent.classes.airways.statement

    products.primer.composition.solvent.classes: [{id: cancer, hazard_class: carcinogenicity, category: "2", limit: 0 %, limit_source: supplier}]    # at products.primer.composition.solvent.classes.cancer.limit    # also HAZ026 at products.primer.hazards.classification

    products.primer.composition.gas.classes: [{id: water, hazard_class: aquatic_chronic, category: "4", limit: 10 %}, {id: fish, hazard_class: aquatic_acute, category: "1", m_factor: 0.1}]    # note at products.primer.composition.gas.classes.water.limit    # warning at products.primer.composition.gas.classes.fish.m_factor
    products.primer.composition.gas.mass_share: 0.5 %
    products.primer.composition.solids.mass_share: 59.5 %
To put right
    Copy class, category, statement and limits from section 3 of the safety data sheet of the raw material.
"""

from collections.abc import Iterator
from itertools import pairwise

from specgen.facts.product.hazard_facts import is_known
from specgen.model.product import Component, ComponentClass
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Basis,
    Problem,
    Problems,
    Product,
    Spec,
    cite,
    date,
    rule,
    table,
)
from specgen.trade.codes import parts
from specgen.trade.hazard_class import Classification, severity_rank

_BESIDE = frozenset({"lactation"})


@rule("HAZ044", on=Product, severity=ERROR, source=LOGIC, waivable=False)
def component_classes_countable(product: Product, spec: Spec, on: date) -> Problems:
    for line in product.composition:
        path = ("composition", line.id, "classes")
        for entry in line.classes:
            yield from _unread(entry, (*path, entry.id), f"{line.id} of {product.id}")
        for entry, worse in _out_of_order(line):
            what = (
                f"{line.id} of {product.id} begins category {entry.category} at {entry.limit}, "
                f"category {worse.category} of the same class at {worse.limit}"
            )
            yield Problem((*path, entry.id, "limit"), what)


def _unread(entry: ComponentClass, path: tuple[str, ...], whose: str) -> Iterator[Problem]:
    law = cite("CLP", "Annex I", Basis.REGULATION)
    categories = parts(table("hazard_classes").row("id", entry.hazard_class)["categories"])
    if entry.category not in categories:
        known = ", ".join(categories)
        what = f"{entry.category} is not a category of {entry.hazard_class}; its categories are: {known}"
        yield Problem((*path, "category"), what, severity=WARNING, source=law)
    elif not is_known(Classification(entry.hazard_class, entry.category, entry.statement or "")):
        what = (
            f"{entry.hazard_class}, category {entry.category}, of {whose} has several statements; which is not stated"
        )
        yield Problem((*path, "statement"), what, "Name the statement.", severity=WARNING, source=law)
    if entry.limit is not None and entry.limit.base <= 0:
        yield Problem((*path, "limit"), f"the limit of {whose} for {entry.hazard_class} is {entry.limit}")
    elif entry.limit is not None and entry.hazard_class.startswith("aquatic"):
        what = f"{whose} states a limit for {entry.hazard_class}, which is not counted with: that class has M-factors"
        yield Problem((*path, "limit"), what, severity=NOTE, source=cite("CLP", "Art. 10", Basis.MEMORY))
    if entry.m_factor is not None and entry.m_factor < 1:
        what = f"the M-factor of {whose} is {entry.m_factor}; it is 1 or more"
        yield Problem(
            (*path, "m_factor"), what, severity=WARNING, source=cite("CLP", "Annex I, Table 4.1.3", Basis.MEMORY)
        )


def _out_of_order(line: Component) -> Iterator[tuple[ComponentClass, ComponentClass]]:
    """The steps that begin no lower than the next worse one of their class."""
    steps: dict[str, list[tuple[int, ComponentClass]]] = {}
    for entry in line.classes:
        categories = parts(table("hazard_classes").row("id", entry.hazard_class)["categories"])
        apart = entry.category in _BESIDE or (entry.hazard_class, entry.category) == ("stot_single", "3")
        if entry.limit is not None and entry.category in categories and not apart:
            rank = severity_rank(Classification(entry.hazard_class, entry.category))
            steps.setdefault(entry.hazard_class, []).append((rank, entry))
    for ladder in steps.values():
        ladder.sort(key=lambda step: step[0])
        for (first, worse), (then, milder) in pairwise(ladder):
            if first < then and worse.limit is not None and milder.limit is not None and milder.limit >= worse.limit:
                yield milder, worse
