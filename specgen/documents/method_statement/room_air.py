"""Air for the spraying of a job as printed: explosion and breath in one table, and when the room may be entered again.

What evaporates is the maker's composition: a solvent has a number here and no name, and a working shows its result with
"inputs held by the maker". Called by `method_statement`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from specgen.documents.method_statement.open_coats import AIR_BY_SHEET
from specgen.documents.parts.annex import WorkingView, annex, held
from specgen.documents.parts.caution_catalogue import (
    AT_LEAST,
    DILUTION_IS_NO_CONTROL,
    HEALTH_SETS_THE_AIR,
    LAW_LENT,
    LAW_NOT_STATED,
    LAW_OF_THE_PLACE,
    LAW_WITHOUT_LIMITS,
    LUNGS_OVER_EXPLOSION,
    MIXED_ROOM,
    NO_AIR_OUTDOORS,
    NO_AIR_STATED,
    NO_FLOW_FOR_ENTRY,
    NOT_JUDGED,
)
from specgen.documents.parts.entry import mist_gone
from specgen.documents.parts.short_names import short_names
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.air import (
    FlowAsked,
    ProductAir,
    air_of_job,
    laws_of_air,
    times_over_explosion,
    unmeasured_clearance,
)
from specgen.facts.job.confined import is_confined, place_of
from specgen.facts.requirement import names_products
from specgen.model.application import Workplace
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.trade.known import NotKnown
from specgen.trade.working import Working
from specgen.units.locale import N_

_PERIODS = {
    "8 h": N_("8 h TWA"),
    "up to 10 h": N_("TWA of up to 10 h"),
    "15 min": N_("15 min STEL"),
    "ceiling": N_("ceiling"),
    "acceptable ceiling": N_("acceptable ceiling"),
    "ceiling 10 min": N_("ceiling, 10 min"),
    "ceiling 15 min": N_("ceiling, 15 min"),
}

Figure = Working | NotKnown | None
Line = tuple[str, Figure, str]
"""By which limit, the figure, and what is said where it is not known or needs no working."""
Key = tuple[str, str]
"""What the air is for and the limit: a row of the table."""
_SIDE_BY_SIDE = 4
Row = tuple[str, tuple[Line, ...]]
"""What the air is for, and one or several limits that ask for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AirView:
    """Products side by side in a table or several; `statements` are finished sentences below them; `workings` go into the annex."""

    tables: tuple[TableView, ...]
    statements: tuple[str, ...]
    workings: tuple[WorkingView, ...]


def room_air(job: Job, spec: Spec, on: date, words: Words, *, after: int, numbered: bool = True) -> AirView:
    """The air of a job on a day, its workings numbered after the `after` of the annex, or not where that is left out."""
    if is_confined(job):
        stated = job.ventilation.statement if job.ventilation is not None else None
        said = (*((stated,) if stated is not None else ()), words(NO_FLOW_FOR_ENTRY))
        return AirView(tables=(), statements=said, workings=())
    listed = air_of_job(job, spec, on)
    several = len(spec.project.jurisdictions) > 1
    short = short_names([spec.products[found.product].name for found in listed])
    workings: list[WorkingView] = []
    columns: dict[str, dict[Key, str]] = {}
    for found in listed:
        product = spec.products[found.product]
        law = f" ({found.jurisdiction})" if several else ""
        cells = columns.setdefault(f"{short[product.name]}{law}", {})
        for use, lines in _rows(found, job, words):
            told = [text for _, figure, text in lines if not _least(figure)]
            if len(told) == len(lines) > 1 and len(set(told)) == 1:
                # one reason for all limits is said once
                cells[use, "\n".join(limit for limit, _, _ in lines)] = told[0]
                continue
            for limit, figure, otherwise in lines:
                shown = otherwise
                if worked := _least(figure):
                    number = f"W{after + len(workings) + 1}"
                    name = ", ".join(part for part in (f"{product.name}{law}: {use}", limit) if part)
                    workings.append(_working(worked, found, name, job, number, spec, words))
                    shown = words.worked(worked)
                    if worked is not figure:
                        shown = words(AT_LEAST).replace("{flow}", shown)
                    shown += f" ({number})" if numbered else ""
                cells[use, limit] = shown
    return AirView(
        tables=tuple(_tables(columns, words)),
        statements=tuple(_statements(job, spec, listed, words)),
        workings=tuple(workings),
    )


def _tables(columns: Mapping[str, Mapping[Key, str]], words: Words) -> Iterator[TableView]:
    """Products side by side, as many as the page is wide; a limit that is none of a product's has a dash in its column."""
    heads = list(columns)
    for start in range(0, len(heads), _SIDE_BY_SIDE):
        here = heads[start : start + _SIDE_BY_SIDE]
        uses: dict[str, dict[str, None]] = {}
        # the longest column first, so that what others lack keeps its place in the order
        for head in sorted(here, key=lambda head: -len(columns[head])):
            for use, limit in columns[head]:
                uses.setdefault(use, {})[limit] = None
        last = list(dict.fromkeys(use for head in here for use, _ in list(columns[head])[-3:]))
        ranked = [*(use for use in uses if use not in last), *(use for use in uses if use in last)]
        rows = []
        for use in ranked:
            for limit in uses[use]:
                shown = (columns[head].get((use, limit), "–") for head in here)
                rows.append((use, limit, *shown))
        yield table_view(
            words("Fresh-air flow for each product and limit, to three figures; W: calculation"),
            (Column(words("Basis"), "w-30"), Column(words("Limit"), "w-20"), *(Column(head) for head in here)),
            rows,
        )


def _least(figure: Figure) -> Working | None:
    """The figure, or what the known vapours ask for at the least."""
    return next(iter(figure.workings), None) if isinstance(figure, NotKnown) else figure


def _working(
    figure: Working, found: ProductAir, name: str, job: Job, number: str, spec: Spec, words: Words
) -> WorkingView:
    """What the job states of its room is the customer's and is shown in full; all else builds on the contents."""
    if figure is found.stated:
        (shown,) = annex([figure], spec, words)
        return replace(shown, number=number)
    return held(figure, name, f"air.{job.id}.{found.product}", number, words)


def _rows(found: ProductAir, job: Job, words: Words) -> Iterator[Row]:
    if isinstance(found.spraying, NotKnown):
        yield words("explosion and exposure limits"), (("", found.spraying, words(NOT_JUDGED)),)
    lines: dict[tuple[str, int], list[Line]] = {}
    for asked in found.flows():
        lines.setdefault((asked.use, asked.solvent), []).append(
            (_limit(asked, found, words), asked.flow, words(NOT_JUDGED))
        )
    named = {
        "explosion": words("lower explosive limit (LEL)"),
        "solvent": words("exposure limit, solvent {}"),
        "vapours": words("exposure limits, all vapours combined"),
        "isocyanate": words("exposure limit, isocyanate (as NCO)"),
        "all": words("fresh-air flow required"),
    }
    for (use, number), limits in lines.items():
        yield named[use].format(number), tuple(limits)
    if isinstance(found.stated, Working | NotKnown):
        yield words("fresh-air flow provided (stated for the job)"), (("", found.stated, words("not stated")),)
    else:
        # a stated flow stands as its author wrote it and has no working
        yield words("fresh-air flow provided (stated for the job)"), (("", None, words.phrase(found.stated.quantity)),)
    if found.back_in is not None:
        back_in = words("re-entry without respiratory protection, after spraying has stopped")
        yield back_in, ((words("vapour"), found.back_in, ""),)


def _about(times: Fraction) -> str:
    """To the nearest five from a hundred on: a model of mixed air holds no more, and a reader who divides the flows finds it."""
    step = 5 if times >= 100 else 1
    return str(round(times / step) * step)


def _limit(asked: FlowAsked, found: ProductAir, words: Words) -> str:
    """Body and period of a limit of exposure, with its figure where it may be shown; else what the flow goes by."""
    if asked.limit is None:
        named = {
            "explosion": words("{} % of the LEL").format(found.share),
            "vapours": words("8 h TWA"),
            "all": words("highest of the above"),
        }
        return named[asked.use]
    figure = f", {words.phrase(asked.shown_limit)}" if asked.shown_limit is not None else ""
    period = words(_PERIODS.get(asked.limit.period, asked.limit.period))
    return f"{asked.limit.body}, {asked.limit.jurisdiction}, {period}{figure}"


def _statements(job: Job, spec: Spec, listed: tuple[ProductAir, ...], words: Words) -> Iterator[str]:
    stated = job.ventilation.statement if job.ventilation is not None else None
    if not listed and not names_products(job, spec):
        yield from (*((stated,) if stated is not None else ()), words(AIR_BY_SHEET))
        return
    if job.ventilation is None or not listed:
        outdoors = place_of(job) is Workplace.OUTDOORS
        yield words(NO_AIR_OUTDOORS if outdoors else NO_AIR_STATED).replace("{time}", unmeasured_clearance())
        return
    if stated is not None:
        yield stated
    # mist is in no figure: the clearance time is always said, once for all products
    text = words("Re-entry without respiratory protection, after spraying has stopped (spray mist): {}.")
    yield text.format(mist_gone(job, words))
    known = laws_of_air(spec.project.jurisdictions, listed)
    laws = ", ".join(entry.law for entry in known if entry.has_limits)
    if not spec.project.states("jurisdictions"):
        yield words(LAW_NOT_STATED).replace("{law}", laws)
    if laws:
        yield words(LAW_OF_THE_PLACE).replace("{law}", laws)
    for entry in known:
        if not entry.has_limits:
            yield words(LAW_WITHOUT_LIMITS).replace("{law}", entry.law)
        elif entry.lender:
            yield words(LAW_LENT).replace("{law}", entry.law).replace("{lender}", entry.lender)
    yield words(HEALTH_SETS_THE_AIR)
    times = times_over_explosion(listed)
    if times is not None:
        product, most = times
        named = words(LUNGS_OVER_EXPLOSION).replace("{product}", spec.products[product].name)
        yield named.replace("{times}", _about(most.number))
    if any(entry.isocyanates for entry in listed):
        yield words(DILUTION_IS_NO_CONTROL)
    yield words(MIXED_ROOM)
