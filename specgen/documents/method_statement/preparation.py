"""The part before paint: its state, and the steps with what the overcoating tables ask besides.

Called by `build`.
"""

from __future__ import annotations

from collections.abc import Sequence

from specgen.documents.method_statement.conditions import Asked, Condition, conditions
from specgen.documents.parts.preparation import StepView, graded, named, steps
from specgen.documents.parts.wording import Words
from specgen.facts.pairs.answers import ON_THE_METAL, answered_on_part
from specgen.facts.pairs.overcoat import overcoating
from specgen.facts.pairs.papers import papers_on_material
from specgen.model.preparation import Preparation, StepKind, Substrate
from specgen.model.product import Role
from specgen.standards.tables import table

Pairs = tuple[tuple[str, str], ...]


def steps_on(
    preparation: Preparation,
    substrate: Substrate,
    family: str,
    first: Role,
    words: Words,
    cautions: tuple[tuple[str, ...], ...],
    drawn: Sequence[str] = (),
) -> tuple[StepView, ...]:
    """The steps, with what the tables ask below this family on this material set in at its place where no step says it.

    `first` is the role of the first coat, `family` its binder, empty for a system without coats.
    """
    found = list(steps(preparation, words, cautions, drawn))
    if not family:
        return tuple(found)
    verdict = overcoating(family, substrate.material)
    if table("materials").row("id", substrate.material)["kind"] == "paint" or verdict.refused:
        return tuple(found)
    asked = Asked(old=words("the substrate"), papers=papers_on_material(substrate.material, first))
    for choice, condition in conditions(verdict, answered_on_part(preparation), asked, words):
        if set(choice) <= ON_THE_METAL:
            found.insert(_place(choice, preparation, found), _from_tables(choice, condition, words))
    return tuple(found)


def part_state(substrate: Substrate, words: Words) -> Pairs:
    """What is said of the part besides its material, thickness and the words of its condition."""
    told = (
        (words("Rust grade"), graded("rust_grades", "text", substrate.rust_grade, words)),
        (words("Condition of the zinc coating"), named("galvanized_states", "name", substrate.zinc_state, words)),
        (words("Exposed to road salt or sea air"), _yes_no(substrate.salt_exposure, words)),
        (words("Existing blast profile"), _yes_no(substrate.has_profile, words)),
        (words("Flexes in service or when fitted"), _yes_no(substrate.flexible, words)),
        (words("Wood moisture content"), words.phrase(substrate.moisture)),
        (words("Uncoated outdoors for"), words.phrase(substrate.bare_outdoors)),
        (words("Attached metals left uncoated"), _others(substrate, words)),
        (words("Joint to attached metal sealed"), _yes_no(substrate.joint_sealed, words)),
    )
    return tuple((name, text) for name, text in told if text)


def intended_for(preparation: Preparation, words: Words) -> Pairs:
    """The materials the preparation is stated to be for; nothing where it states none."""
    names = [words(table("materials").row("id", material)["name"]) for material in preparation.materials]
    return ((words("Preparation intended for"), ", ".join(names)),) if names else ()


def _from_tables(choice: tuple[str, ...], condition: Condition, words: Words) -> StepView:
    title = words.word(StepKind.DEGREASE) if choice == ("degrease",) else words("Prepare for the first coat")
    return StepView(
        title=title,
        text=condition.text,
        abrasive="",
        grade="",
        acceptance="",
        limits="",
        source=condition.source,
        cautions=(),
    )


def _place(choice: tuple[str, ...], preparation: Preparation, found: list[StepView]) -> int:
    """Degreasing comes first; what keys the metal before it is dusted off."""
    if choice == ("degrease",):
        return 0
    after = [at for at, step in enumerate(preparation.steps) if step.do is StepKind.DUST_OFF]
    return min(after[-1] + len(found) - len(preparation.steps), len(found)) if after else len(found)


def _others(substrate: Substrate, words: Words) -> str:
    return ", ".join(words(table("materials").row("id", other)["name"]) for other in substrate.attached_metals)


def _yes_no(said: bool | None, words: Words) -> str:
    if said is None:
        return ""
    return words("yes") if said else words("no")
