"""How a damaged or rejected place of the new coats is made good: once for all systems of a job, with the numbers of each.

Called by `method_statement`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from specgen.documents.method_statement.conditions import Condition, paper_window
from specgen.documents.method_statement.open_coats import HARD_BY_SHEET
from specgen.documents.parts.application import full_cure_at, sandable
from specgen.documents.parts.coats import Painted, coat_name, differing, numbered, total
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
    """The steps for all systems of the job, each once, and for each system from which ground a coat is laid again."""

    steps: tuple[Condition, ...]
    coats: tuple[TableView, ...]


Builds = Sequence[Build]
"""Those of one system."""


def repair_procedure(job: Job, spec: Spec, built: Sequence[Build], words: Words) -> RepairProcedure | None:
    """Of every system, in the order of the builds; None where nothing is coated."""
    together: dict[str, list[Build]] = {}
    for build in built:
        together.setdefault(build.system.id, []).append(build)
    systems = list(together.values())
    if not systems:
        return None
    return RepairProcedure(
        steps=tuple(_steps(systems, job, spec, words)),
        coats=tuple(_coats_again(builds, job, spec, words) for builds in systems),
    )


def _steps(systems: Sequence[Builds], job: Job, spec: Spec, words: Words) -> Iterator[Condition]:
    def told(step: Callable[[Builds], Condition | None]) -> Iterator[Condition]:
        return _told([(builds, step(builds)) for builds in systems], words)

    yield Condition(
        words("Wash and degrease the area and its surroundings first: sanding works dirt and grease into the surface."),
        "",
    )
    # of systems whose dust does harm one instruction, which names their products
    harmful = [builds[0].system for builds in systems if _harmful(builds[0].system, spec)]
    alike = {system.id: harmful for system in harmful}
    yield from told(
        lambda builds: Condition(_hard(alike.get(builds[0].system.id, [builds[0].system]), job, spec, words), "")
    )
    text = words(
        "Sand the area back until the remaining coating is sound and adheres firmly at its edge: to the "
        "first undamaged coat, or to the substrate where the lowest coat is damaged or loose."
    )
    yield Condition(text, "")
    yield from _ground([build for builds in systems for build in builds], job, spec, words)
    yield from told(lambda builds: _feather(builds, words))
    yield from told(lambda builds: _matt(builds, words))
    yield Condition(words("Vacuum, degrease and wipe with a tack cloth. Mask the areas that are not to be coated."), "")
    yield from told(lambda builds: _reapply(builds, words))
    text = words(
        "Once hard, measure the DFT on the repair, on the feathered rings and beside them, with the gauge "
        "used for the original readings."
    )
    yield Condition(text, "")
    yield from told(lambda builds: _film_of_all(builds, spec, words))
    text = words("Then make the other checks of the inspection and test plan on the repair, and record it.")
    yield Condition(text, "")


def _told(said: Sequence[tuple[Builds, Condition | None]], words: Words) -> Iterator[Condition]:
    """One step of all systems: once where they share it, else once for each kind, with the systems it is for."""
    alike: dict[Condition, list[str]] = {}
    for builds, condition in said:
        if condition is not None:
            alike.setdefault(condition, []).extend(build.letter for build in builds)
    if sum(map(len, alike.values())) == sum(len(builds) for builds, _ in said) and len(alike) == 1:
        yield from alike
    elif alike:
        lines = [
            words.translate.plural("System {letters}: {text}", "Systems {letters}: {text}", len(of)).format(
                letters=", ".join(of), text=condition.text
            )
            for condition, of in alike.items()
        ]
        yield Condition("\n".join(lines), _source_of(alike, words))


def _source_of(alike: Mapping[Condition, Sequence[str]], words: Words) -> str:
    """One source of all kinds of a step, or each with the systems it speaks of."""
    sources = {condition.source: of for condition, of in alike.items() if condition.source}
    if len({condition.source for condition in alike}) == 1:
        return next(iter(sources), "")
    said = words("system {letters}: {source}")
    return "; ".join(said.format(letters=", ".join(of), source=source) for source, of in sources.items())


def _feather(builds: Builds, words: Words) -> Condition:
    width = _wide(widest("feather", _items(builds)), words)
    if _blasted(builds):
        text = words(
            "Feather the edge of every coat around the area, one ring per coat{width}, until no step can be felt."
        )
        return Condition(text.format(width=width), "")
    text = words(
        "Feather the edge of every coat around the area, one ring per coat, with {papers}{width}, until no "
        "step can be felt."
    )
    papers = paper_window("feather_edge", words)
    return Condition(text.format(papers=papers, width=width), _papers_source("feather_edge", words))


def _matt(builds: Builds, words: Words) -> Condition:
    system, items = builds[0].system, _items(builds)
    sanded = widest("sanded", items) or widest("lap", items) or _least_lap()
    own, dull = _own_paper(system, words), papers_around_repair(system.layers[-1].role)
    if own or not _blasted(builds):
        text = words("Abrade the sound coating around the feathered rings to an even matt with {papers}{width}.")
        source = "" if own else _papers_source(dull, words)
    else:
        text, source = words("Abrade the sound coating around the feathered rings to an even matt{width}."), ""
    return Condition(text.format(papers=own or paper_window(dull, words), width=_wide(sanded, words)), source)


def _reapply(builds: Builds, words: Words) -> Condition:
    lap = widest("lap", _items(builds))
    text = words(
        "Reapply the coats, starting from the exposed coat or substrate as shown in the table below, with "
        "the cross coats given in the coat table. Extend each coat beyond the one below it; the last coat "
        "must overlap the abraded area by at least {lap}."
    )
    source = words(str(table("repair_laps").row_citation(_lap()))) if lap is None else ""
    return Condition(text.format(lap=words.phrase(lap or _least_lap())), source)


def _film_of_all(builds: Builds, spec: Spec, words: Words) -> Condition | None:
    """What all coats together may measure; None where nothing is stated."""
    parts = []
    if films := total(_painted(builds), spec, words):
        over_paint = all(build.substrate.material == "old_paint" for build in builds)
        text = (
            words("Where the existing coating was exposed, total DFT of the new coats: {}.")
            if over_paint
            else words("Where bare substrate was exposed, total DFT: {}.")
        )
        parts.append(text.format(films))
    if (limit := strip_limit(_items(builds))) is not None:
        text = words("Existing and new coats together: at most {}; above that, strip the existing coating.")
        parts.append(text.format(words.phrase(limit)))
    return Condition(" ".join(parts), "") if parts else None


def _painted(builds: Builds) -> Painted:
    """The systems of the builds with their items, each once."""
    together: dict[str, tuple[System, list[Item]]] = {}
    for system, items in (one for build in builds for one in build.painted):
        together.setdefault(system.id, (system, []))[1].extend(items)
    return list(together.values())


def _items(builds: Builds) -> list[Item]:
    return [item for build in builds for item in build.items]


def _hard(systems: Sequence[System], job: Job, spec: Spec, words: Words) -> str:
    """When sanding may begin, one instruction a product: from the time it states, else by what its dust does.

    Dust of isocyanate or epoxy that has not cured does harm long after the film is dry to handle.
    """
    products = {product.id: product for system in systems for product in spec.products_in(system)}
    timed = [product for product in products.values() if product.sandable_after]
    harmful = list({product.id: product for system in systems for product in _harmful(system, spec)}.values())
    said = [_from_when(timed, job, words)] if timed else []
    if any(layer.product is None for system in systems for layer in system.layers):
        said.append(words(HARD_BY_SHEET))
    if harmful:
        said.append(_until_cured(harmful, job, words, only=bool(timed)))
    elif len(timed) < len(products):
        text = words("Start only when the last coat is dry to handle{}.")
        after = (
            words(", {} after the end of its last cross coat").format(words.phrase(systems[0].handle_after))
            if systems[0].handle_after
            else ""
        )
        said.append(text.format(after))
    return " ".join(said)


def _harmful(system: System, spec: Spec) -> list[Product]:
    """Products whose dust does harm and which do not state from when they may be sanded."""
    return [product for product in harmful_dust(system, spec) if not product.sandable_after]


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


def _ground(built: Sequence[Build], job: Job, spec: Spec, words: Words) -> Iterator[Condition]:
    """How the part is made ready where it shows; a spot that cannot be blasted gets the grade tables name for spots."""
    alike: dict[tuple[str, str, str, str], list[str]] = {}
    for build in built:
        name = words(table("materials").row("id", build.substrate.material)["name"])
        step = best_step(build.preparation)
        grade = words(" to {}").format(step.grade) if step is not None and step.grade else ""
        least, source = "", ""
        severe = any(severe_service(job, item, build.system) for item in build.items)
        spots = small_spots(spec.product_of(build.system.layers[0]).binder, severe=severe)
        if spots and any(step.do in BLASTING for step in build.preparation.steps):
            least = words(" Small areas that cannot be blast-cleaned: to {}.").format(words(spots[0]["grades"]))
            source = _said(table("minimum_preparation").row_citation(spots[0]), words)
        alike.setdefault((name, grade, least, source), []).append(build.letter)
    for (name, grade, least, source), letters in alike.items():
        text = words.translate.plural(
            "Where the {name} of system {letters} is exposed, prepare it{grade} as in its surface preparation.",
            "Where the {name} of systems {letters} is exposed, prepare it{grade} as in their surface preparation.",
            len(letters),
        ).format(name=name, grade=grade, letters=", ".join(letters))
        yield Condition(text + least, source)


def _coats_again(builds: Sequence[Build], job: Job, spec: Spec, words: Words) -> TableView:
    columns = (
        Column(words("Abraded back to"), "w-15"),
        Column(words("Final abrasive"), "w-15"),
        Column(words("First coat to reapply"), "w-15"),
        Column(words("DFT of that coat"), "w-40"),
        Column(words("Overcoating interval"), "w-15"),
    )
    caption = words.translate.plural(
        "Coats to be reapplied, system {letters}: {title}",
        "Coats to be reapplied, systems {letters}: {title}",
        len(builds),
    ).format(letters=", ".join(build.letter for build in builds), title=builds[0].system.title)
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
            _films(builds, number, spec, words),
            words.phrase(layer.overcoat_interval) or "–",
        )
    # damage that stays within the last coat
    last, name = system.layers[-1], coat_name(len(system.layers), system.layers[-1], words)
    yield (
        name,
        _own_paper(system, words) or _around(builds, last, words),
        name,
        _films(builds, len(system.layers), spec, words),
        "–",
    )


def _films(builds: Builds, number: int, spec: Spec, words: Words) -> str:
    """The DFT of a coat, of each colour where they differ."""
    painted = _painted(builds)
    return differing(painted, [_film(system, system.layers[number - 1], spec, words) for system, _ in painted])


def _film(system: System, layer: Layer, spec: Spec, words: Words) -> str:
    named: tuple[tuple[Limit, str], ...] = (("min", words("at least {}")), ("max", words("at most {}")))
    films = ((text, film_limit(system, layer, spec, limit)) for limit, text in named)
    return ", ".join(text.format(words.phrase(film.value)) for text, film in films if film is not None)


def _part_paper(builds: Sequence[Build], words: Words) -> str:
    """The author's last abrasive, over existing paint that for the metal; of a blasted part his blasting, else the papers of the table."""
    found = []
    for build in builds:
        named = [step.abrasive for step in build.preparation.steps if step.do in WORKING and step.abrasive]
        usual = papers_on_material(build.substrate.material, build.system.layers[0].role)
        if not named and _blasted([build]):
            found.append(words("as in the surface preparation"))
        else:
            best = best_step(build.preparation) if any(item.old_coats for item in build.items) else None
            of_metal = best.abrasive if best is not None else None
            found.append(of_metal or (named[-1] if named else paper_window(usual, words) if usual else ""))
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


def _least_lap() -> Quantity:
    return Quantity.of("length", int(_lap()["lap_mm"]), "mm", _lap()["lap_mm"])


def _lap() -> dict[str, str]:
    return dict(table("repair_laps").row("use", "general"))


def _papers_source(name: str, words: Words) -> str:
    stages = table("sanding_stages")
    return _said(stages.row_citation(stages.row("id", name)), words)


def _said(citation: Citation, words: Words) -> str:
    """Empty for common practice, which the section names once for every step without a source."""
    return "" if citation.basis is Basis.PRACTICE else words(str(citation))
