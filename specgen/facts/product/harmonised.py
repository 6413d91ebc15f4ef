"""What the law itself says of the substances of a composition, by their registry numbers, and what a mixture of them reaches.

A supplier is bound by a harmonised class whether the composition names it or not. Called by the rules on hazards.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from fractions import Fraction

from specgen.facts.product.hazard_facts import is_known, substances_of
from specgen.model.product import Component, ComponentClass, Product
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.acute_toxicity import acute_classes
from specgen.trade.hazard_class import Classification, severity_rank
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.mixture import Ingredient, Limit, mixture_classes
from specgen.units.quantity import Quantity

_TABLE = "harmonised_classes"
# Under these notes a substance is carcinogenic or mutagenic only above a share of benzene, butadiene or formaldehyde.
_ON_PROOF = frozenset({"J", "K", "P", "8", "9"})
_PROVEN = frozenset({"carcinogenicity", "mutagenicity"})
_SENSITISATION = frozenset({"skin_sensitisation", "respiratory_sensitisation"})


@remembered
def _by_number() -> Mapping[str, tuple[Row, ...]]:
    found: dict[str, tuple[Row, ...]] = {}
    for row in table(_TABLE).rows:
        if row["act"] and row["cas"]:
            found[row["cas"]] = (*found.get(row["cas"], ()), row)
    return found


def harmonised(cas: str, on: date) -> Row | None:
    """The row of the table in force on a day for a registry number; None where it has none."""
    day = on.isoformat()
    rows = _by_number().get(cas, ())
    return next((row for row in rows if row["from"] <= day and not (row["until"] and row["until"] <= day)), None)


def classes_of(row: Row) -> tuple[Classification, ...]:
    """The classes of a row that hold without proof; the statement stands where the category has several."""
    proof = bool(_ON_PROOF & set(row["notes"].split()))
    found = (_read(cell) for cell in row["classes"].split(", ") if cell)
    return tuple(entry for entry in found if not (proof and entry.hazard_class in _PROVEN))


def limits_of(row: Row) -> tuple[Limit, ...]:
    """The specific limits of a row, several of one class being the steps of a ladder."""
    cells = (cell.split() for cell in row["limits"].split(", ") if cell)
    return tuple(
        Limit(hazard_class, category, Quantity.of("share", Fraction(least), "%"), statement)
        for hazard_class, category, statement, least in cells
    )


def left_out(line: Component, on: date) -> tuple[Classification, ...]:
    """The harmonised classes of a component that it declares in no category as severe."""
    row = harmonised(line.cas, on) if line.cas else None
    stated = [Classification(entry.hazard_class, entry.category, entry.statement or "") for entry in line.classes]
    wanted = classes_of(row) if row is not None else ()
    return tuple(entry for entry in wanted if not any(_says_as_much(found, entry) for found in stated))


def looser_limits(line: Component, on: date) -> tuple[tuple[ComponentClass, Limit], ...]:
    """The limits a component states above those the law gives for the same class and category."""
    row = harmonised(line.cas, on) if line.cas else None
    by_law = {_step(limit): limit for limit in (limits_of(row) if row is not None else ())}
    found = []
    for entry in line.classes:
        law = by_law.get(_step(entry))
        if entry.limit is not None and law is not None and entry.limit > law.least:
            found.append((entry, law))
    return tuple(found)


def with_the_law(product: Product, on: date) -> tuple[Ingredient, ...]:
    """The composition as its author classes it, with the limits and M-factors the law gives for just these classes.

    Where both state a limit the stricter holds. Source: CLP Annex VI, 1.1.2.3.
    """
    pairs = zip(substances_of(product), product.composition, strict=True)
    return tuple(_filled(entry, line, on) for entry, line in pairs)


def reached(id: str, substances: Sequence[Ingredient]) -> tuple[Classified | NotKnown, ...]:
    """All classes a mixture reaches, those of acute toxicity last."""
    return (*mixture_classes(id, substances), *acute_classes(id, substances))


def as_the_law_has_it(product: Product, on: date) -> tuple[Ingredient, ...]:
    """The composition with the classes its author states and those the law gives, with the limits of both."""
    pairs = zip(substances_of(product), product.composition, strict=True)
    return tuple(_completed(entry, line, on, own=True) for entry, line in pairs)


def reached_unsaid(product: Product, on: date) -> Iterator[Classified]:
    """The classes a mixture reaches once each component has all the law says of it, the worst of each kind.

    The author's word adds. A limit he states for a class that the law gives the substance is asked beside the law's, and
    does not take its place.
    """
    plain = with_the_law(product, on)
    pairs = list(zip(plain, product.composition, strict=True))
    known = {_key(found) for found in reached("", plain) if isinstance(found, Classified)}
    for own in (False, True):
        whole = [_completed(entry, line, on, own=own) for entry, line in pairs]
        for found in reached("", whole) if whole != list(plain) else ():
            if isinstance(found, Classified) and _key(found) not in known:
                known.add(_key(found))
                yield found


def reached_later(product: Product, on: date) -> Iterator[tuple[date, Classified]]:
    """What the mixture reaches more once entries hold that are adopted already, each with the day from which."""
    numbers = {line.cas for line in product.composition}
    days = {row["from"] for row in table(_TABLE).rows if row["cas"] in numbers and row["from"] > on.isoformat()}
    known = {_key(found) for found in reached("", as_the_law_has_it(product, on)) if isinstance(found, Classified)}
    for day in sorted(map(date.fromisoformat, days)):
        for found in reached("", as_the_law_has_it(product, day)):
            if isinstance(found, Classified) and _key(found) not in known:
                known.add(_key(found))
                yield day, found


def _key(found: Classified) -> tuple[str, str, str]:
    return found.hazard_class, found.category, found.statement


def _filled(entry: Ingredient, line: Component, on: date) -> Ingredient:
    row = harmonised(line.cas, on) if line.cas else None
    if row is None:
        return entry
    kinds = {found.hazard_class for found in entry.classes}
    # what corrodes skin counts for the eyes as well
    kinds |= {"eye_damage"} if "skin_corrosion" in kinds else set()
    factors = {found.hazard_class for found in line.classes if found.m_factor is not None}
    acute, chronic = _factors(row)
    return entry._replace(
        limits=(*entry.limits, *(limit for limit in limits_of(row) if limit.hazard_class in kinds)),
        estimates=_estimates(row),
        m_acute=entry.m_acute if "aquatic_acute" in factors else acute,
        m_chronic=entry.m_chronic if "aquatic_chronic" in factors else chronic,
    )


def _completed(entry: Ingredient, line: Component, on: date, *, own: bool) -> Ingredient:
    row = harmonised(line.cas, on) if line.cas else None
    if row is None:
        return entry
    given = classes_of(row)
    kept = [limit for limit in entry.limits if own or not any(limit.hazard_class == g.hazard_class for g in given)]
    acute, chronic = _factors(row)
    return entry._replace(
        classes=tuple(dict.fromkeys((*entry.classes, *given))),
        limits=tuple(dict.fromkeys((*kept, *limits_of(row)))),
        estimates=_estimates(row),
        m_acute=max(acute, entry.m_acute),
        m_chronic=max(chronic, entry.m_chronic),
    )


def _estimates(row: Row) -> tuple[tuple[str, Fraction], ...]:
    """Estimates of acute toxicity by route, as `oral 1200 mg/kg`; they go before those of a category."""
    cells = (cell.split() for cell in row["ate"].split(", ") if cell)
    return tuple((route, Fraction(figure)) for route, figure, _ in cells)


def _factors(row: Row) -> tuple[Fraction, Fraction]:
    """The M-factors, acute and chronic; one alone holds for both, none counts once."""
    factors = [Fraction(factor) for factor in row["m_factors"].split()] or [Fraction(1)]
    return factors[0], factors[-1]


def _step(found: Limit | ComponentClass) -> tuple[str, str, str]:
    """What a limit is for: class, category without its letter, and the statement where a category has several."""
    told = found.hazard_class == "stot_single" and found.category == "3"
    category = found.category[:1] if found.category[:1].isdigit() else found.category
    return found.hazard_class, category, found.statement or "" if told else ""


def _says_as_much(stated: Classification, law: Classification) -> bool:
    if stated.hazard_class != law.hazard_class or (law.statement and stated.statement != law.statement):
        return False
    if not is_known(stated):
        return False
    if law.hazard_class in _SENSITISATION and law.category == "1A":
        return stated.category == "1A"
    return severity_rank(stated) <= severity_rank(law)


def _read(cell: str) -> Classification:
    hazard_class, category, statement = cell.split()
    told = hazard_class == "stot_single" and category == "3"
    return Classification(hazard_class, category, statement if told else "")
