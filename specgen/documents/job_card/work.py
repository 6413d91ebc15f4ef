"""The front of a job card: the work of one build in its order, each hold point and wait in its place.

Called by `job_card`. The figures are those of `coats`, which the method statement prints too.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from specgen.documents.job_card.records import points_read
from specgen.documents.job_card.wear import Worked, breathing, cautions, wear_table
from specgen.documents.parts.application import application_at, drying_line, part_used_pack
from specgen.documents.parts.climate import climate
from specgen.documents.parts.coats import CoatView, Wait, coats, ordered_in_a_line, taken_off, waits
from specgen.documents.parts.inspection import accepted, limits, method_of, run_on
from specgen.documents.parts.items import number_of
from specgen.documents.parts.pictures import marked
from specgen.documents.parts.preparation import grade_in_full, steps
from specgen.documents.parts.step_cautions import at_steps
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import wear_for_cleaners
from specgen.facts.job.builds import Build
from specgen.facts.job.confined import place_of
from specgen.facts.job.inspected import numbers_of, points_on
from specgen.facts.job.points import once_sanded
from specgen.facts.job.quantities import Quantities
from specgen.facts.layer.intervals import air_of
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import Spec

Pairs = tuple[tuple[str, str], ...]

# What a painter looks for at his coat, by the names that `application_at` gives it.
_LOOKED_UP = ("Shake", "Shake again", "Mix", "Nozzle", "Spray", "Pot life")


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure in its author's unit, and the same in the second unit, in brackets or empty."""

    first: str
    second: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CardStep:
    """A step of preparation to be ticked; `text` is Markdown, `done` what it has to show, `safety` the cautions at it."""

    title: str
    text: str
    limits: str
    done: str
    safety: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CardCheck:
    """A point of inspection, by its number in the plan; at a hold point the work stops until it is signed.

    `method` and what the counting rule accepts stand over the boxes for the readings, on the back, where there are some.
    """

    number: str
    check: str
    method: str
    passes: str
    if_failed: str
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

    `looked_up` are the settings that are looked for at the vehicle, (name, text), the name empty where the text begins with it;
    `applied` is the rest of how it is applied. `breathing` is what is breathed through while spraying, `safety` what this coat
    needs beside the cautions of every coat. `dries` says when the coat may be touched and handled before the next one, and
    stands in `before_next` where that has words. `checks` look at the coat as applied, `sanded` once `before_next` is done: what the
    author asks for, from when, and how much it may take off.
    """

    name: str
    product: str
    passes: str
    films: tuple[tuple[str, Figure], ...]
    looked_up: Pairs
    applied: Pairs
    breathing: str
    safety: tuple[str, ...]
    dries: str
    checks: tuple[CardCheck, ...]
    before_next: str
    sanded: tuple[CardCheck, ...]
    wait: CardWait | None
    last: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWork:
    """The work of one build; `every_coat` and `cautions`, (task, sentences), are what holds for each of its coats, `wear` what is
    worn at them."""

    climate: Pairs
    parts: tuple[str, ...]
    masked: str
    preparation: str
    steps: tuple[CardStep, ...]
    at_first: tuple[CardCheck, ...]
    prepared: tuple[CardCheck, ...]
    applying: tuple[CardCheck, ...]
    first_wait: CardWait | None
    wear: TableView
    every_coat: Pairs
    cautions: Pairs
    coats: tuple[CardCoat, ...]
    finished: tuple[CardCheck, ...]
    last_waits: tuple[CardWait, ...]
    part_used: Pairs


def card_work(build: Build, job: Job, spec: Spec, figures: Quantities, words: Words) -> CardWork:
    """The front of one build, whole."""
    listed = coats(build.painted, spec, figures, words)
    held = waits(build.system, build.preparation, job, spec, words)
    names = {coat.name for coat in listed}
    to_coats = {wait.comes: _wait(wait, words) for wait in held if wait.comes in names}
    masked = dict.fromkeys(entry.what for item in build.items for entry in item.masked)
    points = Points(build, job, spec, words.with_one_film())
    worked = [
        Worked(coat=coat.name, product=spec.product_of(layer), sanded=bool(layer.before_next) or _late(above, to_coats))
        for coat, layer, above in zip(listed, build.system.layers, [*listed[1:], None], strict=True)
    ]
    told: dict[str, str] = {}
    prepare = tuple(_steps(build, job, told, words))
    at_every, own = cautions(worked, place_of(job), told, words)
    sought = {words(name) for name in _LOOKED_UP}
    every_coat = _of_all([_applied(one.product, job, words) for one in worked], sought)
    coated = tuple(_coats(listed, worked, to_coats, build, job, spec, points, own, every_coat, words))
    return CardWork(
        climate=climate(job.climate, words.in_one_unit()),
        parts=tuple(f"{number_of(item, words)} × {item.id} {item.name}" for item in build.items),
        masked="; ".join(masked),
        preparation=build.preparation.title,
        steps=prepare,
        at_first=points.at(Stage.RECEIPT),
        prepared=points.at(Stage.PREPARED),
        applying=points.at(Stage.APPLICATION),
        first_wait=to_coats.get(listed[0].name) if listed else None,
        wear=wear_table(worked, words),
        every_coat=every_coat,
        cautions=at_every,
        coats=coated,
        finished=points.at(Stage.COMPLETION, None),
        last_waits=tuple(_wait(wait, words) for wait in held if wait.comes not in names),
        part_used=tuple(_part_used(listed, build, spec, words)),
    )


class Points:
    """The inspections of a build as the card prints them."""

    def __init__(self, build: Build, job: Job, spec: Spec, words: Words) -> None:
        self._numbers = numbers_of(job)
        self._build, self._job, self._spec, self._words = build, job, spec, words
        self._own = points_on(build.items, job, spec)
        self._read = {point.id for point in points_read(self._own, job)}

    def at(self, *stages: Stage | None) -> tuple[CardCheck, ...]:
        return self._checks(point for point in self._own if point.after is None and point.at in stages)

    def after(self, layer: str, *, sanded: bool) -> tuple[CardCheck, ...]:
        return self._checks(point for point in self._own if point.after == layer and once_sanded(point) == sanded)

    def _checks(self, points: Iterator[InspectionPoint]) -> tuple[CardCheck, ...]:
        return tuple(
            CardCheck(
                number=self._numbers[point.id],
                check=self._named(point),
                method="" if point.id in self._read else run_on(method_of(point, self._words)),
                passes=_in_a_line(point, self._job, self._spec, self._words, ruled=point.id not in self._read),
                if_failed=point.if_failed or "",
                hold=point.hold_point,
            )
            for point in points
        )

    def _named(self, point: InspectionPoint) -> str:
        """What is inspected, on which parts, and at which marks of which figure."""
        mine = [item.id for item in self._build.items]
        # the card names its own parts, and only where the point leaves some of them out
        own = ", ".join(item for item in mine if item in point.items)
        where = (
            own if any(item not in point.items for item in mine) else "",
            marked(point, self._job, self._spec, self._words),
        )
        said = ", ".join(text for text in where if text)
        return point.check + (f" ({said})" if said else "")


def _late(above: CoatView | None, to_coats: Mapping[str, CardWait]) -> bool:
    """Whether something is done to a coat that has waited too long for the one above it."""
    wait = to_coats.get(above.name) if above is not None else None
    return wait is not None and bool(wait.late)


def _steps(build: Build, job: Job, told: dict[str, str], words: Words) -> Iterator[CardStep]:
    """The steps, a grade told in full the first time; what they caution against is noted in `told` with the name of the step, to which
    a later one that needs the same sends."""
    graded: set[str] = set()
    old_paint = any(item.old_coats for item in build.items)
    cautions = at_steps(
        build.preparation,
        words,
        place=place_of(job),
        old_paint=old_paint,
        cleaners=wear_for_cleaners(job, words),
    )
    for step in steps(build.preparation, words, cautions):
        earlier = dict.fromkeys(told[text] for text in step.cautions if text in told)
        said_before = len(earlier) == 1 and all(text in told for text in step.cautions)
        refers = words("The precautions under {} apply here too.").format(*earlier) if said_before else ""
        for text in step.cautions:
            told.setdefault(text, step.title)
        named = grade_in_full(step.grade, words) if step.grade and step.grade not in graded else step.grade
        graded.add(step.grade)
        grade = words("to {grade}").format(grade=named) if step.grade else ""
        yield CardStep(
            title=", ".join(part for part in (step.title, grade, step.abrasive) if part),
            text=step.text,
            limits=step.limits,
            done=step.acceptance,
            safety=refers or " ".join(step.cautions),
        )


def _coats(
    listed: Sequence[CoatView],
    worked: Sequence[Worked],
    to_coats: Mapping[str, CardWait],
    build: Build,
    job: Job,
    spec: Spec,
    points: Points,
    safety: Mapping[str, tuple[str, ...]],
    every_coat: Pairs,
    words: Words,
) -> Iterator[CardCoat]:
    layers = {layer.id: layer for layer in build.system.layers}
    above = [*listed[1:], None]
    for coat, following, one in zip(listed, above, worked, strict=True):
        product, before_next = one.product, layers[coat.layer].before_next or ""
        films = (
            (words("WFT {of_what}").format(of_what=coat.wet_of), coat.wet),
            (words("DFT min."), coat.least),
            (words("DFT nominal"), coat.nominal),
            (words("DFT max."), coat.most),
        )
        wait = to_coats.get(following.name) if following is not None else None
        removed = taken_off(build.system, layers[coat.layer], spec, words.with_one_film())
        sanded = one.sanded or bool(removed)
        dries = drying_line(product, air_of(job), words.in_one_unit(), touched=following is not None, sanded=sanded)
        ready = sanded and bool(product.sandable_after)
        applied = [pair for pair in _applied(product, job, words) if pair not in every_coat]
        sought = {words(name) for name in _LOOKED_UP}
        yield CardCoat(
            name=coat.name,
            product=ordered_in_a_line(coat),
            passes=coat.passes.replace("\n", " "),
            films=tuple((name, _figure(text)) for name, text in films),
            looked_up=tuple(("" if text.startswith(name) else name, text) for name, text in applied if name in sought),
            applied=tuple(pair for pair in applied if pair[0] not in sought),
            breathing=breathing(product, words),
            safety=safety[coat.name],
            dries="" if ready or before_next else dries,
            checks=points.after(coat.layer, sanded=False),
            before_next=" ".join(part for part in (dries, before_next, removed) if part)
            if ready or before_next
            else removed,
            sanded=points.after(coat.layer, sanded=True),
            wait=wait,
            last=following is None,
        )


def _applied(product: Product, job: Job, words: Words) -> Iterator[tuple[str, str]]:
    """From the shaken can to the cleared valve, each with its name."""
    view = application_at(product, job, words)
    yield from view.values
    yield from ((step.heading, step.text) for step in view.steps)
    if view.pot_life:
        yield words("Pot life"), view.pot_life


def _part_used(listed: Sequence[CoatView], build: Build, spec: Spec, words: Words) -> Iterator[tuple[str, str]]:
    """How an opened pack is kept and used again, each once; where it differs from coat to coat, each names its coats."""
    alike: dict[tuple[str, str], list[str]] = {}
    for coat, layer in zip(listed, build.system.layers, strict=True):
        for pair in part_used_pack(spec.product_of(layer), words):
            alike.setdefault(pair, []).append(coat.name)
    for (name, text), owners in alike.items():
        yield (name if len(owners) == len(listed) else f"{name} ({', '.join(owners)})"), text


def _of_all(listed: Sequence[Iterator[tuple[str, str]]], sought: Collection[str]) -> Pairs:
    """What every one of several coats says and nobody looks for at his coat, so that it is said once; nothing where there is one."""
    several = [tuple(pairs) for pairs in listed]
    if len(several) < 2:
        return ()
    return tuple(pair for pair in several[0] if pair[0] not in sought and all(pair in pairs for pairs in several[1:]))


def _in_a_line(point: InspectionPoint, job: Job, spec: Spec, words: Words, *, ruled: bool) -> str:
    """What passes as sentences: the limits in one, what the counting rule makes of them where it is `ruled` here, then the text."""
    said = [limits(point, job, spec, words, brief=True), accepted(point, job, spec, words) if ruled else ""]
    sentences = [f"{text[:1].upper()}{text[1:]}." for text in said if text]
    return " ".join((*sentences, point.criterion.text or "")).strip()


def _wait(wait: Wait, words: Words) -> CardWait:
    late = wait.late or (words("not stated: call before proceeding") if wait.not_later else "")
    return CardWait(comes=wait.comes, not_before=wait.not_before, not_later=wait.not_later, late=late)


def _figure(text: str) -> Figure:
    first, bracket, second = text.partition(" (")
    return Figure(first, f"({second}" if bracket else "")
