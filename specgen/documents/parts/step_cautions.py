"""The cautions at the step where they bite: said again where the work is described, for who reads only his own step.

Called by `build`, `application` and `method_statement`, and by the cards.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from specgen.documents.parts.caution_catalogue import AT_STEPS, StepCaution, Work
from specgen.documents.parts.hazard_lines import waste_code
from specgen.documents.parts.protection import usual_line, worn_parts
from specgen.documents.parts.wording import Words
from specgen.facts.job.air import unmeasured_clearance
from specgen.facts.pairs.parts import BLASTING
from specgen.facts.product.dangers import traits_of
from specgen.facts.product.protection import TASK_OF_STEP, worn_at
from specgen.model.application import Workplace
from specgen.model.hazards import Task
from specgen.model.preparation import Preparation, StepKind
from specgen.model.product import Product

_WASHES = (StepKind.WASH, StepKind.STEAM)


def cautions_at(
    task: Task,
    products: Sequence[Product],
    words: Words,
    *,
    place: Workplace | None,
    beside: Collection[Work] = (),
) -> tuple[str, ...]:
    """The cautions at a task, the gravest first, as finished sentences; one that not every product needs names which.

    First what holds for the kind of product, then what to wear, then air and cautions in the maker's own words. `beside`
    are traits of the work and not of a product: old paint, blasting. `place` is that of the work (`confined.place_of`), None
    where a document is for no job.
    """
    parts = (
        _standing(task, products, words, place, beside),
        _worn(task, products, words),
        makers_cautions(task, products, words),
    )
    return tuple(dict.fromkeys(text for part in parts for text in part))


def standing_at(
    task: Task,
    products: Sequence[Product],
    words: Words,
    *,
    place: Workplace | None,
    beside: Collection[Work] = (),
) -> tuple[str, ...]:
    """Of the cautions at a task only those for the kind of product and of work, said of all: for a card, which names no product."""
    traits = {"any", *beside, *(trait for product in products for trait in traits_of(product))}
    return tuple(
        _filled(caution, words, place) for caution in AT_STEPS if caution.task is task and caution.trait in traits
    )


def before_use(product: Product, words: Words, *, place: Workplace | None) -> tuple[str, ...]:
    """The cautions of one product from the opened pack to the last stroke; those of mixing say so."""
    spraying = cautions_at(Task.SPRAYING, [product], words, place=place)
    if "two-pack" not in traits_of(product):
        return spraying
    mixing = words.word(Task.MIXING)
    return (*(f"{mixing}: {text}" for text in cautions_at(Task.MIXING, [product], words, place=place)), *spraying)


def at_steps(
    preparation: Preparation, words: Words, *, place: Workplace | None, old_paint: bool, cleaners: str
) -> tuple[tuple[str, ...], ...]:
    """The cautions of every step of a preparation, in its order; each is said at the first step it bites at, lead at every one.

    No product of the job is on the part yet: the dust is that of metal and old paint, the vapour that of cleaners. `cleaners`
    says what to wear with those of the job (`work_wear.wear_for_cleaners`), and goes before usual practice.
    """
    told: set[str] = set()
    lead = {words(caution.text) for caution in AT_STEPS if caution.trait == "old-paint"}
    usual = words("Wear (common practice): {}.").format(usual_line(Task.SANDING, words))
    splashed = words("Wear (common practice): {}.").format(usual_line(Task.PREPARATION, words))
    cautions: list[tuple[str, ...]] = []
    for step in preparation.steps:
        task = TASK_OF_STEP.get(step.do)
        beside: set[Work] = {"old-paint"} if old_paint else set()
        if step.do in BLASTING:
            beside.add("blasting")
        texts = cautions_at(task, (), words, place=place, beside=beside) if task is not None else ()
        if step.do in BLASTING:
            # usual practice for sanding is a filter mask, which does not do beside the helmet for blasting
            texts = tuple(text for text in texts if text != usual)
        if step.do in _WASHES:
            # water and what is in it does not burn
            texts = (splashed,)
        if step.do in (StepKind.DEGREASE, *_WASHES) and cleaners:
            texts = tuple(cleaners if text == splashed else text for text in texts)
        new = tuple(text for text in texts if text not in told)
        # where what is said again of old paint is all, the rest is said with it: the step would seem to need no more
        cautions.append(texts if new and set(new) <= lead else new)
        # what old paint may hold is said at each step that makes dust of it, what is worn for a cleaner wherever one is used
        told.update(set(texts) - lead - {cleaners})
    return tuple(cautions)


def standing_by_product(
    task: Task,
    products: Sequence[Product],
    words: Words,
    *,
    place: Workplace | None,
    beside: Collection[Work] = (),
) -> Iterator[tuple[tuple[Product, ...], str]]:
    """The cautions at a task for the kind of product, with the products each is for; with none for one of the work itself."""
    for caution in AT_STEPS:
        if caution.task is not task:
            continue
        if caution.trait == "any" or caution.trait in beside:
            yield (), _filled(caution, words, place)
        elif owners := tuple(product for product in products if caution.trait in traits_of(product)):
            yield owners, _filled(caution, words, place)


def _standing(
    task: Task, products: Sequence[Product], words: Words, place: Workplace | None, beside: Collection[Work]
) -> Iterator[str]:
    for owners, text in standing_by_product(task, products, words, place=place, beside=beside):
        yield _of(owners, products, text) if owners else text


def _filled(caution: StepCaution, words: Words, place: Workplace | None) -> str:
    text = caution.text if place is None else caution.at.get(place, caution.text)
    return words(text).replace("{time}", unmeasured_clearance())


def _worn(task: Task, products: Sequence[Product], words: Words) -> Iterator[str]:
    stated: dict[str, list[Product]] = {}
    for product in products:
        if worn := worn_parts(product, task, words):
            stated.setdefault(worn, []).append(product)
    for worn, owners in stated.items():
        yield _of(owners, products, words("Wear: {}.").format(worn.rstrip(".")))
    # a product that states nothing is not spoken for by one that does
    others = [product for product in products if not worn_at(product, task)]
    if (others or not products) and (usual := usual_line(task, words)):
        yield _of(others, products, words("Wear (common practice): {}.").format(usual))


def makers_cautions(task: Task, products: Sequence[Product], words: Words) -> Iterator[str]:
    """Air and cautions of the task in the maker's own words, which are among those of `cautions_at`."""
    owners_of: dict[str, list[Product]] = {}
    for product in products:
        stated = product.hazards
        if stated is None:
            continue
        texts = [caution.text for caution in stated.cautions if caution.task is task]
        if task is Task.SPRAYING and stated.ventilation:
            texts.insert(0, stated.ventilation)
        if task is Task.CLEAN_UP:
            texts += [stated.disposal] if stated.disposal else []
            codes = ", ".join(map(waste_code, stated.waste_codes))
            texts += [words("Waste codes: {}.").format(codes)] if codes else []
        for text in texts:
            owners_of.setdefault(text, []).append(product)
    for text, owners in owners_of.items():
        yield _of(owners, products, text)


def _of(owners: Sequence[Product], products: Sequence[Product], text: str) -> str:
    return text if len(owners) == len(products) else f"{', '.join(product.name for product in owners)}: {text}"
