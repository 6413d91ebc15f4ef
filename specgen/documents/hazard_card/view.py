"""The hazard card: one side in large type that hangs at the vehicle, for who never opens the method statement.

What hurts, what to wear, the climate to keep with room to write the reading, first aid and the number to call. `specgen.printing`
takes the first of CUTS that fits; the template `hazard_card/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.caution_catalogue import HURTS
from specgen.documents.parts.cautions import chemical_hazards, emergency, first_aid, hazards
from specgen.documents.parts.climate import climate
from specgen.documents.parts.entry import entry_permit, re_entry
from specgen.documents.parts.parties import contact_line
from specgen.documents.parts.pictogram import PictogramView, pictograms
from specgen.documents.parts.step_cautions import standing_at
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.chemicals import chemicals, marks_of, supply_codes
from specgen.facts.job.confined import place_of
from specgen.facts.product.dangers import dangers_of
from specgen.facts.product.protection import worn
from specgen.model.hazards import Task
from specgen.model.job import Job
from specgen.model.product import Product


@dataclass(frozen=True, slots=True)
class Cut:
    """The size of the type, and whether hands, eyes and skin stand beside the breathing protection."""

    size: str
    whole_wear: bool = True


CUTS = (Cut("large"), Cut("plain"), Cut("close"), Cut("tight"), Cut("close", False), Cut("tight", False))
"""What is given up to stay on one side, mildest first. Never given up: signal word, what hurts, breathing protection,
climate, first aid and the number to call."""

TOO_MUCH = (
    ", not even cut as far as it may be. "
    "Shorten protection and first aid of its products, or divide the work into two jobs."
)

_MOST_HURTS = 6
_LEVELS = ("danger", "warning", "notice")


@dataclass(frozen=True, slots=True, kw_only=True)
class HazardCard:
    """The whole card. `hurts` are (sentence, codes it stands for); `climate` are (name, limit), the limit empty where the
    job states none, for the room to write the reading is kept."""

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
    hurts: tuple[tuple[str, str], ...]
    more: bool
    wear: TableView
    wear_cut: bool
    clearing_up: tuple[str, ...]
    entry: tuple[tuple[str, str], ...]
    re_entry: str
    climate: tuple[tuple[str, str], ...]
    first_aid: tuple[tuple[str, str], ...]
    program: str


def hazard_card(job: Job, context: Context, cuts: Sequence[Cut] = CUTS[:1], trial: bool = False) -> HazardCard:
    """The card of a job that checks without errors, with one of CUTS, by itself in `cuts`; a trial is the whole card."""
    spec, words, (cut,) = context.spec, context.words, cuts
    products = list(spec.products_of(job))
    # the panels of the products come with the gravest first; a thinner or cleaner may be graver
    panels = (*hazards(products, spec, words), *chemical_hazards(job, words))
    gravest = min(panels, key=lambda panel: _LEVELS.index(panel.level))
    hurts = tuple(
        (words(HURTS[danger]), ", ".join(codes)) for danger, codes in dangers_of(products, supply_codes(job)).items()
    )
    codes = {code for product in products if product.hazards is not None for code in product.hazards.pictograms}
    codes |= {code for entry in chemicals(job) for code in marks_of(entry).pictograms}
    return HazardCard(
        number=job.document.number,
        title=job.document.title,
        size=cut.size,
        vehicles=", ".join(job.vehicles),
        on=context.day.isoformat(),
        call=contact_line(job.call or spec.project.maker.contact),
        emergency=emergency(spec.project, words),
        level=gravest.level,
        signal_word=gravest.signal_word,
        pictograms=pictograms(codes, words),
        hurts=hurts[:_MOST_HURTS],
        more=len(hurts) > _MOST_HURTS,
        wear=_wear(products, words, cut),
        wear_cut=not cut.whole_wear,
        clearing_up=standing_at(Task.CLEAN_UP, products, words, place=place_of(job)),
        entry=entry_permit(job, words),
        re_entry=re_entry(job, spec, context.day, words),
        climate=_climate(job, words),
        first_aid=first_aid(products, words),
        program=context.program,
    )


def _wear(products: Sequence[Product], words: Words, cut: Cut) -> TableView:
    """What the products ask for at each task; the products stand under the task where they ask for different things."""
    alike: dict[tuple[Task, tuple[str, ...]], list[str]] = {}
    for product in products:
        for entry in worn(product):
            kit = (entry.respiratory or "", entry.gloves or "", entry.eyes or "", entry.skin or "")
            alike.setdefault((entry.task, kit if cut.whole_wear else kit[:1]), []).append(product.name)
    order = list(Task)
    ranked = sorted(alike.items(), key=lambda pair: order.index(pair[0][0]))
    # tasks at which the same products ask for the same share a row, for a card has no room to say it twice
    shared: dict[tuple[tuple[str, ...], tuple[str, ...]], list[Task]] = {}
    for (task, asked), names in ranked:
        if any(asked):
            shared.setdefault((tuple(dict.fromkeys(names)), asked), []).append(task)
    rows = []
    for (owners, asked), tasks in shared.items():
        several = any(sum(other is task for (other, _), _ in ranked) > 1 for task in tasks)
        named = ", ".join(words.word(task) for task in tasks) + (f"\n{', '.join(owners)}" if several else "")
        rows.append((named, *asked))
    columns = (
        Column(words("Task"), "w-20" if cut.whole_wear else "w-40"),
        Column(words("Respiratory"), "w-30" if cut.whole_wear else ""),
        Column(words("Hands")),
        Column(words("Eyes"), "w-15"),
        Column(words("Body"), "w-15"),
    )
    return table_view(words("Personal protective equipment (PPE)"), columns if cut.whole_wear else columns[:2], rows)


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
