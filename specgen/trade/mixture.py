"""Hazard classes of a mixture from those of its ingredients, by the generic concentration limits.

A cross-check of what the safety data sheet declares: test data, bridging and expert judgement stay with the classifier.
Acute toxicity is worked out in `acute_toxicity`. Called by the rules on hazards.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from specgen.standards.tables import Row, table
from specgen.trade.given import Source, amount, take
from specgen.trade.hazard_class import Classification
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.working import Input, Working, work
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

_LIMITS = "mixture_limits"

# A limit for category 1 holds for its sub-categories; a sensitiser of 1A has a stricter one of its own.
_SUB = {"1": ("1", "1A", "1B", "1C"), "1B": ("1", "1A", "1B")}
_SENSITISATION = frozenset({"skin_sensitisation", "respiratory_sensitisation"})


@dataclass(frozen=True, slots=True)
class Ingredient:
    """A substance in a mixture: its share by mass, its classes, its M-factors and its specific limits.

    `specific` maps a class (an id of hazard_classes) to the share from which it counts, in place of the generic limit.
    """

    name: str
    share: Source
    classes: tuple[Classification, ...]
    m_acute: Source = 1
    m_chronic: Source = 1
    specific: Mapping[str, Source] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Term:
    weight: int
    by_m: bool
    hazard_class: str
    category: str
    statement: str


def mixture_classes(
    id: str, ingredients: Sequence[Ingredient], *, gas: bool = False, viscosity: Fraction | None = None
) -> tuple[Classified | NotKnown, ...]:
    """The classes a mixture reaches, at most one category of each (STOT SE 3 one for each effect).

    `viscosity` is kinematic, at 40 degC, in mm2/s; without it an aspiration hazard cannot be judged. Source: the table
    mixture_limits; a result whose source is not confirmed is good for a warning only.
    """
    found: dict[tuple[str, str], Classified | NotKnown] = {}
    for row in table(_LIMITS).rows:
        key = (row["hazard_class"], row["statement"])
        if key in found or (row["condition"] == "gas" and not gas) or (row["condition"] == "solid or liquid" and gas):
            continue
        hit = _each(id, row, ingredients) if row["mode"] == "each" else _sum(id, row, ingredients)
        judged = _aspiration(hit, viscosity) if hit is not None and row["condition"] == "viscosity" else hit
        if judged is not None:
            found[key] = judged
    return tuple(found.values())


def _each(id: str, row: Row, ingredients: Sequence[Ingredient]) -> Classified | None:
    term = _terms(row)[0]
    for number, entry in enumerate(ingredients, start=1):
        matched = next((found for found in entry.classes if _matches(term, found)), None)
        if matched is None:
            continue
        share, least = _percent(entry.share), Fraction(row["at_least"])
        specific = entry.specific.get(term.hazard_class)
        if specific is not None:
            least = _percent(specific)
        if share >= least and (specific is not None or not row["below"] or share < Fraction(row["below"])):
            taken = take(f"C_{number}", phrase("{name}, share by mass", name=entry.name), entry.share, "share", "%")
            working = _working(f"{id}.{row['id']}", row, (taken,), taken.symbol)
            own = "its specific concentration limit" if specific is not None else "the limit"
            # 1A and 1B share a row of the limits; the mixture keeps the category of what it holds.
            category = matched.category if row["category"] == "1B" else row["category"]
            why = f"{entry.name} is at or above {own} of {Quantity.of('share', least, '%')}"
            return Classified(row["hazard_class"], category, why, (working,), working.source, row["statement"])
    return None


def _sum(id: str, row: Row, ingredients: Sequence[Ingredient]) -> Classified | None:
    inputs: list[Input] = []
    pieces: list[str] = []
    for term in _terms(row):
        for number, entry in enumerate(ingredients, start=1):
            if not any(_matches(term, found) for found in entry.classes):
                continue
            symbol = f"C_{number}"
            if symbol not in {taken.symbol for taken in inputs}:
                inputs.append(take(symbol, phrase("{name}, share by mass", name=entry.name), entry.share, "share", "%"))
            factors = [str(term.weight)] if term.weight != 1 else []
            if term.by_m:
                m_factor = entry.m_acute if term.hazard_class == "aquatic_acute" else entry.m_chronic
                factors.append(f"M_{number}")
                inputs.append(take(f"M_{number}", phrase("{name}, M-factor", name=entry.name), m_factor))
            pieces.append(" * ".join([*factors, symbol]))
    if not pieces:
        return None
    working = _working(f"{id}.{row['id']}", row, tuple(inputs), " + ".join(pieces))
    if working.number < Fraction(row["at_least"]) or (row["below"] and working.number >= Fraction(row["below"])):
        return None
    why = f"the sum is at or above {row['at_least']} %"
    return Classified(row["hazard_class"], row["category"], why, (working,), working.source, row["statement"])


def _aspiration(hit: Classified, viscosity: Fraction | None) -> Classified | NotKnown | None:
    """A mixture too viscous to be drawn into the lungs is no aspiration hazard."""
    row = table("viscosity_limit").rows[0]
    if viscosity is None:
        why = f"the viscosity at {row['at_degc']} °C is not stated"
        return NotKnown(hit.hazard_class, why, ("viscosity",), hit.workings, hit.source)
    return hit if viscosity <= Fraction(row["mm2_s"]) else None


def _working(id: str, row: Row, inputs: tuple[Input, ...], formula: str) -> Working:
    weights = sorted({str(term.weight) for term in _terms(row) if term.weight != 1})
    note = f"{', '.join(weights)}: weight of the more severe categories" if weights else ""
    name = phrase("share counted for {x} {category}", x=row["hazard_class"].replace("_", " "), category=row["category"])
    # A weighted sum may pass 100 %, so it is a percentage and not a share.
    source = table(_LIMITS).row_citation(row)
    return work(id, name, formula, inputs, kind="percentage", unit="%", places=2, source=source, note=note)


def _terms(row: Row) -> tuple[_Term, ...]:
    found = []
    for text in row["terms"].split(" + "):
        weight, *rest = text.split(" ")
        hazard_class, category, *statement = rest[-1].split("/")
        found.append(_Term(int(weight), rest[0] == "M", hazard_class, category, "".join(statement)))
    return tuple(found)


def _matches(term: _Term, found: Classification) -> bool:
    categories = _SUB.get(term.category, (term.category,))
    if term.hazard_class in _SENSITISATION and term.category == "1B":
        categories = ("1", "1B")
    same = found.hazard_class == term.hazard_class and found.category in categories
    return same and (not term.statement or found.statement == term.statement)


def _percent(value: Source) -> Fraction:
    found = amount(value)
    if not isinstance(found, Quantity):
        raise TypeError("a share by mass is a bare number, where a percentage is taken")
    return found.to("%")
