"""The hazard card: in large type, hangs at the vehicle, for who never opens the method statement.

Everything that hurts, blasting and the thinners and cleaners among it; what to wear; the climate to keep with room to write the
reading; cautions at the work, re-entry, clearing up, fire and spill, first aid and the number to call. Nothing is cut: what does not
fit on a side runs on to the next. The template `hazard_card/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from specgen.documents.context import Context
from specgen.documents.hazard_card.fresh_air import air_needed
from specgen.documents.hazard_card.type_size import type_size
from specgen.documents.parts.caution_catalogue import (
    BREATHING_AIR,
    COVER_SKIN,
    FIRE,
    FIRE_CANS,
    NO_FIRST_AID,
    NOT_STATED,
    SHEET_DECIDES,
    SHEET_FIRST,
    SPILL,
    THINNER,
    USUAL_WEAR,
    Work,
)
from specgen.documents.parts.cautions import (
    chemical_hazards,
    data_sheet_words,
    emergency,
    first_aid,
    gravest_of,
    hazards,
    if_swallowed,
    sheet_in_short,
)
from specgen.documents.parts.climate import climate
from specgen.documents.parts.entry import entry_permit, re_entry
from specgen.documents.parts.hazard_lines import kept_and_carried, legally_asked, waste_code
from specgen.documents.parts.hurts import hurts
from specgen.documents.parts.parties import contact_line
from specgen.documents.parts.pictogram import PictogramView, pictograms
from specgen.documents.parts.protection import protection
from specgen.documents.parts.short_names import apart, short_names
from specgen.documents.parts.step_cautions import standing_by_product
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import work_wear
from specgen.facts.job.builds import builds_of
from specgen.facts.job.chemicals import chemicals, marks_of, supply_codes
from specgen.facts.job.confined import place_of
from specgen.facts.job.thinners import without_hazards
from specgen.facts.pairs.parts import BLASTING
from specgen.facts.product.dangers import dangers_of, traits_of
from specgen.model.hazards import Route, Task
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class HazardCard:
    """The whole card. `products` are those of the job, each by its short name where it has one; `hurts` are (sentence, codes it
    stands for with whose they are); `climate` are (name, limit), the limit empty where the
    job states none, for the room to write the reading is kept; `cautions` are (task, sentences); `size` is that of the type, by
    how much there is to say."""

    number: str
    title: str
    size: str
    vehicles: str
    on: str
    call: str
    emergency: str
    level: str
    signal_word: str
    pictograms: tuple[PictogramView, ...]
    products: str
    hurts: tuple[tuple[str, str], ...]
    wear: TableView
    supplies: TableView
    data_sheets: tuple[str, ...]
    cautions: tuple[tuple[str, tuple[str, ...]], ...]
    entry: tuple[tuple[str, str], ...]
    re_entry: str
    climate: tuple[tuple[str, str], ...]
    first_aid: tuple[tuple[str, str], ...]
    program: str


def hazard_card(job: Job, context: Context) -> HazardCard:
    """The card of a job that checks without errors."""
    spec, words = context.spec, context.words
    products = list(spec.products_of(job))
    panels = (*hazards(products, spec, words), *chemical_hazards(job, words))
    gravest = gravest_of(panels)
    codes = {code for product in products if product.hazards is not None for code in product.hazards.pictograms}
    codes |= {code for entry in chemicals(job) for code in marks_of(entry).pictograms}
    short = short_names([product.name for product in products])
    listed = tuple(_hurts(products, job, short, words))
    wear, supplied = _wear(products, job, spec, short, words), _supplies(job, spec, words)
    cautions = tuple(_cautions(job, products, spec, context.day, short, words))
    acts = first_aid(products, words, short) or ((words("First aid"), words(NO_FIRST_AID)),)
    # of cleaners and thinners no first aid is stated, but for what is done where they are swallowed
    if supplies := [entry.what for entry in chemicals(job) if entry.statements]:
        acts = (*acts, (apart(supplies), words("See section 4 of the safety data sheet.")))
    drunk, act = if_swallowed(job, words)
    if drunk:
        acts = (*acts, (f"{words.word(Route.SWALLOWED)} ({drunk})", act))
    card = HazardCard(
        number=job.document.number,
        title=job.document.title,
        size="",
        vehicles=", ".join(job.vehicles),
        on=context.day.isoformat(),
        call=contact_line(job.call or spec.project.maker.contact),
        emergency=emergency(spec.project, words),
        level=gravest.level,
        signal_word=gravest.signal_word,
        pictograms=pictograms(codes, words),
        products="; ".join(words("{}: {}").format(called, name) for name, called in short.items() if called != name),
        hurts=listed,
        wear=wear,
        supplies=supplied,
        data_sheets=tuple(_data_sheets(products, job, short, words)),
        cautions=cautions,
        entry=entry_permit(job, words),
        re_entry=re_entry(job, spec, context.day, words),
        climate=_climate(job, words.in_one_unit()),
        first_aid=acts,
        program=context.program,
    )
    return replace(card, size=type_size(card, spec.project.page_size))


def _hurts(products: Sequence[Product], job: Job, short: Mapping[str, str], words: Words) -> Iterator[tuple[str, str]]:
    """Each danger with the codes that name it and whose they are; where nobody but the one product has any, it is not named."""
    held = [(short[product.name], dangers_of([product])) for product in products]
    held += [(entry.what, dangers_of((), entry.statements)) for entry in chemicals(job) if entry.statements]
    everybody = [name for name, _ in held]
    for danger, codes in dangers_of(products, supply_codes(job)).items():
        whose: dict[str, list[str]] = {}
        for code in codes or ("",):
            owners = dict.fromkeys(name for name, has in held if danger in has and (not code or code in has[danger]))
            named = words("all") if len(owners) == len({*everybody}) else apart(list(owners))
            whose.setdefault(named if len(everybody) > 1 else "", []).append(code)
        parts = ((", ".join(filter(None, said)), owners) for owners, said in whose.items())
        yield (
            hurts(danger, codes, words),
            "; ".join(words("{}: {}").format(*part) if all(part) else "".join(part) for part in parts),
        )


def _cautions(
    job: Job, products: Sequence[Product], spec: Spec, on: date, short: Mapping[str, str], words: Words
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What holds at each task for the kind of product and of work, each sentence once."""
    told: set[str] = set()
    if persons := tuple(_named(_persons(products, spec, short, words), words)):
        yield words("Persons"), persons
    beside: set[Work] = set()
    builds = builds_of(job, spec)
    if any(step.do in BLASTING for build in builds for step in build.preparation.steps):
        beside.add("blasting")
    if any(item.old_coats for item in job.items):
        beside.add("old-paint")
    for task in (Task.PREPARATION, Task.SANDING, Task.MIXING, Task.SPRAYING, Task.CLEAN_UP):
        standing = standing_by_product(task, products, words, place=place_of(job), beside=beside)
        said = [(_whose(owners, products, short), text) for owners, text in standing]
        if task is Task.SPRAYING and any("isocyanate" in traits_of(product) for product in products):
            said.append(("", words(BREATHING_AIR)))
        new = tuple(_named([one for one in said if one[1] not in told], words))
        told.update(text for _, text in said)
        if new:
            heading = words("Sanding, blasting") if task is Task.SANDING and "blasting" in beside else words.word(task)
            yield heading, new
        if task is Task.SPRAYING and (air := air_needed(job, spec, on, short, words)):
            yield words("Ventilation"), air
    codes = dict.fromkeys(code for one in products if one.hazards is not None for code in one.hazards.waste_codes)
    disposal = dict.fromkeys(
        one.hazards.disposal for one in products if one.hazards is not None and one.hazards.disposal
    )
    if codes or disposal:
        yield (
            words("Waste"),
            (*disposal, *((words("Waste codes: {}.").format(", ".join(map(waste_code, codes))),) if codes else ())),
        )
    if packs := tuple(_named(_packs(products, spec, short, words.in_one_unit()), words)):
        yield words("Unopened packs"), packs
    cans = any("aerosol" in traits_of(product) for product in products)
    yield words("Fire"), (words(FIRE), *((words(FIRE_CANS),) if cans else ()))
    yield words("Spill"), (words(SPILL), words(SHEET_DECIDES))


def _persons(products: Sequence[Product], spec: Spec, short: Mapping[str, str], words: Words) -> list[tuple[str, str]]:
    """(whose, sentence): who must not work with which product, surveillance and training, in the words of makers and of the law."""
    owners: dict[str, list[Product]] = {}
    for product in products:
        if product.hazards is None:
            continue
        said = [caution.text for caution in product.hazards.cautions if caution.task is Task.ANY]
        if product.hazards.health_surveillance:
            said.append(words("Health surveillance: {}.").format(product.hazards.health_surveillance.rstrip(".")))
        said += [words("By law: {}.").format(text) for text in legally_asked(product, spec, words)]
        for text in said:
            owners.setdefault(text, []).append(product)
    return _each_once(owners, products, short)


def _packs(products: Sequence[Product], spec: Spec, short: Mapping[str, str], words: Words) -> list[tuple[str, str]]:
    """(whose, sentence): how packs are stored and carried."""
    owners: dict[str, list[Product]] = {}
    for product in products:
        if text := kept_and_carried(product, spec, words):
            owners.setdefault(text, []).append(product)
    return _each_once(owners, products, short)


def _each_once(
    owners: Mapping[str, Sequence[Product]], products: Sequence[Product], short: Mapping[str, str]
) -> list[tuple[str, str]]:
    return [(_whose(whose, products, short), text) for text, whose in owners.items()]


def _whose(owners: Sequence[Product], products: Sequence[Product], short: Mapping[str, str]) -> str:
    """The products a caution is for, empty where it is for all: the table above it may allow another mask for the others."""
    return "" if len(owners) == len(products) else apart([short[product.name] for product in owners])


def _named(said: Sequence[tuple[str, str]], words: Words) -> Iterator[str]:
    """Each text, and before it whose it is wherever that changes, so that one for all is never read as one for some."""
    last = ""
    for whose, text in said:
        yield text if whose == last else words("{}: {}").format(whose or words("All"), text)
        last = whose


def _wear(products: Sequence[Product], job: Job, spec: Spec, short: Mapping[str, str], words: Words) -> TableView:
    """What to wear at every task; tasks at which the same products ask for the same share a row, so that it is said once."""
    whole = protection(products, words, work_wear(job, spec, words), short)
    shared: dict[tuple[str, ...], list[str]] = {}
    for task, *rest in (_usual_beside(row, words) for row in whole.rows):
        shared.setdefault(tuple(cell or words("not stated") for cell in rest), []).append(task)
    rows = tuple((", ".join(tasks), *rest) for rest, tasks in shared.items())
    return replace(whole, rows=rows)


def _usual_beside(row: Sequence[str], words: Words) -> Sequence[str]:
    """The row; where usual practice stands for what no product states, that is said beside it, and the row is for all, or for the
    cleaner where no coating is worked with."""
    task, whose, *worn = row
    if whose != words(USUAL_WEAR):
        return row
    usual, marked = words("{} (common practice)"), ("", words(NOT_STATED), words(COVER_SKIN))
    named = words("cleaner") if task == words.word(Task.PREPARATION) else words("all")
    return (task, named, *(text if text in marked else usual.format(text) for text in worn))


def _supplies(job: Job, spec: Spec, words: Words) -> TableView:
    """The thinners and cleaners with their statements in full; where nobody states them, that is said."""
    rows = []
    for panel in chemical_hazards(job, words):
        said = "; ".join(" ".join(part for part in (one.code, one.text, one.note) if part) for one in panel.statements)
        rows.append((panel.product, panel.signal_word, said))
    for name, stated in without_hazards(job, spec):
        sheet = data_sheet_words(stated, words)
        told = words("Hazards not stated: {}").format(words(SHEET_FIRST))
        rows.append((name or words(THINNER), words("not stated"), f"{told} ({sheet})" if sheet else told))
    columns = (
        Column(words("Supply"), "w-20"),
        Column(words("Signal word"), "w-12"),
        Column(words("Hazard statements")),
    )
    return table_view(words("Thinners and cleaners"), columns, rows)


def _data_sheets(products: Sequence[Product], job: Job, short: Mapping[str, str], words: Words) -> Iterator[str]:
    for product in products:
        if product.hazards is not None and (sheet := sheet_in_short(product.hazards.safety_data_sheet, words)):
            yield f"{short[product.name]}: {sheet}"
    for entry in chemicals(job):
        if sheet := sheet_in_short(entry.safety_data_sheet, words):
            yield f"{entry.what}: {sheet}"


def _climate(job: Job, words: Words) -> tuple[tuple[str, str], ...]:
    """All four limits in a fixed order; a painter looks for each at its place."""
    stated = dict(climate(job.climate, words))
    names = (
        words("Air temperature"),
        words("Surface temperature"),
        words("Relative humidity"),
        words("Surface above dew point"),
    )
    return tuple((name, stated.get(name, "")) for name in names)
