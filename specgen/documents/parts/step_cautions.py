"""The cautions at the step where they bite: said again where the work is described, for who reads only his own step.

Called by `build`, `application` and `method_statement`, and by the cards.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence

from specgen.documents.parts.caution_catalogue import AT_STEPS, StepCaution, Trait
from specgen.documents.parts.protection import usual_line, worn_at
from specgen.documents.parts.wording import Words
from specgen.facts.product.hazard_facts import epoxy_in, isocyanates_in
from specgen.model.hazards import Task
from specgen.model.preparation import Preparation, StepKind
from specgen.model.product import CuringKind, PackForm, Product
from specgen.trade.room import posted_clearance

_BURNS = frozenset({"H220", "H221", "H222", "H223", "H224", "H225", "H226", "H227", "H228"})

# What is not known counts as held: a caution too many does no harm.
_HAS: Mapping[Trait, Callable[[Product], bool]] = {
    "aerosol": lambda product: product.pack.form is PackForm.AEROSOL,
    "burns": lambda product: product.hazards is not None and bool(_BURNS & set(product.hazards.statements)),
    "isocyanate": lambda product: isocyanates_in(product) is not False,
    "epoxy": lambda product: epoxy_in(product) is not False,
    "oxidative": lambda product: product.curing is CuringKind.OXIDATIVE,
    "two-pack": lambda product: product.curing is CuringKind.LIQUID_TWO_PACK,
}

_BLASTING = frozenset({StepKind.BLAST, StepKind.SWEEP})

_TASK_OF_STEP: Mapping[StepKind, Task] = {
    StepKind.DEGREASE: Task.PREPARATION,
    StepKind.STRIP: Task.PREPARATION,
    StepKind.BLAST: Task.SANDING,
    StepKind.SWEEP: Task.SANDING,
    StepKind.HAND_TOOL: Task.SANDING,
    StepKind.POWER_TOOL: Task.SANDING,
    StepKind.SAND: Task.SANDING,
    StepKind.FEATHER: Task.SANDING,
}


def cautions_at(
    task: Task, products: Sequence[Product], words: Words, *, beside: Collection[Trait] = ()
) -> tuple[str, ...]:
    """The cautions at a task, the gravest first, as finished sentences; one that not every product needs names which.

    First what holds for the kind of product, then what to wear, then air and cautions in the maker's own words. `beside`
    are traits of the work and not of a product: old paint, blasting.
    """
    found = [
        *_standing(task, products, words, beside),
        *_worn(task, products, words),
        *_own(task, products, words),
    ]
    return tuple(dict.fromkeys(found))


def standing_at(task: Task, products: Sequence[Product], words: Words) -> tuple[str, ...]:
    """Of the cautions at a task only those for the kind of product, said of all: for a card with no room for names."""
    return tuple(
        _filled(caution, words)
        for caution in AT_STEPS
        if caution.task is task
        and (caution.trait == "any" or any(_has(caution.trait, product) for product in products))
    )


def before_use(product: Product, words: Words) -> tuple[str, ...]:
    """The cautions of one product from the opened pack to the last stroke; those of mixing say so."""
    spraying = cautions_at(Task.SPRAYING, [product], words)
    if not _HAS["two-pack"](product):
        return spraying
    mixing = words.word(Task.MIXING)
    return (*(f"{mixing}: {text}" for text in cautions_at(Task.MIXING, [product], words)), *spraying)


def at_steps(preparation: Preparation, words: Words, *, old_paint: bool) -> tuple[tuple[str, ...], ...]:
    """The cautions of every step of a preparation, in its order; each is said at the first step it bites at, lead at every one.

    No product of the job is on the part yet: the dust is that of metal and old paint, the vapour that of cleaners.
    """
    said: set[str] = set()
    lead = {words(caution.text) for caution in AT_STEPS if caution.trait == "old-paint"}
    usual = words("Wear, by usual practice: {}.").format(usual_line(Task.SANDING, words))
    found: list[tuple[str, ...]] = []
    for step in preparation.steps:
        task = _TASK_OF_STEP.get(step.do)
        beside: set[Trait] = {"old-paint"} if old_paint else set()
        if step.do in _BLASTING:
            beside.add("blasting")
        texts = cautions_at(task, (), words, beside=beside) if task is not None else ()
        if step.do in _BLASTING:
            # usual practice for sanding is a filter mask, which does not do beside the helmet for blasting
            texts = tuple(text for text in texts if text != usual)
        found.append(tuple(text for text in texts if text not in said))
        # what old paint may hold is said at each step that makes dust of it
        said.update(set(texts) - lead)
    return tuple(found)


def _standing(task: Task, products: Sequence[Product], words: Words, beside: Collection[Trait]) -> Iterator[str]:
    for caution in AT_STEPS:
        if caution.task is not task:
            continue
        held = _HAS.get(caution.trait)
        if held is None:
            if caution.trait == "any" or caution.trait in beside:
                yield words(caution.text)
            continue
        owners = [product for product in products if held(product)]
        if owners:
            yield _of(owners, products, _filled(caution, words))


def _has(trait: Trait, product: Product) -> bool:
    return trait in _HAS and _HAS[trait](product)


def _filled(caution: StepCaution, words: Words) -> str:
    return words(caution.text).replace("{time}", posted_clearance("open workshop, not measured"))


def _worn(task: Task, products: Sequence[Product], words: Words) -> Iterator[str]:
    stated: dict[str, list[Product]] = {}
    for product in products:
        if worn := worn_at([product], task):
            stated.setdefault(worn, []).append(product)
    for worn, owners in stated.items():
        yield _of(owners, products, words("Wear: {}.").format(worn.rstrip(".")))
    if not stated and (usual := usual_line(task, words)):
        yield words("Wear, by usual practice: {}.").format(usual)


def _own(task: Task, products: Sequence[Product], words: Words) -> Iterator[str]:
    said: dict[str, list[Product]] = {}
    for product in products:
        stated = product.hazards
        if stated is None:
            continue
        texts = [caution.text for caution in stated.cautions if caution.task is task]
        if task is Task.SPRAYING and stated.ventilation:
            texts.insert(0, stated.ventilation)
        if task is Task.CLEAN_UP:
            texts += [stated.disposal] if stated.disposal else []
            codes = ", ".join(stated.waste_codes)
            texts += [words("Waste codes: {}.").format(codes)] if codes else []
        for text in texts:
            said.setdefault(text, []).append(product)
    for text, owners in said.items():
        yield _of(owners, products, text)


def _of(owners: Sequence[Product], products: Sequence[Product], text: str) -> str:
    return text if len(owners) == len(products) else f"{', '.join(product.name for product in owners)}: {text}"
