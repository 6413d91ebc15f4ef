"""The job card: one side of paper that hangs at a vehicle, to be ticked, written on and signed, as finished text.

`specgen.printing` takes for each build the first of CUTS that fits on the paper. A job with several builds has a
side for each: a painter who reads a wait in the line of another system spoils a vehicle, so two never share a side.
The template `job_card/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.job_card.card_side import CardSide, Cut, card_side
from specgen.documents.parts.cautions import HazardView, emergency, hazards
from specgen.documents.parts.entry import entry_permit, re_entry
from specgen.documents.parts.parties import contact_line
from specgen.facts.job.builds import builds_of
from specgen.facts.job.quantities import quantities
from specgen.model.job import Job
from specgen.units.locale import counted

CUTS = (
    Cut(room="roomy"),
    Cut(room="plain"),
    Cut(room="plain", step_texts=False),
    Cut(room="close"),
    Cut(room="close", step_texts=False),
    Cut(room="close", step_texts=False, parts=False, longest=100),
    Cut(room="tight", step_texts=False),
    Cut(room="tight", step_texts=False, parts=False, longest=100),
    Cut(room="tight", step_texts=False, parts=False, longest=60),
    Cut(room="tight", step_texts=False, checks=False, parts=False, longest=60),
    Cut(room="tight", step_texts=False, checks=False, between=False, parts=False, longest=60),
    Cut(room="tight", step_texts=False, checks=False, between=False, parts=False, longest=36),
    Cut(room="tight", step_texts=False, checks=False, between=False, parts=False, climate=False, longest=36),
)
"""What is given up to stay on one side, mildest first; what is done between coats and once a wait is past goes last but for
the climate. Never given up: the fleet number, waits, films, wet film, hold points, signal word, figures of the steps, and
the boxes to write in; everything else can be read in the method statement."""

# The longest fleet number that each size of type still sets in one line, in characters.
_SIZES = ((6, "huge"), (9, "large"), (14, "medium"), (24, "small"))


@dataclass(frozen=True, slots=True, kw_only=True)
class VehicleSide:
    """One printed side. `vehicle` is empty where the job names none; `size` is its type, huge to least."""

    vehicle: str
    size: str
    side: CardSide


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCard:
    """The whole document, a side a vehicle and build."""

    number: str
    title: str
    on: str
    call: str
    gravest: HazardView
    entry: tuple[tuple[str, str], ...]
    re_entry: str
    shared: str
    sides: tuple[VehicleSide, ...]
    program: str


def job_card(job: Job, context: Context, cuts: Sequence[Cut | None] | None = None, trial: bool = False) -> JobCard:
    """The view of a job that checks without errors.

    `cuts` has one entry a build, in the order of `builds_of`, and None leaves a build out; uncut where it is not given. The
    sides of a build differ by their fleet number only, so a trial has that with the longest alone.
    """
    spec, words = context.spec, context.words
    figures = quantities(job, spec)
    builds = builds_of(job, spec)
    vehicles = (max(job.vehicles, key=len),) if trial and job.vehicles else job.vehicles
    sides = [
        card_side(build, job, spec, figures, cut, words, several=len(builds) > 1)
        for build, cut in zip(builds, cuts or CUTS[:1] * len(builds), strict=True)
        if cut is not None
    ]
    return JobCard(
        number=job.document.number,
        title=job.document.title,
        on=context.day.isoformat(),
        call=". ".join(
            line
            for line in (contact_line(job.call or spec.project.maker.contact), emergency(spec.project, words))
            if line
        ),
        gravest=hazards(list(spec.products_of(job)), spec, words)[0],
        entry=entry_permit(job, words),
        re_entry=re_entry(job, spec, context.day, words),
        shared=words("total for all {} vehicles").format(len(job.vehicles)) if len(job.vehicles) > 1 else "",
        sides=tuple(
            VehicleSide(vehicle=vehicle, size=_size(vehicle), side=side)
            for vehicle in vehicles or ("",)
            for side in sides
        ),
        program=context.program,
    )


def _size(vehicle: str) -> str:
    return next((size for most, size in _SIZES if len(vehicle) <= most), "least")


def too_much(card: JobCard) -> str:
    """What the fullest side of the card holds, and what is left to do, for a card that does not fit."""
    side = max((page.side for page in card.sides), key=lambda side: len(side.coats))
    checks = sum(len(coat.checks) for coat in side.coats)
    checks += len(side.at_first + side.prepared + side.applying + side.finished)
    coats, steps = len(side.coats), len(side.steps)
    return (
        f": {coats} {counted('coat', 'coats', coats)}, {steps} {counted('step', 'steps', steps)} of preparation and "
        f"{checks} {counted('hold point', 'hold points', checks)}. "
        "What stands overleaf is not read at the vehicle; divide the work into two jobs, or keep fewer hold points."
    )
