"""What is done to each coat before the next: the author's own words first, then what the overcoating tables ask besides.

Called by `build`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.method_statement.conditions import NOT_STATED, Asked, Condition, conditions, refusal, unlisted
from specgen.documents.parts.coats import coat_name, numbered, taken_off
from specgen.documents.parts.wording import Words
from specgen.facts.layer.intervals import air_of, at_or_above, interval, warmest_of, windows_for
from specgen.facts.pairs.answers import DULLING
from specgen.facts.pairs.families import paint_name
from specgen.facts.pairs.layers import LayerPair, layer_pairs
from specgen.facts.pairs.overcoat import Verdict
from specgen.facts.pairs.papers import papers_between, papers_in
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import lower

_SPEAKS_OF_WASHING = re.compile(r"\bwash", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class BetweenView:
    """The steps at one place: `when` is `After coat 1 primer`, up to the next, or `With coat 1 primer`."""

    when: str
    steps: tuple[Condition, ...]


def between_coats(system: System, job: Job, spec: Spec, words: Words) -> tuple[BetweenView, ...]:
    """One entry for each coat after which something is done; a coat that begins in a special way is told where it comes."""
    names = {layer.id: coat_name(number, layer, words) for number, layer in numbered(system)}
    found = [
        (names[pair.below.id], tuple(_after(pair, names, system, job, spec, words)))
        for pair in layer_pairs(system, spec)
    ]
    first, last = system.layers[:1], system.layers[-1:]
    # what is said of the first coat as such comes before it, what is done to the last one after it
    begun = [(names[layer.id], tuple(_begin(layer, names, words))) for layer in first]
    ended = [(names[layer.id], tuple(_taken_off(system, layer, spec, words))) for layer in last]
    return (
        *(BetweenView(words("With coat {}").format(coat), steps) for coat, steps in begun if steps),
        *(BetweenView(words("After coat {}").format(coat), steps) for coat, steps in (*found, *ended) if steps),
    )


def _after(
    pair: LayerPair, names: dict[str, str], system: System, job: Job, spec: Spec, words: Words
) -> Iterator[Condition]:
    below, above = pair.below, pair.above
    yield from _by_author(below, words)
    yield from _taken_off(system, below, spec, words)
    yield from _begin(above, names, words)
    leave = pair.stated_by_name or pair.allowed_by_above
    if pair.verdict.refused:
        told = refusal(pair.verdict, words)
        if told is not None and not leave and not pair.told_elsewhere:
            yield told
        return
    if pair.verdict.verdict is Verdict.NOT_LISTED and not leave:
        yield unlisted(words(paint_name(pair.verdict.new)), words(paint_name(pair.verdict.old)), words)
    late = interval(below, above, spec, air_of(job)).late
    window = _interval(pair, names, job, spec, words)
    # the maker's word for the very product proves the pair
    met = pair.answered | {"patch_test"} if pair.stated_by_name else pair.answered
    if pair.stated_by_name and not met & DULLING and any(set(choice) <= DULLING for choice in pair.verdict.needs):
        met |= DULLING
        yield _no_abrading_asked(pair, window, late, words)
    asked = Asked(
        old=words("coat {}").format(names[below.id]), papers=papers_between(below, above), window=window, late=late
    )
    for _, condition in conditions(pair.verdict, met, asked, words):
        yield condition


def _interval(pair: LayerPair, names: dict[str, str], job: Job, spec: Spec, words: Words) -> str:
    """The system's interval, else the product's; empty where neither states one for the job's coldest air.

    Of a product the minimum is that for air no warmer than the coldest, the maximum that for air no cooler than the warmest.
    """
    stated, air, warmest = pair.below.overcoat_interval, air_of(job), warmest_of(job)
    if stated is not None:
        text = words("{window} after the last cross coat of {coat}")
        return text.format(window=words.phrase(stated), coat=names[pair.below.id])
    if pair.below.product is None:
        return words("that on the data sheet of the product chosen for {coat}").format(coat=names[pair.below.id])
    of_product = interval(pair.below, pair.above, spec, air).window
    if of_product is None or air is None or lower(of_product.air) > air:
        return ""
    least, most = of_product.interval.low, of_product.interval.high
    hot = at_or_above(windows_for(pair.below, pair.above, spec), warmest) if warmest is not None else of_product
    if warmest is None or hot is of_product or most is None:
        text = words("{window} after the last cross coat of {coat}, as its product data state for {air}")
        return text.format(
            window=words.phrase(of_product.interval), coat=names[pair.below.id], air=words.condition(of_product.air)
        )
    latest = hot.interval.high if hot is not None else None
    parts = []
    if least is not None:
        parts.append(words("at least {} at {}").format(words.phrase(least), words.phrase(of_product.air)))
    if hot is not None and latest is not None:
        parts.append(words("at most {} at {}").format(words.phrase(latest), words.phrase(hot.air)))
    else:
        parts.append(words("maximum not stated for {}").format(words.phrase(warmest)))
    text = words("{limits}, counted from the last cross coat of {coat}, as its product data state")
    return text.format(limits=", ".join(parts), coat=names[pair.below.id])


def _names_it(paper: str, said: str) -> bool:
    """True where the author's words name the paper or pad already."""
    papers = set(papers_in(paper))
    return papers <= set(papers_in(said)) if papers else paper.lower() in said.lower()


def _no_abrading_asked(pair: LayerPair, window: str, late: str, words: Words) -> Condition:
    """The product's own window goes before the tables, and both are told."""
    if not window:
        text = words(NOT_STATED)
    else:
        text = words("Apply the next coat {window}; within this interval the product data require no abrading.")
        if late:
            text = words("{inside} If the maximum interval is exceeded: {late}").format(inside=text, late=late)
    source = words("product data of {product}; {other} requires abrading in every case").format(
        product=pair.covered.name, other=words(str(pair.verdict.citation))
    )
    return Condition(text.format(window=window), source, interval=True)


def _by_author(below: Layer, words: Words) -> Iterator[Condition]:
    said = below.before_next or ""
    if below.blush_wash and not _SPEAKS_OF_WASHING.search(said):
        yield Condition(
            words("Wash with warm water and detergent, rinse, allow to dry and check that a drop of water spreads."), ""
        )
    if said:
        yield Condition(said, "")
    if below.abraded_with is not None and not _names_it(below.abraded_with, said):
        yield Condition(words("Abrade with {}.").format(below.abraded_with), "")


def _begin(layer: Layer, names: dict[str, str], words: Words) -> Iterator[Condition]:
    """How a coat begins, where that is not in the usual way."""
    if layer.mist_coat:
        text = words("Start coat {} with a mist coat, much thinner than a normal coat, and let it flash off.")
        yield Condition(text.format(names[layer.id]), "")
    if layer.tie_coat:
        text = words("Coat {} is a tie coat, or starts with a fog coat that is left until tacky.")
        yield Condition(text.format(names[layer.id]), "")


def _taken_off(system: System, layer: Layer, spec: Spec, words: Words) -> Iterator[Condition]:
    text = taken_off(system, layer, spec, words)
    if text:
        yield Condition(text, "", limit=True)
