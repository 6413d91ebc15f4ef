"""REL009 Heat in words is heat that part and paint stand, and that cures the film

Checks
    The scope of each job and what is done between its coats: a temperature at which a coat is baked, stoved, force-dried or held under a lamp is not above what a part of plastic or wood stands (table heat_of_parts), nor, above the last row of that table, above every temperature that a product of the coats states: of stoving, drying or continuous service. Where a product of the coats cures by heat alone, the highest temperature at which the film is said to be cured, stoved, baked or held is not below every one that the product states for it, nor its time shorter than the one stated for that temperature. What is denied, or said of service, washing or the drying of a bare part, is not read.
Why
    Plastic warps and blisters, and a coat that is not made for the oven boils, yellows or cracks. A film that needs heat and gets half of it stays soft, and nobody sees that.
Passes
    systems.cab.layers.primer.before_next: Force dry at 60 °C for 30 min.

    systems.cab.layers.primer.before_next: Sand; never bake above 120 °C.
Fails
    products.barrier.drying: [{id: hand, stage: dry-to-handle, time: 8 h, air: 15 degC}, {id: cure, stage: fully-cured, time: 1 h, air: 200 degC}]    # also REL004 note at systems.chassis.service_after    # also USU002 at products.barrier.drying.cure.air    # also USU018 at products.barrier.pot_life.time
    jobs.refit.scope: Doors and step, cured in the oven at 120 °C for 1 h.    # at jobs.refit.scope

    products.barrier.drying: [{id: hand, stage: dry-to-handle, time: 8 h, air: 15 degC}, {id: cure, stage: fully-cured, time: 1 h, air: 200 degC}]    # also REL004 note at systems.chassis.service_after    # also USU002 at products.barrier.drying.cure.air    # also USU018 at products.barrier.pot_life.time
    jobs.refit.scope: Doors and step, cured in the oven at 200 °C for 20 min.    # at jobs.refit.scope

    systems.cab.layers.primer.before_next: Bake at 140 °C for 30 min.    # at systems.cab.layers.primer.before_next

    jobs.refit.scope: Doors and step, dried in the oven at 140 °C.    # at jobs.refit.scope

    systems.chassis.layers.barrier.before_next: Bake at 110 °C.    # at systems.chassis.layers.barrier.before_next    # also SUB006 at systems.chassis.layers.barrier.product    # also PRE017 at preparations.sand-steel.steps.sand.abrasive
    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm}
To put right
    Write the heat that the part and the data of the product allow, measured on the surface.
"""

import re
from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.instructions import instructions
from specgen.facts.pairs.parts import Part, parts_of
from specgen.facts.product.heat_needed import too_little_heat
from specgen.facts.product.spans_said import spans_said
from specgen.facts.texts import CLAUSE
from specgen.rules.kit import (
    PRACTICE,
    WARNING,
    Job,
    Path,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    date,
    rule,
    table,
)
from specgen.units.quantity import upper

_HEATED = re.compile(
    r"\b(?:bak(?:e|ed|ing)|stov\w+|oven|infra-?red|IR|force[- ]dr\w+|heat lamps?|drying lamps?|heated|heat(?: gun)?)\b",
    re.I,
)
_CURED = re.compile(
    r"\b(?:cur(?:e|es|ed|ing)|bak(?:e|es|ed|ing)|stov\w+|oven|harden\w*|held|heated|heat(?:s|ing)?|run[- ]up|first run)\b",
    re.I,
)
_OTHER = re.compile(
    r"\b(?:not|never|no|nothing|without|if|above|more than|service|operation|use|start-?up|run|wash\w*|degreas\w*|rins\w*|bare|strip\w*|"
    r"old|plant|line|earlier|raise[ds]?|an hour)\b",
    re.I,
)


@rule("REL009", on=Job, severity=WARNING, source=PRACTICE)
def heat_in_words(job: Job, spec: Spec, on: date) -> Problems:
    parts = list(parts_of(job, spec))
    for path, text in instructions(job, spec):
        if path[-1] not in {"scope", "before_next", "if_exceeded"}:
            continue
        own = [part for part in parts if path[0] != "systems" or part.system.id == path[1]]
        for clause in CLAUSE.split(text):
            said = (
                quantities_said(clause, "temperature") if _HEATED.search(clause) and not _OTHER.search(clause) else []
            )
            for what in _too_hot(max(said, key=lambda one: one.base), own, spec) if said else ():
                yield Problem(path, f"'{clause.strip()}': {what}", absolute=True)
        yield from _too_little(path, text, own, spec)


def _too_little(path: Path, text: str, parts: list[Part], spec: Spec) -> Problems:
    """The highest of the temperatures at which a text cures the film, where a product needs more heat or more time."""
    clauses = [clause for clause in CLAUSE.split(text) if not _OTHER.search(clause.replace("first run", ""))]
    heats = [
        (max(said, key=lambda one: one.base), clause)
        for clause in clauses
        if (said := quantities_said(clause, "temperature"))
    ]
    if not any(_CURED.search(clause) for _, clause in heats):
        return
    hottest, clause = max(heats, key=lambda one: one[0].base)
    spans = [span for _, span in spans_said(clause) if span is not None]
    for product in {product.id: product for part in parts for product in spec.products_in(part.system)}.values():
        stated = too_little_heat(product, hottest, spans[0] if len(spans) == 1 else None)
        if stated is not None:
            yield Problem(path, f"'{clause.strip()}': {stated}", absolute=True)
            return


def _too_hot(said: Quantity, parts: list[Part], spec: Spec) -> Iterator[str]:
    for kind in ("plastic", "wood"):
        most = _most(kind)
        of_kind = next((part for part in parts if part.kind == kind), None)
        if of_kind is not None and said > most:
            yield f"{of_kind.item.id} is of {of_kind.name}; {most} is the most such parts usually stand"
            return
    products = list({product.id: product for part in parts for product in spec.products_in(part.system)}.values())
    stated = [limit for product in products for limit in _heat_of(product)]
    if parts and products and said > _most("unstated") and not any(said <= one for one in stated):
        yield f"none of its paints states drying or service at {said}"


def _most(row: str) -> Quantity:
    found = table("heat_of_parts").row("id", row)
    return Quantity.of("temperature", Fraction(found["most"]), found["unit"], found["most"])


def _heat_of(product: Product) -> Iterator[Quantity]:
    """Every temperature at which a product says that its film dries or holds."""
    yield from (upper(entry.surface) for entry in product.stoving)
    yield from (upper(entry.air) for entry in product.drying)
    if product.service_temperature is not None and product.service_temperature.continuous_max is not None:
        yield product.service_temperature.continuous_max
