"""What a title or a sentence says of coats: films, kinds of paint, how many coats, a category. Called by the rules on titles and scopes.

A figure counts with a unit of film alone, and not where the sentence speaks of a profile, an edge, zinc or old paint. What stands
after `over`, `on`, `without` and the like is not said of the coats.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from specgen.facts.layer.film import Limit
from specgen.facts.layer.sums import film_sum_of, total_film
from specgen.facts.requirement import types_required
from specgen.model.product import CuringKind, Role
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.units.kinds import KINDS, SPELLINGS
from specgen.units.quantity import Quantity, upper

_CLAUSE = re.compile(r"[;:\n]|[,.](?!\d)")
_NO_FILM = re.compile(
    r"profile|roughness|\bRz\b|edge|radius|galvani[sz]|zinc (?:layer|coating)|\bold\b|existing|remov|strip|sand|paper|wet|mesh|grit|rough",
    re.IGNORECASE,
)
_ELSEWHERE = re.compile(
    r"\b(?:over|on|onto|upon|under|beneath|without|no|not|old|existing|instead|except|against|before|after|for|remov\w*|from)\b.*",
    re.IGNORECASE | re.DOTALL,
)
_LIMITS: tuple[Limit, ...] = ("min", "nominal", "max")

# A base coat, in two words, is in the trade any coat that another is laid on; a basecoat is that under a clearcoat.
_UNDER_OTHERS = frozenset(
    {
        Role.WASH_PRIMER,
        Role.PRIMER,
        Role.SURFACER,
        Role.SEALER,
        Role.INTERMEDIATE,
        Role.UNDERBODY,
        Role.BASECOAT,
        Role.TANK_LINING,
    }
)

# The words for a kind of paint, and what of a coat makes it one: a part of the id of its generic type, or a role.
_KINDS: tuple[tuple[str, re.Pattern[str], tuple[str, ...], frozenset[Role]], ...] = (
    ("epoxy", re.compile(r"\bepox(?:y|ies)\b", re.I), ("epoxy", "zinc_organic"), frozenset()),
    (
        "polyurethane",
        re.compile(r"\b(?:poly)?urethane\b|\bPUR?\b", re.I),
        ("pu_", "zinc_pu", "fluoropolymer", "polyaspartic", "surfacer_2k"),
        frozenset(),
    ),
    ("alkyd", re.compile(r"\balkyds?\b", re.I), ("alkyd", "epoxy_ester", "stoving_enamel"), frozenset()),
    (
        "acrylic",
        re.compile(r"\bacrylics?\b", re.I),
        ("acrylic", "pu_", "surfacer_2k", "basecoat", "stoving_enamel", "polysiloxane"),
        frozenset(),
    ),
    (
        "zinc-rich paint",
        re.compile(
            r"\b(?:organic |inorganic )?zinc(?:[ -](?:rich|epoxy|silicate|dust|primer|paint)\b|,|$| and\b)", re.I
        ),
        ("zinc_",),
        frozenset(),
    ),
    ("silicone", re.compile(r"\bsilicone\b", re.I), ("silicone", "polysiloxane"), frozenset()),
    ("clearcoat", re.compile(r"\bclear[ -]?coat\b", re.I), (), frozenset({Role.CLEARCOAT})),
    (
        "clearcoat",
        re.compile(r"\bclear(?= ?(?:$|[,;.(/+]|(?:and|finish|lacquer|system)\b))", re.I),
        (),
        frozenset({Role.CLEARCOAT, Role.TOPCOAT, Role.SEALER, Role.ADHESION_PROMOTER, Role.CAVITY_WAX}),
    ),
    ("basecoat", re.compile(r"\bbasecoat\b", re.I), ("basecoat",), frozenset({Role.BASECOAT})),
    ("basecoat", re.compile(r"\bbase[ -]coat\b", re.I), ("basecoat",), _UNDER_OTHERS),
    ("antifouling", re.compile(r"\bantifoul\w*", re.I), ("antifouling",), frozenset({Role.ANTIFOULING})),
    ("powder coating", re.compile(r"\bpowder\b", re.I), ("powder",), frozenset()),
)
_NUMBERS = {"single": 1, "one": 1, "double": 2, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_COATS = re.compile(rf"\b({'|'.join(_NUMBERS)}|[1-6])[- ]coats?\b(?! (?:cross|of cross))", re.I)
_WHOLE = re.compile(rf"\b({'|'.join(_NUMBERS)}|[1-6])[- ]coat (?:system|scheme|build)\b", re.I)
_ONE_PACK = re.compile(r"\b(?:one|single|1)[ -](?:pack|component)\b|\b1K\b", re.I)
_TWO_PACK = re.compile(r"\b(?:two|2)[ -](?:pack|component)\b|\b2K\b", re.I)
_WATERBORNE = re.compile(r"\bwater-?(?:borne|based)\b|\bwater-thinned\b", re.I)
_SOLVENT_FREE = re.compile(r"\bsolvent-?free\b|\bfree of solvents?\b|\b100 ?% solids\b", re.I)
_SOLVENT_FREE_FROM = 90  # % by volume; common practice, no source: what is sold as free of solvent holds a little
_TWO_PACK_ONLY = frozenset({CuringKind.LIQUID_TWO_PACK, CuringKind.CAPSULE_AEROSOL})
_ONE_PACK_ONLY = frozenset({CuringKind.OXIDATIVE, CuringKind.PHYSICAL})
# a film in millimetres: a fraction of one, where the clause speaks of coats; else the length of something
_IN_MM = re.compile(
    r"\b(?:film|coat(?:ed|ing|s)?|lin(?:ed|ing)|DFT|thick(?:ness)?|total|laid|build)\b.*(?<![\d.])0?\.\d+ ?mm|"
    r"(?<![\d.])0?\.\d+ ?mm (?:film|coat|DFT|dry)",
    re.I,
)
_CATEGORY = re.compile(r"(?<![\w-])(C[1-5]|CX|Im ?[1-4])(?![\w.])")


def films_said(text: str) -> list[Quantity]:
    """Every dry film that a text names, both ends of a range."""
    found: list[Quantity] = []
    for clause in _CLAUSE.split(text):
        if not _NO_FILM.search(clause):
            found += [
                Quantity.of("thickness", Fraction(one), SPELLINGS.get(unit, unit), one)
                for one, unit in _figures(clause)
            ]
    return found


def films_of(system: System, spec: Spec) -> list[Quantity]:
    """Every film that a title may rightly name: of a coat, of coats that follow each other, of all, by each limit."""
    found = [total for limit in _LIMITS if (total := total_film(system, spec, limit)) is not None]
    count = len(system.layers)
    for limit in _LIMITS:
        for first in range(count):
            for last in range(first + 1, count + 1):
                held = film_sum_of(system, system.layers[first:last], spec, limit)
                found += [held.value, *held.films] if held is not None else []
    return found


def is_one_of(said: Quantity, films: list[Quantity]) -> bool:
    """True where a figure is one of the films, or one of them as the other unit rounds it."""
    return any(
        said == film or (said.unit != film.unit and abs(said.base - film.base) * 20 <= film.base) for film in films
    )


def kinds_missing(text: str, system: System, spec: Spec) -> list[str]:
    """The kinds of paint that a text names and no coat of the system is, nor is called by the name of its product."""
    held = [
        (binder, layer.role)
        for layer in system.layers
        for binder in types_required(layer) or (spec.product_of(layer).binder,)
    ]
    called = {kind for layer in system.layers for kind in _kinds_said(spec.product_of(layer).name)}
    return [kind for kind in kinds_not_of(text, held) if kind not in called]


def kinds_not_of(text: str, held: Sequence[tuple[str, Role]]) -> list[str]:
    """The kinds of paint that a text names and none of the coats is, each given by its generic type and its role."""
    said = _ELSEWHERE.sub("", text)
    return [
        name
        for name, pattern, binders, roles in _KINDS
        if pattern.search(said)
        and not any(role in roles or any(part in binder for part in binders) for binder, role in held)
        and not any(binder == "not-named" for binder, _ in held)
    ]


def _kinds_said(text: str) -> set[str]:
    return {name for name, pattern, _, _ in _KINDS if pattern.search(text)}


def coats_too_many(text: str, system: System, *, all_told: bool = False) -> tuple[str, int] | None:
    """How many coats a text names where the system has another number of them, with that number.

    `all_told`: the text speaks of the whole system, so that the number of some of its coats is another number.
    """
    each = [
        layer.coats.high if layer.coats is not None and layer.coats.high is not None else 1 for layer in system.layers
    ]
    if any(layer.passes is not None for layer in system.layers):
        each = [1 for _ in system.layers]
    whole, said = _WHOLE.search(text), _COATS.search(_ELSEWHERE.sub("", text))
    if whole is not None and _number(whole[1]) not in {len(each), sum(each)}:
        return whole[0], sum(each)
    runs = {sum(each[first:last]) for first in range(len(each)) for last in range(first + 1, len(each) + 1)}
    runs = {sum(each)} if all_told else runs
    if said is not None and _number(said[1]) not in runs | {len(each)}:
        return said[0], sum(each)
    return None


def packs_missing(text: str, spec: Spec, systems: Sequence[System]) -> str | None:
    """The words for paint of one pack, or of two, where no coat of the systems is that; None where they may be.

    Paint that a shop may call either is taken as what is said.
    """
    layers = [layer for system in systems for layer in system.layers]
    if not layers or any(layer.product is None for layer in layers):
        return None
    kinds = {spec.product_of(layer).curing for layer in layers}
    said = _ELSEWHERE.sub("", text)
    for pattern, others in ((_ONE_PACK, _TWO_PACK_ONLY), (_TWO_PACK, _ONE_PACK_ONLY)):
        match = pattern.search(said)
        if match is not None and kinds <= others:
            return match[0]
    return None


def carriers_missing(text: str, spec: Spec, systems: Sequence[System]) -> str | None:
    """The words for waterborne or solvent-free paint, where no coat of the systems is that."""
    layers = [layer for system in systems for layer in system.layers]
    if not layers or any(layer.product is None for layer in layers):
        return None
    products = [spec.product_of(layer) for layer in layers]
    said = _ELSEWHERE.sub("", text)
    water = _WATERBORNE.search(said)
    if water is not None and not any("_wb" in one.binder for one in products):
        return water[0]
    free = _SOLVENT_FREE.search(said)
    shares = [one.solids.in_can or one.solids.sprayed for one in products if one.solids is not None]
    known = [share for share in shares if share is not None]
    if free is not None and len(known) == len(products):
        least = [upper(share).to("%") for share in known]
        return free[0] if all(one < _SOLVENT_FREE_FROM for one in least) else None
    return None


def categories_said(text: str) -> list[str]:
    """The categories of ISO 12944-2 that a text names."""
    return [found.replace(" ", "") for found in _CATEGORY.findall(text)]


def _number(word: str) -> int:
    return _NUMBERS.get(word.lower()) or int(word)


def _figures(clause: str) -> list[tuple[str, str]]:
    units = "|".join(re.escape(unit) for unit in sorted((*KINDS["thickness"].units, *_spelt()), key=len, reverse=True))
    found: list[tuple[str, str]] = []
    for one in re.finditer(
        rf"(?<![\w.,/])(?:(\d+(?:\.\d+)?) ?(?:to|-|–|\.\.) ?)?(\d+(?:\.\d+)?) ?({units})(?![\w/])", clause
    ):
        low, high, unit = one.groups()
        if unit in {"cm", "m", "in", "nm"} or (unit == "mm" and not _IN_MM.search(clause)):
            continue
        found += [(low, unit)] if low else []
        found.append((high, unit))
    return found


def _spelt() -> list[str]:
    return [spelling for spelling, unit in SPELLINGS.items() if unit in KINDS["thickness"].units]
