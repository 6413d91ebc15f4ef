"""The job card as finished text: for each vehicle and build the work in its order, then the records the plan demands.

A painter who reads a wait in the line of another system spoils a vehicle, so two builds never share a card. Nothing is cut: what
does not fit on a side runs on to the next. The template `job_card/document.html.j2` prints it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from specgen.documents.context import Context
from specgen.documents.job_card.records import Records, records
from specgen.documents.job_card.type_size import type_size
from specgen.documents.job_card.work import CardWork, card_work
from specgen.documents.parts.cautions import HazardView, chemical_hazards, emergency, gravest_of, hazards
from specgen.documents.parts.entry import entry_permit, re_entry
from specgen.documents.parts.parties import contact_line
from specgen.facts.job.builds import builds_of
from specgen.facts.job.quantities import quantities
from specgen.model.job import Job

# The longest fleet number that each size of type still sets in one line, in characters.
_SIZES = ((6, "huge"), (9, "large"), (14, "medium"), (24, "small"))


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildCard:
    """What all vehicles of the job have of one build; `type` is the size of its type.

    `build` is its letter and title, `letter` that alone; both are empty where the job has only one.
    """

    build: str
    letter: str
    type: str
    work: CardWork
    records: Records


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCard:
    """The whole document: a card for each of `vehicles` and each of `builds`.

    `vehicles` are (fleet number, size of its type, huge to least); the number is empty where the job names none.
    """

    number: str
    title: str
    on: str
    call: str
    gravest: HazardView
    entry: tuple[tuple[str, str], ...]
    re_entry: str
    shared: str
    vehicles: tuple[tuple[str, str], ...]
    builds: tuple[BuildCard, ...]
    program: str


def job_card(job: Job, context: Context) -> JobCard:
    """The view of a job that checks without errors."""
    spec, words = context.spec, context.words
    figures = quantities(job, spec)
    builds = builds_of(job, spec)
    cards = []
    for build in builds:
        title = words("System {letter}: {title}").format(letter=build.letter, title=build.system.title)
        work = card_work(build, job, spec, figures, words)
        kept = records(build, job, spec, figures, words)
        size = type_size(work, kept, spec.project.page_size)
        named = (title, build.letter) if len(builds) > 1 else ("", "")
        cards.append(BuildCard(build=named[0], letter=named[1], type=size, work=work, records=kept))
    many = len(job.vehicles)
    return JobCard(
        number=job.document.number,
        title=job.document.title,
        on=context.day.isoformat(),
        call=". ".join(
            line
            for line in (contact_line(job.call or spec.project.maker.contact), emergency(spec.project, words))
            if line
        ),
        gravest=gravest_of((*hazards(list(spec.products_of(job)), spec, words), *chemical_hazards(job, words))),
        entry=entry_permit(job, words),
        re_entry=re_entry(job, spec, context.day, words),
        shared=words("total for all {} vehicles").format(many) if many > 1 else "",
        vehicles=tuple((vehicle, _size(vehicle)) for vehicle in job.vehicles or ("",)),
        builds=tuple(cards),
        program=context.program,
    )


def halves(cards: JobCard) -> tuple[JobCard, ...]:
    """The cards in two: those of half the vehicles each, of one vehicle those of half the systems; none of a single card."""
    for name in ("vehicles", "builds"):
        held = getattr(cards, name)
        if len(held) > 1:
            middle = (len(held) + 1) // 2
            return replace(cards, **{name: held[:middle]}), replace(cards, **{name: held[middle:]})
    return ()


def _size(vehicle: str) -> str:
    return next((size for most, size in _SIZES if len(vehicle) <= most), "least")
