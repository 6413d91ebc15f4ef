"""Air for the spraying of a job as printed: explosion and breath in one table, and when the room may be entered again.

What evaporates is the maker's composition: a solvent has a number here and no name, and a working shows its result with
"inputs held by the maker". Called by `method_statement`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from specgen.documents.parts.annex import WorkingView, annex, held
from specgen.documents.parts.caution_catalogue import (
    DILUTION_IS_NO_CONTROL,
    HEALTH_SETS_THE_AIR,
    LUNGS_OVER_EXPLOSION,
    MIXED_ROOM,
    NO_AIR_STATED,
    NOT_JUDGED,
    POSTED_TIME,
)
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.air import ProductAir, air_of_job
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.standards.tables import table
from specgen.trade.exposure_flow import SubstanceFlow
from specgen.trade.given import Given
from specgen.trade.known import NotKnown
from specgen.trade.room import posted_clearance, usual_clearance
from specgen.trade.ventilation import AirFlow
from specgen.trade.working import Working

Figure = Working | NotKnown | None
Line = tuple[str, Figure, str]
"""By which limit, the figure, and what is said where it is not known or needs no working."""
Row = tuple[str, tuple[Line, ...]]
"""What the air is for, and one or several limits that ask for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AirView:
    """A table a product and law; `statements` are finished sentences below them; `workings` go into the annex."""

    tables: tuple[TableView, ...]
    statements: tuple[str, ...]
    workings: tuple[WorkingView, ...]


def room_air(job: Job, spec: Spec, on: date, words: Words, *, after: int) -> AirView:
    """The air of a job on a day, its workings numbered after the `after` of the annex."""
    listed = air_of_job(job, spec, on)
    tables: list[TableView] = []
    workings: list[WorkingView] = []
    several = len(spec.project.jurisdictions) > 1
    columns = (
        Column(words("Air for"), "w-30"),
        Column(words("Limit"), "w-25"),
        Column(words("Fresh air, or time")),
        Column(words("Working"), "w-10"),
    )
    for found in listed:
        product = spec.products[found.product]
        name = f"{product.name} ({found.jurisdiction})" if several else product.name
        rows = []
        for use, lines in _rows(found, isocyanates_in(product) is not False, words):
            shown, numbers = [], []
            for _, figure, otherwise in lines:
                numbers.append("")
                shown.append(otherwise)
                if isinstance(figure, Working):
                    numbers[-1] = f"W{after + len(workings) + 1}"
                    shown[-1] = words.worked(figure)
                    workings.append(_working(figure, found, f"{name}: {use}", job, numbers[-1], words))
            # one reason for all limits is said once
            said = shown if any(numbers) else list(dict.fromkeys(shown))
            rows.append((use, "\n".join(limit for limit, _, _ in lines), "\n".join(said), "\n".join(numbers).strip()))
        caption = words("{}: fresh air while spraying, and the way back in").format(name)
        tables.append(table_view(caption, columns, rows))
    return AirView(
        tables=tuple(tables), statements=tuple(_statements(job, spec, listed, words)), workings=tuple(workings)
    )


def _working(figure: Working, found: ProductAir, name: str, job: Job, number: str, words: Words) -> WorkingView:
    """What the job states of its room is the customer's and is shown in full; all else builds on the contents."""
    if figure is found.stated:
        (shown,) = annex([figure], words)
        return replace(shown, number=number)
    return held(figure, name, f"air.{job.id}.{found.product}", number, words)


def _rows(found: ProductAir, isocyanate: bool, words: Words) -> Iterator[Row]:
    open_text = words(NOT_JUDGED)
    flow = found.spraying
    if isinstance(flow, NotKnown):
        yield words("explosion and lungs"), (("", flow, open_text),)
    else:
        yield from _flows(flow, words)
    yield words("stated for the job"), (_stated(found.stated, words),)
    back_in = words("back in without breathing protection, after the last stroke")
    posted = words(POSTED_TIME).replace("{time}", posted_clearance("open workshop, not measured"))
    # Mist is not in the figure, and where isocyanate is sprayed there is none: the clearance time is always said.
    vapour = words("vapour"), found.together, words("vapour: not known")
    mist = words("mist"), None, posted
    # a time below the one usually posted would be read as leave to go in at once
    longer = isinstance(found.together, Working) and found.together.number > usual_clearance()
    yield back_in, (vapour, mist) if longer and not isocyanate else (mist,)


def _stated(stated: Given | Working | NotKnown, words: Words) -> Line:
    """A stated flow stands as its author wrote it and has no working."""
    if isinstance(stated, Given):
        return "", None, words.phrase(stated.quantity)
    return "", stated, words("not stated")


def _flows(flow: AirFlow, words: Words) -> Iterator[Row]:
    open_text = words(NOT_JUDGED)
    share = table("explosive_limit_shares").row("id", "spraying")["share"]
    limit = words("{} % of the lower explosive limit").format(share)
    yield words("no explosion"), ((limit, flow.explosion, open_text),)
    solvents: dict[str, list[Line]] = {}
    for entry in flow.each:
        solvents.setdefault(entry.substance, []).append((_limit(entry, words), entry.flow, open_text))
    for number, lines in enumerate(solvents.values(), start=1):
        yield words("the lungs: solvent {}").format(number), tuple(lines)
    yield words("the lungs: all vapours together"), ((words("8 h"), flow.together, open_text),)
    if flow.nco:
        lines = [(_limit(entry, words), entry.flow, open_text) for entry in flow.nco]
        yield words("the lungs: isocyanate, as NCO"), tuple(lines)
    yield words("all of this"), ((words("the largest"), flow.needed, open_text),)


def _limit(entry: SubstanceFlow, words: Words) -> str:
    """Body and period; the figure only where it is that of a whole group, for it would name a solvent."""
    whole = entry.limit.concentration if entry.limit.as_nco else None
    figure = f", {words.phrase(whole)}" if whole is not None else ""
    return f"{entry.limit.body}, {entry.limit.jurisdiction}, {entry.limit.period}{figure}"


def _statements(job: Job, spec: Spec, listed: tuple[ProductAir, ...], words: Words) -> Iterator[str]:
    clearing = posted_clearance("open workshop, not measured")
    if job.ventilation is None or not listed:
        yield words(NO_AIR_STATED).replace("{time}", clearing)
        return
    if job.ventilation.statement is not None:
        yield job.ventilation.statement
    yield words(HEALTH_SETS_THE_AIR)
    times = [found.spraying.times for found in listed if not isinstance(found.spraying, NotKnown)]
    known = [entry for entry in times if isinstance(entry, Working)]
    if known:
        most = max(known, key=lambda entry: entry.number)
        yield words(LUNGS_OVER_EXPLOSION).replace("{times}", words.worked(most))
    if any(isocyanates_in(spec.products[found.product]) is not False for found in listed):
        yield words(DILUTION_IS_NO_CONTROL)
    yield words(MIXED_ROOM)
