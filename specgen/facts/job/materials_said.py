"""What a title, a scope or a name says a part is made of, and whether a material of the table is one of these.

Read clause by clause up to the first word that leads away from the part (for, on, with, beside); a clause on other work, on old
paint, on what is fitted or on a material that is gone is not read, nor is a material that names a paint, a tool or a works.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from specgen.facts.texts import CLAUSE
from specgen.standards.tables import table

_OTHER = re.compile(
    r"\b(?:not|no|old|existing|later|afterwards|fitted|fit|delivered|attached|hung|hinges?|bolts?|bushes|rivets?|screws?|inserts?|fasteners?|"
    r"beside|remains?|stays?|excluded|without|before|instead|burnt|worn|gone|removed|missing|repair\w*|made good|spots?|masked|masking|"
    r"another|elsewhere|others?|caps?|plugs?|seals?|sheeting|belts?|cables?|close[sd]?|covered|protect\w*|look\w*|like|match\w*|colou?r|wrapp\w*|cladding|anodes?|"
    r"cold[ -]galvani\w*|galvani[sz]er\w*)\b",
    re.IGNORECASE,
)
_ELSEWHERE = re.compile(
    r"\b(?:go(?:es)? (?:to|back)|another|elsewhere|excluded|later|afterwards|by others)\b", re.IGNORECASE
)
_AWAY = re.compile(
    r"\b(?:for|on|onto|with|near|at|to|between|against|over|under|inside|behind|than|by|"
    r"from(?! (?:\w+ )?(?:alumini|stainless|galvani|steel|wood|plastic|grp|cast))|using|into|around)\b",
    re.IGNORECASE,
)
_LAID_ON = re.compile(r"\b(?:over|on|onto|for)\b(.*)", re.IGNORECASE)
_WORDS = (
    r"austenitic steel|stainless(?: steel)?|"
    r"(?:hot[ -]dip(?:ped)?[ -])?galvani[sz]ed(?: steel)?|zinc[ -](?:plated|coated)(?: steel)?|sherardi[sz]ed|"
    r"alumini?um|cast[ -]iron|(?:mild|carbon|black|structural|rolled|high-strength|bare|weathering) steel|steel(?:work)?|"
    r"ABS|polypropylene|polyethylene|PP|GRP|FRP|glass-?fib(?:re|er)|plastics?|copper|brass|bronze|magnesium|wooden|wood|timber|rubber"
)
_NAMED = re.compile(
    rf"(?<![\w-])({_WORDS})\b(?![ -](?:plants?|works|mills?|smelters?|yards?|factory|industry|mines?|baths?|line|"
    r"paints?|primers?|powder|pigments?|silver|grey|gray|flakes?|foil|tape|mesh|grit|shot|oxide|wool|brush\w*|rods?|content|repair|dust|"
    r"-rich|rich|silicate|phosphate|film|sheeting|bags?|covers? of|scrapers?|wedges?|spatulas?|blocks?|coating|silicone|stearate|"
    r"(?:top ?|last |finish(?:ing)? )?coats?\b))",
    re.IGNORECASE,
)
# What a word may mean of the table of materials: the beginning of an id.
_MEANT: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("austenitic", ("stainless",)),
    ("stainless", ("stainless",)),
    ("hot", ("galvanized_hot_dip",)),
    ("galvani", ("galvanized",)),
    ("zinc", ("galvanized",)),
    ("sherard", ("galvanized",)),
    ("alumin", ("aluminium",)),
    ("cast", ("cast_iron",)),
    ("black", ("steel",)),
    ("bare", ("steel",)),
    ("weathering", ("steel",)),
    ("steel", ("steel", "galvanized", "stainless")),
    ("mild", ("steel", "galvanized")),
    ("carbon", ("steel", "galvanized")),
    ("structural", ("steel", "galvanized")),
    ("rolled", ("steel", "galvanized")),
    ("high", ("steel", "galvanized")),
    ("abs", ("plastic",)),
    ("polyp", ("plastic_low_energy",)),
    ("polye", ("plastic_low_energy",)),
    ("pp", ("plastic_low_energy",)),
    ("grp", ("grp",)),
    ("frp", ("grp",)),
    ("glass", ("grp",)),
    ("plastic", ("plastic", "grp")),
    ("copper", ("copper",)),
    ("br", ("copper",)),
    ("magnesium", ("magnesium",)),
    ("wood", ("wood",)),
    ("timber", ("wood",)),
    ("rubber", ("rubber",)),
)
_METAL_NOT_SEEN = {"old_paint", "oem_finish", "ecoat_part", "powder_part", "not-named"}


class Said(NamedTuple):
    """A material that a text names of the part: its words, and what ids of the table of materials may begin with."""

    words: str
    meant: tuple[str, ...]

    def fits(self, material: str) -> bool:
        return material in _METAL_NOT_SEEN or material.startswith(self.meant)


def materials_said(text: str) -> list[list[Said]]:
    """The materials that each clause of a text names of the parts."""
    found: list[list[Said]] = []
    for clause in CLAUSE.split(text):
        own = _AWAY.split(clause)[0]
        if _OTHER.search(own) or _ELSEWHERE.search(clause):
            continue
        named = [Said(match[1], _meant(match[1])) for match in _NAMED.finditer(own)]
        zinc = any(one.meant[0].startswith("galvanized") for one in named)
        # `steel` beside `galvanised` is the same metal, not another one
        kept = [one for one in named if not (zinc and one.words.lower() in {"steel", "steelwork"})]
        found += [kept] if kept else []
    return found


def laid_on(text: str) -> str:
    """What a system is said to be laid on, or to be for."""
    clauses = [clause for clause in CLAUSE.split(text) if not _OTHER.search(clause)]
    return "; ".join(match[1] for clause in clauses for match in _LAID_ON.finditer(clause))


def contradicted(text: str, held: set[str]) -> Said | None:
    """The first material of a clause none of whose materials is among those held; the parts of one clause may be of several."""
    for clause in materials_said(text):
        if not any(one.fits(material) for one in clause for material in held):
            return clause[0]
    return None


def names_of(materials: set[str]) -> str:
    return ", ".join(table("materials").row("id", one)["name"] for one in sorted(materials))


def _meant(word: str) -> tuple[str, ...]:
    return next(ids for start, ids in _MEANT if word.lower().startswith(start))
