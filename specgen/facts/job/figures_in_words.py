"""Figures that a text names and that are typed otherwise beside it: how many parts, their plate and area, air, times, colours.

Called by the rule on them. A clause on another state, on old or other work is not read; where several values are typed, one that
is met is enough.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.thinner_in_words import too_much_thinner
from specgen.facts.pairs.parts import parts_of
from specgen.facts.product.ratio_said import ratio_said
from specgen.facts.product.spans_said import number_said, spans_said
from specgen.facts.texts import CLAUSE, texts
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.preparation import Preparation
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.units.quantity import Quantity, as_range

_OTHER = re.compile(
    r"\b(?:not|no|never|none|old|existing|later|each|every|per|of which|other|others|test\w*|unless|if|where|more than|less than|about|"
    r"first|next|further|additional|last year)\b",
    re.I,
)
_COUNTED = re.compile(
    r"^\W*(?:(?:the|all|these|our|for|coating of) )*(\d+|[a-z-]+) ((?:[a-z-]+ ){0,4}?)([a-z-]{4,}s)\b", re.I
)
_PLATE = re.compile(
    r"(?<![\d.–-])(?<!to )(\d+(?:\.\d+)?) ?(mm|in)[ -](?:thick )?(?:(?:steel|hot-rolled|cold-rolled|aluminium|stainless|galvanised) )*"
    r"(?:plates?|sheets?|sheet metal|walls?|thick\b)",
    re.I,
)
_AREA = re.compile(r"\b(?:area|surface|to coat|to be coated|in all|total|altogether|together)\b", re.I)
_PRIMED = re.compile(r"\b(?:prim(?:e|ed|ing)|first coat|coat(?:ed|ing)?|paint(?:ed|ing)?)\b", re.I)
_BARE = re.compile(
    r"\b(?:blast\w*|prepar\w*|clean\w*|sanded|sweep|swept|bare|degreas\w*|after (?:sanding|blasting))\b", re.I
)
# What a time runs from that is no preparation for the first coat.
_OTHER_START = re.compile(
    r"\b(?:of|after|from|since|following|upon)(?: (?:the|their|its|being|hot-dip|last|each|arrival|day|date|of))* "
    r"(?:galvani\w*|dipp\w*|deliver\w*|arriv\w*|manufactur\w*|production|fabricat\w*|weld\w*|rolling|casting|metalli[sz]\w*|"
    r"zinc[- ]spray\w*|order\w*|pickl\w*|unload\w*|unpack\w*|coat\b|coating|primer|priming|painting|alkyd|topcoat)",
    re.I,
)
_WITHIN = re.compile(r"\b(?:within|no later than|at the latest|latest|not later than|up to)\b", re.I)
_CHANGES = re.compile(r"(\d+(?:\.\d+)?)(?:-fold)? (?:fresh[- ])?air changes", re.I)
_REMOVED = re.compile(
    r"\b(?:sand|abrad|polish|rub)\w*\b.*\b(?:off|away|down|remov\w*)\b|\b(?:remov\w*|take\w* off)\b", re.I
)
_FLASHED = re.compile(r"\bflash\w*", re.I)
_STANDS = re.compile(r"\b(?:stand|induction|ripen|rest|react|mature)\w*", re.I)
_UNMIXED = re.compile(r"\b(?:cans?|tins?|base|hardener|parts|film|coat|room|warm\w*|night)\b", re.I)
_HELD = re.compile(
    r"\b(?:cans?|guns?|nozzle|spray\w*)\b.*\b(?:held|hold|kept|distance|from the part)\b|\bspray(?:ing)? distance\b",
    re.I,
)
_COLOURS = (
    "red",
    "blue",
    "green",
    "yellow",
    "white",
    "black",
    "grey",
    "brown",
    "orange",
    "buff",
    "cream",
    "beige",
    "silver",
    "violet",
)
_FINISH = re.compile(
    r"\b(?:finish(?:ed|es)?|top ?coats?|colou?r|clear|last coat|painted|coated|sprayed)\b(?: \w+){0,2}?(?: in|:|,| of| is| are)? ?\b"
    rf"((?:light |dark |traffic |signal |pale |deep |bright )?(?:gray|{'|'.join(_COLOURS)}))\b",
    re.I,
)
_NAMED = (*_COLOURS, "aluminium", "ivory", "pink", "purple", "sand")
_NEAR = {
    "cream": {"beige", "white", "buff", "yellow"},
    "buff": {"beige", "yellow", "cream"},
    "silver": {"grey", "aluminium"},
}
_RAL = re.compile(r"\bRAL ?(\d)(\d{3})\b", re.I)
# the first digit of a number of that card is the hue
_RAL_HUES = {
    "1": {"yellow", "beige", "buff", "cream", "ivory", "sand"},
    "2": {"orange"},
    "3": {"red", "pink"},
    "4": {"violet", "purple"},
    "5": {"blue"},
    "6": {"green"},
    "7": {"grey", "silver"},
    "8": {"brown"},
    "9": {"white", "black", "silver", "aluminium", "grey", "cream"},
}
_ROUNDED = 20  # a figure written in a sentence is rounded: a twentieth either way


def figures_apart(record: Node, spec: Spec) -> Iterator[tuple[Path, str]]:
    """Where a text of a job, preparation, system or product says a figure that is typed otherwise, and what."""
    if isinstance(record, Job):
        yield from ((("scope",), what) for what in _scope(record, spec))
        if record.ventilation is not None and record.ventilation.statement is not None:
            yield from ((("ventilation", "statement"), what) for what in _air(record))
    elif isinstance(record, Preparation):
        for path, text, _ in texts(spec, record):
            if path[0] == "steps" and record.coat_within is not None:
                yield from ((path, what) for what in _too_late(text, record.coat_within, bare=True))
    elif isinstance(record, System):
        for layer in record.layers:
            for key in ("before_next", "if_exceeded"):
                text = getattr(layer, key)
                if text is not None:
                    yield from ((("layers", layer.id, key), what) for what in _beside_a_coat(text, layer))
    elif isinstance(record, Product):
        yield from _of_product(record, spec)


def _clauses(text: str, *telling: re.Pattern[str]) -> Iterator[str]:
    """The clauses that are read, of those that each of these finds something in."""
    for clause in CLAUSE.split(text):
        if all(one.search(clause) for one in telling) and not _OTHER.search(clause):
            yield clause.strip()


def _scope(job: Job, spec: Spec) -> Iterator[str]:
    parts = list(parts_of(job, spec))
    plates = [part.substrate.thickness for part in parts]
    limits = [part.preparation.coat_within for part in parts]
    for clause in _clauses(job.scope):
        counted = _count(clause, job)
        if counted is not None:
            yield counted
        for match in _PLATE.finditer(clause):
            said = Quantity.of("length", Fraction(match[1]), match[2], match[1])
            if plates and all(one is not None and not _same(said, one) for one in plates):
                yield f"'{match[0]}'; the thickness of its parts is {plates[0]}"
        areas = quantities_said(clause, "area") if _AREA.search(clause) else []
        typed = _areas(job)
        if len(areas) == 1 and typed and not any(_same(areas[0], one) for one in typed):
            yield f"'{clause}'; the area of its items is {typed[-1]}"
        within = max((one for one in limits if one is not None), key=lambda one: one.base, default=None)
        if within is not None and len(limits) == sum(one is not None for one in limits):
            yield from _too_late(clause, within, bare=False)
        yield from _distance(clause, job, spec)
        yield from _colours(clause, job, spec)


def _distance(clause: str, job: Job, spec: Spec) -> Iterator[str]:
    """A spray distance that no product of the job has."""
    stated = [one.application.distance for one in spec.products_of(job) if one.application and one.application.distance]
    said = quantities_said(clause, "length") if _HELD.search(clause) else []
    if len(said) == 1 and stated and not any(one.holds(said[0]) for one in stated):
        yield f"'{clause}'; the spray distance is {stated[0]}"


def _count(clause: str, job: Job) -> str | None:
    match = _COUNTED.match(clause)
    number = number_said(match[1]) if match is not None else None
    if match is None or number is None or number < 2:
        return None
    noun = match[3].lower()
    named = [
        item for item in job.items if any(noun in _plurals(word) for word in re.findall(r"[a-z-]+", item.name.lower()))
    ]
    counts = {item.count for item in job.items} | {
        sum(item.count for item in job.items),
        sum(item.count for item in named),
    }
    if not named or number in counts:
        return None
    return f"'{match[0].strip()}'; the items are {sum(item.count for item in named)}"


def _plurals(word: str) -> set[str]:
    return {f"{word}s", f"{word}es", f"{word[:-1]}ies"} if len(word) > 2 else set()


def _areas(job: Job) -> list[Quantity]:
    """The area of each item, of all of it, and of the job; nothing where one is not stated."""
    each = [item.area for item in job.items]
    stated = [one for one in each if one is not None]
    if len(stated) < len(each) or not stated:
        return []
    pairs = zip(stated, job.items, strict=True)
    whole = [
        Quantity.of("area", one.to("m2") * item.count, "m2", _short(one.to("m2") * item.count)) for one, item in pairs
    ]
    total = sum((one.to("m2") for one in whole), Fraction(0))
    masked = sum(
        (mask.area.to("m2") * item.count for item in job.items for mask in item.masked if mask.area is not None),
        Fraction(0),
    )
    sums = [Quantity.of("area", one, "m2", _short(one)) for one in (total - masked, total)]
    return [*stated, *whole, *sums]


def _short(number: Fraction) -> str:
    return f"{float(number):.4g}"


def _same(said: Quantity, typed: Quantity) -> bool:
    return abs(said.base - typed.base) * _ROUNDED <= typed.base


def _too_late(text: str, limit: Quantity, *, bare: bool) -> Iterator[str]:
    """What says that bare metal may wait longer for its first coat than is typed. `bare`: the text is one of a preparation."""
    # few texts say by when, and the longest expression is asked last
    for clause in _clauses(text, _WITHIN, _PRIMED, *(() if bare else (_BARE,))) if _WITHIN.search(text) else ():
        spans = [span for _, span in spans_said(clause) if span is not None]
        if len(spans) == 1 and spans[0] > limit and not _OTHER_START.search(clause):
            yield f"'{clause}'; the first coat follows within {limit}"


def _air(job: Job) -> Iterator[str]:
    air = job.ventilation
    if air is None or air.statement is None:
        return
    for clause in re.split(r"[;,\n]|\.(?!\d)", air.statement):
        flows = quantities_said(clause, "air_flow")
        if len(flows) == 1 and air.flow is not None and not _same(flows[0], air.flow):
            yield f"'{clause.strip()}'; the fresh-air flow is {air.flow}"
        changes = _CHANGES.search(clause)
        if changes is not None and air.changes is not None and Fraction(changes[1]) != air.changes:
            yield f"'{clause.strip()}'; the air changes are {float(air.changes):g} an hour"


def _beside_a_coat(text: str, layer: Layer) -> Iterator[str]:
    removed = [one for one in (layer.sanding_removes, layer.polishing_removes) if one is not None]
    for clause in _clauses(text):
        films = quantities_said(clause, "thickness") if _REMOVED.search(clause) else []
        if len(films) == 1 and removed and all(films[0] > one for one in removed):
            yield f"'{clause}'; at most {removed[0]} is taken off"
        spans = [span for _, span in spans_said(clause) if span is not None] if _FLASHED.search(clause) else []
        typed = [one for one in (layer.flash_between_passes, layer.overcoat_interval) if one is not None]
        if len(spans) == 1 and typed and not any(one.holds(spans[0]) for one in typed):
            yield f"'{clause}'; stated is {typed[0]}"


def _of_product(product: Product, spec: Spec) -> Iterator[tuple[Path, str]]:
    mixing = product.application.mixing if product.application is not None else None
    for path, text, _ in texts(spec, product):
        if path[0] != "application":
            continue
        clauses = list(_clauses(text))
        if mixing is not None:
            for clause in clauses:
                for what in (
                    _other_ratio(clause, [mixing.ratio_by_volume, mixing.ratio_by_mass]),
                    _other_wait(clause, mixing.induction),
                ):
                    if what is not None:
                        yield path, what
        yield from ((path, what) for clause in clauses for what in too_much_thinner(clause, [product]))
        yield from ((path, what) for clause in clauses for what in _stands_too_long(clause, product))
        longer = _longer_pot_life(clauses, product)
        if longer is not None:
            yield path, longer


def _longer_pot_life(clauses: Sequence[str], product: Product) -> str | None:
    """What says a longer pot life than the only one that is typed."""
    typed = product.pot_life
    if typed is None or typed.time is None or typed.other_temperatures:
        return None
    spans = [span for clause in clauses if "pot life" in clause.lower() for _, span in spans_said(clause) if span]
    most = as_range(typed.time).high
    if len(spans) != 1 or most is None or spans[0] <= most:
        return None
    return f"a pot life of {spans[0]}; typed is {typed.time}"


def _other_ratio(clause: str, typed: Sequence[tuple[Fraction, ...] | None]) -> str | None:
    stated = [one for one in typed if one is not None and len(one) == 2 and one[1]]
    found = ratio_said(clause)
    if found is None or not stated:
        return None
    words, said = found
    if any(one[0] / one[1] == said for one in stated):
        return None
    return f"'{words}'; the product is mixed {':'.join(f'{float(part):g}' for part in stated[0])}"


def _other_wait(clause: str, typed: Quantity | None) -> str | None:
    spans = [span for _, span in spans_said(clause) if span is not None] if _STANDS.search(clause) else []
    if typed is None or len(spans) != 1 or spans[0] == typed:
        return None
    return f"'{clause}'; the induction time is {typed}"


def _stands_too_long(clause: str, product: Product) -> Iterator[str]:
    """Mixed paint that is left to stand for as long as it keeps, or longer."""
    typed = product.pot_life
    most = as_range(typed.time).high if typed is not None and typed.time is not None else None
    stands = _STANDS.search(clause)
    spans = [span for _, span in spans_said(clause[stands.end() :]) if span is not None] if stands is not None else []
    if most is not None and len(spans) == 1 and spans[0] >= most and not _UNMIXED.search(clause):
        yield f"'{clause}'; the pot life is {most}"


def _colours(clause: str, job: Job, spec: Spec) -> Iterator[str]:
    """A colour of the finish that no coat of the job has."""
    if not (_FINISH.search(clause) or _RAL.search(clause)):
        return
    names = [
        f"{variant.id} {variant.name} {variant.colour.number if variant.colour else ''} "
        f"{(variant.colour.name or '') if variant.colour else ''}".lower().replace("gray", "grey")
        for system in spec.systems_of(job)
        for layer in system.layers
        if (variant := spec.variant_of(layer)) is not None
    ]
    held = {colour for name in names for colour in _NAMED if re.search(rf"\b{colour}\b", name)}
    last = [spec.variant_of(system.layers[-1]) for system in spec.systems_of(job)]
    if not held or any(one is None for one in last):
        return
    for match in _FINISH.finditer(clause):
        said = match[1].lower().replace("gray", "grey").split()[-1]
        if said not in held and not _NEAR.get(said, set()) & held:
            yield f"'{match[0]}'; its coats are {', '.join(sorted(held))}"
    for match in _RAL.finditer(clause):
        numbers = {found for name in names for found in re.findall(r"\b\d{4}\b", name)}
        if numbers and f"{match[1]}{match[2]}" not in numbers:
            yield f"'{match[0]}'; its coats are of {', '.join(sorted(numbers))}"
        elif not numbers and match[1] in _RAL_HUES and not _RAL_HUES[match[1]] & held:
            yield f"'{match[0]}'; its coats are {', '.join(sorted(held))}"
