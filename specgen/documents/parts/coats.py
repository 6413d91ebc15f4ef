"""The coats of one build with their films, and the waits between them: the one place where these figures are written.

Called by `build` for the method statement and by `job_card`, so that the paper at the vehicle says the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, replace
from fractions import Fraction

from specgen.documents.parts.clauses import to_be_offered
from specgen.documents.parts.protection import spraying_wear
from specgen.documents.parts.wording import Words
from specgen.facts.job.quantities import Quantities, ordered_as
from specgen.facts.layer.film import Limit, film_limit
from specgen.facts.layer.intervals import air_of, interval
from specgen.facts.layer.left import left_after_removal
from specgen.facts.layer.sums import film_sum, nominal_in_the_end, total_film
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.spec import Spec
from specgen.model.system import Layer, StripeTime, System
from specgen.trade.working import Working
from specgen.units.count import Count
from specgen.units.display import AT_MOST
from specgen.units.quantity import Quantity, Range


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatView:
    """One coat, numbered from the part up. `layer` is the id in the sources; every other field is finished text.

    `wet_of` says of what `wet` is the wet film: of one cross coat or of a whole coat.
    """

    layer: str
    name: str
    product: str
    variant: str
    order_number: str
    passes: str
    wet: str
    wet_of: str
    least: str
    nominal: str
    most: str
    film: str
    hold: str
    needed: str
    wear: str
    breathing: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """How long after `after`, counted from its last pass, `comes` may begin; empty where nothing is stated."""

    after: str
    comes: str
    not_before: str
    not_later: str
    late: str


Painted = Sequence[tuple[System, Sequence[Item]]]
"""Systems that differ in variant and film alone, each with its items."""


def coats(painted: Painted, spec: Spec, figures: Quantities, words: Words) -> tuple[CoatView, ...]:
    """The coats of a system, the first on the part; of several that differ in variant and film, each with the difference."""
    listed = [
        tuple(_coat(number, layer, system, spec, figures, words) for number, layer in numbered(system))
        for system, _ in painted
    ]
    found = tuple(_as_one(painted, views) for views in zip(*listed, strict=True))
    return tuple(_ordered(at, coat, painted, figures, words) for at, coat in enumerate(found))


def _ordered(at: int, coat: CoatView, painted: Painted, figures: Quantities, words: Words) -> CoatView:
    """The coat with the packs it takes in all; of several variants each has its own."""
    layers = [(system, system.layers[at]) for system, _ in painted]
    ordered = {ordered_as(layer) for _, layer in layers}
    if len(painted) == 1 or len(ordered) > 1:
        return coat
    packs = figures.packs_together([(system.id, layer.id) for system, layer in layers], ordered.pop())
    return replace(coat, needed=words.worked(packs))


def _as_one(painted: Painted, views: Sequence[CoatView]) -> CoatView:
    first = views[0]
    if len(views) == 1:
        return first
    if len({view.variant for view in views}) > 1:
        # the number goes with the variant it orders
        named = [", ".join(part for part in (view.variant, view.order_number) if part) for view in views]
        views = [replace(view, variant=name, order_number="") for view, name in zip(views, named, strict=True)]
    told = {one.name: differing(painted, [getattr(view, one.name) for view in views]) for one in fields(first)}
    return CoatView(**told)


def differing(painted: Painted, texts: Sequence[str]) -> str:
    """One text for all of them, or each with the items it holds for: `40 to 80 µm (DOOR-L); 45 to 80 µm (DOOR-R)`."""
    if len(set(texts)) == 1:
        return texts[0]
    said: dict[str, list[str]] = {}
    for (_, items), text in zip(painted, texts, strict=True):
        said.setdefault(text or "–", []).extend(item.id for item in items)
    return ";\n".join(f"{text} ({', '.join(names)})" for text, names in said.items())


def ordered_in_a_line(coat: CoatView) -> str:
    """Product, variant, order number and packs; of several variants each with its own: `grey, F-1, 6 cans (RAIL); blue, ...`."""
    variants, packs = (text.split(";\n") for text in (coat.variant, coat.needed))
    held = [(variant.rpartition(" ("), pack.rpartition(" (")) for variant, pack in zip(variants, packs, strict=False)]
    if len(variants) == len(packs) > 1 and all(one[2] == other[2] for one, other in held):
        each = "; ".join(f"{variant[0]}, {pack[0]} ({variant[2]}" for variant, pack in held)
        return ", ".join(part for part in (coat.product, each) if part)
    return ", ".join(part for part in (coat.product, coat.variant, coat.order_number, coat.needed) if part)


def waits(system: System, preparation: Preparation, job: Job, spec: Spec, words: Words) -> tuple[Wait, ...]:
    """Every wait of a build in the order of the work: to the first coat, between coats, to handling and service."""
    return tuple(_waits(system, preparation, job, spec, words))


def total(painted: Painted, spec: Spec, words: Words) -> str:
    """The film of all coats together, as stated, else summed; the nominal one also when all is sanded. Empty where there is none."""
    return differing(painted, [_total(system, spec, words) for system, _ in painted])


def total_rows(painted: Painted, spec: Spec, words: Words) -> tuple[tuple[str, str, str, str], ...]:
    """The same as (name, minimum, nominal, maximum) for the columns of the coats: as applied, then when all is sanded."""
    systems = [system for system, _ in painted]
    limits: tuple[Limit, ...] = ("min", "nominal", "max")
    applied = [
        differing(painted, [words.phrase(total_film(system, spec, limit)) for system in systems]) for limit in limits
    ]
    left = differing(painted, [words.phrase(nominal_in_the_end(system, spec)) for system in systems])
    rows = (
        (words("total DFT"), applied[0], applied[1], applied[2]),
        (_once_worked(systems, words), "", left, ""),
    )
    return tuple(row for row in rows if any(row[1:]))


def total_allows(painted: Painted, spec: Spec, words: Words) -> str:
    """That the minimum of all coats lies below the sum of theirs for what is taken off; empty where it does not, or nothing is."""
    for system, _ in painted:
        least, applied = total_film(system, spec, "min"), film_sum(system, spec, "min")
        if least is None or applied is None or nominal_in_the_end(system, spec) is None:
            continue
        if least < applied.value and all(layer.polishing_removes is None for layer in system.layers):
            return words("The minimum total DFT allows for what is sanded off.")
        if least < applied.value:
            return words("The minimum total DFT allows for what sanding and polishing remove.")
    return ""


def _once_worked(systems: Sequence[System], words: Words) -> str:
    """What the film of all coats is called once they have been sanded, polished or both."""
    layers = [layer for system in systems for layer in system.layers]
    if all(layer.polishing_removes is None for layer in layers):
        return words("total DFT after sanding")
    if all(layer.sanding_removes is None for layer in layers):
        return words("total DFT after polishing")
    return words("total DFT, sanded and polished")


def _total(system: System, spec: Spec, words: Words) -> str:
    named: tuple[tuple[Limit, str], ...] = (
        ("min", words("at least {}")),
        ("nominal", words("nominal {}")),
        ("max", words("at most {}")),
    )
    films = [(text, total_film(system, spec, limit)) for limit, text in named]
    said = [text.format(words.phrase(film)) for text, film in films if film is not None]
    left = nominal_in_the_end(system, spec)
    if left is not None:
        said.append(words("nominal {} after sanding or polishing").format(words.phrase(left)))
    return ", ".join(said)


def taken_off(system: System, layer: Layer, spec: Spec, words: Words) -> str:
    """How much of a coat sanding and polishing may take off, and what must stay, as a sentence; empty where nothing is stated."""
    said = [
        text.format(words.phrase(film))
        for text, film in (
            (words("sanding may remove at most {}"), layer.sanding_removes),
            (words("polishing may remove at most {}"), layer.polishing_removes),
            (words("at least {} of this coat must remain"), layer.remaining_min),
        )
        if film is not None
    ]
    left = left_after_removal(system, layer, spec, "min") if layer.remaining_min is None else None
    if left is not None:
        said.append(words("at least {} of this coat remains (calculated from its minimum)").format(words.film(left)))
    text = "; ".join(said)
    return words("{}.").format(text[:1].upper() + text[1:]) if text else ""


def numbered(system: System) -> Iterator[tuple[int, Layer]]:
    """The layers with their numbers, from 1 on the part."""
    return enumerate(system.layers, 1)


def coat_name(number: int, layer: Layer, words: Words) -> str:
    """`1 primer`."""
    return f"{number} {words.word(layer.role)}"


def coats_by_id(job: Job, spec: Spec, words: Words) -> dict[str, str]:
    """`1 primer` by the id of the coat."""
    return {
        layer.id: coat_name(number, layer, words)
        for system in spec.systems_of(job)
        for number, layer in numbered(system)
    }


def _coat(number: int, layer: Layer, system: System, spec: Spec, figures: Quantities, words: Words) -> CoatView:
    product, variant = spec.product_of(layer), spec.variant_of(layer)
    key = (system.id, layer.id)
    packs = figures.layer_packs.get((system.id, layer.id))

    def film(limit: Limit) -> str:
        held = film_limit(system, layer, spec, limit)
        return words.phrase(held.value if held is not None else None)

    return CoatView(
        layer=layer.id,
        name=coat_name(number, layer, words),
        product=product.name if layer.product is not None else to_be_offered(layer, words),
        variant=variant.name if variant is not None else "",
        order_number=variant.order_number if variant is not None else "",
        passes=_passes(layer, words),
        wet=words.phrase(layer.wet_target)
        if layer.wet_target is not None
        else _wet(layer, (figures.wet_thinnest.get(key), figures.wet_targets.get(key)), words),
        wet_of=words("per cross coat") if layer.passes is not None else words("per coat"),
        least=film("min"),
        nominal=film("nominal"),
        most=film("max"),
        film=_film(system, layer, spec, words),
        hold=words.phrase(layer.overcoat_interval),
        needed=words.worked(packs),
        wear=spraying_wear(product),
        breathing=spraying_wear(product, breathing_only=True),
    )


def _film(system: System, layer: Layer, spec: Spec, words: Words) -> str:
    """`40 to 80 µm, nominal 56 µm`: the limits in force in a line; empty where there are none."""
    low, nominal, high = (film_limit(system, layer, spec, limit) for limit in ("min", "nominal", "max"))
    said = []
    if low is not None or high is not None:
        ends = Range("thickness", low.value if low is not None else None, high.value if high is not None else None)
        said.append(words.phrase(ends))
    if nominal is not None:
        said.append(words("nominal {}").format(words.phrase(nominal.value)))
    return ", ".join(said)


def _wet(layer: Layer, films: tuple[Working | None, Working | None], words: Words) -> str:
    """Worked out for a number of passes; for a range of them from the most to the fewest, or at most that of the fewest."""
    thinnest, thickest = films
    number = layer.passes if layer.passes is not None and layer.passes.low else layer.coats
    if thickest is None or number is None or number.one is not None:
        return words.film(thickest)
    if thinnest is None:
        return words(AT_MOST).format(words.film(thickest))
    low, high = (Quantity.of("thickness", Fraction(w.rounded), w.unit, str(w.rounded)) for w in (thinnest, thickest))
    return words.phrase(Range("thickness", low, high))


def _passes(layer: Layer, words: Words) -> str:
    """`4 cross coats, flash-off 6 to 12 min`, `1 coat, thinned by at most 5 %`: each count under its own name."""
    said = []
    if layer.passes is not None:
        passes = words.translate.plural("{} cross coat", "{} cross coats", _form(layer.passes))
        said.append(passes.format(words.phrase(layer.passes)))
    if layer.coats is not None:
        number = words.translate.plural("{} coat", "{} coats", _form(layer.coats)).format(words.phrase(layer.coats))
        said = [words("{passes} in {coats}").format(passes=said[0], coats=number)] if said else [number]
    if layer.passes is not None and layer.flash_between_passes is not None:
        said.append(words("flash-off {}").format(words.phrase(layer.flash_between_passes)))
    if layer.method is not None:
        said.append(words.word(layer.method))
    if (stripe := layer.stripe_coat) is not None:
        before = stripe.when is StripeTime.BEFORE
        text = words("before it a stripe coat on {}") if before else words("after it a stripe coat on {}")
        said.append(text.format(stripe.where))
    if layer.thinner is not None:
        said.append(words("thinned by at most {}").format(words.phrase(layer.thinner)))
    return ",\n".join(said)


def _form(number: Count) -> int:
    """The number by which a word is put in its form."""
    return number.low if number.high is None else number.high


def _waits(system: System, preparation: Preparation, job: Job, spec: Spec, words: Words) -> Iterator[Wait]:
    names = [coat_name(number, layer, words) for number, layer in numbered(system)]
    if names and preparation.coat_within is not None:
        late = words("Prepare the surface again and clean it.")
        yield Wait(
            after=words("last preparation step"),
            comes=names[0],
            not_before="",
            not_later=words.phrase(preparation.coat_within),
            late=late,
        )
    for at, (below, above) in enumerate(zip(system.layers, system.layers[1:], strict=False)):
        if below.overcoat_interval is not None:
            late = interval(below, above, spec, air_of(job)).late
            yield Wait(
                after=names[at],
                comes=names[at + 1],
                not_before=words.low(below.overcoat_interval),
                not_later=words.high(below.overcoat_interval),
                late=late,
            )
    if names and system.handle_after is not None:
        yield Wait(
            after=names[-1],
            comes=words("handling"),
            not_before=words.phrase(system.handle_after),
            not_later="",
            late="",
        )
    if names and system.service_after is not None:
        yield Wait(
            after=names[-1],
            comes=words("return to service"),
            not_before=words.phrase(system.service_after),
            not_later="",
            late="",
        )
