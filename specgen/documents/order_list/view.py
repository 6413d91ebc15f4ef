"""The order list of a folder: whole packs over all its jobs, as finished text and as rows for a spreadsheet.

The template `order_list/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.annex import WorkingView, annex
from specgen.documents.parts.apart import Apart, placed
from specgen.documents.parts.cautions import emergency
from specgen.documents.parts.packs import order_line
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.supplies import supplies, together
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.calculations import place_of_calculations
from specgen.facts.job.orders import Orders, orders
from specgen.facts.job.quantities import PackKey
from specgen.facts.job.thinners import thinners_of_all
from specgen.model.job import Job
from specgen.model.spec import Spec

_MOST_COLUMNS = 8
"""As many jobs as stand side by side on a page; more have a table of their own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderList:
    """The whole document. `sheet` is the table with plain figures, so that a spreadsheet can add them up."""

    number: str
    title: str
    emergency: str
    maker: PartyView
    customer: PartyView
    on: str
    packs: TableView
    needs: tuple[TableView, ...]
    jobs: TableView
    not_counted: TableView
    supplies: TableView
    sheet: TableView
    workings: tuple[WorkingView, ...]
    apart: Apart | None
    program: str


def order_list(spec: Spec, context: Context) -> OrderList:
    """The view of a folder that checks without errors."""
    words = context.words
    found = orders(spec)
    jobs = [job for job in _in_order(spec) if any(job.id in shares for shares in found.shares.values())]
    number, place = f"OL-{spec.project.id}", place_of_calculations(None, spec.project)
    thinned = (one for thinner in thinners_of_all(spec).values() for one in thinner.sums)
    every = annex(
        (*found.own_workings(), *thinned), spec, words, words("calculated in the method statement of the job")
    )
    workings, apart = placed(place, every, "order-list", number, words("Calculations of the order list"), context)
    return OrderList(
        number=number,
        title=words("Packs to order"),
        emergency=emergency(spec.project, words),
        maker=party(spec.project.maker),
        customer=party(spec.project.customer),
        on=context.day.isoformat(),
        packs=_packs(found, spec, words),
        needs=tuple(
            _needs(found, spec, jobs[at : at + _MOST_COLUMNS], words) for at in range(0, len(jobs), _MOST_COLUMNS)
        )
        if found.packs
        else (),
        jobs=_jobs(jobs, words),
        not_counted=_not_counted(found, spec, words),
        supplies=_supplies(spec, words),
        sheet=_sheet(found, spec, words),
        workings=workings,
        apart=apart,
        program=context.program,
    )


def _in_order(spec: Spec) -> list[Job]:
    """The jobs by their numbers, as a buyer looks for one."""
    return sorted(spec.jobs.values(), key=lambda job: job.document.number)


def _packs(found: Orders, spec: Spec, words: Words) -> TableView:
    """By pack and order number; a colour standard that all share stands in the head of its column."""
    standards = {
        variant.colour.standard
        for product, variant_id in found.packs
        if variant_id and (variant := spec.products[product].variant(variant_id)) and variant.colour
    }
    shared = f"{standards.pop()} " if len(standards) == 1 else ""
    columns = (
        Column(words("Order number"), "w-12"),
        Column(words("Product")),
        Column(words("Variant"), "w-15"),
        Column(words("Colour ({})").format(shared.strip()) if shared else words("Colour"), "w-15"),
        Column(words("Pack"), "w-15"),
        Column(words("Shelf life, unopened"), "w-10"),
        Column(words("To order"), "w-8", numeric=True),
    )
    rows = []
    for key, needed in found.packs.items():
        number, product, name, shade, packed = order_line(spec.products[key[0]], key[1], words)
        life = words.phrase(spec.products[key[0]].shelf_life) or words("not stated")
        rows.append((number, product, name, shade.removeprefix(shared) or "–", packed, life, words.worked(needed)))
    rows.sort(key=lambda row: (row[4], row[0]))
    return table_view(words("Packs for all jobs, rounded up to whole packs"), columns, rows)


def _needs(found: Orders, spec: Spec, jobs: Sequence[Job], words: Words) -> TableView:
    """What each job needs of each pack, not rounded; – where it needs none."""
    columns = (
        Column(words("Order number"), "w-12"),
        Column(words("Product and variant")),
        *(Column(job.document.number, "w-8", numeric=True) for job in jobs),
    )
    rows = []
    for key in found.packs:
        number, product, variant, *_ = order_line(spec.products[key[0]], key[1], words)
        shares = [share or "–" for share in _shares(found, key, jobs, words)]
        rows.append((number, ", ".join(part for part in (product, variant) if part), *shares))
    return table_view(words("Packs needed by each job, not rounded"), columns, sorted(rows))


def _sheet(found: Orders, spec: Spec, words: Words) -> TableView:
    jobs, sheet = _in_order(spec), words.for_a_sheet()
    columns = (
        *_headings(words),
        *(Column(job.document.number) for job in jobs),
        Column(words("Packs required")),
    )
    rows = [
        (
            *(text.replace("\N{NO-BREAK SPACE}", " ") for text in order_line(spec.products[key[0]], key[1], sheet)),
            *_shares(found, key, jobs, sheet),
            str(needed.rounded),
        )
        for key, needed in found.packs.items()
    ]
    return TableView(caption=words("Packs to order"), columns=columns, rows=tuple(rows))


def _headings(words: Words) -> tuple[Column, ...]:
    return (
        Column(words("Order number"), "w-12"),
        Column(words("Product")),
        Column(words("Variant"), "w-10"),
        Column(words("Colour"), "w-12"),
        Column(words("Pack"), "w-12"),
    )


def _shares(found: Orders, key: PackKey, jobs: Sequence[Job], words: Words) -> Iterator[str]:
    for job in jobs:
        share = found.shares[key].get(job.id)
        yield words.figures(str(share.rounded)) if share is not None else ""


def _supplies(spec: Spec, words: Words) -> TableView:
    """What the jobs order beside the packs, each supply once."""
    columns = [
        Column(words("Order number"), "w-12"),
        Column(words("Supply"), "w-15"),
        Column(words("To order"), "w-10"),
        Column(words("For the jobs"), "w-15"),
        Column(words("Use"), "w-15"),
        Column(words("Safety")),
    ]
    needed = {name: words.worked(thinner.amount) for name, thinner in thinners_of_all(spec).items()}
    listed = [(job.document.number, supplies(job, spec, words)) for job in _in_order(spec)]
    rows = [
        (line.order_number or words("not stated"), line.what, line.amount(words), jobs, line.use, line.safety)
        for line, jobs in together(listed, needed)
    ]
    return table_view(words("Thinner, cleaners, abrasives and other supplies for all jobs"), columns, rows)


def _jobs(jobs: Sequence[Job], words: Words) -> TableView:
    columns = (
        Column(words("Job"), "w-12"),
        Column(words("Title"), "w-50"),
        Column(words("Vehicles or plant")),
        Column(words("Transfer efficiency"), "w-12", numeric=True),
    )
    rows = [
        (
            job.document.number,
            job.document.title,
            ", ".join(job.vehicles),
            words.phrase(job.consumption.transfer_efficiency if job.consumption is not None else None)
            or words("not stated"),
        )
        for job in jobs
    ]
    return table_view(words("Jobs in this list"), columns, rows)


def _not_counted(found: Orders, spec: Spec, words: Words) -> TableView:
    columns = (Column(words("Job"), "w-15"), Column(words("Product or item"), "w-30"), Column(words("Reason")))
    rows = [(spec.jobs[gap.job].document.number, gap.of, words(gap.why)) for gap in found.not_counted]
    return table_view(words("Not included in the totals"), columns, rows)
