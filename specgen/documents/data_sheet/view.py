"""The data sheet of one product: what a painter has to know of it, in the order he asks, as finished text.

The template `data_sheet/document.html.j2` prints it.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.data_sheet.film import comb_table, coverage_grounds, coverage_table, film_limits, stated_coverage
from specgen.documents.data_sheet.goes_over import GoesOver, goes_over, not_listed
from specgen.documents.data_sheet.nature import key_figures, nature, use
from specgen.documents.data_sheet.storage import heat, storage
from specgen.documents.data_sheet.use import drying_table, over_table, overcoat_table
from specgen.documents.data_sheet.variants import packing, variant_table
from specgen.documents.parts.annex import WorkingView, annex
from specgen.documents.parts.application import ApplicationStep, application
from specgen.documents.parts.cautions import HazardView, emergency, first_aid, hazards
from specgen.documents.parts.climate import climate
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.protection import protection
from specgen.documents.parts.substances import substance_table
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.voc import voc_table
from specgen.facts.product.figures import product_figures
from specgen.model.control import ExtraSection, Section
from specgen.model.file_names import sheet_number
from specgen.model.product import Product

Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DataSheet:
    """The whole document. Pairs are (name, finished text)."""

    number: str
    title: str
    owner: str
    prepared_by: str
    reason_for_change: str
    name: str
    maker: PartyView
    on: str
    about: str
    nature: Pairs
    key_figures: Pairs
    use: Pairs
    goes_over: GoesOver | None
    not_listed: str
    over: TableView
    application: Pairs
    steps: tuple[ApplicationStep, ...]
    film: Pairs
    comb: TableView
    coverage: TableView | None
    coverage_grounds: str
    stated_coverage: TableView | None
    drying: TableView
    overcoat: TableView
    climate: Pairs
    storage: Pairs
    part_used: Pairs
    heat: Pairs
    variants: TableView
    packing: Pairs
    hazards: tuple[HazardView, ...]
    protection: TableView
    first_aid: Pairs
    emergency: str
    substances: TableView
    voc: TableView
    claims: Pairs
    not_claimed: str
    workings: tuple[WorkingView, ...]
    program: str


def data_sheet(product: Product, context: Context) -> DataSheet:
    """The view of a product that checks without errors."""
    spec, words = context.spec, context.words
    figures = product_figures(product, spec, context.day)
    workings = annex(figures.film, words)
    control = product.document
    without = set(control.leave_out) if control is not None else set()
    tables = control is not None and ExtraSection.GENERIC_OVERCOATING in control.add
    listed = Section.CALCULATIONS not in without
    numbers = {working.about: working.number if listed else "" for working in workings}
    covers = Section.COVERAGE not in without
    applied = application(product, words)
    stored, part_used = storage(product, words)
    return DataSheet(
        number=sheet_number(product),
        title=control.title if control is not None else product.name,
        owner=control.owner if control is not None else "",
        prepared_by=control.prepared_by or "" if control is not None else "",
        reason_for_change=control.reason_for_change or "" if control is not None else "",
        name=product.name,
        maker=party(spec.project.maker),
        on=context.day.isoformat(),
        about=product.about or "",
        nature=tuple(nature(product, words)),
        key_figures=tuple(key_figures(product, words)),
        use=tuple(use(product, words)),
        goes_over=goes_over(product, spec, words) if tables else None,
        not_listed=not_listed(words) if tables else "",
        over=over_table(product, spec, words),
        application=applied.values,
        steps=applied.steps,
        film=film_limits(product, words),
        comb=comb_table(product, figures, numbers, words),
        coverage=coverage_table(product, figures, numbers, words) if covers else None,
        coverage_grounds=coverage_grounds(figures, words),
        stated_coverage=stated_coverage(product, words) if covers else None,
        drying=drying_table(product, words),
        overcoat=overcoat_table(product, spec, words),
        climate=climate(product.climate, words),
        storage=stored,
        part_used=part_used,
        heat=heat(product, words),
        variants=variant_table(product, words),
        packing=packing(product, words),
        hazards=hazards([product], spec, words),
        protection=protection([product], words),
        first_aid=first_aid([product], words),
        emergency=emergency(spec.project, words),
        substances=substance_table(product, spec.project.jurisdictions, context.day, words),
        voc=voc_table([product], context.day, words),
        claims=tuple((claim.text, claim.basis or words("no basis stated")) for claim in product.claims)
        if Section.CLAIMS not in without
        else (),
        not_claimed=product.not_claimed or "",
        workings=workings if listed else (),
        program=context.program,
    )
