"""SUB014 Scope, title and names agree with the material

Checks
    The metal or plastic that the scope and the title of a job, the name of an item and the condition of a substrate give the parts is their stated material, or a metal attached to them; so is the one in the title of its preparation, and the one on which, or for which, the system of a part is said to be. What is said of other work, of existing paint, of what is fitted later, of a paint or of a layer that is gone is not read; parts of several materials may stand in one clause.
Why
    Preparation, first coat, gauge and hazards all follow the stated material: where the words are right and the material was left over from the last job, zinc is blasted off, or epoxy is laid on bare aluminium as if it were steel.
Passes
    jobs.refit.scope: Doors of steel; fittings of aluminium are fitted later.

    jobs.refit.scope: Steel doors for aluminium trains, finished in aluminium silver.

    jobs.refit.document.title: Steps of mild steel

    systems.chassis.use: Frames of steel. Not on zinc or aluminium.

    Given zinc that is only degreased
    jobs.refit.scope: Galvanized steel chassis.
Fails
    jobs.refit.scope: Doors and steps of welded aluminium, sanded and coated.    # at jobs.refit.scope

    jobs.refit.scope: New hot-dip galvanized doors and steps.    # at jobs.refit.scope

    jobs.refit.document.title: Stainless doors    # at jobs.refit.document.title

    jobs.refit.items.STEP.name: Aluminium step    # at jobs.refit.items.STEP.name

    jobs.refit.substrate.condition: Hot-dip galvanised to ISO 1461    # at jobs.refit.substrate.condition

    preparations.sand-steel.title: Degrease and sand aluminium    # at preparations.sand-steel.title

    preparations.sand-steel.title: Degrease and sand steel    # at preparations.sand-steel.title
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}

    systems.chassis.title: Epoxy on stainless steel    # at systems.chassis.title
To put right
    Find out what the parts are made of, and write it into the substrate; or put right the words.
"""

from collections.abc import Iterator

from specgen.facts.job.materials_said import contradicted, laid_on, names_of
from specgen.facts.pairs.parts import Part, parts_of
from specgen.rules.kit import LOGIC, WARNING, Job, Path, Problem, Problems, Spec, date, rule


@rule("SUB014", on=Job, severity=WARNING, source=LOGIC)
def words_name_the_material(job: Job, spec: Spec, on: date) -> Problems:
    parts = list(parts_of(job, spec))
    for path, text, of in _texts(job, parts):
        held = {part.material for part in of}
        attached = {metal for part in of for metal in part.substrate.attached_metals}
        said = contradicted(text, held | attached)
        if said is None:
            continue
        if path[-1] != "condition" and any(contradicted(text, held | {one}) is None for one in _in_conditions(of)):
            continue
        of_which = "the parts" if len(of) == len(parts) else ", ".join(part.item.id for part in of)
        what = f"'{said.words}' is said of {of_which} of {job.id}; the stated material is {names_of(held)}"
        yield Problem(path, what, absolute=True)


def _texts(job: Job, parts: list[Part]) -> Iterator[tuple[Path, str, list[Part]]]:
    """Each text that names a material, with its address from the top of the sources and the parts it speaks of."""
    at = ("jobs", job.id)
    if not parts:
        return
    yield (*at, "scope"), job.scope, parts
    yield (*at, "document", "title"), job.document.title, parts
    if job.substrate is not None and job.substrate.condition is not None:
        of_job = [part for part in parts if part.substrate is job.substrate]
        yield from [((*at, "substrate", "condition"), job.substrate.condition, of_job)] if of_job else []
    for part in parts:
        own = (*at, "items", part.item.id)
        yield (*own, "name"), part.item.name, [part]
        if part.item.substrate is not None and part.item.substrate.condition is not None:
            yield (*own, "substrate", "condition"), part.item.substrate.condition, [part]
    for preparation in {part.preparation.id: part.preparation for part in parts}.values():
        prepared = [part for part in parts if part.preparation.id == preparation.id]
        # a part of another material beside those the title names is prepared as if it were one of them
        for material in dict.fromkeys(part.material for part in prepared):
            of_it = [part for part in prepared if part.material == material]
            yield ("preparations", preparation.id, "title"), preparation.title, of_it
    for system in {part.system.id: part.system for part in parts}.values():
        laid = [part for part in parts if part.system.id == system.id]
        for name, text in (("title", system.title), ("use", system.use or "")):
            yield ("systems", system.id, name), laid_on(text), laid


def _in_conditions(parts: list[Part]) -> Iterator[str]:
    """Materials of which a condition speaks, as that of a metal under paint; they may be spoken of elsewhere too."""
    for part in parts:
        condition = (part.substrate.condition or "").lower()
        for word, material in (
            ("galvani", "galvanized_hot_dip"),
            ("zinc", "galvanized_hot_dip"),
            ("alumin", "aluminium"),
            ("stainless", "stainless"),
            ("abs", "plastic"),
            ("glass", "grp"),
        ):
            if word in condition:
                yield material
