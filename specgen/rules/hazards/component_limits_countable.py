"""HAZ044 Classes, limits and M-factors of a component can be counted with

Checks
    The category of each class is one of those in the table hazard_classes. Specific limits of a component are more than nothing. Several limits of one class are a ladder: the worse category begins at the higher share. A limit on an aquatic class is told, for there the law has M-factors; they are 1 or more.
Why
    An unknown category counts for nothing. A step that begins above the worse one is never reached, and a limit of nothing says nothing: the product seems milder than it is.
Passes
    products.primer.composition.solvent.classes: [{id: organs, hazard_class: stot_single, category: "1", limit: 60 %, limit_source: supplier}, {id: organs-less, hazard_class: stot_single, category: "2", limit: 59 %, limit_source: supplier}]

    products.primer.composition.gas.classes: [{id: water, hazard_class: aquatic_acute, category: "1", m_factor: 1}]
    products.primer.composition.gas.mass_share: 0.5 %
    products.primer.composition.solids.mass_share: 59.5 %
Fails
    products.primer.composition.solvent.classes: [{id: organs, hazard_class: stot_single, category: "1", limit: 60 %, limit_source: supplier}, {id: organs-less, hazard_class: stot_single, category: "2", limit: 60 %, limit_source: supplier}]    # at products.primer.composition.solvent.classes.organs-less.limit

    Given second good
    products.touch-up.composition.solvent.classes: [{id: organs-less, hazard_class: stot_single, category: "2", limit: 70 %, limit_source: supplier}, {id: organs, hazard_class: stot_single, category: "1", limit: 60 %, limit_source: supplier}]    # at products.touch-up.composition.solvent.classes.organs-less.limit

    products.primer.composition.solvent.classes: [{id: cancer, hazard_class: carcinogenicity, category: "2", limit: 0 %, limit_source: supplier}]    # at products.primer.composition.solvent.classes.cancer.limit    # also HAZ026 at products.primer.hazards.classification

    products.primer.composition.gas.classes: [{id: water, hazard_class: aquatic_chronic, category: "4", limit: 10 %}, {id: fish, hazard_class: aquatic_acute, category: "1", m_factor: 0.1}]    # note at products.primer.composition.gas.classes.water.limit    # warning at products.primer.composition.gas.classes.fish.m_factor
    products.primer.composition.gas.mass_share: 0.5 %
    products.primer.composition.solids.mass_share: 59.5 %

    products.primer.composition.gas.classes: [{id: skin, hazard_class: skin_corrosion, category: "9Z"}]    # warning at products.primer.composition.gas.classes.skin.category
To put right
    Copy limits and M-factors from section 3 of the safety data sheet of the raw material.
"""

from collections.abc import Iterator
from itertools import pairwise

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
def component_limits_countable(product: Product, spec: Spec, on: date) -> Problems:
    for line in product.composition:
        path = ("composition", line.id, "classes")
        for entry in line.classes:
            yield from _faults(entry, (*path, entry.id), f"{line.id} of {product.id}")
        for entry, worse in _out_of_order(line):
            what = (
                f"{line.id} of {product.id} begins category {entry.category} at {entry.limit}, "
                f"category {worse.category} of the same class at {worse.limit}"
            )
            yield Problem((*path, entry.id, "limit"), what)


def _faults(entry: ComponentClass, path: tuple[str, ...], whose: str) -> Iterator[Problem]:
    if entry.category not in _categories(entry.hazard_class):
        what = (
            f"{whose} is in category {entry.category} of {entry.hazard_class}, which is not counted with: "
            f"known are {', '.join(_categories(entry.hazard_class))}"
        )
        source = table("hazard_classes").citation
        yield Problem((*path, "category"), what, "correct the category", WARNING, source)
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


def _categories(hazard_class: str) -> tuple[str, ...]:
    return tuple(parts(table("hazard_classes").row("id", hazard_class)["categories"]))


def _out_of_order(line: Component) -> Iterator[tuple[ComponentClass, ComponentClass]]:
    """The steps that begin no lower than the next worse one of their class."""
    steps: dict[str, list[tuple[int, ComponentClass]]] = {}
    for entry in line.classes:
        apart = entry.category in _BESIDE or (entry.hazard_class, entry.category) == ("stot_single", "3")
        if entry.limit is not None and entry.category in _categories(entry.hazard_class) and not apart:
            rank = severity_rank(Classification(entry.hazard_class, entry.category))
            steps.setdefault(entry.hazard_class, []).append((rank, entry))
    for ladder in steps.values():
        ladder.sort(key=lambda step: step[0])
        for (first, worse), (then, milder) in pairwise(ladder):
            if first < then and worse.limit is not None and milder.limit is not None and milder.limit >= worse.limit:
                yield milder, worse
