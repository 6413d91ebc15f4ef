"""What a sentence says of a coat in figures that no figure of that coat bears out. Called by the rules on the words of coats and of a comb.

A text beside a coat speaks of that coat and the next one; any other speaks of the coats it names, else of all. A figure that one of
them bears out is right. A clause on another state, on stripe coats or on another temperature is not read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.instructions import instructions
from specgen.facts.job.practices import SENTENCE
from specgen.facts.layer.figures import solids_sprayed
from specgen.facts.layer.film import film_limit
from specgen.facts.layer.intervals import windows_for
from specgen.facts.layer.said import films_of, films_said, is_one_of
from specgen.facts.product.ratio_said import ratio_said
from specgen.facts.product.spans_said import Span, number_said, spans_between
from specgen.facts.texts import CLAUSE
from specgen.model.job import Job
from specgen.model.product import Role
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.given import Given
from specgen.trade.known import NotKnown
from specgen.units.count import Count
from specgen.units.quantity import Quantity, Range, as_range

_OTHER = re.compile(
    r"\b(?:never|not|no|nothing|none|unless|instead|if|when|where|else|otherwise|exceeded|existing|old|was|were|"
    r"more than|less than|below|beyond|older|stripes?|striped|mist|touch\w*|repair\w*)\b|°",
    re.I,
)
_BOUND = re.compile(r"\b(?:no|not) (?:more|less|later|sooner|earlier) than\b|\bnot before\b", re.I)
_NEXT_COAT = re.compile(
    r"\b(?:overcoat|recoat|re-coat)(?:s|ed|ing)?\b|(?<!after the )\b(?:next|second|third|following|further) (?:coat|layer)s?\b|"
    r"\b(?:finish|(?:top|clear|base|mid)[ -]?coat|clear|intermediate(?: coat)?|surfacer|MIO|epoxy|polyurethane|lining|enamel) "
    r"(?:(?:(?:may|can|must|shall|is to) )?(?:follow|wait|be laid|be applied|be sprayed|is laid|is applied|is sprayed|goes on)|"
    r"(?:after|within) (?=an?\b|half|\d))",
    re.I,
)
_TIMED = re.compile(
    r"\b(?:after|within|later|latest|earliest|sooner|wait\w*|from|up to|same (?:day|evening|afternoon|shift)|weekend|"
    r"(?:next|following) (?:day|morning|week))\b",
    re.I,
)
_OTHER_WORK = re.compile(
    r"\b(?:every|last|blast\w*|sand\w*|abrad\w*|abrasi\w*|wash\w*|rins\w*|wip\w*|degreas\w*|clean\w*|solvent|flash\w*|mix\w*|"
    r"activat\w*|pot life|rain\w*|inspect\w*|test\w*|masked|tap\w*|bak\w*|stov\w*|oven|infrared|pass\w*)\b",
    re.I,
)
_LEFT_THEN = re.compile(
    r"\b(?:leave|let|wait|left|dry)\b.*(?:\bthen\b|,| and) (?:then )?(?:spray|lay|apply|coat|paint|roll|brush)\b", re.I
)
_ALL_COATS = re.compile(r"\b(?:all|both)(?: (?:two|three|four|five|the))? coats\b", re.I)
_LAID_IN_A_DAY = re.compile(r"\b(?:laid|applied|sprayed|rolled|brushed|painted|coated|done|in the morning)\b", re.I)
_MORNING_TO_EVENING = re.compile(r"\bin the morning\b.*\bin the (?:afternoon|evening)\b", re.I)
_DAY = Quantity.of("duration", Fraction(12), "h", "12")
_WET_ON_WET = re.compile(r"\bwet[ -]on[ -]wet\b", re.I)
_WET_ON_WET_AT_MOST = Quantity.of("duration", Fraction(60), "min", "60")  # common practice, no source
_MIXED = re.compile(r"\b(?:mix\w*|harden\w*|parts|component [AB]|activator)\b", re.I)
_DILUTED = re.compile(r"\b(?:water|clean\w*|wash\w*|detergent|thinn\w*|dilut\w*|filler|putty|scale)\b", re.I)
_BY_MASS = re.compile(r"\bby (?:mass|weight)\b", re.I)
_WET_FILM = re.compile(r"\bwet (?:film|layer|thickness)\b|\bWFT\b|\bµm wet\b|\bum wet\b|\bmils? wet\b", re.I)
_NOT_LAID = re.compile(
    r"\b(?:sand\w*|abra\w*|scratch\w*|lost|loss|polish\w*|pass\w*|cross|wet|each|thin|tie|more|again|another|additional)\b",
    re.I,
)
_LAID_IN = re.compile(
    r"\b(?:laid|applied|sprayed|put on|built up) in (\w+|\d+) (?:thin |full |even )?(?:cross )?(?:coats|passes)\b", re.I
)
_ROUNDED = 5  # µm: a comb is read to no less
_CALLED: tuple[tuple[re.Pattern[str], Role], ...] = (
    (re.compile(r"\bprim(?:er|ing coat)\b", re.I), Role.PRIMER),
    (re.compile(r"\bsurfacer\b", re.I), Role.SURFACER),
    (re.compile(r"\b(?:intermediate|mid[ -]?coat)\b", re.I), Role.INTERMEDIATE),
    (re.compile(r"\bbase[ -]?coat\b", re.I), Role.BASECOAT),
    (re.compile(r"\b(?:top[ -]?coat|finish)\b", re.I), Role.TOPCOAT),
    (re.compile(r"\bclear[ -]?coat\b", re.I), Role.CLEARCOAT),
)
Coat = tuple[System, Layer]


def contradicted(job: Job, spec: Spec) -> Iterator[tuple[Path, str]]:
    """What the instructions of a job say of its coats and no coat bears out, with where it is said."""
    systems = list(spec.systems_of(job))
    every = [(system, layer) for system in systems for layer in system.layers]
    for path, text in instructions(job, spec):
        at_coat = path[0] == "systems"
        own = [one for one in every if one[0].id == path[1] and one[1].id == path[3]] if at_coat else every
        if path[-1] == "before_next":
            yield from ((path, what) for what in _left_until(text, own, spec))
        for sentence in SENTENCE.split(text) if path[-1] == "scope" else ():
            what = _on_one_day(sentence, own, spec)
            if what is not None:
                yield path, what
        for clause in CLAUSE.split(text):
            if _OTHER.search(_BOUND.sub("", clause)):
                continue
            coats = [*own, *_after(own)] if at_coat else called(clause, own)
            found = [_ratio(clause, coats, spec), _wet(clause, coats, spec), _laid_in(clause, coats)]
            if path[-1] in {"scope", "before_next"}:
                found += [_interval(clause, own, spec), _wet_on_wet(clause, own, spec)]
            if at_coat:
                found.append(_film(clause, coats, spec))
            for what in found:
                if what is not None:
                    yield path, what


def _after(coats: list[Coat]) -> list[Coat]:
    return [(system, above) for system, layer in coats for below, above in pairwise(system.layers) if below is layer]


def called(clause: str, coats: list[Coat]) -> list[Coat]:
    """The coats that a clause calls by their place; all where it calls none that there is."""
    roles = {role for pattern, role in _CALLED if pattern.search(clause)}
    return [one for one in coats if one[1].role in roles] or coats


def _interval(clause: str, coats: list[Coat], spec: Spec) -> str | None:
    if not _NEXT_COAT.search(clause) or not _TIMED.search(clause) or _OTHER_WORK.search(clause):
        return None
    typed = [one for coat in coats for one in _intervals(coat, spec)]
    own = [one for coat in coats for one in _intervals(coat, spec, between_passes=False)]
    for span in spans_between(clause):
        if not own or (span.counted and any(one.holds(span.longest) for one in typed)):
            continue
        if span.counted or _too_late(span, typed) or _too_soon(span, typed):
            return f"'{clause.strip()}'; the overcoating interval is {own[0]}"
    return None


def _left_until(text: str, coats: list[Coat], spec: Spec) -> Iterator[str]:
    """A sentence that leaves the coat for a time and then lays the next: "leave for half an hour, then spray"."""
    typed = [one for coat in coats for one in _intervals(coat, spec)]
    for sentence in SENTENCE.split(text):
        if not typed or not _LEFT_THEN.search(sentence) or _OTHER.search(sentence) or _OTHER_WORK.search(sentence):
            continue
        spans = list(spans_between(sentence))
        if len(spans) == 1 and (_too_late(spans[0], typed) or _too_soon(spans[0], typed)):
            yield f"'{sentence.strip()}'; the overcoating interval is {typed[0]}"


def _too_late(span: Span, typed: list[Range]) -> bool:
    """True where a span by days or nights is too long at its shortest."""
    return all(one.high is not None and span.shortest is not None and span.shortest > one.high for one in typed)


def _too_soon(span: Span, typed: list[Range]) -> bool:
    """True where it is too short at its longest."""
    return all(one.low is not None and span.longest < one.low for one in typed)


def _on_one_day(sentence: str, coats: list[Coat], spec: Spec) -> str | None:
    """Coats that a sentence lays on one day though the intervals between them take longer."""
    if _LAID_IN_A_DAY.search(sentence) is None or _OTHER.search(sentence):
        return None
    spans = [span for span in spans_between(sentence) if span.shortest is None]
    longest = spans[0].longest if len(spans) == 1 else _DAY if _MORNING_TO_EVENING.search(sentence) else None
    if longest is None:
        return None
    roles = [] if _ALL_COATS.search(sentence) else [role for pattern, role in _CALLED if pattern.search(sentence)]
    if not _ALL_COATS.search(sentence) and len(roles) < 2:
        return None
    least = [_between(system, roles, spec) for system in {one[0].id: one[0] for one in coats}.values()]
    if not least or any(one is None or one <= longest for one in least):
        return None
    return f"'{sentence.strip()}'; the intervals between these coats take at least {least[0]}"


def _between(system: System, roles: list[Role], spec: Spec) -> Quantity | None:
    """The least time from the first of the coats that are called to the last; of all where none is called."""
    places = [number for number, layer in enumerate(system.layers) if not roles or layer.role in roles]
    if len(places) < 2 or (roles and len({system.layers[place].role for place in places}) < len(set(roles))):
        return None
    hours = Fraction(0)
    for layer in system.layers[places[0] : places[-1]]:
        lows = [one.low for one in _intervals((system, layer), spec, between_passes=False)]
        if not lows or any(low is None for low in lows):
            return None
        hours += min(low.to("h") for low in lows if low is not None)
    return Quantity.of("duration", hours, "h", f"{float(hours):g}")


def _wet_on_wet(clause: str, coats: list[Coat], spec: Spec) -> str | None:
    if not _WET_ON_WET.search(clause):
        return None
    typed = [one for coat in coats for one in _intervals(coat, spec)]
    if typed and all(one.low is not None and one.low > _WET_ON_WET_AT_MOST for one in typed):
        return f"'{clause.strip()}'; the overcoating interval is {typed[0]}"
    return None


def _intervals(coat: Coat, spec: Spec, *, between_passes: bool = True) -> list[Range]:
    """The times at which something may go over a coat: the next coat, and the next pass of the same."""
    layer = coat[1]
    above = _after([coat])
    found = [layer.overcoat_interval] if layer.overcoat_interval is not None else []
    if not found and above:
        found = [window.interval for window in windows_for(layer, above[0][1], spec)]
    return [*found, *([layer.flash_between_passes] if between_passes and layer.flash_between_passes else [])]


def _ratio(clause: str, coats: list[Coat], spec: Spec) -> str | None:
    found = ratio_said(clause) if _MIXED.search(clause) and not _DILUTED.search(clause) else None
    if found is None:
        return None
    _, said = found
    applied = [product.application for _, layer in coats if (product := spec.product_of(layer)).application is not None]
    mixings = [one.mixing for one in applied if one is not None and one.mixing is not None]
    stated = [one.ratio_by_mass for one in mixings if one.ratio_by_mass is not None]
    if not _BY_MASS.search(clause):
        stated += [one.ratio_by_volume for one in mixings if one.ratio_by_volume is not None]
    pairs = [one for one in stated if len(one) == 2]
    if not pairs or len(pairs) < len(stated) or any(one[1] == 0 or one[0] / one[1] == said for one in pairs):
        return None
    typed = ":".join(f"{float(part):g}" for part in pairs[-1])
    return f"'{clause.strip()}'; the product is mixed {typed}"


def _laid_in(clause: str, coats: list[Coat]) -> str | None:
    """How many coats or cross coats of one paint a clause names where each coat it calls states another number."""
    match = _LAID_IN.search(clause)
    said = number_said(match[1]) if match is not None else None
    typed = [[one for one in (layer.coats, layer.passes) if one is not None] for _, layer in coats]
    if (
        said is None
        or not typed
        or any(not each or any(one.holds_all_of(Count(said, said)) for one in each) for each in typed)
    ):
        return None
    return f"'{clause.strip()}'; the coat is laid in {typed[0][0]}"


def _wet(clause: str, coats: list[Coat], spec: Spec) -> str | None:
    if not _WET_FILM.search(clause) or re.search(r"\bpass|\bcross\b|\bDFT\b|\bdry\b", clause, re.I):
        return None
    accepted = [_wet_of(coat, spec) for coat in coats]
    known = [one for one in accepted if one is not None]
    if not known or len(known) < len(accepted):
        return None
    for said in quantities_said(clause, "thickness"):
        um = said.to("um")
        if not any(low - _ROUNDED <= um <= high + _ROUNDED for low, high in known):
            low, high = known[0]
            return f"'{clause.strip()}'; the wet film that gives the DFT is {float(low):.0f} µm to {float(high):.0f} µm"
    return None


def _wet_of(coat: Coat, spec: Spec) -> tuple[Fraction, Fraction] | None:
    """The least and the most wet film of one coat, in µm: what the layer states, and what gives its dry film, thinned or not."""
    system, layer = coat
    product = spec.product_of(layer)
    solids = solids_sprayed(product, spec.variant_of(layer))
    least, most = (film_limit(system, layer, spec, limit) for limit in ("min", "max"))
    if isinstance(solids, NotKnown) or least is None or most is None:
        return None
    figure = solids.value if isinstance(solids, Given) else solids.result
    share = figure.to("%") / 100 if isinstance(figure, Quantity) else figure
    coats = layer.passes or layer.coats
    few, many = (coats.low or 1, coats.high or coats.low or 1) if coats is not None else (1, 1)
    mixing = product.application.mixing if product.application is not None else None
    thinner = layer.thinner or (mixing.thinner_max if mixing is not None else None)
    wetter = 1 + (thinner.number / 100 if thinner is not None else 0)
    low, high = least.value.to("um") / share / many, most.value.to("um") / share / few * wetter
    if layer.wet_target is not None:
        stated = as_range(layer.wet_target)
        low = min(low, stated.low.to("um")) if stated.low is not None else low
        high = max(high, stated.high.to("um")) if stated.high is not None else high
    return low, high


def _film(clause: str, coats: list[Coat], spec: Spec) -> str | None:
    if _NOT_LAID.search(clause):
        return None
    stated = [film for system in {one[0].id: one[0] for one in coats}.values() for film in films_of(system, spec)]
    for said in films_said(clause):
        ranges = [
            Range("thickness", least.value if least is not None else None, most.value if most is not None else None)
            for system, layer in coats
            for least, most in [[film_limit(system, layer, spec, limit) for limit in ("min", "max")]]
        ]
        if not is_one_of(said, stated) and not any(one.holds(said) for one in ranges):
            return f"'{clause.strip()}'; the coat is laid at a DFT of {ranges[0]}"
    return None
