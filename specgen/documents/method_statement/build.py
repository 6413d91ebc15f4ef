"""Everything the method statement says of one build: its items, its part, how it is prepared, its coats and waits.

Called by `method_statement`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from specgen.documents.method_statement.between_coats import BetweenView, between_coats
from specgen.documents.method_statement.exposed import exposed
from specgen.documents.method_statement.old_coats import RepairView, old_coat_in_short, repairs
from specgen.documents.method_statement.preparation import intended_for, part_state, steps_on
from specgen.documents.method_statement.work import Numbers, Phase, Told, work
from specgen.documents.parts.coats import CoatView, Wait, coat_name, coats, numbered, total_allows, total_rows, waits
from specgen.documents.parts.items import number_of
from specgen.documents.parts.pictures import see
from specgen.documents.parts.preparation import StepView, handed_over, prepared_to
from specgen.documents.parts.step_cautions import at_steps
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import wear_for_cleaners
from specgen.facts.job.builds import Build, builds_of
from specgen.facts.job.confined import place_of
from specgen.facts.job.quantities import Quantities
from specgen.facts.layer.film import Limit, film_limit
from specgen.figures.layer_section import Band, layer_section
from specgen.model.job import Item, Job
from specgen.model.product import Role
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.standards.tables import table


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildView:
    letter: str
    title: str
    use: str
    items: TableView
    material: str
    condition: str
    state: tuple[tuple[str, str], ...]
    preparation: str
    steps: tuple[StepView, ...]
    repairs: tuple[RepairView, ...]
    coats: TableView
    allows: str
    released: str
    serves: str
    between: tuple[BetweenView, ...]
    phases: tuple[Phase, ...]
    section: str
    section_caption: str


def builds(job: Job, spec: Spec, figures: Quantities, words: Words, *, drawn: bool = True) -> tuple[BuildView, ...]:
    """Every build of the job as the method statement prints it, with or without the drawing of its coats."""
    numbers = Numbers()
    found = tuple(_build(build, job, spec, figures, numbers, words) for build in builds_of(job, spec))
    return found if drawn else tuple(replace(build, section="", section_caption="") for build in found)


def _build(build: Build, job: Job, spec: Spec, figures: Quantities, numbers: Numbers, words: Words) -> BuildView:
    system, preparation, substrate = build.system, build.preparation, build.substrate
    material = words(table("materials").row("id", substrate.material)["name"])
    thickness = f", {words.phrase(substrate.thickness)}" if substrate.thickness is not None else ""
    first = system.layers[0] if system.layers else None
    family, role = (spec.product_of(first).binder, first.role) if first is not None else ("", Role.PRIMER)
    told = Told(
        build=build,
        steps=steps_on(
            preparation,
            substrate,
            family,
            role,
            words,
            _step_cautions(build, job, words),
            _drawn(build, job, spec, words),
        ),
        handed_over=handed_over(preparation, words),
        coats=coats(build.painted, spec, figures, words),
        waits=waits(system, preparation, job, spec, words),
        between=between_coats(system, job, spec, words),
    )
    return BuildView(
        letter=build.letter,
        title=system.title,
        use=system.use or "",
        items=_items(build, job, spec, figures, words),
        material=f"{material}{thickness}",
        condition=substrate.condition or "",
        state=(*part_state(substrate, words), *intended_for(preparation, words)),
        preparation=preparation.title,
        steps=told.steps,
        repairs=repairs(build.items, job, spec, material, words),
        coats=_coat_table(build.letter, told, total_rows(build.painted, spec, words), words),
        allows=total_allows(build.painted, spec, words),
        released=_released(told.waits, told.coats, words),
        serves=_serves(system, words),
        between=told.between,
        phases=work(told, job, spec, numbers, words),
        **_section(build, spec, material, words),
    )


def _serves(system: System, words: Words) -> str:
    """`corrosivity C3, durability high; by test report 12`: what the system is said to serve, and on what evidence."""
    claim = system.category
    if claim is None:
        return ""
    served = [words("corrosivity category {}").format(claim.corrosivity.value)] if claim.corrosivity is not None else []
    if claim.immersion is not None:
        medium = words(table("exposure_categories").row("id", claim.immersion.value)["name"])
        served.append(
            words("immersion category {category} ({medium})").format(category=claim.immersion.value, medium=medium)
        )
    text = ", ".join((*served, words("durability {}").format(words.word(claim.durability))))
    return f"{text}; {claim.evidence}" if claim.evidence else text


def _step_cautions(build: Build, job: Job, words: Words) -> tuple[tuple[str, ...], ...]:
    old_paint = any(item.old_coats for item in build.items)
    return at_steps(
        build.preparation,
        words,
        place=place_of(job),
        old_paint=old_paint,
        cleaners=wear_for_cleaners(job, words),
    )


def _drawn(build: Build, job: Job, spec: Spec, words: Words) -> tuple[str, ...]:
    return tuple(see(step, job, spec, words, build.preparation) for step in build.preparation.steps)


def _items(build: Build, job: Job, spec: Spec, figures: Quantities, words: Words) -> TableView:
    columns = [
        Column(words("Item"), "w-12"),
        Column(words("Part"), "w-25"),
        Column(words("Qty"), "w-6", numeric=True),
        Column(words("Total area"), "w-10", numeric=True),
        Column(words("Masking (left uncoated)")),
        Column(words("Existing coating")),
        Column(words("Exposure"), "w-10"),
        Column(words("Max. service temperature"), "w-12", numeric=True),
    ]
    rows = [_item(item, job, spec, figures, words) for item in build.items]
    # where nothing is masked, nothing is on the part, or no temperature is stated
    return table_view(words("Items of system {}").format(build.letter), columns, rows, "–")


def _item(item: Item, job: Job, spec: Spec, figures: Quantities, words: Words) -> tuple[str, ...]:
    area = figures.areas.get(item.id)
    old = "; ".join(old_coat_in_short(coat, words) for coat in item.old_coats)
    masked = "; ".join(entry.what for entry in item.masked)
    printed = words.worked(area)
    return (
        item.id,
        ", ".join(part for part in (item.name, see(item, job, spec, words)) if part),
        number_of(item, words),
        printed,
        masked,
        old,
        exposed(job, item, words),
        words.phrase(item.service_temperature),
    )


def _coat_table(letter: str, told: Told, totals: Sequence[tuple[str, ...]], words: Words) -> TableView:
    # where all wet films are of the same, the head of their column says of what, else each cell does
    wet_of = {coat.wet_of for coat in told.coats if coat.wet}
    in_head = wet_of.pop() if len(wet_of) == 1 else ""
    wet = words("WFT {of_what}").format(of_what=in_head) if in_head else words("WFT")
    ordered = any(coat.needed or coat.order_number for coat in told.coats)
    columns = [
        Column(words("Coat"), "w-10"),
        Column(words("Product, variant, order number") if ordered else words("Product")),
        Column(words("Application"), "w-10"),
        Column(wet, "w-8", numeric=True),
        Column(words("DFT min."), "w-6", numeric=True),
        Column(words("DFT nominal"), "w-6", numeric=True),
        Column(words("DFT max."), "w-6", numeric=True),
        Column(words("Interval min."), "w-7"),
        Column(words("Interval max."), "w-7"),
        Column(words("If exceeded"), "w-14"),
        Column(words("Packs"), "w-6", numeric=True),
    ]
    caption = words(
        "System {}: coats from the substrate outwards, with dry film thickness (DFT), interval to the next step"
    )
    if ordered:
        caption = words(
            "System {}: coats from the substrate outwards, with dry and wet film thickness (DFT, WFT), interval to the next step, packs"
        )
    caption = caption.format(letter)
    return table_view(caption, columns, list(_coat_rows(told, totals, in_head, words)))


def _coat_rows(told: Told, totals: Sequence[tuple[str, ...]], wet_of: str, words: Words) -> Iterator[tuple[str, ...]]:
    """A row for the preparation and the wait after it, one for each coat with the interval to the next, and the totals.

    A limit that is not there is shown so; of a column that no coat fills nothing stands in the other rows either, so that it is left
    out.
    """
    listed, intervals = told.coats, told.waits
    filled = [any(getattr(coat, name) for coat in listed) for name in ("passes", "wet", "least", "nominal", "most")]
    packs = "–" if any(coat.needed for coat in listed) else ""
    first, coats_after = {coat.name for coat in listed[:1]}, {coat.name for coat in listed[1:]}
    to_first = next((wait for wait in intervals if wait.comes in first), None)
    prepared = prepared_to(told.build.preparation, words)
    if to_first is not None or prepared:
        films = ["–" if shown else "" for shown in filled]
        ends = (to_first.not_later, to_first.late) if to_first is not None else ("–", "–")
        yield words("preparation"), prepared or words("last step"), *films, "–", *ends, packs
    to_next = {wait.after: wait for wait in intervals if wait.comes in coats_after}
    for coat in listed:
        variant = f"{coat.product}, {coat.variant}" if coat.variant else coat.product
        named = f"{variant}\n{coat.order_number}" if coat.variant and coat.order_number else variant
        wait = to_next.get(coat.name)
        yield (
            coat.name,
            named,
            coat.passes,
            f"{coat.wet}\n{coat.wet_of}" if coat.wet and not wet_of else coat.wet,
            coat.least,
            coat.nominal,
            coat.most,
            (wait.not_before or "–") if wait is not None else "–",
            (wait.not_later or "–") if wait is not None else "–",
            (wait.late or "–") if wait is not None else "–",
            coat.needed.replace(";\n", "\n"),
        )
    for name, *films in totals:
        if len(listed) > 1 or films != [listed[0].least, listed[0].nominal, listed[0].most]:
            summed = (film or ("–" if shown else "") for film, shown in zip(films, filled[2:], strict=True))
            dashes = ("–" if shown else "" for shown in filled[:2])
            yield name, "–", *dashes, *summed, "–", "–", "–", packs


def _released(intervals: Sequence[Wait], listed: Sequence[CoatView], words: Words) -> str:
    """`handling at least 20 h, return to service at least 14 days`: what follows the last coat; empty where nothing is stated."""
    coats_of = {coat.name for coat in listed}
    said = (
        words("{} at least {}").format(wait.comes, wait.not_before) for wait in intervals if wait.comes not in coats_of
    )
    return ", ".join(said)


def _section(build: Build, spec: Spec, material: str, words: Words) -> dict[str, str]:
    """The drawing and its caption. A coat without a nominal film is drawn by the limit it has, and both say so."""
    names = {"nominal": "{}", "max": words("max. DFT {}"), "min": words("min. DFT {}")}
    bands, drawn, system = [], set(), build.system
    for number, layer in numbered(system):
        limits: tuple[Limit, ...] = ("nominal", "max", "min")
        for limit in limits:
            if (film := film_limit(system, layer, spec, limit)) is not None:
                text = names[limit].format(words.phrase(film.value))
                bands.append(Band(coat_name(number, layer, words), text, film.value.to("um")))
                drawn.add(limit)
                break
    caption = (
        words("Section through system {letter} at nominal DFT, to scale.")
        if drawn == {"nominal"}
        else words(
            "Section through system {letter}, coats without a nominal DFT drawn at the limit shown; thickness to scale."
        )
    )
    drawing = layer_section(bands, material, words("Section through the coats, thickness to scale"))
    said = caption.format(letter=build.letter)
    if len({tuple(layer.film for layer in painted.layers) for painted, _ in build.painted}) > 1:
        items = ", ".join(item.id for item in build.painted[0][1])
        said = words("{caption} Drawn with the DFT of {items}.").format(caption=said, items=items)
    return {"section": drawing, "section_caption": said if drawing else ""}
