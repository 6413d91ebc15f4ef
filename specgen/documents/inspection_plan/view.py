"""The inspection and test plan of a job as finished text. The template `inspection_plan/document.html.j2` prints it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.inspection_plan.rows import MEANINGS, Plan, PlanPhase
from specgen.documents.parts.items import number_of
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.pictures import PictureView, marked_pictures
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import builds_of
from specgen.facts.job.inspected import numbers_of
from specgen.facts.job.quantities import quantities
from specgen.model.job import Item, Job
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class InspectionPlan:
    """The whole document. `held` and `open` are numbers of points: where the work stops, and where no party is stated.

    `legend` is (letter, meaning); `parts` are the items of the job in a line each.
    """

    number: str
    title: str
    maker: PartyView
    customer: PartyView
    on: str
    vehicles: str
    parts: tuple[str, ...]
    phases: tuple[PlanPhase, ...]
    held: str
    open: str
    legend: tuple[tuple[str, str], ...]
    pictures: tuple[PictureView, ...]
    program: str


def inspection_plan(job: Job, context: Context) -> InspectionPlan:
    """The view of a job that checks without errors."""
    spec, words = context.spec, context.words
    plan = Plan(job, spec, quantities(job, spec), words)
    builds = builds_of(job, spec)
    phases = []
    if delivered := _products(job, spec):
        phases.append(plan.delivered(delivered))
    for build in builds:
        name = words("System {letter}, {items}: ").format(
            letter=build.letter, items=", ".join(item.id for item in build.items)
        )
        phases.extend(plan.build(build, name if len(builds) > 1 else ""))
    numbers = numbers_of(job)
    return InspectionPlan(
        number=job.document.number,
        title=job.document.title,
        maker=party(spec.project.maker),
        customer=party(spec.project.customer),
        on=context.day.isoformat(),
        vehicles=", ".join(job.vehicles),
        parts=tuple(_part(item, words) for item in job.items),
        phases=tuple(phase for phase in phases if phase.rows),
        held=", ".join(numbers[point.id] for point in job.inspection if point.hold_point),
        open=_runs([int(numbers[point.id]) for point in job.inspection if point.parties is None], words),
        legend=tuple((letter, words(meaning)) for letter, meaning in MEANINGS),
        pictures=marked_pictures(job.inspection, job, spec, words),
        program=context.program,
    )


def _part(item: Item, words: Words) -> str:
    """`2 × RAIL Side rail (1 left, 1 right)`."""
    said = f"{item.count} × {item.id} {item.name}"
    return f"{said} ({number_of(item, words)})" if item.hand is not None else said


def _runs(numbers: Sequence[int], words: Words) -> str:
    """`1, 2, 5 to 9`: numbers in their order, three and more that follow each other by their ends."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    long = words("{low} to {high}")
    said = (
        [long.format(low=run[0], high=run[-1])] if len(run) > 2 else [str(number) for number in run] for run in runs
    )
    return ", ".join(text for texts in said for text in texts)


def _products(job: Job, spec: Spec) -> list[str]:
    """`Example primer: grey, EX-100`: each product with the variants its coats use."""
    found: dict[str, dict[str, None]] = {}
    for layer in spec.layers_of(job):
        if layer.product is None:
            continue
        product, variant = spec.product_of(layer), spec.variant_of(layer)
        variants = found.setdefault(product.name, {})
        if variant is not None:
            variants[f"{variant.name}, {variant.order_number}"] = None
    return [": ".join(part for part in (name, "; ".join(variants)) if part) for name, variants in found.items()]
