"""How each product is applied: its values by name, and the steps from shaking or mixing to the cleared valve.

Called by `data_sheet`, and by `method_statement` with its job, whose climate is the narrower.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from specgen.documents.parts.pot_life import pot_life
from specgen.documents.parts.step_cautions import before_use
from specgen.documents.parts.wording import Words
from specgen.facts.job.confined import place_of
from specgen.facts.layer.intervals import air_of
from specgen.facts.product.drying import Unstated, drying_at, sandable_at, stage_of
from specgen.model.application import Activation, Application, Mixing
from specgen.model.drying import Drying, DryingStage, SandableAfter, Sanding
from specgen.model.hazards import Task
from specgen.model.job import Job
from specgen.model.product import PackForm, Product
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import plain_text

Pairs = tuple[tuple[str, str], ...]

_TOUCHED = (DryingStage.DUST_FREE, DryingStage.TOUCH_DRY, DryingStage.HANDLING)


class ApplicationStep(NamedTuple):
    """A step with the task whose cautions it needs; None where it needs none of its own."""

    heading: str
    text: str
    task: Task | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ApplicationView:
    """A product at the part. `values` and `part_used` are (name, finished text); `steps` stand in the order of work."""

    name: str
    kind: str
    values: Pairs
    steps: tuple[ApplicationStep, ...]
    part_used: Pairs
    drying: Pairs
    dries: tuple[str, ...]
    pot_life: str
    shelf_life: str
    cautions: tuple[str, ...]


def application(product: Product, words: Words) -> ApplicationView:
    """The view of one product by its own data; what it does not state is left out."""
    return _view(product, None, words)


def application_at(product: Product, job: Job, words: Words) -> ApplicationView:
    """The view of one product at a job: passes stand in the table of coats, the part in the climate of the job.

    Of each stage of drying one time is left: that for the coldest air of the job, or the nearest colder air stated; where the
    product states it for warmer air alone, it says so.
    """
    return _view(product, job, words)


def _view(product: Product, job: Job | None, words: Words) -> ApplicationView:
    stated, pot = product.application, product.pot_life
    air = air_of(job) if job is not None else None
    surface_said = job is not None and job.climate is not None and job.climate.surface is not None
    return ApplicationView(
        name=product.name,
        kind=words.word(product.curing),
        values=tuple(_values(stated, words, surface_said=surface_said)) if stated is not None else (),
        steps=tuple(_steps(stated, words, at_job=job is not None)) if stated is not None else (),
        part_used=part_used_pack(product, words),
        drying=(
            *cure(product, words),
            *(_drying(entry, words) for entry in drying_at(product, air)),
            *sandable(product, air, words),
        ),
        dries=tuple(_dries(product, air, words)),
        pot_life=pot_life(pot, words) if pot is not None else "",
        shelf_life=words.phrase(product.shelf_life),
        cautions=before_use(product, words, place=place_of(job) if job is not None else None),
    )


def full_cure_at(product: Product, air: Quantity | None, words: Words) -> str:
    """`14 days at 14 °C, 55 %, 60 µm`: the time to full cure where `air` is the coldest; empty where none is stated at all."""
    found = [entry for entry in drying_at(product, air) if stage_of(entry) is DryingStage.FULLY_CURED]
    return _drying(found[0], words)[1] if found else ""


def sandable(product: Product, air: Quantity | None, words: Words) -> Pairs:
    """From when the film may be sanded dry and wet where `air` is the coldest, as (name, finished text)."""
    return tuple(_sandable(entry, words) for entry in sandable_at(product, air))


def cure(product: Product, words: Words) -> Pairs:
    """How a stoved film and one cured by light is brought to its cure, as (name, finished text); each pair of stoving cures it."""
    stoved = words(" or ").join(
        words("{time} at a surface temperature of {surface}").format(
            time=words.phrase(one.time), surface=words.condition(one.surface)
        )
        for one in product.stoving
    )
    named = [(words("Stoving"), stoved)] if stoved else []
    if product.light is not None:
        lit = product.light
        far = words("{} from the film").format(words.phrase(lit.distance)) if lit.distance is not None else ""
        film = (
            words("DFT at most {} in one exposure").format(words.phrase(lit.film_max))
            if lit.film_max is not None
            else ""
        )
        named.append(
            (
                words("Curing by light"),
                ", ".join(part for part in (lit.lamp, words.phrase(lit.time), far, film) if part),
            )
        )
    return tuple(named)


def _values(stated: Application, words: Words, *, surface_said: bool) -> Iterator[tuple[str, str]]:
    named = (
        (words("Application methods"), ", ".join(words.word(method) for method in stated.methods)),
        (words("Places for spraying"), ", ".join(words.word(place) for place in stated.places)),
        (words("Can or paint temperature"), words.phrase(stated.can_temperature)),
        (words("Surface temperature"), "" if surface_said else words.phrase(stated.surface_temperature)),
        (
            words("Use within (after activation)"),
            words.phrase(stated.activation.usable_for) if stated.activation else "",
        ),
    )
    yield from ((name, text) for name, text in named if text)


def _steps(stated: Application, words: Words, *, at_job: bool) -> Iterator[ApplicationStep]:
    if stated.shake is not None:
        text = words("Shake for {} after the mixing ball starts to rattle.").format(words.phrase(stated.shake))
        yield ApplicationStep(words("Shake"), text)
    if stated.activation is not None:
        yield from _activation(stated.activation, words)
    if stated.mixing is not None:
        yield from _mixing(stated.mixing, words)
    if stated.nozzle:
        yield ApplicationStep(words("Nozzle"), words("{}.").format(stated.nozzle.rstrip(".")))
    spraying = ", ".join(_spraying(stated, words, at_job=at_job))
    if spraying:
        yield ApplicationStep(words("Spray"), words("{}.").format(spraying[:1].upper() + spraying[1:]), Task.SPRAYING)
    if stated.clear_valve:
        # it sprays as well
        worn = words("{}. Keep on what you wear for spraying.").format(stated.clear_valve.rstrip("."))
        yield ApplicationStep(words("Clear the valve"), worn)


def _activation(activation: Activation, words: Words) -> Iterator[ApplicationStep]:
    if activation.action:
        yield ApplicationStep(words("Activate the can"), activation.action)
    if activation.shake_after is not None:
        yield ApplicationStep(
            words("Shake again"),
            words("Shake for {} after activation.").format(words.phrase(activation.shake_after)),
        )


def _mixing(mixing: Mixing, words: Words) -> Iterator[ApplicationStep]:
    ratios = [
        words("{ratio} {measure}").format(
            ratio=words.figures(" : ".join(plain_text(part) for part in ratio)), measure=measure
        )
        for ratio, measure in (
            (mixing.ratio_by_volume, words("by volume")),
            (mixing.ratio_by_mass, words("by mass")),
        )
        if ratio is not None
    ]
    if ratios:
        text = words("Mixing ratio, base to hardener: {}.").format(words(" or ").join(ratios))
        yield ApplicationStep(words("Mix"), text, Task.MIXING)
    # who stirs adds the hardener with it, and must know how much
    if mixing.stir:
        yield ApplicationStep(words("Stir"), mixing.stir, Task.MIXING)
    if mixing.thinner or mixing.thinner_max is not None:
        most = (
            words("at most {} by volume of the mixed paint").format(words.phrase(mixing.thinner_max))
            if mixing.thinner_max is not None
            else ""
        )
        voc = words("VOC {}").format(words.phrase(mixing.thinner_voc)) if mixing.thinner_voc is not None else ""
        text = words("{}.").format(", ".join(part for part in (mixing.thinner, voc, most) if part))
        yield ApplicationStep(words("Thinning"), text, Task.MIXING)
    if mixing.induction is not None:
        text = words("{}, before use.").format(words.phrase(mixing.induction))
        # nothing is done at the beginning of the pot life: it is told where it runs already
        yield ApplicationStep(words("Induction time"), " ".join((text, *_starts(mixing, words))), Task.MIXING)
    elif mixing.clock_starts:
        yield ApplicationStep(words("Pot life"), mixing.clock_starts, Task.MIXING)


def _starts(mixing: Mixing, words: Words) -> Iterator[str]:
    """From when the pot life runs; a sentence of the author that says so itself stands as it is."""
    said = mixing.clock_starts or ""
    if said:
        whole = words("pot life") in said.lower()
        yield said if whole else words("Start of the pot life: {}").format(said)


def _spraying(stated: Application, words: Words, *, at_job: bool) -> Iterator[str]:
    if stated.distance is not None:
        yield words("spray distance {}").format(words.phrase(stated.distance))
    if stated.overlap is not None:
        yield words("{} overlap between strokes").format(words.phrase(stated.overlap))
    if at_job:
        return
    if stated.cross_coats is not None:
        number = stated.cross_coats
        form = words.translate.plural(
            "usually {number} cross coat", "usually {number} cross coats", number.high or number.low
        )
        yield form.format(number=words.phrase(number))
    if stated.flash_between_passes is not None:
        yield words("flash-off between cross coats {}").format(words.phrase(stated.flash_between_passes))


def part_used_pack(product: Product, words: Words) -> tuple[tuple[str, str], ...]:
    """How an opened can or tin is stored, and used again."""
    stated = product.application
    if stated is None:
        return ()
    can = product.pack.form is PackForm.AEROSOL
    named = (
        (words("Store a part-used can") if can else words("Store a part-used tin"), stated.put_away),
        (words("Reuse a part-used can") if can else words("Reuse a part-used tin"), stated.restart),
    )
    return tuple((name, text) for name, text in named if text)


def _drying(entry: Drying | Unstated, words: Words) -> tuple[str, str]:
    if isinstance(entry, Unstated):
        return _unstated(entry, words)
    return words.word(entry.stage), words.at(entry.time, entry.air, entry.humidity, entry.film)


def _unstated(entry: Unstated, words: Words) -> tuple[str, str]:
    """A time that the product states for warmer air alone is never printed as if it held."""
    return words.word(entry.kind), words("not stated for {}").format(words.phrase(entry.air))


def _dries(product: Product, air: Quantity | None, words: Words) -> Iterator[str]:
    """The same in lines: stages that are stated under the same conditions share one."""
    yield from (f"{name}: {text}" for name, text in cure(product, words))
    yield from _under([*drying_at(product, air), *sandable_at(product, air)], air, words)


def drying_line(product: Product, air: Quantity | None, words: Words, *, touched: bool, sanded: bool) -> str:
    """When the part may be `touched` and moved, and from when the film may be `sanded`, where `air` is the coldest, in a line; empty
    where that is not stated."""
    drying = [entry for entry in drying_at(product, air) if stage_of(entry) in _TOUCHED] if touched else []
    return " ".join(_under([*drying, *(sandable_at(product, air) if sanded else ())], air, words))


def _under(listed: Sequence[Drying | SandableAfter | Unstated], air: Quantity | None, words: Words) -> Iterator[str]:
    """A line for each set of conditions, with the times that hold under it: `Dust-free 30 min, dry to handle 13 h at ...`."""
    alike: dict[str, list[str]] = {}
    for entry in listed:
        if isinstance(entry, Unstated):
            kind: DryingStage | Sanding = entry.kind
            under = words("at {stated}, not stated for {air}").format(
                stated=words.phrase(entry.stated_at), air=words.phrase(entry.air)
            )
        else:
            kind = entry.stage if isinstance(entry, Drying) else entry.sanding
            # a time holds in warmer air too, and that of a job is seldom the coldest
            warm = (
                Range("temperature", entry.air, None)
                if air is not None and isinstance(entry.air, Quantity)
                else entry.air
            )
            told = words.conditions(warm, entry.humidity, entry.film)
            under = words("at {}").format(told) if told else ""
        alike.setdefault(under, []).append(f"{words.word(kind)} {words.phrase(entry.time)}")
    for under, said in alike.items():
        text = ", ".join(said)
        yield f"{text[:1].upper()}{text[1:]} {under}".strip() + "."


def _sandable(entry: SandableAfter | Unstated, words: Words) -> tuple[str, str]:
    if isinstance(entry, Unstated):
        return _unstated(entry, words)
    return words.word(entry.sanding), words.at(entry.time, entry.air, entry.humidity, entry.film)
