"""Acute toxicity of a mixture from the estimates of its ingredients.

A cross-check of what the safety data sheet declares; the classifier decides. Where the law gives no estimate the one that
stands for the category is taken, so a rule may only warn on what comes out. Called by the facts on hazards.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.standards.tables import Row, table
from specgen.trade.given import Source, amount, take
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.mixture import Ingredient
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

Route = Literal["oral", "dermal", "vapour", "mist", "gas"]

_RULES = "acute_toxicity_rules"
_TOXICITY = "acute_toxicity"
_CLASS_OF: dict[str, str] = {"oral": "acute_oral", "dermal": "acute_dermal"}


class Toxicant(NamedTuple):
    """An ingredient: its share by mass, and its estimate as a bare number in mg/kg (oral, dermal), mg/L (vapour, mist) or ppm
    (gas, where the share is one by volume).

    `estimate` is None where it is not known; `harmless` is True where the ingredient is known not to be acutely toxic.
    """

    name: str
    share: Source
    estimate: Source | None = None
    harmless: bool = False


def mixture_estimate(id: str, route: Route, ingredients: Sequence[Toxicant]) -> Working:
    """The estimate of the mixture, a bare number in mg/kg or mg/L.

    100 / ATE = sum of share / estimate; where more than 10 % is unknown, 100 less the unknown share takes the place of
    100. Source: CLP Annex I, 3.1.3.6. Raises WorkingError where no ingredient has an estimate.
    """
    known = [entry for entry in ingredients if entry.estimate is not None and not entry.harmless]
    if not known:
        raise WorkingError("no ingredient has an acute toxicity estimate")
    unit = _unit(route)
    inputs: list[Input] = []
    for number, entry in enumerate(known, start=1):
        inputs.append(take(f"C_{number}", phrase("{name}, share by mass", name=entry.name), entry.share, "share", "%"))
        inputs.append(take(f"A_{number}", phrase("{name}, estimate", name=entry.name), entry.estimate or 0, "", unit))
    below = " + ".join(f"C_{number} / A_{number}" for number in range(1, len(known) + 1))
    unknown = _unknown(ingredients)
    limit = Fraction(_rule("unknown_over")["figure"])
    above, source = "100", table(_RULES).citation
    if sum((entry.number for entry in unknown), Fraction(0)) > limit:
        above = f"(100 - {' - '.join(entry.symbol for entry in unknown)})"
        inputs += unknown
        source = table(_RULES).row_citation(_rule("unknown_over"))
    name, formula = f"acute toxicity estimate, {route}", f"{above} / ({below})"
    return work(
        id, name, formula, tuple(inputs), unit=unit, places=2, source=source, note="100: the whole mixture in %"
    )


def acute_toxicity(id: str, route: Route, ingredients: Sequence[Toxicant]) -> Classified | NotKnown | None:
    """The category that follows, None where the estimate lies above category 4 or nothing in it is toxic.

    NotKnown where ingredients are unknown and none has an estimate.
    """
    toxic = [entry for entry in ingredients if not entry.harmless]
    if not toxic:
        return None
    what = phrase("acute toxicity, {route}", route=route)
    missing = tuple(f"estimate of {entry.name}" for entry in toxic)
    found = worked_out(what, lambda: mixture_estimate(id, route, ingredients), missing=missing)
    if isinstance(found, NotKnown):
        return found
    for row in table(_TOXICITY).rows:
        if row["route"] == route and found.number <= Fraction(row["up_to"]):
            why = f"the estimate is at or below {row['up_to']} {row['unit']}"
            hazard_class = _CLASS_OF.get(route, "acute_inhalation")
            return Classified(hazard_class, row["category"], why, (found,), table(_TOXICITY).citation)
    return None


def acute_classes(id: str, ingredients: Sequence[Ingredient]) -> Iterator[Classified]:
    """The categories of acute toxicity that a mixture reaches by its classed ingredients; one without a class counts as harmless.

    What is breathed in adds up within its form, vapour or mist; the worse form decides. Source: CLP Annex I, 3.1.3.6.
    """
    routes: Mapping[str, tuple[Route, ...]] = {
        "acute_oral": ("oral",),
        "acute_dermal": ("dermal",),
        "acute_inhalation": ("vapour", "mist"),
    }
    for hazard_class, ways in routes.items():
        judged = (
            acute_toxicity(f"{id}.{hazard_class}_{way}", way, list(_toxicants(ingredients, hazard_class, way)))
            for way in ways
        )
        found = [entry for entry in judged if isinstance(entry, Classified)]
        if found:
            yield min(found, key=lambda entry: entry.category)


def _toxicants(ingredients: Sequence[Ingredient], hazard_class: str, route: Route) -> Iterator[Toxicant]:
    for entry in ingredients:
        categories = [found.category for found in entry.classes if found.hazard_class == hazard_class]
        known = [f"{route}_{category}" for category in categories]
        points = [Fraction(row["point"]) for row in table(_TOXICITY).rows if row["id"] in known]
        if not points or (route in {"vapour", "mist"} and route != _form(entry)):
            continue
        relevant = "relevant_from" if min(categories) == "4" else "relevant_from_toxic"
        share = amount(entry.share)
        if isinstance(share, Quantity) and share.to("%") >= Fraction(_rule(relevant)["figure"]):
            stated = dict(entry.estimates).get(route)
            yield Toxicant(entry.name, entry.share, stated if stated is not None else min(points))


def _form(entry: Ingredient) -> str:
    """In which form it is breathed in: that of its estimate where the law gives one."""
    given = [route for route, _ in entry.estimates if route in {"vapour", "mist"}]
    return given[0] if given else entry.form


def _unknown(ingredients: Sequence[Toxicant]) -> list[Input]:
    """Ingredients of at least 1 % of which nothing is known; less does not count."""
    least = Quantity.of("share", Fraction(_rule("relevant_from")["figure"]), "%")
    unknown = [entry for entry in ingredients if entry.estimate is None and not entry.harmless]
    inputs = [
        take(f"U_{n}", phrase("{name}, not known", name=e.name), e.share, "share", "%")
        for n, e in enumerate(unknown, start=1)
    ]
    return [entry for entry in inputs if isinstance(entry.value, Quantity) and entry.value >= least]


def _rule(name: str) -> Row:
    return table(_RULES).row("id", name)


def _unit(route: Route) -> str:
    return next(row["unit"] for row in table(_TOXICITY).rows if row["route"] == route)
