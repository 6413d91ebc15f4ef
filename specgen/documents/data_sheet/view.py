"""The data sheet of one product: what a painter has to know of it, in the order he asks, as finished text.

The template `data_sheet/document.html.j2` prints it.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.data_sheet.claims import Claims, claims
from specgen.documents.data_sheet.film import comb_table, coverage_grounds, coverage_table, film_limits, stated_coverage
from specgen.documents.data_sheet.goes_over import GoesOver, goes_over, not_listed
from specgen.documents.data_sheet.nature import key_figures, nature, use
from specgen.documents.data_sheet.storage import heat, storage
from specgen.documents.data_sheet.use import if_exceeded, if_exceeded_below, over_table, times_table
from specgen.documents.data_sheet.variants import packing, variant_table
from specgen.documents.data_sheet.worn import worn_table
from specgen.documents.parts.annex import WorkingView, annex
from specgen.documents.parts.apart import Apart, placed
from specgen.documents.parts.application import ApplicationStep, application
from specgen.documents.parts.cautions import HazardView, emergency, first_aid, hazards
from specgen.documents.parts.climate import climate
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.revision_table import revision_table
from specgen.documents.parts.substances import substance_table
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.voc import voc_table
from specgen.documents.parts.wording import Words
from specgen.facts.calculations import place_of_calculations
from specgen.facts.product.figures import product_figures
from specgen.model.control import Calculations, ExtraSection, Section
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
    revisions: TableView
    name: str
    maker: PartyView
    on: str
    about: str
    nature: Pairs
    key_figures: Pairs
    goes_over: GoesOver | None
    not_listed: str
    over: TableView
    if_exceeded_below: Pairs
    conditions: Pairs
    steps: tuple[ApplicationStep, ...]
    film: Pairs
    comb: TableView
    coverage: TableView | None
    coverage_grounds: str
    stated_coverage: TableView | None
    times: TableView
    overcoats: bool
    if_exceeded: Pairs
    storage: Pairs
    variants: TableView
    packing: Pairs
    hazards: tuple[HazardView, ...]
    protection: TableView
    first_aid: Pairs
    emergency: str
    substances: TableView
    voc: TableView
    claims: Claims | None
    not_claimed: str
    workings: tuple[WorkingView, ...]
    apart: Apart | None
    in_brackets: bool
    program: str


def data_sheet(product: Product, context: Context) -> DataSheet:
    """The view of a product that checks without errors."""
    spec, words = context.spec, context.words
    figures = product_figures(product, spec, context.day)
    every = annex(figures.film, spec, words, own={product.id: ""})
    control = product.document
    without = set(control.leave_out) if control is not None else set()
    tables = control is not None and ExtraSection.GENERIC_OVERCOATING in control.add
    place = place_of_calculations(control, spec.project)
    numbers = {working.about: working.number if place is not Calculations.NONE else "" for working in every}
    number = sheet_number(product)
    workings, apart = placed(place, every, "data-sheet", number, words("Calculations of the data sheet"), context)
    covers = Section.COVERAGE not in without
    applied = application(product, words)
    stored, part_used = storage(product, words)
    first = tuple(key_figures(product, words))
    described = (*use(product, words), *nature(product, words), *heat(product, words))
    return DataSheet(
        number=number,
        title=control.title if control is not None else product.name,
        owner=control.owner if control is not None else "",
        prepared_by=control.prepared_by or "" if control is not None else "",
        revisions=revision_table(number, control, context),
        name=product.name,
        maker=party(spec.project.maker),
        on=context.day.isoformat(),
        about=product.about or "",
        nature=tuple(pair for pair in described if pair not in first),
        key_figures=first,
        goes_over=goes_over(product, spec, words) if tables else None,
        not_listed=not_listed(words) if tables else "",
        over=over_table(product, spec, words),
        if_exceeded_below=if_exceeded_below(product, spec, words),
        conditions=_conditions((*applied.values, *climate(product.climate, words)), words),
        steps=(*applied.steps, *(ApplicationStep(*pair) for pair in part_used)),
        film=film_limits(product, words),
        comb=comb_table(product, figures, numbers, words),
        coverage=coverage_table(product, figures, numbers, words) if covers else None,
        coverage_grounds=coverage_grounds(figures, words),
        stated_coverage=stated_coverage(product, words) if covers else None,
        times=times_table(product, spec, words),
        overcoats=bool(product.overcoat),
        if_exceeded=if_exceeded(product, spec, words),
        storage=stored,
        variants=variant_table(product, words),
        packing=packing(product, words),
        hazards=hazards([product], spec, words),
        protection=worn_table(product, words),
        first_aid=first_aid([product], words),
        emergency=emergency(spec.project, words),
        substances=substance_table(product, spec.project.jurisdictions, context.day, words),
        voc=voc_table([product], context.day, words),
        claims=claims(product, spec, words) if Section.CLAIMS not in without else None,
        not_claimed=product.not_claimed or "",
        workings=workings,
        apart=apart,
        in_brackets=words.in_brackets,
        program=context.program,
    )


def _conditions(stated: Pairs, words: Words) -> Pairs:
    """Each once, what the air and the part have to be side by side; a time comes last."""
    return tuple(sorted(dict.fromkeys(stated), key=lambda pair: pair[0] == words("Use within (after activation)")))
