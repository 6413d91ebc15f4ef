"""The work of one build in its order: a phase for the preparation and one for each coat, each step with its safety and its end.

Nobody turns a page to spray: what is shaken, mixed, worn, measured and waited for stands where it is done, and a hold point where
the work stops. Called by `build`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from specgen.documents.method_statement.between_coats import BetweenView
from specgen.documents.method_statement.conditions import NOT_STATED, Condition
from specgen.documents.method_statement.inspection_rows import Points
from specgen.documents.method_statement.open_coats import INTERVAL_BY_SHEET
from specgen.documents.method_statement.work_rows import WorkRow, apply, apply_chosen, prepare, sanding, treat
from specgen.documents.parts.application import ApplicationView, application_at
from specgen.documents.parts.coats import CoatView, Wait, ordered_in_a_line
from specgen.documents.parts.preparation import StepView
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import Build
from specgen.facts.job.inspected import points_on
from specgen.facts.job.repair import harmful_until_cured
from specgen.facts.pairs.answers import sanding_ordered, says_sanding
from specgen.model.acceptance import Stage
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import Spec


class InspectedView(NamedTuple):
    """An inspection in a line: its number in the plan, whether the work stops, and what passes, empty where another table tells it."""

    number: str
    check: str
    hold: bool
    passes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """What is done from one wait to the next. `lead` stands above the rows; `next` are the waits that end the phase.

    `short` is its title without product and packs. Each of `next` is (text, on whose word); `late_safety` is what its remedy needs
    where the coat is not sanded in any case. `points` are the inspections of
    the phase.
    """

    number: str
    title: str
    short: str
    lead: str
    rows: tuple[WorkRow, ...]
    next: tuple[tuple[str, str], ...]
    late_safety: tuple[str, ...]
    points: tuple[InspectedView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What a phase is made of: the views of a build that other parts of the statement use too."""

    build: Build
    steps: tuple[StepView, ...]
    handed_over: tuple[tuple[str, str], ...]
    coats: tuple[CoatView, ...]
    waits: tuple[Wait, ...]
    between: tuple[BetweenView, ...]


class Numbers:
    """The numbers of steps and phases, which run through all builds of a job, and the step at which each product was described."""

    def __init__(self) -> None:
        self._steps = 0
        self._phases = 0
        self.described: dict[str, str] = {}
        self.inspected: set[str] = set()
        self._cautioned: dict[tuple[str, ...], str] = {}

    def phase(self) -> str:
        self._phases += 1
        return f"2.{self._phases}"

    def numbered(self, rows: Sequence[WorkRow], words: Words) -> tuple[WorkRow, ...]:
        """The rows, each step with the next number; a step with the very words of one before it refers to that."""
        found = []
        for row in rows:
            if row.kind == "step":
                self._steps += 1
                number = str(self._steps)
                # nobody is sent from one reference to the next
                safety = row.safety if row.refers else self.cautioned(row.safety, number, words)
                row = replace(row, number=number, safety=safety)
            found.append(row)
        return tuple(found)

    def cautioned(self, safety: tuple[str, ...], step: str, words: Words) -> tuple[str, ...]:
        """The cautions, or where the same ones stand already; without a step nothing can refer to them."""
        said = self._cautioned.get(safety)
        if step and safety:
            self._cautioned.setdefault(safety, step)
        if not safety or said is None:
            return safety
        return (words("Same precautions and protective equipment as at step {}.").format(said),)


def work(told: Told, job: Job, spec: Spec, numbers: Numbers, words: Words) -> tuple[Phase, ...]:
    """The phases of one build; `numbers` go on from the build before."""
    return tuple(_phases(told, job, spec, numbers, words))


def _phases(told: Told, job: Job, spec: Spec, numbers: Numbers, words: Words) -> Iterator[Phase]:
    build = told.build
    points = points_on(build.items, job, spec)
    at = Points(job, spec, points, numbers.inspected, words)
    waits = {wait.comes: wait for wait in told.waits}
    coats = {coat.layer: coat for coat in told.coats}
    first = told.coats[0].name if told.coats else ""
    yield _phase(
        numbers,
        words,
        words("Surface preparation: {}").format(build.preparation.title),
        words("Surface preparation"),
        "",
        (*at.stage(Stage.RECEIPT), *prepare(told.steps, told.handed_over, words), *at.stage(Stage.PREPARED)),
        ((_next(waits[first], words), ""),) if first in waits else (),
    )
    layers = build.system.layers
    for place, layer in enumerate(layers):
        coat = coats[layer.id]
        last = place == len(layers) - 1
        above = coats[layers[place + 1].id].name if not last else ""
        product = spec.product_of(layer)
        applied = application_at(product, job, words) if layer.product is not None else None
        described = numbers.described.get(product.id)
        begun, after = _conditions(told, coat, words)
        treated = [step for step in after if not step.interval]
        on_the_coat, once_sanded = at.after(layer)
        rows = (
            *at.before_applying(),
            *(WorkRow(kind="step", number="", title="", text=step.text, source=step.source) for step in begun),
            *(
                apply(coat, applied, product, job, described, at.while_wet(), words)
                if applied is not None
                else (*apply_chosen(coat, words), *at.while_wet())
            ),
            *on_the_coat,
            *treat(treated, product, job, words),
            *once_sanded,
            *(at.stage(Stage.COMPLETION, None) if last else ()),
        )
        short = words("Coat {}").format(coat.name)
        named = ordered_in_a_line(coat)
        wait = waits.get(above)
        unstated = NOT_STATED if layer.product is not None else INTERVAL_BY_SHEET
        late = [step for step in after if step.interval]
        ends = _to_next(wait, late, unstated, words) if above else _to_service(told, words)
        phase = _phase(
            numbers,
            words,
            words("{coat}: {product}").format(coat=short, product=named),
            short,
            "" if described or applied is None else _lead(applied, words),
            rows,
            ends,
            sanding(product, job, words) if above and not treated and _abrades(wait, late) else (),
            _way_late(product, wait, words) if above and not treated and layer.product is not None else (),
        )
        if described is None and applied is not None:
            numbers.described[product.id] = next(row.number for row in phase.rows if row.kind == "step")
        yield phase


def _phase(
    numbers: Numbers,
    words: Words,
    title: str,
    short: str,
    lead: str,
    rows: Sequence[WorkRow],
    ends: tuple[tuple[str, str], ...],
    late_safety: tuple[str, ...] = (),
    way: tuple[str, ...] = (),
) -> Phase:
    numbered = numbers.numbered(rows, words)
    return Phase(
        number=numbers.phase(),
        title=title,
        short=short,
        lead=lead,
        rows=numbered,
        next=ends,
        late_safety=(*way, *numbers.cautioned(late_safety, "", words)),
        points=tuple(
            InspectedView(row.number, row.title, row.kind == "hold", _in_short(row))
            for row in numbered
            if row.kind != "step"
        ),
    )


def _way_late(product: Product, wait: Wait | None, words: Words) -> tuple[str, ...]:
    """That a late coat is sanded wet, where its dust does harm and neither its remedy nor the product says how or from when: the section
    on repair says the same."""
    remedy = wait.late if wait is not None else ""
    if product.sandable_after or sanding_ordered(remedy) is not None or not says_sanding(remedy):
        return ()
    return (words("Sand it wet until it is fully cured."),) if harmful_until_cured(product) else ()


def _in_short(row: WorkRow) -> str:
    if row.brief is not None:
        return row.brief
    return row.done[0] if row.done else row.text


def _conditions(told: Told, coat: CoatView, words: Words) -> tuple[list[Condition], list[Condition]]:
    """What is done as the coat begins, and once it has been applied."""
    begins, after = words("With coat {}").format(coat.name), words("After coat {}").format(coat.name)
    found = [[step for view in told.between if view.when == when for step in view.steps] for when in (begins, after)]
    return found[0], found[1]


def _to_next(
    wait: Wait | None, intervals: Sequence[Condition], unstated: str, words: Words
) -> tuple[tuple[str, str], ...]:
    """The interval to the next coat, with the source of the tables; they also say what is done late where the author does not."""
    if wait is not None and (wait.late or not intervals):
        return ((_next(wait, words), "; ".join(step.source for step in intervals if step.source)),)
    if intervals:
        return tuple((step.text, step.source) for step in intervals)
    return ((words(unstated), ""),)


def _abrades(wait: Wait | None, intervals: Sequence[Condition]) -> bool:
    """True where the next coat, late, is applied on a coat that is abraded, or where nothing says what is done."""
    said = [wait.late] if wait is not None and wait.late else [step.text for step in intervals]
    return not said or any(says_sanding(text) for text in said)


def _to_service(told: Told, words: Words) -> tuple[tuple[str, str], ...]:
    coats = {coat.name for coat in told.coats}
    return tuple((_next(wait, words), "") for wait in told.waits if wait.comes not in coats)


def _lead(applied: ApplicationView, words: Words) -> str:
    """What the product is and keeps, in a line."""
    kind = f"{applied.kind[:1].upper()}{applied.kind[1:]}"
    pot = words("Pot life: {}").format(applied.pot_life) if applied.pot_life else words("Pot life: not applicable")
    shelf = words("Shelf life, unopened: {}").format(applied.shelf_life) if applied.shelf_life else ""
    values = (f"{name}: {text}" for name, text in applied.values)
    return ". ".join(part for part in (kind, pot, shelf, *values) if part) + "."


def _next(wait: Wait, words: Words) -> str:
    """`2 surfacer: 90 min to 16 h. If the maximum is exceeded: abrade.`"""
    if wait.not_before and wait.not_later:
        text = words("{comes}: {low} to {high} after {after}.")
    elif wait.not_later:
        text = words("{comes}: at most {high} after {after}.")
    else:
        text = words("{comes}: at least {low} after {after}.")
    said = text.format(comes=wait.comes, low=wait.not_before, high=wait.not_later, after=wait.after)
    return words("{said} If the maximum is exceeded: {late}").format(said=said, late=wait.late) if wait.late else said
