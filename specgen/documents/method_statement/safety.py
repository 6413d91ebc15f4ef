"""The cautions part of a job: hazards of all products, what to wear, first aid, air and VOC, with the workings behind it.

Called by `method_statement`.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.method_statement.banned import banned
from specgen.documents.method_statement.main_dangers import main_dangers
from specgen.documents.method_statement.merged_safety import MergedSafety, merged_safety
from specgen.documents.method_statement.room_air import AirView, room_air
from specgen.documents.parts.cautions import emergency
from specgen.documents.parts.entry import entry_permit
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.voc import voc_table
from specgen.facts.job.quantities import Quantities
from specgen.facts.product.emissions import voc_let_off
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.trade.working import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSafety:
    """Everything said of hazards in one document of a job, as finished text."""

    emergency: str
    dangers: tuple[str, ...]
    entry: tuple[tuple[str, str], ...]
    banned: tuple[tuple[str, str], ...]
    merged: MergedSafety | None
    air: AirView
    voc: TableView


def let_off(job: Job, spec: Spec, figures: Quantities) -> tuple[Working, ...]:
    """The workings of the VOC of a job, for its annex."""
    return voc_let_off(job, spec, figures.packs)


def job_safety(job: Job, released: tuple[Working, ...], context: Context, *, after: int, numbered: bool) -> JobSafety:
    """The part of one job. `released` are those of `let_off`; the workings of its air stand `after` others, if they are numbered."""
    spec, day, words = context.spec, context.day, context.words
    products = list(spec.products_of(job))
    ids = {f"voc.{job.id}.{product.id}": product.id for product in products} | {f"voc.{job.id}": ""}
    masses = {ids[working.id]: working for working in released if working.id in ids}
    return JobSafety(
        emergency=emergency(spec.project, words),
        dangers=main_dangers(products, job, words),
        entry=entry_permit(job, words),
        banned=banned(job, spec, words),
        merged=merged_safety(products, job, spec, words),
        air=room_air(job, spec, day, words, after=after, numbered=numbered),
        voc=voc_table(products, day, words, masses),
    )
