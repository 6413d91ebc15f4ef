"""The rows of the work in order that are steps: of a preparation, of a coat and of what is done to it before the next. Called by `work`."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from specgen.documents.method_statement.conditions import Condition
from specgen.documents.method_statement.open_coats import BY_SHEET
from specgen.documents.parts.application import ApplicationStep, ApplicationView
from specgen.documents.parts.coats import CoatView
from specgen.documents.parts.preparation import StepView, grade_in_full
from specgen.documents.parts.step_cautions import cautions_at
from specgen.documents.parts.wording import Words
from specgen.facts.job.confined import place_of
from specgen.facts.pairs.answers import says_sanding
from specgen.model.hazards import Task
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.stand_in import StandIn

_WASHES = re.compile(r"\b(?:wash|rins|wip)(?:e|es|ed|ing)?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkRow:
    """A step, or an inspection in its place: at a hold point the work stops. `number` is that of the step or of the point.

    `text` is Markdown where `prose` says so; `lines` stand below it. `safety` and `done` are finished sentences; `brief` is the
    first of `done` in one unit, for the table of the sequence; empty where another table tells it. `refers` where `safety` sends the
    reader to an earlier step.
    """

    kind: Literal["step", "point", "hold"]
    number: str
    title: str
    text: str = ""
    prose: bool = False
    lines: tuple[str, ...] = ()
    source: str = ""
    safety: tuple[str, ...] = ()
    done: tuple[str, ...] = ()
    brief: str | None = None
    refers: bool = False


def prepare(steps: Sequence[StepView], handed_over: Sequence[tuple[str, str]], words: Words) -> Iterator[WorkRow]:
    for step in steps:
        grade = words("to {grade}").format(grade=grade_in_full(step.grade, words)) if step.grade else ""
        abrasive = words("with {abrasive}").format(abrasive=step.abrasive) if step.abrasive else ""
        yield WorkRow(
            kind="step",
            number="",
            title=" ".join(part for part in (step.title, grade, abrasive) if part),
            text=step.text,
            prose=True,
            lines=(f"{step.limits}.",) if step.limits else (),
            source=step.source,
            safety=step.cautions,
            done=(step.acceptance,) if step.acceptance else (),
        )
    if handed_over:
        yield WorkRow(
            kind="step",
            number="",
            title=words("Check the prepared surface"),
            done=tuple(f"{name}: {text}" for name, text in handed_over),
        )


def treat(steps: Sequence[Condition], below: Product, job: Job, words: Words) -> Iterator[WorkRow]:
    """What is done to a coat before the next; the first row says what its dust does, and how far a step may go stands beside it."""
    rows: list[WorkRow] = []
    for step in steps:
        if step.limit and rows:
            rows[-1] = replace(rows[-1], done=(*rows[-1].done, step.text))
            continue
        rows.append(
            WorkRow(
                kind="step",
                number="",
                title="" if rows else words("Before the next coat"),
                text=step.text,
                source=step.source,
                safety=() if rows or _washed_alone(steps) else sanding(below, job, words),
            )
        )
    yield from rows


def _washed_alone(steps: Sequence[Condition]) -> bool:
    """True where a coat is washed or wiped and nothing makes dust of it."""
    texts = [step.text for step in steps if not step.limit]
    return all(_WASHES.search(text) and not says_sanding(text) for text in texts)


def sanding(product: Product, job: Job, words: Words) -> tuple[str, ...]:
    """The cautions of sanding a coat of the product."""
    if isinstance(product, StandIn):
        return (words(BY_SHEET),)
    return cautions_at(Task.SANDING, [product], words, place=place_of(job))


def apply(
    coat: CoatView,
    applied: ApplicationView,
    product: Product,
    job: Job,
    described: str | None,
    wet: Sequence[WorkRow],
    words: Words,
) -> Iterator[WorkRow]:
    """From shaking to the cleared valve, `wet` the inspections of the wet film among it. A product that was described before is only
    applied again, as it was there."""
    place = place_of(job)
    passes_said = coat.passes.replace("\n", " ")
    done = _done(coat, words)
    if described is not None:
        yield WorkRow(
            kind="step",
            number="",
            title=words("Apply"),
            text=words("{passes}. Otherwise as from step {step}.")
            .format(passes=passes_said, step=described)
            .lstrip(". "),
            safety=(words("Same precautions and protective equipment as from step {}.").format(described),),
            done=done,
            refers=True,
        )
        yield from wet
        return
    told: set[Task] = set()
    steps = applied.steps
    if all(step.task is not Task.SPRAYING for step in steps):
        steps = (*steps, ApplicationStep(words("Apply"), "", Task.SPRAYING))
    for step in steps:
        applies = step.task is Task.SPRAYING
        if applies and Task.MIXING not in told:
            safety = applied.cautions  # a two-pack for which no mixing is stated is opened all the same
        elif step.task is not None and step.task not in told:
            safety = cautions_at(step.task, [product], words, place=place)
        else:
            safety = ()
        if step.task is not None:
            told.add(step.task)
        yield WorkRow(
            kind="step",
            number="",
            title=step.heading,
            text=". ".join(part for part in (passes_said, step.text) if part) if applies else step.text,
            prose=not applies,
            safety=safety,
            done=done if applies else (),
        )
        if applies:
            yield from wet
            wet = ()
    if applied.part_used or applied.dries:
        yield WorkRow(
            kind="step",
            number="",
            title=words("Leave to dry"),
            lines=tuple(f"{name}: {text}" for name, text in applied.part_used),
            done=applied.dries,
        )


def apply_chosen(coat: CoatView, words: Words) -> Iterator[WorkRow]:
    """The one step of a coat whose product is not chosen: how it is mixed and sprayed follows from its data sheet."""
    text = words("{passes}. Otherwise according to the product data sheet of the product chosen.")
    yield WorkRow(
        kind="step",
        number="",
        title=words("Apply"),
        text=text.format(passes=coat.passes.replace("\n", " ")).lstrip(". "),
        safety=(words(BY_SHEET),),
        done=_done(coat, words),
    )


def _done(coat: CoatView, words: Words) -> tuple[str, ...]:
    film = (
        words("WFT {film} {of_what}").format(film=coat.wet, of_what=coat.wet_of) if coat.wet else "",
        words("DFT {}").format(coat.film) if coat.film else "",
    )
    return tuple(part for part in film if part)
