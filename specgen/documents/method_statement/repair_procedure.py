"""How a damaged or rejected place of the new coats is made good, system by system, with the numbers of that system.

Called by `method_statement`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.method_statement.conditions import Condition, paper_window
from specgen.documents.parts.application import full_cure_at, sandable
from specgen.documents.parts.coats import coat_name, numbered, total
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import Build
from specgen.facts.job.exposure import severe_service
from specgen.facts.job.repair import harmful_dust, strip_limit, widest
from specgen.facts.layer.film import Limit, film_limit
from specgen.facts.layer.intervals import air_of, interval
from specgen.facts.pairs.floor import best_step, small_spots
from specgen.facts.pairs.papers import papers_around_repair, papers_between, papers_in, papers_on_material
from specgen.facts.pairs.parts import BLASTING, WORKING
from specgen.model.job import Item, Job
from specgen.model.product import Product, Role
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.standards.citations import Basis, Citation
from specgen.standards.tables import table
from specgen.units.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class RepairProcedure:
    """The steps for one system, and from which ground each coat is laid again. `letters` are the builds with the system."""

    letters: str
    title: str
    steps: tuple[Condition, ...]
    coats: TableView


def repair_procedures(job: Job, spec: Spec, built: Sequence[Build], words: Words) -> tuple[RepairProcedure, ...]:
    """One a system, in the order of the builds."""
    together: dict[str, list[Build]] = {}
    for build in built:
        together.setdefault(build.system.id, []).append(build)
    return tuple(_procedure(of_system, job, spec, words) for of_system in together.values())


def _procedure(builds: Sequence[Build], job: Job, spec: Spec, words: Words) -> RepairProcedure:
    system = builds[0].system
    return RepairProcedure(
        letters=", ".join(build.letter for build in builds),
        title=system.title,
        steps=tuple(_steps(builds, job, spec, words)),
        coats=_coats_again(builds, job, spec, words),
    )


def _steps(builds: Sequence[Build], job: Job, spec: Spec, words: Words) -> Iterator[Condition]:
    system, items = builds[0].system, [item for build in builds for item in build.items]
    last = system.layers[-1]
    yield Condition(
        words("Wash and degrease the area and its surroundings first: sanding works dirt and grease into the surface."),
        "",
    )
    yield Condition(_hard(system, job, spec, words), "")
    text = words(
        "Sand the area back until the remaining coating is sound and adheres firmly at its edge: to the "
        "first undamaged coat, or to the substrate where the lowest coat is damaged or loose."
    )
    yield Condition(text, "")
    yield from _ground(builds, job, spec, words)
    feather = widest("feather", items)
    if _blasted(builds):
        text = words(
            "Feather the edge of every coat around the area, one ring per coat{width}, until no step can be felt."
        )
        yield Condition(text.format(width=_wide(feather, words)), "")
    else:
        text = words(
            "Feather the edge of every coat around the area, one ring per coat, with {papers}{width}, until no "
            "step can be felt."
        )
        papers = paper_window("feather_edge", words)
        yield Condition(text.format(papers=papers, width=_wide(feather, words)), _papers_source("feather_edge", words))
    lap, least = widest("lap", items), Quantity.of("length", int(_lap()["lap_mm"]), "mm", _lap()["lap_mm"])
    sanded = widest("sanded", items) or lap or least
    own, dull = _own_paper(system, words), papers_around_repair(last.role)
    if own or not _blasted(builds):
        text = words("Abrade the sound coating around the feathered rings to an even matt with {papers}{width}.")
        source = "" if own else _papers_source(dull, words)
    else:
        text, source = words("Abrade the sound coating around the feathered rings to an even matt{width}."), ""
    yield Condition(text.format(papers=own or paper_window(dull, words), width=_wide(sanded, words)), source)
    yield Condition(words("Vacuum, degrease and wipe with a tack cloth. Mask the areas that are not to be coated."), "")
    text = words(
        "Reapply the coats, starting from the exposed coat or substrate as shown in the table below, with "
        "the cross coats given in the coat table. Extend each coat beyond the one below it; the last coat "
        "must overlap the abraded area by at least {lap}."
    )
    source = words(str(table("repair_laps").row_citation(_lap()))) if lap is None else ""
    yield Condition(text.format(lap=words.phrase(lap or least)), source)
    yield from _read_again(system, items, spec, words)


def _hard(system: System, job: Job, spec: Spec, words: Words) -> str:
    """When sanding may begin, one instruction a product: from the time it states, else by what its dust does.

    Dust of isocyanate or epoxy that has not cured does harm long after the film is dry to handle.
    """
    products = {layer.product: spec.product_of(layer) for layer in system.layers}
    timed = [product for product in products.values() if product.sandable_after]
    harmful = [product for product in harmful_dust(system, spec) if product not in timed]
    said = [_from_when(timed, job, words)] if timed else []
    if harmful:
        said.append(_until_cured(harmful, job, words, only=bool(timed)))
    elif len(timed) < len(products):
        text = words("Start only when the last coat is dry to handle{}.")
        after = (
            words(", {} after the end of its last cross coat").format(words.phrase(system.handle_after))
            if system.handle_after
            else ""
        )
        said.append(text.format(after))
    return " ".join(said)


def _from_when(products: Sequence[Product], job: Job, words: Words) -> str:
    """`Sand each film only from the time its product data state: Primer 210 ready for dry sanding 6 h at 20 °C.`"""
    times = [
        f"{product.name} {', '.join(f'{name} {time}' for name, time in sandable(product, air_of(job), words))}"
        for product in products
    ]
    text = words(
        "Sand these films only from the time their product data state, with dust extraction and a P3 mask: {}."
    )
    return text.format("; ".join(times))


def _until_cured(products: Sequence[Product], job: Job, words: Words, *, only: bool) -> str:
    """`only`: other products of the system state their times."""
    times = [f"{p.name} {time}" for p in products if (time := full_cure_at(p, air_of(job), words))]
    cured = words(". Fully cured: {}").format("; ".join(times)) if times else ""
    if only:
        text = words(
            "Do not dry-sand {names} before it is fully cured: until then its dust is harmful. A film that is "
            "already hard may be wet-sanded, with a P3 mask and gloves{times}."
        )
        return text.format(names=words(" or ").join(p.name for p in products), times=cured)
    text = words(
        "Do not dry-sand any film before it is fully cured: until then its dust is harmful. A film that is "
        "already hard may be wet-sanded, with a P3 mask and gloves{times}."
    )
    return text.format(times=cured)


def _ground(builds: Sequence[Build], job: Job, spec: Spec, words: Words) -> Iterator[Condition]:
    """How the part is made ready where it shows; a spot that cannot be blasted gets the grade tables name for spots."""
    for build in builds:
        name = words(table("materials").row("id", build.substrate.material)["name"])
        step = best_step(build.preparation)
        grade = words(" to {}").format(step.grade) if step is not None and step.grade else ""
        text = words("Where the {name} is exposed, prepare it{grade} following the steps of system {letter}.").format(
            name=name, grade=grade, letter=build.letter
        )
        source = ""
        severe = any(severe_service(job, item, build.system) for item in build.items)
        spots = small_spots(spec.product_of(build.system.layers[0]).binder, severe=severe)
        if spots and any(step.do in BLASTING for step in build.preparation.steps):
            least = words(" Small areas that cannot be blast-cleaned: to {}.").format(words(spots[0]["grades"]))
            text, source = text + least, _said(table("minimum_preparation").row_citation(spots[0]), words)
        yield Condition(text, source)


def _read_again(system: System, items: Sequence[Item], spec: Spec, words: Words) -> Iterator[Condition]:
    text = words(
        "Once hard, measure the DFT on the repair, on the feathered rings and beside them, with the gauge "
        "used for the original readings."
    )
    films = total(system, spec, words)
    if films:
        text += words(" Where bare substrate was exposed, total DFT: {}.").format(films)
    limit = strip_limit(items)
    if limit is not None:
        text += words(" Existing and new coats together: at most {}; above that, strip the existing coating.").format(
            words.phrase(limit)
        )
    text += words(" Then check adhesion, colour and finish as at the original inspection, and record the repair.")
    yield Condition(text, "")


def _coats_again(builds: Sequence[Build], job: Job, spec: Spec, words: Words) -> TableView:
    columns = (
        Column(words("Abraded back to"), "w-20"),
        Column(words("Final abrasive"), "w-20"),
        Column(words("First coat to reapply"), "w-15"),
        Column(words("DFT of that coat"), "w-30"),
        Column(words("Overcoating interval"), "w-15"),
    )
    caption = words("Coats to be reapplied, system {}").format(", ".join(build.letter for build in builds))
    return table_view(caption, columns, list(_rows(builds, job, spec, words)))


def _rows(builds: Sequence[Build], job: Job, spec: Spec, words: Words) -> Iterator[tuple[str, ...]]:
    system = builds[0].system
    for number, layer in numbered(system):
        below = system.layers[number - 2] if number > 1 else None
        if below is not None and below.role is Role.BASECOAT:
            continue  # a base coat that was sanded is laid again
        grounds = [words("the substrate") if below is None else coat_name(number - 1, below, words)]
        if layer.role is Role.BASECOAT:
            grounds.append(coat_name(number, layer, words))
        paper = (
            _part_paper(builds, words)
            if below is None
            else _coat_paper(below, layer, job, spec, words, blasted=_blasted(builds))
        )
        name = coat_name(number, layer, words)
        yield (
            words(" or ").join(grounds),
            paper,
            name,
            _film(system, layer, spec, words),
            words.phrase(layer.overcoat_interval),
        )
    # damage that stays within the last coat
    last, name = system.layers[-1], coat_name(len(system.layers), system.layers[-1], words)
    yield (
        name,
        _own_paper(system, words) or _around(builds, last, words),
        name,
        _film(system, last, spec, words),
        "",
    )


def _film(system: System, layer: Layer, spec: Spec, words: Words) -> str:
    named: tuple[tuple[Limit, str], ...] = (("min", words("at least {}")), ("max", words("at most {}")))
    films = ((text, film_limit(system, layer, spec, limit)) for limit, text in named)
    return ", ".join(text.format(words.phrase(film.value)) for text, film in films if film is not None)


def _part_paper(builds: Sequence[Build], words: Words) -> str:
    """The author's last abrasive; of a part that is blasted his blasting, else the papers of the table for the metal."""
    found = []
    for build in builds:
        named = [step.abrasive for step in build.preparation.steps if step.do in WORKING and step.abrasive]
        usual = papers_on_material(build.substrate.material, build.system.layers[0].role)
        if not named and _blasted([build]):
            found.append(words("as in the surface preparation"))
        else:
            found.append(named[-1] if named else paper_window(usual, words) if usual else "")
    return "; ".join(dict.fromkeys(text for text in found if text))


def _coat_paper(below: Layer, above: Layer, job: Job, spec: Spec, words: Words, *, blasted: bool) -> str:
    """The paper the author names for this coat, at once or once the interval is past; else that of the table.

    The table is that of vehicle finishing: of coats on a blasted part it says nothing.
    """
    remedy = interval(below, above, spec, air_of(job)).late
    late = ", ".join(words("P{}").format(paper) for paper in papers_in(remedy))
    if below.abraded_with or late:
        return below.abraded_with or late
    return words("abraded to an even matt") if blasted else paper_window(papers_between(below, above), words)


def _around(builds: Sequence[Build], last: Layer, words: Words) -> str:
    return (
        words("abraded to an even matt") if _blasted(builds) else paper_window(papers_around_repair(last.role), words)
    )


def _blasted(builds: Sequence[Build]) -> bool:
    """True where a part of the system is blasted: papers for vehicle bodies say nothing of it."""
    return any(step.do in BLASTING for build in builds for step in build.preparation.steps)


def _own_paper(system: System, words: Words) -> str:
    """The paper the author names for the product of the last coat, as for a rough one; empty where there is none."""
    last = system.layers[-1]
    alike = [layer for layer in reversed(system.layers) if layer.product == last.product]
    for layer in alike:
        if named := layer.abraded_with or ", ".join(
            words("P{}").format(paper) for paper in papers_in(layer.if_exceeded)
        ):
            return named
    return ""


def _wide(width: Quantity | None, words: Words) -> str:
    return words(", at least {} wide").format(words.phrase(width)) if width is not None else ""


def _lap() -> dict[str, str]:
    return dict(table("repair_laps").row("use", "general"))


def _papers_source(name: str, words: Words) -> str:
    stages = table("sanding_stages")
    return _said(stages.row_citation(stages.row("id", name)), words)


def _said(citation: Citation, words: Words) -> str:
    """Empty for common practice, which the section names once for every step without a source."""
    return "" if citation.basis is Basis.PRACTICE else words(str(citation))
