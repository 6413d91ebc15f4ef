"""What the overcoating tables ask of old paint that stays on a part, besides what the preparation says already.

Called by `repair`, which prints it where it lists what is on the part.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.documents.method_statement.conditions import Asked, Condition, conditions, names_papers, refusal, unlisted
from specgen.documents.parts.wording import Words
from specgen.facts.job.stack import Stack
from specgen.facts.pairs.answers import DULLING
from specgen.facts.pairs.families import paint_name
from specgen.facts.pairs.old_paint import TopPair, answered, citation_of, pass_limits, top_pair
from specgen.facts.pairs.overcoat import Overcoating, Verdict
from specgen.facts.pairs.papers import papers_on_old_paint
from specgen.model.job import Job, PatchResult
from specgen.model.preparation import PreparationStep, StepKind
from specgen.model.spec import Spec
from specgen.standards.tables import table

_RUB = re.compile(r"\b(rub|MEK|acetone)", re.IGNORECASE)
_PATCH = re.compile(r"\b(patch|whole system)", re.IGNORECASE)
# The order of the work: what is tested, cleaned, sanded, and what is laid between.
_ORDER = ("patch_test", "sound", "aged_hard", "remove", "degrease", "abrade", "sand", "sweep")


def over_old_paint(stack: Stack, job: Job, spec: Spec, words: Words) -> tuple[Condition, ...]:
    """The steps for one item in the order of the work; none where no old coat stays."""
    if stack.top_of_old is None or stack.first is None:
        return ()
    preparation = spec.preparation_of(job, stack.item)
    steps = preparation.steps if preparation is not None else ()
    return (
        *_unknown(stack, steps, words),
        *_tested(stack, words),
        *_asked(stack, job, spec, steps, words),
        *_not_too_thick(stack, words),
    )


def _unknown(stack: Stack, steps: tuple[PreparationStep, ...], words: Words) -> Iterator[Condition]:
    top = stack.top_of_old
    if top is None or top.family is not None or top.coat.rub is not None or _says(steps, _RUB):
        return
    told = "; ".join(
        words("{class_} ({sign}): {action}").format(
            class_=words(row["id"]), sign=words(row["sign"]), action=words(row["action"])
        )
        for row in table("rub_test_classes").rows
    )
    text = words(
        "The existing coating is of unknown type: carry out a solvent rub on a small area with a white cloth "
        "wetted with MEK or acetone. {told}."
    )
    yield Condition(text.format(told=told), words(str(citation_of("rub_test"))))
    if stack.item.patch_test is None and not _says(steps, _PATCH):
        yield _patch(words)


def _not_too_thick(stack: Stack, words: Words) -> Iterator[Condition]:
    limit = stack.item.strip_limit
    if limit is not None:
        text = words(
            "Measure the thickness of the existing coating. Existing and new coats together must not exceed {}; "
            "where they would, strip the existing coating."
        )
        yield Condition(text.format(words.phrase(limit)), "")


def _tested(stack: Stack, words: Words) -> Iterator[Condition]:
    test = stack.item.patch_test
    if test is None:
        return
    result = words("passed") if test.result is PatchResult.PASS else words("failed")
    text = words("A test patch of this system on this existing coating has {result}.").format(result=result)
    if test.limit is not None:
        text = words("{text} Acceptance criterion used: {limit}").format(text=text, limit=test.limit)
    yield Condition(text, "")


def _asked(stack: Stack, job: Job, spec: Spec, steps: tuple[PreparationStep, ...], words: Words) -> Iterator[Condition]:
    pair = top_pair(stack)
    if pair is None:
        return
    told = refusal(pair.verdict, words)
    if told is not None:
        if not pair.proven:
            yield told
        return
    if pair.verdict.verdict is Verdict.NOT_LISTED:
        if not pair.proven and not _says(steps, _PATCH):
            yield unlisted(words(paint_name(pair.verdict.new)), words(paint_name(pair.verdict.old)), words)
        return
    asked = Asked(old=words("the existing coating"), papers=papers_on_old_paint(pair.old.family, pair.new.layer.role))
    found = conditions(_without_window(pair.verdict), _met(pair, job, spec, steps), asked, words)
    yield from (condition for _, condition in sorted(found, key=lambda entry: _place(entry[0])))


def _met(pair: TopPair, job: Job, spec: Spec, steps: tuple[PreparationStep, ...]) -> frozenset[str]:
    """What the preparation and the item answer, as ids of overcoat_needs."""
    met = answered(pair, job, spec)
    if not names_papers(steps) and not {step.do for step in steps} & {StepKind.BLAST, StepKind.SWEEP}:
        met -= DULLING  # a step that sands without a paper leaves the condition half said
    return met | {"patch_test"} if _says(steps, _PATCH) else met


def _without_window(verdict: Overcoating) -> Overcoating:
    """The verdict for paint that has no window left: of a choice that begins with it, the rest remains."""
    left = (tuple(need for need in choice if need != "in_window") for choice in verdict.needs)
    return verdict._replace(needs=tuple(choice for choice in left if choice))


def _patch(words: Words) -> Condition:
    text = words(
        "Apply a test patch of the full system to the existing coating, prepared as described here. "
        "Acceptance criterion: {limits}."
    )
    return Condition(text.format(limits=words(pass_limits())), words(str(citation_of("patch_test"))))


def _says(steps: tuple[PreparationStep, ...], what: re.Pattern[str]) -> bool:
    return any(step.do is StepKind.TEST and what.search(step.text) for step in steps)


def _place(choice: tuple[str, ...]) -> int:
    return _ORDER.index(choice[0]) if choice[0] in _ORDER else len(_ORDER)
