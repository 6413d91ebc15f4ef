"""One side of a job card: the work of one build in its order, with what is written down at each coat.

Called by `job_card`. The figures are those of `coats`, which the method statement prints too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.parts.climate import climate
from specgen.documents.parts.coats import CoatView, Wait, coats, waits
from specgen.documents.parts.inspection import limits
from specgen.documents.parts.preparation import steps
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import Build
from specgen.facts.job.inspected import points_on
from specgen.facts.job.quantities import Quantities
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.model.job import Job
from specgen.model.preparation import StepKind
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """What a card still holds: texts of steps, checks that do not stop the work, what is done between coats and once a
    wait is past, the list of parts, the climate. No text is longer than `longest` characters."""

    room: str
    step_texts: bool = True
    checks: bool = True
    between: bool = True
    parts: bool = True
    climate: bool = True
    longest: int = 240

    @property
    def shortens(self) -> bool:
        """True where something of the method statement is left out."""
        return not (self.step_texts and self.checks and self.between and self.parts and self.climate)


# Rooms in which every line counts.
_CRAMPED = {"close", "tight"}


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure in its author's unit, and the same in the second unit, in brackets or empty."""

    first: str
    second: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CardCheck:
    """A point of inspection; at a hold point the work stops until it is signed."""

    check: str
    passes: str
    hold: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWait:
    """The wait before `comes`; a limit that is not stated is empty."""

    comes: str
    not_before: str
    not_later: str
    late: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CardCoat:
    """`films` are (name, figure), the wet film of a cross coat or coat first; `wait` is None where the sources state none.

    `wear` is what protects while the coat is sprayed. It is never cut short; a cramped card names the breathing
    protection alone, for that is what cannot be made good afterwards.
    """

    name: str
    product: str
    passes: str
    films: tuple[tuple[str, Figure], ...]
    checks: tuple[CardCheck, ...]
    wear: str
    before_next: str
    wait: CardWait | None
    last: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSide:
    """The work of one build. `build` is empty where the job has only one; `room` is roomy, plain, close or tight."""

    build: str
    room: str
    shortened: bool
    climate: tuple[tuple[str, str], ...]
    parts: tuple[str, ...]
    masked: str
    preparation: str
    steps: tuple[tuple[str, str], ...]
    at_first: tuple[CardCheck, ...]
    prepared: tuple[CardCheck, ...]
    applying: tuple[CardCheck, ...]
    first_wait: CardWait | None
    coats: tuple[CardCoat, ...]
    finished: tuple[CardCheck, ...]
    last_waits: tuple[CardWait, ...]


def card_side(
    build: Build, job: Job, spec: Spec, figures: Quantities, cut: Cut, words: Words, *, several: bool
) -> CardSide:
    """The side of one build, cut as asked for."""
    listed = coats(build.system, spec, figures, words)
    held = waits(build.system, build.preparation, job, spec, words)
    names = {coat.name for coat in listed}
    to_coats = {wait.comes: _wait(wait, cut, words) for wait in held if wait.comes in names}
    masked = dict.fromkeys(entry.what for item in build.items for entry in item.masked)
    title = words("System {letter}: {title}").format(letter=build.letter, title=build.system.title)

    own = points_on(build.items, job, spec)

    def at(*stages: Stage | None) -> tuple[CardCheck, ...]:
        return _checks([point for point in own if point.after is None and point.at in stages], cut, words)

    return CardSide(
        build=_short(title, cut) if several else "",
        room=cut.room,
        shortened=cut.shortens,
        climate=climate(job.climate, words) if cut.climate else (),
        parts=tuple(_parts(build, cut, words)),
        masked=_short("; ".join(masked), cut) if cut.parts else "",
        preparation=_short(build.preparation.title, cut),
        steps=tuple(_steps(build, cut, words)),
        at_first=at(Stage.RECEIPT),
        prepared=at(Stage.PREPARED),
        applying=at(Stage.APPLICATION),
        first_wait=to_coats.get(listed[0].name) if listed else None,
        coats=tuple(_coats(listed, to_coats, build, own, cut, words)),
        finished=at(Stage.COMPLETION, None),
        last_waits=tuple(_wait(wait, cut, words) for wait in held if wait.comes not in names),
    )


def _parts(build: Build, cut: Cut, words: Words) -> Iterator[str]:
    if cut.parts:
        yield from (_short(f"{item.count} × {item.id} {item.name}", cut) for item in build.items)
    else:
        many = sum(item.count for item in build.items)
        yield words("{many} parts of {kinds} types, listed in the method statement").format(
            many=many, kinds=len(build.items)
        )


def _steps(build: Build, cut: Cut, words: Words) -> Iterator[tuple[str, str]]:
    for step in steps(build.preparation, words):
        grade = words("to {grade}").format(grade=step.grade) if step.grade else ""
        title = ", ".join(part for part in (step.title, grade, step.abrasive) if part)
        if cut.step_texts:
            yield _short(title, cut), _short(step.text, cut)
            continue
        # without its text a test says nothing, and a blast not how deep
        told = step.limits or (step.acceptance if title == words.word(StepKind.TEST) else "")
        yield f"{_short(title, cut)}: {told}" if told else _short(title, cut), ""


def _coats(
    listed: Sequence[CoatView],
    to_coats: dict[str, CardWait],
    build: Build,
    points: Sequence[InspectionPoint],
    cut: Cut,
    words: Words,
) -> Iterator[CardCoat]:
    before_next = {layer.id: layer.before_next or "" for layer in build.system.layers}
    above = [*listed[1:], None]
    for coat, following in zip(listed, above, strict=True):
        films = (
            (words("WFT {of_what}").format(of_what=coat.wet_of), coat.wet),
            (words("DFT min."), coat.least),
            (words("DFT nominal"), coat.nominal),
            (words("DFT max."), coat.most),
        )
        yield CardCoat(
            name=coat.name,
            product=_short(", ".join(part for part in (coat.product, coat.variant, coat.order_number) if part), cut),
            passes=coat.passes.replace("\n", " "),
            films=tuple((name, _figure(text)) for name, text in films),
            checks=_checks([point for point in points if point.after == coat.layer], cut, words),
            wear=coat.breathing if cut.room in _CRAMPED else coat.wear,
            before_next=_short(before_next[coat.layer], cut) if cut.between else "",
            wait=to_coats.get(following.name) if following is not None else None,
            last=following is None,
        )


def _checks(points: Sequence[InspectionPoint], cut: Cut, words: Words) -> tuple[CardCheck, ...]:
    return tuple(
        CardCheck(
            check=_short(point.check, cut),
            passes=_in_a_line(point, cut, words),
            hold=point.hold_point,
        )
        for point in points
        if point.hold_point or cut.checks
    )


def _in_a_line(point: InspectionPoint, cut: Cut, words: Words) -> str:
    """What passes as sentences: the limits in one, which is never cut, then as much of the text as there is room for."""
    figures = ", ".join(limits(point.criterion, words))
    sentence = f"{figures[:1].upper()}{figures[1:]}." if figures else ""
    text = point.criterion.text or ""
    if sentence and len(sentence) + len(text) > cut.longest:
        return sentence
    return f"{sentence} {_short(text, cut)}".strip()


def _wait(wait: Wait, cut: Cut, words: Words) -> CardWait:
    late = _short(wait.late, cut) if cut.between else words("see the method statement")
    if not wait.late:
        late = words("not stated: call before proceeding") if wait.not_later else ""
    return CardWait(comes=wait.comes, not_before=wait.not_before, not_later=wait.not_later, late=late)


def _figure(text: str) -> Figure:
    first, bracket, second = text.partition(" (")
    return Figure(first, f"({second}" if bracket else "")


def _short(text: str, cut: Cut) -> str:
    """The text, ended at a blank with … where it is too long for this card."""
    if len(text) <= cut.longest:
        return text
    whole = text[: cut.longest]
    return f"{whole.rpartition(' ')[0] or whole}…"
