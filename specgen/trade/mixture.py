"""Hazard classes of a mixture from those of its ingredients, by the concentration limits of the law.

A cross-check of what the safety data sheet declares: test data, bridging and expert judgement stay with the classifier.
Acute toxicity is worked out in `acute_toxicity`. Called by the rules on hazards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import NamedTuple

from specgen.standards.citations import Basis
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.given import Source, amount, take
from specgen.trade.hazard_class import Classification, severity_rank
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.working import Input, Working, work
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

_LIMITS = "mixture_limits"
_CUT_OFFS = "cut_offs"

# A limit for category 1 holds for its sub-categories; a sensitiser of 1A has a stricter one of its own.
_SUB = {"1": ("1", "1A", "1B", "1C"), "1B": ("1", "1A", "1B")}
_SENSITISATION = frozenset({"skin_sensitisation", "respiratory_sensitisation"})
_CORROSION, _EYES = "skin_corrosion", "eye_damage"
# What acts on skin and eyes by its acid or alkali, and the like, does not add up with the rest.
_NOT_ADDED = frozenset({_CORROSION, _EYES})


class Limit(NamedTuple):
    """A specific limit: the share from which a mixture has the class in this category because of this ingredient.

    Several limits of one class are the steps of a ladder. `statement` tells H335 from H336.
    """

    hazard_class: str
    category: str
    least: Quantity
    statement: str = ""


class Ingredient(NamedTuple):
    """A substance in a mixture: its share by mass, its classes, its M-factors and its specific limits.

    A specific limit goes before the generic one of the same class and category. `additive` is False for a strong acid
    or base and for whatever else harms skin and eyes by itself. `estimates` are those of acute toxicity that the law gives,
    by route; `form` is how it is breathed in where none says so, as vapour, mist or gas.
    """

    name: str
    share: Source
    classes: tuple[Classification, ...]
    m_acute: Fraction = Fraction(1)
    m_chronic: Fraction = Fraction(1)
    limits: tuple[Limit, ...] = ()
    additive: bool = True
    estimates: tuple[tuple[str, Fraction], ...] = ()
    form: str = "vapour"


class _Term(NamedTuple):
    weight: int
    by_m: bool
    hazard_class: str
    category: str
    statement: str


class _Counted(NamedTuple):
    """An ingredient that counts in a row: by which term, or from which limit of its own."""

    number: int
    entry: Ingredient
    term: _Term | None
    own: Limit | None

    def least(self, row: Row) -> Fraction:
        """The share that would be enough by itself."""
        if self.own is not None:
            return self.own.least.to("%")
        return Fraction(row["at_least"]) / (self.term.weight if self.term is not None else 1)

    def over_its_limit(self, row: Row) -> Fraction:
        return _percent(self.entry.share) / self.least(row)


def mixture_classes(
    id: str, ingredients: Sequence[Ingredient], *, gas: bool = False, viscosity: Fraction | None = None
) -> tuple[Classified | NotKnown, ...]:
    """The classes a mixture reaches, at most one category of each (STOT SE 3 one for each effect).

    `viscosity` is kinematic, at 40 degC, in mm2/s; without it an aspiration hazard cannot be judged. Source: the tables
    mixture_limits and cut_offs; a result whose source is not confirmed is good for a warning only.
    """
    found: dict[tuple[str, str], Classified | NotKnown] = {}
    present = {found.hazard_class for entry in ingredients for found in entry.classes}
    present |= {limit.hazard_class for entry in ingredients for limit in entry.limits}
    for row in table(_LIMITS).rows:
        if present.isdisjoint({row["hazard_class"], *(term.hazard_class for term in _terms(row))}):
            continue
        key = (row["hazard_class"], row["statement"])
        if key in found or (row["condition"] == "gas" and not gas) or (row["condition"] == "solid or liquid" and gas):
            continue
        counted = list(_counted(row, ingredients))
        hit = _each(id, row, counted) if row["mode"] == "each" else _sum(id, row, counted)
        judged = _aspiration(hit, viscosity) if hit is not None and row["condition"] == "viscosity" else hit
        if judged is not None:
            found[key] = judged
    return tuple(found.values())


def own_limit(entry: Ingredient, hazard_class: str, category: str, statement: str = "") -> Limit | None:
    """The specific limit of an ingredient for a category, of several sub-categories the lowest; None where it has none.

    What corrodes skin harms the eyes as well: where its limits for the eyes begin below category 1, the one for skin
    stands above them (as of formaldehyde and phosphoric acid). Limits are not set for aquatic classes, which have M-factors.
    """
    if hazard_class.startswith("aquatic"):
        return None
    of_class = [limit for limit in entry.limits if limit.hazard_class == hazard_class]
    same = [limit for limit in of_class if _main(limit.category) == _main(category)]
    if not same and of_class and hazard_class == _EYES and _main(category) == "1":
        return own_limit(entry, _CORROSION, category)
    same = [limit for limit in same if not statement or limit.statement == statement]
    return min(same, key=lambda limit: limit.least, default=None)


def _counted(row: Row, ingredients: Sequence[Ingredient]) -> Iterator[_Counted]:
    """The ingredients that count in a row, each once and by the term that weighs most (Table 3.3.3, footnote)."""
    for number, entry in enumerate(ingredients, start=1):
        if (row["condition"] == "not additive") is (entry.additive or row["hazard_class"] not in _NOT_ADDED):
            continue
        own = own_limit(entry, row["hazard_class"], row["category"], row["statement"])
        terms = [term for term in _terms(row) if any(_matches(term, found) for found in entry.classes)]
        term = max(terms, key=lambda term: term.weight) if terms and own is None else None
        least = _cut_off(row["hazard_class"], term.category if term is not None else row["category"])
        if term is not None and term.by_m:
            least /= _m_factor(entry, term)
        if own is not None:
            least = min(least, own.least.to("%"))
        if (own is not None or term is not None) and _percent(entry.share) >= least:
            yield _Counted(number, entry, term, own)


def _each(id: str, row: Row, counted: Sequence[_Counted]) -> Classified | None:
    """Of several that are enough by themselves the most severe decides."""
    hits = [one for one in counted if one.over_its_limit(row) >= 1]
    if not hits:
        return None
    one = min(hits, key=lambda hit: severity_rank(Classification(row["hazard_class"], _category(row, hit))))
    share = take(f"C_{one.number}", phrase("{name}, share by mass", name=one.entry.name), one.entry.share, "share", "%")
    working = _working(f"{id}.{row['id']}", row, (share,), share.symbol)
    own = "its specific concentration limit" if one.own is not None else "the limit"
    why = f"{one.entry.name} is at or above {own} of {Quantity.of('share', one.least(row), '%')}"
    return Classified(row["hazard_class"], _category(row, one), why, (working,), working.source, row["statement"])


def _category(row: Row, one: _Counted) -> str:
    """1A and 1B share a row of the limits; the mixture keeps the category of what it holds."""
    if row["category"] != "1B":
        return row["category"]
    matched = [found.category for term in _terms(row) for found in one.entry.classes if _matches(term, found)]
    own = one.own.category if one.own is not None and one.own.category in _SUB["1"] else row["category"]
    return min(matched) if matched else own


def _sum(id: str, row: Row, counted: Sequence[_Counted]) -> Classified | None:
    if not counted:
        return None
    specific = any(one.own is not None for one in counted)
    working = _share_of_limits(id, row, counted) if specific else _weighted_sum(id, row, counted)
    if working.number < (1 if specific else Fraction(row["at_least"])):
        return None
    why = f"the sum is at or above {row['at_least']} %"
    if specific:
        alone = next((one for one in counted if one.own is not None and one.over_its_limit(row) >= 1), None)
        why = "the shares, each over its own limit, come to 1 or more"
        if alone is not None:
            least = Quantity.of("share", alone.least(row), "%")
            why = f"{alone.entry.name} is at or above its specific concentration limit of {least}"
    return Classified(row["hazard_class"], row["category"], why, (working,), working.source, row["statement"])


def _weighted_sum(id: str, row: Row, counted: Sequence[_Counted]) -> Working:
    inputs: list[Input] = []
    pieces: list[str] = []
    for one in counted:
        entry, term, symbol = one.entry, one.term or _terms(row)[0], f"C_{one.number}"
        inputs.append(take(symbol, phrase("{name}, share by mass", name=entry.name), entry.share, "share", "%"))
        factors = [str(term.weight)] if term.weight != 1 else []
        if term.by_m:
            factors.append(f"M_{one.number}")
            m_factor = _m_factor(entry, term)
            inputs.append(take(f"M_{one.number}", phrase("{name}, M-factor", name=entry.name), m_factor))
        pieces.append(" * ".join([*factors, symbol]))
    return _working(f"{id}.{row['id']}", row, tuple(inputs), " + ".join(pieces))


def _share_of_limits(id: str, row: Row, counted: Sequence[_Counted]) -> Working:
    """Each share over the limit that holds for it, specific or generic; 1 is reached where the class is.

    That specific limits have to be used is law; that shares with limits of several kinds add up so is the agency's
    guidance, which was read at second hand.
    """
    inputs: list[Input] = []
    for one in counted:
        name, least = one.entry.name, Quantity.of("share", one.least(row), "%")
        inputs.append(
            take(f"C_{one.number}", phrase("{name}, share by mass", name=name), one.entry.share, "share", "%")
        )
        text = phrase("{name}, specific limit", name=name) if one.own else phrase("{name}, generic limit", name=name)
        inputs.append(take(f"L_{one.number}", text, least if one.own is None else one.own.least, "share", "%"))
    formula = " + ".join(f"C_{one.number} / L_{one.number}" for one in counted)
    law = table(_LIMITS).row_citation(row)
    generic = sum((one.over_its_limit(row) for one in counted if one.own is None), Fraction(0))
    by_law = generic >= 1 or any(one.over_its_limit(row) >= 1 for one in counted)
    source = replace(law, basis=law.basis if by_law else Basis.SECONDARY, clause=f"{law.clause}; Annex VI, 1.1.2.3")
    name = phrase(
        "shares over limits, {x} {category}", x=row["hazard_class"].replace("_", " "), category=row["category"]
    )
    return work(f"{id}.{row['id']}", name, formula, tuple(inputs), places=2, source=source)


def _aspiration(hit: Classified, viscosity: Fraction | None) -> Classified | NotKnown | None:
    """A mixture too viscous to be drawn into the lungs is no aspiration hazard."""
    row = table("viscosity_limit").rows[0]
    if viscosity is None:
        why = (
            f"the viscosity at {row['at_degc']} °C is not stated; "
            "of a mixture that parts into layers each layer is judged by itself"
        )
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
    return _read(row["terms"])


@cache
def _read(terms: str) -> tuple[_Term, ...]:
    found = []
    for text in terms.split(" + "):
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


def _main(category: str) -> str:
    """The category of a sub-category: 1 of 1A, 1B and 1C."""
    return category[0] if category[0].isdigit() else category


def _m_factor(entry: Ingredient, term: _Term) -> Fraction:
    return entry.m_acute if term.hazard_class == "aquatic_acute" else entry.m_chronic


@remembered
def _cut_off(hazard_class: str, category: str) -> Fraction:
    """The share below which an ingredient does not count in a sum."""
    rows = (row for row in table(_CUT_OFFS).rows if row["hazard_class"] == hazard_class)
    return next((Fraction(row["at_least"]) for row in rows if category in row["categories"].split()), Fraction(0))


def _percent(value: Source) -> Fraction:
    found = amount(value)
    if not isinstance(found, Quantity):
        raise TypeError("a share by mass is a bare number, where a percentage is taken")
    return found.to("%")
