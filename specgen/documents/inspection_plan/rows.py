"""The rows of an inspection and test plan: each step of the work as specified, and each inspection in its place.

Called by `view`. The figures are those of the coats, climate and points that the method statement prints.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.parts.climate import climate
from specgen.documents.parts.coats import CoatView, Wait, coats, taken_off, waits
from specgen.documents.parts.inspection import how_much, measured_with, passes
from specgen.documents.parts.pictures import marked, see
from specgen.documents.parts.preparation import grade_in_full, handed_over, steps
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import Build
from specgen.facts.job.inspected import numbers_of, points_on
from specgen.facts.job.looked_for import reads_wet_film
from specgen.facts.job.points import once_sanded
from specgen.facts.job.quantities import Quantities
from specgen.model.acceptance import InspectionPoint, Involvement, Parties, Stage
from specgen.model.job import Job
from specgen.model.preparation import StepKind
from specgen.model.spec import Spec
from specgen.units.locale import N_

LETTERS = {
    Involvement.HOLD: "H",
    Involvement.WITNESS: "W",
    Involvement.REVIEW: "R",
    Involvement.SURVEILLANCE: "S",
}
# by letter: these words and those of who attends a test are written alike in the sources
MEANINGS = (
    ("H", N_("hold point: the work stops until the party signs it off")),
    ("W", N_("witness point: the party is invited, the work goes on")),
    ("R", N_("review: the party examines the record")),
    ("S", N_("surveillance: the party looks in at times of its own")),
)
NOT_APPLICABLE = "–"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRow:
    """A step of the work, or an inspection with its number; `hold` where the work stops.

    `involved` are the letters of contractor, quality assurance, customer and third party, or that they are to be agreed.
    """

    number: str
    what: str
    method: str
    frequency: str
    accepted: str
    record: str
    involved: tuple[str, str, str, str]
    hold: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPhase:
    """What is done and inspected from one wait to the next; `place` is its title in the contents, the shortest that tells it."""

    title: str
    place: str
    rows: tuple[PlanRow, ...]


class Plan:
    """The plan of a job; points that look at several builds are told in full with the first of them."""

    def __init__(self, job: Job, spec: Spec, figures: Quantities, words: Words) -> None:
        self._job, self._spec, self._figures, self._words = job, spec, figures, words
        self._numbers = numbers_of(job)
        self._told: set[str] = set()
        self._items: frozenset[str] = frozenset()
        self._prepared: list[Build] = []

    def delivered(self, products: Sequence[str]) -> PlanPhase:
        """The products as they are delivered, before any work."""
        words = self._words
        row = self._step(
            words("Products, with batch number and expiry date"),
            accepted="\n".join((*products, words("Packs undamaged, expiry date not passed"))),
            method=words("Label of each pack"),
            frequency=words("Each batch"),
            record=words("Record sheets"),
        )
        return PlanPhase(title=words("Products delivered"), place=words("Products delivered"), rows=(row,))

    def build(self, build: Build, name: str) -> Iterator[PlanPhase]:
        """The phases of one build; where there are several, `name` goes before their titles and its letter before their places."""
        words, job, spec = self._words, self._job, self._spec
        own = points_on(build.items, job, spec)
        self._items = frozenset(item.id for item in build.items)
        listed = coats(build.painted, spec, self._figures, words)
        held = {wait.comes: wait for wait in waits(build.system, build.preparation, job, spec, words)}
        letter = f"{build.letter}: " if name else ""
        yield PlanPhase(
            title=name + words("Surface preparation: {}").format(build.preparation.title),
            place=letter + words("Surface preparation"),
            rows=(*self._at(own, Stage.RECEIPT), *self._prepare(build), *self._at(own, Stage.PREPARED)),
        )
        for place, coat in enumerate(listed):
            last = place == len(listed) - 1
            after = [point for point in own if point.after == coat.layer]
            rows = (
                *self._wait(held.get(coat.name)),
                *self._air(own),
                self._coat(coat),
                *(self._point(point) for point in own if reads_wet_film(point)),
                *(self._point(point) for point in after if not once_sanded(point)),
                *self._before_next(build, place),
                *(self._point(point) for point in after if once_sanded(point)),
                *(self._finish(own, list(held.values()), {one.name for one in listed}) if last else ()),
            )
            coated = words("Coat {}").format(coat.name)
            yield PlanPhase(title=name + coated, place=letter + coated, rows=rows)

    def _prepare(self, build: Build) -> Iterator[PlanRow]:
        """The steps, in full with the first build that has them; the method of a test is what the author says of it."""
        words = self._words
        first = next((one for one in self._prepared if one.preparation == build.preparation), None)
        self._prepared.append(build)
        again = words("Same as for system {letter}.").format(letter=first.letter) if first is not None else ""
        if again:
            yield self._step(words("Prepare"), accepted=again, record=words("Job card"))
        for step, view in (
            zip(build.preparation.steps, steps(build.preparation, words), strict=True) if not again else ()
        ):
            grade = words("to {grade}").format(grade=grade_in_full(view.grade, words)) if view.grade else ""
            accepted = "\n".join(part for part in (view.acceptance, view.limits) if part)
            title = " ".join(part for part in (view.title, grade) if part)
            method = view.abrasive or (view.text if step.do is StepKind.TEST else "")
            yield self._step(title, accepted=accepted, method=method, record=words("Job card"))
        if done := handed_over(build.preparation, words):
            yield self._step(
                words("Check the prepared surface"),
                accepted=again or "\n".join(f"{name}: {limit}" for name, limit in done),
                record=words("Record sheets"),
            )

    def _air(self, own: Sequence[InspectionPoint]) -> Iterator[PlanRow]:
        """The inspections during application that are not of the wet film; without one, the climate that is stated."""
        words = self._words
        found = tuple(self._at([point for point in own if not reads_wet_film(point)], Stage.APPLICATION))
        limits = climate(self._job.climate, words)
        yield from found
        if limits and not found:
            yield self._step(
                words("Ambient conditions"),
                accepted="\n".join(f"{name} {limit}" for name, limit in limits),
                record=words("Record sheets"),
            )

    def _coat(self, coat: CoatView) -> PlanRow:
        words = self._words
        product = ", ".join(part for part in (coat.product, coat.variant, coat.order_number) if part)
        films = (
            (words("WFT {of_what}").format(of_what=coat.wet_of), coat.wet),
            (words("DFT"), coat.film),
        )
        return self._step(
            words("Apply {}").format(product),
            accepted="\n".join(f"{name} {film}" for name, film in films if film),
            method=coat.passes,
            record=words("Job card"),
        )

    def _wait(self, wait: Wait | None) -> Iterator[PlanRow]:
        """The interval that ends before a coat."""
        if wait is None or not (wait.not_before or wait.not_later):
            return
        words = self._words
        said = (
            words("not before {}").format(wait.not_before) if wait.not_before else "",
            words("not later than {}").format(wait.not_later) if wait.not_later else "",
            words("If later: {}").format(wait.late) if wait.late else "",
        )
        yield self._step(
            words("Interval after {}").format(wait.after),
            accepted=_interval(said),
            record=words("Job card"),
        )

    def _before_next(self, build: Build, place: int) -> Iterator[PlanRow]:
        layer = build.system.layers[place]
        removed = taken_off(build.system, layer, self._spec, self._words)
        if layer.before_next or removed:
            what = layer.before_next or self._words("Sand or polish")
            yield self._step(what, accepted=removed, record=self._words("Job card"))

    def _finish(self, own: Sequence[InspectionPoint], held: Sequence[Wait], names: set[str]) -> Iterator[PlanRow]:
        words = self._words
        yield from self._at(own, Stage.COMPLETION, None)
        for wait in held:
            if wait.comes not in names:
                yield self._step(
                    words("Before {}").format(wait.comes), accepted=words("not before {}").format(wait.not_before)
                )

    def _at(self, own: Sequence[InspectionPoint], *stages: Stage | None) -> Iterator[PlanRow]:
        return (self._point(point) for point in own if point.after is None and point.at in stages)

    def _point(self, point: InspectionPoint) -> PlanRow:
        words = self._words
        again = point.id in self._told
        self._told.add(point.id)
        # the head of the phase names all its items
        named = f"({', '.join(point.items)})" if point.items and not self._items <= set(point.items) else ""
        told = (
            point.check,
            named,
            marked(point, self._job, self._spec, words),
            see(point, self._job, self._spec, words),
        )
        failed = words("If it fails: {}").format(point.if_failed) if point.if_failed and not again else ""
        passed = words("Same as the first time.") if again else passes(point, self._job, self._spec, words, wide=True)
        return PlanRow(
            number=self._numbers[point.id],
            what="\n".join(part for part in told if part),
            method=NOT_APPLICABLE if again else measured_with(point, words) or words("not stated"),
            frequency=NOT_APPLICABLE if again else how_much(point, words) or words("not stated"),
            accepted="\n".join(part for part in (passed, failed) if part),
            record=point.record or words("Record sheets"),
            involved=involvement(point.parties) if point.parties is not None else (words("to agree"),) * 4,
            hold=point.hold_point,
        )

    def _step(
        self, what: str, *, accepted: str = "", method: str = "", frequency: str = "", record: str = ""
    ) -> PlanRow:
        words = self._words
        return PlanRow(
            number=NOT_APPLICABLE,
            what=what,
            method=method or NOT_APPLICABLE,
            frequency=frequency or NOT_APPLICABLE,
            accepted=accepted or words("not stated"),
            record=record or NOT_APPLICABLE,
            involved=involvement(None),
        )


def _interval(said: tuple[str, str, str]) -> str:
    """Both ends in a line, and below it what is done where the later one has passed."""
    low, high, late = said
    ends = ", ".join(part for part in (low, high) if part)
    return "\n".join(part for part in (ends, late) if part)


def involvement(parties: Parties | None) -> tuple[str, str, str, str]:
    """The letters of contractor, quality assurance, customer and third party; a dash for who is not involved."""

    def letter(stated: Involvement | None) -> str:
        return LETTERS[stated] if stated is not None else NOT_APPLICABLE

    held = parties or Parties()
    return letter(held.contractor), letter(held.quality), letter(held.customer), letter(held.third_party)
