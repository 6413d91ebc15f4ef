"""The method statement of one job: everything a workshop needs to do it and an auditor to judge it, as finished text.

Called by `specgen.printing`. The template `method_statement/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from specgen.model.acceptance import Criterion, InspectionPoint
from specgen.model.audience import customer_path
from specgen.model.control import Contact
from specgen.model.job import Job
from specgen.model.product import PackForm
from specgen.model.project import Party, Project
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.plan.quantities import Quantities, quantities
from specgen.views.annex import WorkingView, annex
from specgen.views.application import ApplicationView, application
from specgen.views.build import BuildView, builds
from specgen.views.cautions import HazardView, first_aid, hazards, protection
from specgen.views.tables import Column, TableView, table_view
from specgen.views.wording import Translate, Words


@dataclass(frozen=True, slots=True)
class PartyView:
    name: str
    address: str
    contact: str


@dataclass(frozen=True, slots=True)
class MethodStatement:
    """The whole document."""

    number: str
    title: str
    owner: str
    reason_for_change: str
    scope: str
    vehicles: str
    maker: PartyView
    customer: PartyView
    call: str
    on: str
    builds: tuple[BuildView, ...]
    climate: tuple[tuple[str, str], ...]
    applications: tuple[ApplicationView, ...]
    points: TableView
    gravest: HazardView
    hazards: tuple[HazardView, ...]
    protection: TableView
    first_aid: tuple[tuple[str, str], ...]
    materials: TableView
    transfer_efficiency: str
    workings: tuple[WorkingView, ...]
    waivers: TableView
    open_warnings: int
    parties: tuple[tuple[str, str], ...]
    program: str


def method_statement(
    job: Job, spec: Spec, *, on: date, open_warnings: int, program: str, translate: Translate
) -> MethodStatement:
    """The view of a job that checks without errors. `translate` turns English wording into the project's language."""
    words = Words.of(spec.project, translate)
    figures = quantities(job, spec)
    products = list(spec.products_of(job))
    panels = hazards(products, words)
    efficiency = job.consumption.transfer_efficiency if job.consumption is not None else None
    return MethodStatement(
        job.document.number,
        job.document.title,
        job.document.owner,
        job.document.reason_for_change or "",
        job.scope,
        ", ".join(job.vehicles),
        _party(spec.project.maker),
        _party(spec.project.customer),
        _contact(job.call or spec.project.maker.contact),
        on.isoformat(),
        builds(job, spec, figures, words),
        tuple(_climate(job, words)),
        tuple(application(product, words) for product in products),
        _points(job, spec, words),
        panels[0],
        panels,
        protection(products, words),
        first_aid(products, words),
        _materials(figures, spec, words),
        words.phrase(efficiency),
        annex(figures.workings(), words),
        _waivers(job, words),
        open_warnings,
        tuple(_parties(spec.project, words)),
        program,
    )


def _party(party: Party) -> PartyView:
    return PartyView(party.name, party.address or "", _contact(party.contact))


def _parties(project: Project, words: Words) -> Iterator[tuple[str, str]]:
    for heading, party in ((words("Maker"), project.maker), (words("Customer"), project.customer)):
        shown = _party(party)
        yield heading, ". ".join(part for part in (shown.name, shown.address, shown.contact) if part)


def _contact(contact: Contact | None) -> str:
    if contact is None:
        return ""
    return ", ".join(part for part in (contact.name, contact.phone, contact.email, contact.hours) if part)


def _climate(job: Job, words: Words) -> Iterator[tuple[str, str]]:
    if job.climate is None:
        return
    named = (
        (words("Air temperature"), job.climate.air),
        (words("Part temperature"), job.climate.surface),
        (words("Relative humidity"), job.climate.humidity),
        (words("Part above dew point"), job.climate.dew_point_margin),
    )
    yield from ((name, words.phrase(value)) for name, value in named if value is not None)


def _points(job: Job, spec: Spec, words: Words) -> TableView:
    layers = {layer.id: layer for system in spec.systems_of(job) for layer in system.layers}
    columns = [
        Column(words("No."), "w-5", numeric=True),
        Column(words("When"), "w-15"),
        Column(words("Check"), "w-15"),
        Column(words("Method, how often"), "w-20"),
        Column(words("Passes")),
        Column(words("If it fails"), "w-20"),
    ]
    rows = []
    for number, point in enumerate(job.inspection, 1):
        when = _when(point, layers, words) + (f"\n{words('HOLD POINT')}" if point.hold_point else "")
        method = "\n".join(part for part in (point.method, point.often) if part)
        passes = _criterion(point.criterion, words)
        rows.append((str(number), when, point.check, method, passes, point.if_failed or ""))
    return table_view(words("Inspection points in the order of the work"), columns, rows)


def _when(point: InspectionPoint, layers: dict[str, Layer], words: Words) -> str:
    if point.at is not None:
        return words.word(point.at)
    layer = layers.get(point.after or "")
    return words("after the {}").format(words.word(layer.role)) if layer is not None else ""


def _criterion(criterion: Criterion, words: Words) -> str:
    parts = []
    if criterion.min is not None:
        parts.append(words("at least {}").format(words.phrase(criterion.min)))
    if criterion.max is not None:
        parts.append(words("at most {}").format(words.phrase(criterion.max)))
    if criterion.rule is not None and criterion.rule.value != "own":
        named = [criterion.rule.value.replace("SSPC-PA-2", "SSPC-PA 2").replace("ISO-", "ISO ")]
        if criterion.edition:
            named.append(words("edition {}").format(criterion.edition))
        if criterion.level is not None:
            named.append(words("level {}").format(criterion.level))
        parts.append(" ".join(named))
    if criterion.text:
        parts.append(criterion.text)
    return "\n".join(parts)


def _materials(figures: Quantities, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Order number"), "w-15"),
        Column(words("Product"), "w-25"),
        Column(words("Variant"), "w-15"),
        Column(words("Colour"), "w-20"),
        Column(words("Pack"), "w-15"),
        Column(words("Needed"), "w-10", numeric=True),
    ]
    rows = []
    for (product_id, variant_id), needed in figures.packs.items():
        product = spec.products[product_id]
        variant = product.variant(variant_id) if variant_id else None
        colour = variant.colour if variant is not None else None
        fill = (variant.fill if variant is not None else None) or product.pack.fill
        kind = words("aerosol can") if product.pack.form is PackForm.AEROSOL else words("tin")
        rows.append(
            (
                variant.order_number if variant is not None else "",
                product.name,
                variant.name if variant is not None else "",
                f"{colour.standard} {colour.number}" if colour is not None else "",
                f"{words.phrase(fill)} {kind}",
                needed.printed(),
            )
        )
    return table_view(words("Whole packs for the job"), columns, rows)


def _waivers(job: Job, words: Words) -> TableView:
    columns = [
        Column(words("Rule"), "w-10"),
        Column(words("Value"), "w-25"),
        Column(words("Reason")),
        Column(words("Taken on by"), "w-15"),
        Column(words("Until"), "w-12"),
    ]
    rows = [(w.rule, customer_path(w.path), w.reason, w.by, w.until.isoformat()) for w in job.waivers]
    return table_view(words("Waivers"), columns, rows)
