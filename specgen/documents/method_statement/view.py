"""The method statement of one job: everything a workshop needs to do it and an auditor to judge it, as finished text.

The template `method_statement/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from specgen.documents.context import Context
from specgen.documents.method_statement.build import BuildView, builds
from specgen.documents.method_statement.climate_figure import ClimateFigure, climate_figure
from specgen.documents.method_statement.compliance import compliance
from specgen.documents.method_statement.dew_points import dew_points
from specgen.documents.method_statement.faults import FaultsView, faults
from specgen.documents.method_statement.open_coats import OpenCoats, open_coats
from specgen.documents.method_statement.open_warnings import open_warnings
from specgen.documents.method_statement.repair_procedure import RepairProcedure, repair_procedure
from specgen.documents.method_statement.safety import JobSafety, job_safety, let_off
from specgen.documents.method_statement.schedule import ScheduleView, schedule_view
from specgen.documents.method_statement.tests_asked import tests_table
from specgen.documents.method_statement.work import InspectedView
from specgen.documents.parts.annex import WorkingView, annex, grouped
from specgen.documents.parts.apart import Apart, placed
from specgen.documents.parts.climate import climate
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.inspection import points_table
from specgen.documents.parts.job_revision import sheet_said
from specgen.documents.parts.packs import order_line
from specgen.documents.parts.parties import PartyView, contact_line, party
from specgen.documents.parts.pictures import PictureView, pictures
from specgen.documents.parts.place_words import place_in_words
from specgen.documents.parts.revision_table import revision_table
from specgen.documents.parts.supplies import supplies, supplies_table
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.calculations import place_of_calculations
from specgen.facts.job.builds import Build, builds_of
from specgen.facts.job.quantities import Quantities, quantities
from specgen.facts.job.thinners import thinners_of
from specgen.facts.job.waivers import in_force
from specgen.model.control import Calculations, Section
from specgen.model.file_names import sheet_number
from specgen.model.job import Job
from specgen.model.project import Project
from specgen.model.spec import Spec

# those of a method statement; the others are sections of data sheets
_SECTIONS = (Section.REPAIR, Section.DEFECTS, Section.MATERIALS, Section.DRAWINGS)


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodStatement:
    """The whole document. `open` is what it says as a performance specification, None where every product is named.

    `left_out` names the sections its author left out; such a section is None or empty. `in_brackets` is true where figures have a
    second unit."""

    number: str
    title: str
    owner: str
    prepared_by: str
    revisions: TableView
    scope: str
    vehicles: str
    starts: str
    workplace: str
    maker: PartyView
    customer: PartyView
    call: str
    on: str
    builds: tuple[BuildView, ...]
    climate: TableView
    climate_figure: ClimateFigure | None
    dew_points: TableView | None
    sequence: TableView
    schedule: ScheduleView | None
    points: TableView
    tests: TableView
    compliance: tuple[TableView, ...]
    pictures: tuple[PictureView, ...]
    repair: RepairProcedure | None
    faults: FaultsView | None
    safety: JobSafety
    open: OpenCoats | None
    materials: TableView | None
    supplies: TableView | None
    transfer_efficiency: str
    workings: tuple[WorkingView, ...]
    apart: Apart | None
    waivers: TableView
    left_out: str
    rests_on: str
    open_warnings: TableView
    parties: tuple[tuple[str, str], ...]
    in_brackets: bool
    program: str


def method_statement(job: Job, context: Context) -> MethodStatement:
    """The view of a job that checks without errors."""
    spec, words = context.spec, context.words
    without = set(job.document.leave_out)
    figures = quantities(job, spec)
    released = let_off(job, spec, figures)
    own = _own_names(builds_of(job, spec), words)
    thinned = (one for thinner in thinners_of(job, spec) for one in thinner.sums)
    listed = annex((*figures.told_once(), *thinned, *released), spec, words, own={**own, job.id: ""})
    place = place_of_calculations(job.document, spec.project)
    safety = job_safety(job, released, context, after=len(listed), numbered=place is not Calculations.NONE)
    every = grouped((*listed, *safety.air.workings))
    left_open = open_coats(builds_of(job, spec), job, spec, figures, words)
    title = words("Calculations of the method statement")
    if left_open is not None:
        title = words("Calculations of the performance specification")
    workings, apart = placed(place, every, called(left_open), job.document.number, title, context)
    told = builds(job, spec, figures, words, drawn=Section.DRAWINGS not in without)
    efficiency = job.consumption.transfer_efficiency if job.consumption is not None else None
    return MethodStatement(
        number=job.document.number,
        title=job.document.title,
        owner=job.document.owner,
        prepared_by=job.document.prepared_by or "",
        revisions=revision_table(job.document.number, job.document, context),
        scope=job.scope,
        vehicles=", ".join(job.vehicles),
        starts=job.starts.isoformat() if job.starts is not None else "",
        workplace=words.word(job.workplace) if job.workplace is not None else "",
        maker=party(spec.project.maker),
        customer=party(spec.project.customer),
        call=contact_line(job.call or spec.project.maker.contact),
        on=context.day.isoformat(),
        builds=told,
        climate=_climate(job, told, words),
        climate_figure=climate_figure(job, spec, words) if Section.DRAWINGS not in without else None,
        dew_points=dew_points(job, words),
        sequence=_sequence(told, words),
        schedule=schedule_view(job, spec, words),
        points=points_table(job, spec, words),
        tests=tests_table(job, spec, words),
        compliance=compliance(job, spec, builds_of(job, spec), context.day, words),
        pictures=pictures(job, spec, words),
        repair=repair_procedure(job, spec, builds_of(job, spec), words) if Section.REPAIR not in without else None,
        faults=faults(job, spec, words) if Section.DEFECTS not in without else None,
        safety=safety,
        open=left_open,
        materials=_materials(figures, spec, words) if Section.MATERIALS not in without else None,
        supplies=supplies_table(supplies(job, spec, words), words) if Section.MATERIALS not in without else None,
        transfer_efficiency=words.phrase(efficiency),
        workings=workings,
        apart=apart,
        left_out=", ".join(_left_out(job, place, words)),
        waivers=_waivers(job, spec, context.day, words),
        open_warnings=open_warnings(job, context),
        rests_on=_rests_on(job, context),
        parties=tuple(_parties(spec.project, words)),
        in_brackets=words.in_brackets,
        program=context.program,
    )


def _own_names(listed: Sequence[Build], words: Words) -> dict[str, str]:
    """What the statement calls its systems and their coats: `system A`, `system A (LAMP)` where another colour stands beside it."""
    letters: dict[str, list[str]] = {}
    for build in listed:
        for system, items in build.painted:
            alone = f" ({', '.join(item.id for item in items)})" if len(build.painted) > 1 else ""
            letters.setdefault(system.id, []).append(f"{build.letter}{alone}")
    named = {system: words("system {}").format(", ".join(told)) for system, told in letters.items()}
    painted = (system for build in listed for system, _ in build.painted)
    coats = {f"{one.id}/{layer.id}": coat_name(at, layer, words) for one in painted for at, layer in numbered(one)}
    return {**named, **coats}


def called(left_open: OpenCoats | None) -> str:
    """The name in the names of its files."""
    return "method-statement" if left_open is None else "performance-specification"


def _left_out(job: Job, place: Calculations, words: Words) -> Iterator[str]:
    yield from (words.word(section) for section in job.document.leave_out if section in _SECTIONS)
    if place is Calculations.NONE:
        yield words("calculations")


def _climate(job: Job, told: Sequence[BuildView], words: Words) -> TableView:
    """The conditions across, as they are read one after the other at the part."""
    listed = climate(job.climate, words)
    columns = tuple(Column(name) for name, _ in listed)
    caption = words("Ambient conditions, from the first coat until the last coat is dry to handle")
    points = (point for build in told for phase in build.phases for point in phase.points)
    if read := ", ".join(dict.fromkeys(point.number for point in points if _of_the_air(point))):
        caption = words("{caption}; inspection {numbers}").format(caption=caption, numbers=read)
    return table_view(caption, columns, [tuple(value for _, value in listed)] if listed else ())


def _of_the_air(point: InspectedView) -> bool:
    return not point.hold and not point.passes


def _sequence(told: Sequence[BuildView], words: Words) -> TableView:
    """The phases in their order with what is inspected in each, the hold points among them.

    What looks at the air alone stands in the table above it, with the limits.
    """
    rows = []
    for build in told:
        for phase in build.phases:
            name = f"{phase.number} {phase.short}"
            if len(told) > 1:
                name = words("{name} ({letter})").format(name=name, letter=build.letter)
            points = [point for point in phase.points if not _of_the_air(point)]
            shown = [
                words("HOLD POINT {}").format(f"{point.number} {point.check}")
                if point.hold
                else f"{point.number} {point.check}"
                for point in points
            ]
            passes = [(point.number, point.passes.rstrip(".")) for point in points if point.passes]
            # of several inspections each criterion has the number of its own
            criteria = [f"{number}: {text}" if len(points) > 1 else text for number, text in passes]
            rows.append((name, "; ".join(shown) or "–", "; ".join(criteria) or "–"))
    columns = (
        Column(words("Work"), "w-20"),
        Column(words("Inspection"), "w-38"),
        Column(words("Acceptance criterion")),
    )
    return table_view(words("Sequence of work; at a hold point the work stops until it is signed off"), columns, rows)


def _rests_on(job: Job, context: Context) -> str:
    """The data sheets of the products, each with the revision that says what is printed here; empty where none is named."""
    numbers = dict.fromkeys(sheet_number(product) for product in context.spec.products_of(job))
    return "; ".join(sheet_said(number, context) for number in numbers)


def _parties(project: Project, words: Words) -> Iterator[tuple[str, str]]:
    for heading, named in ((words("Manufacturer"), project.maker), (words("Customer"), project.customer)):
        if named is None:
            continue
        shown = party(named)
        yield heading, ". ".join(part for part in (shown.name, shown.address, shown.contact) if part)


def _materials(figures: Quantities, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Order number"), "w-12"),
        Column(words("Product"), "w-25"),
        Column(words("Variant"), "w-14"),
        Column(words("Colour")),
        Column(words("Pack"), "w-15"),
        Column(words("Packs required"), "w-8", numeric=True),
    ]
    rows = [
        (*order_line(spec.products[product], variant, words), words.worked(needed))
        for (product, variant), needed in figures.packs.items()
    ]
    return table_view(words("Packs for the job, rounded up to whole packs"), columns, rows, "–")


def _waivers(job: Job, spec: Spec, day: date, words: Words) -> TableView:
    """Those in force on the day; a finding whose waiver has ended is open again."""
    columns = [
        Column(words("Rule"), "w-10"),
        Column(words("Requirement waived"), "w-25"),
        Column(words("Reason")),
        Column(words("Accepted by"), "w-15"),
        Column(words("Valid until"), "w-12"),
    ]
    rows = [
        (w.rule, place_in_words(w.path, spec, words), w.reason, w.by, w.until.isoformat())
        for w in job.waivers
        if in_force(w, day)
    ]
    return table_view(words("Waivers"), columns, rows)
