"""Figures and preparation grades that a sentence names, read only where it can mean one thing.

Called by the rules that hold a criterion in words against what is typed. A sentence is read clause by clause; a figure counts with
a unit of its kind alone, and a clause that speaks of another state than the accepted one is not read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

from specgen.facts.pairs.floor import best_step, reaches
from specgen.facts.texts import CLAUSE
from specgen.model.preparation import Preparation, known_grades
from specgen.standards.reads import remembered
from specgen.units.between_units import explained_by_rounding
from specgen.units.kinds import KINDS, SPELLINGS
from specgen.units.quantity import Quantity, Range

_NUMBER = r"\d+(?:\.\d+)?"
_BARE = re.compile(rf"\s*{_NUMBER}\D{{1,12}}{_NUMBER}\s*[^\d\s]+\s*")
_OTHER_STATE = re.compile(
    r"\b(?:not|no|never|instead|unless|except|before|first|then|existing|old|better|beyond|was|were|if|where|deduct\w*)\b",
    re.I,
)
_BOUND_DENIED = re.compile(r"\b(?:no|not) (?:more|less) than\b|\bnot (?:above|below)\b", re.I)
_PROFILE = re.compile(r"\bprofile|anchor pattern|roughness", re.I)
_OTHER_FILM = re.compile(r"zinc|taken off|loss|\bfell\b|DFT|coat|film|paper|edge|radius", re.I)
_MOST = re.compile(r"(?:at most|no more than|not more than|not above|max(?:imum|\.)?(?: of)?|up to|≤) ?$", re.I)
_LEAST = re.compile(r"(?:at least|no less than|not less than|not below|min(?:imum|\.)?(?: of)?|≥) ?$", re.I)
_OR_LESS, _OR_MORE = re.compile(r"\s*(?:or less|at most|max)", re.I), re.compile(r"\s*(?:or more|at least|min)", re.I)
_CLEANED_FIRST = "SP 1"
_DUST_QUANTITY = re.compile(r"\b(?:dust|quantity)(?: rating| of)? ([0-5])\b(?! ?(?:tapes|times|to))", re.I)
_DUST_SIZE = re.compile(r"\b(?:size|class)(?: of)? ([0-5])\b", re.I)
_EDGE_GRADE = re.compile(r"(?<![\w.])P([1-3])(?=,? (?:to |by |of )?(?:EN )?ISO 8501-3|$|[,;.])")
_ROUNDED = re.compile(r"\b(?:round\w*|radius|break|broken)\b", re.I)


def looser(
    text: str, preparations: list[Preparation], *, of_salt: bool, of_grade: bool = True
) -> Iterator[tuple[str, str]]:
    """What a text accepts that none of the preparations does, with what they ask: of salt, dust and edges, of cleanliness, of the profile.

    Of several preparations one that is met is enough. `of_salt`: what surrounds the text speaks of salt, so that a mass on an area is one.
    `of_grade`: cleanliness and profile are read as well.
    """
    if not preparations:
        return
    salt, limits = salt_said(text) if of_salt else None, [one.salt_limit for one in preparations]
    if salt is not None and all(limit is not None and _above(salt, limit) for limit in limits):
        yield f"soluble salts up to {salt}", f"{preparations[0].id} limits them to {limits[0]}"
    yield from _dust_or_edges(text, preparations)
    if not of_grade:
        return
    named, asked = grades_said(text), [_grades(one) for one in preparations]
    if named and all(of_one and not any(_clean_enough(grade, of_one) for grade in named) for of_one in asked):
        best = best_step(preparations[0])
        yield f"the grade {', '.join(named)}", f"{preparations[0].id} asks for {best.grade if best else ''}"
    profile = profile_said(text)
    typed = [[step.profile for step in one.steps if step.profile is not None] for one in preparations]
    if profile is not None and all(of_one and not any(_within(profile, one) for one in of_one) for of_one in typed):
        yield f"a profile of {profile}", f"{preparations[0].id} asks for {typed[0][0]}"


def _dust_or_edges(text: str, preparations: list[Preparation]) -> Iterator[tuple[str, str]]:
    first = preparations[0]
    for key, pattern in (("dust_quantity", _DUST_QUANTITY), ("dust_size", _DUST_SIZE)):
        limits = [limit for one in preparations if (limit := getattr(one, key)) is not None]
        said = _one_number(pattern, text) if len(limits) == len(preparations) else None
        if said is not None and all(said > limit for limit in limits):
            yield f"{key.replace('_', ' ')} {said}", f"{first.id} limits it to {limits[0]}"
    grades = [one.edge_grade for one in preparations if one.edge_grade is not None]
    grade = _one_number(_EDGE_GRADE, text) if len(grades) == len(preparations) else None
    if grade is not None and all(grade < int(one[1:]) for one in grades):
        yield f"welds and edges of P{grade}", f"{first.id} asks for {grades[0]}"
    radii = [one.edge_radius for one in preparations if one.edge_radius is not None]
    radius = _radius_said(text) if len(radii) == len(preparations) else None
    if radius is not None and all(radius < one for one in radii):
        yield f"an edge radius of {radius}", f"{first.id} asks for at least {radii[0]}"


def _one_number(pattern: re.Pattern[str], text: str) -> int | None:
    found = {
        int(one) for clause in CLAUSE.split(text) for one in pattern.findall(clause) if not of_another_state(clause)
    }
    return next(iter(found)) if len(found) == 1 else None


def _radius_said(text: str) -> Quantity | None:
    """The radius that a clause on rounded edges names; None where it names none or several lengths."""
    found = [
        quantity
        for clause in CLAUSE.split(text)
        if _ROUNDED.search(clause) and not of_another_state(clause)
        for quantity in quantities_said(clause, "length")
    ]
    return found[0] if len(found) == 1 else None


def pressure_said(text: str) -> Quantity | None:
    """The one pressure that a text names."""
    found = [quantity for clause in CLAUSE.split(text) for quantity in quantities_said(clause, "pressure")]
    return found[0] if len(set(found)) == 1 else None


def same_grade(one: str, other: str) -> bool:
    """True where two grades are one, by whatever series, or cannot be compared."""
    there, back = reaches(one, other), reaches(other, one)
    return one == other or there is None or back is None or (there[0] and back[0])


def is_inside(said: Range, typed: Range) -> bool:
    """True where a range that is said lies within the typed one, or is it as the other unit rounds it."""
    return _within(said, typed)


def is_a_tenth(said: Quantity, typed: Quantity) -> bool:
    """True where the one is just a tenth of the other: a digit too many, or a unit mistaken."""
    return said.base * 10 == typed.base


def salt_said(text: str) -> Quantity | None:
    """The one limit of soluble salts that a text names; None where it names none, or several."""
    found = [quantity for clause in CLAUSE.split(text) for quantity in quantities_said(clause, "surface_density")]
    return found[0] if len(set(found)) == 1 else None


@remembered
def grades_said(text: str) -> tuple[str, ...]:
    """The grades a text names, without the washing that comes before any; none where a clause with one speaks of another state."""
    found: list[str] = []
    for clause in CLAUSE.split(text):
        named = [known_grades()[match[0]] for match in _grade_pattern().finditer(clause)]
        if named and of_another_state(clause):
            return ()
        found.extend(grade for grade in named if grade != _CLEANED_FIRST)
    return tuple(dict.fromkeys(found))


@remembered
def profile_said(text: str) -> Range | None:
    """The one profile that a text accepts: in a clause that names it, or that is nothing but a figure beside a grade."""
    found: list[Range] = []
    for clause in CLAUSE.split(text):
        said = bounds(clause, "thickness")
        if said is None or _OTHER_FILM.search(clause):
            continue
        bare = _BARE.fullmatch(clause) and (_PROFILE.search(text) or grades_said(text))
        if bare or _PROFILE.search(clause):
            found.append(said)
    return found[0] if len(found) == 1 else None


def bounds(clause: str, kind: str) -> Range | None:
    """The one range of a kind that a clause accepts; None where it names none or several, or does not say which end."""
    if of_another_state(clause):
        return None
    between = list(_between(kind).finditer(clause))
    if len(between) == 1 and len(quantities_said(clause, kind)) == 1:
        low, high, unit = between[0].groups()
        return Range(kind, _quantity(kind, low, unit), _quantity(kind, high, unit))
    single = list(_single(kind).finditer(clause))
    if between or len(single) != 1:
        return None
    value = _quantity(kind, *single[0].groups())
    before, after = clause[: single[0].start()], clause[single[0].end() :]
    if _MOST.search(before) or _OR_LESS.match(after):
        return Range(kind, None, value)
    return Range(kind, value, None) if _LEAST.search(before) or _OR_MORE.match(after) else None


def of_another_state(clause: str) -> bool:
    """True where a clause speaks of another state than the accepted one."""
    return _OTHER_STATE.search(_BOUND_DENIED.sub("", clause)) is not None


def quantities_said(clause: str, kind: str) -> list[Quantity]:
    """Every quantity of a kind that a text names, with a unit of its own."""
    return [_quantity(kind, digits, unit) for digits, unit in _single(kind).findall(clause)]


@cache
def _single(kind: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w.,/])({_NUMBER}) ?({_units(kind)})(?![\w/])")


@cache
def _between(kind: str) -> re.Pattern[str]:
    return re.compile(rf"({_NUMBER}) ?(?:to|and|-|–|\.\.) ?({_NUMBER}) ?({_units(kind)})(?![\w/])")


def _quantity(kind: str, digits: str, unit: str) -> Quantity:
    return Quantity.of(kind, Fraction(digits), SPELLINGS.get(unit, unit), digits)


def _units(kind: str) -> str:
    return "|".join(re.escape(unit) for unit in sorted(KINDS[kind].units, key=len, reverse=True))


def _above(said: Quantity, limit: Quantity) -> bool:
    return said > limit and not explained_by_rounding(said, limit)


def _within(said: Range, typed: Range) -> bool:
    low = said.low is None or typed.low is None or said.low >= typed.low or _near(said.low, typed.low)
    return low and (said.high is None or typed.high is None or said.high <= typed.high or _near(said.high, typed.high))


def _near(said: Quantity, typed: Quantity) -> bool:
    """Two figures in two units that a workshop takes as one: they differ by a twentieth at most."""
    return said.unit != typed.unit and abs(said.base - typed.base) * 20 <= typed.base


def _grades(preparation: Preparation) -> list[str]:
    """The cleanest grade of the preparation first, then all others its steps state."""
    best = best_step(preparation)
    if best is None or best.grade is None:
        return []
    return list(dict.fromkeys([best.grade, *(step.grade for step in preparation.steps if step.grade is not None)]))


def _clean_enough(named: str, asked: list[str]) -> bool:
    """True where a grade is one of those asked, reaches the cleanest, or cannot be compared with it."""
    found = reaches(named, asked[0])
    return named in asked or found is None or found[0]


@remembered
def _grade_pattern() -> re.Pattern[str]:
    words = "|".join(re.escape(word) for word in sorted(known_grades(), key=len, reverse=True))
    return re.compile(rf"(?<![\w-])(?:{words})(?![\w½]|[./]\d)")
