"""The cautions part of a job: panels, what to wear, first aid, clearing up, air and VOC, with the workings behind it.

Called by `method_statement`.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.method_statement.banned import banned
from specgen.documents.method_statement.room_air import AirView, room_air
from specgen.documents.parts.cautions import HazardView, chemical_hazards, emergency, first_aid, hazards
from specgen.documents.parts.entry import entry_permit
from specgen.documents.parts.protection import protection
from specgen.documents.parts.step_cautions import cautions_at
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.voc import voc_table
from specgen.facts.job.confined import place_of
from specgen.facts.job.quantities import Quantities
from specgen.facts.product.emissions import voc_let_off
from specgen.model.hazards import Task
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.trade.working import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSafety:
    """Everything said of hazards in one document of a job, as finished text."""

    emergency: str
    entry: tuple[tuple[str, str], ...]
    banned: tuple[tuple[str, str], ...]
    panels: tuple[HazardView, ...]
    protection: TableView
    first_aid: tuple[tuple[str, str], ...]
    clearing_up: tuple[str, ...]
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
        entry=entry_permit(job, words),
        banned=banned(job, spec, words),
        panels=(*hazards(products, spec, words), *chemical_hazards(job, words)),
        protection=protection(products, words),
        first_aid=first_aid(products, words),
        clearing_up=cautions_at(Task.CLEAN_UP, products, words, place=place_of(job)),
        air=room_air(job, spec, day, words, after=after, numbered=numbered),
        voc=voc_table(products, day, words, masses),
    )
