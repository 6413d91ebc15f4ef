"""The part before paint as printed: its state, each step with every limit it has, and the surface that is handed over.

Called by `build` for the method statement; `steps` by `job_card` as well.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.parts.conditions import Asked, Condition, conditions
from specgen.documents.parts.wording import Words
from specgen.facts.pairs.overcoat import overcoating
from specgen.model.preparation import Preparation, PreparationStep, StepKind, Substrate
from specgen.standards.tables import table

Pairs = tuple[tuple[str, str], ...]

# What a step of each kind answers of the conditions of the overcoating tables, ids of overcoat_needs.
_ANSWERS = {
    StepKind.WASH: {"degrease"},
    StepKind.DEGREASE: {"degrease"},
    StepKind.CONVERT: {"passivate", "conversion_coat"},
}
_ROUGHENS = {
    StepKind.SAND,
    StepKind.SWEEP,
    StepKind.BLAST,
    StepKind.POWER_TOOL,
    StepKind.HAND_TOOL,
    StepKind.FEATHER,
}
_ON_THE_METAL = {"degrease", "abrade", "sand", "sweep", "passivate", "conversion_coat", "not_treated"}
_PAPERS = {"aluminium": "bare_aluminium", "stainless": "stainless_key"}


@dataclass(frozen=True, slots=True)
class StepView:
    """One numbered step. `limits` are its figures in one line; `source` is empty where the author says it himself.

    `cautions` are those of `step_cautions`, the gravest first.
    """

    title: str
    text: str
    abrasive: str
    grade: str
    acceptance: str
    limits: str
    source: str
    cautions: tuple[str, ...]


def steps(preparation: Preparation, words: Words, cautions: tuple[tuple[str, ...], ...] = ()) -> tuple[StepView, ...]:
    """The steps of a preparation in their order; `cautions` are those of each step, or none at all."""
    told = cautions or ((),) * len(preparation.steps)
    return tuple(_step(step, said, words) for step, said in zip(preparation.steps, told, strict=True))


def steps_on(
    preparation: Preparation, substrate: Substrate, family: str, words: Words, cautions: tuple[tuple[str, ...], ...]
) -> tuple[StepView, ...]:
    """The steps, with what the tables ask below this family on this material set in at its place where no step says it.

    `family` is empty for a system without coats.
    """
    found = list(steps(preparation, words, cautions))
    if not family:
        return tuple(found)
    verdict = overcoating(family, substrate.material)
    if table("materials").row("id", substrate.material)["kind"] == "paint" or verdict.refused:
        return tuple(found)
    met: set[str] = set()
    for step in preparation.steps:
        met |= _ANSWERS.get(step.do, set())
        if step.do in _ROUGHENS:
            met |= {"abrade", "sand", "sweep"}
    asked = Asked(words("the part"), _PAPERS.get(substrate.material, ""))
    for choice, condition in conditions(verdict, met, asked, words):
        if set(choice) <= _ON_THE_METAL:
            found.insert(_place(choice, preparation, found), _from_tables(choice, condition, words))
    return tuple(found)


def part_state(substrate: Substrate, words: Words) -> Pairs:
    """What is said of the part besides its material, thickness and the words of its condition."""
    named = (
        (words("Rust grade"), _worded("rust_grades", "text", substrate.rust_grade, words)),
        (words("Zinc"), _named("galvanized_states", "name", substrate.zinc_state, words)),
        (words("Stood in road salt or sea air"), _yes_no(substrate.salt_exposure, words)),
        (words("Profile from an earlier blast"), _yes_no(substrate.has_profile, words)),
        (words("Bends in use or when fitted"), _yes_no(substrate.flexible, words)),
        (words("Moisture of the wood"), words.phrase(substrate.moisture)),
        (words("Stood bare outdoors"), words.phrase(substrate.bare_outdoors)),
        (words("Fastened to it, and stays bare"), _others(substrate, words)),
        (words("Joint to that metal sealed"), _yes_no(substrate.joint_sealed, words)),
    )
    return tuple((name, text) for name, text in named if text)


def handed_over(preparation: Preparation, words: Words) -> Pairs:
    """What the surface must be when the preparation is done."""
    salt, grade = preparation.salt_limit, preparation.edge_grade
    dust = (
        (words("quantity {}"), preparation.dust_quantity),
        (words("size {}"), preparation.dust_size),
    )
    said = ", ".join(text.format(limit) for text, limit in dust if limit is not None)
    named = (
        (
            words("Soluble salt, as sodium chloride"),
            words("at most {}").format(words.phrase(salt)) if salt is not None else "",
        ),
        (words("Dust on the tape, ISO 8502-3"), words("at most {}").format(said) if said else ""),
        (words("Welds and edges, ISO 8501-3"), _worded("steel_defect_grades", "name", grade, words)),
        (
            words("Radius of edges"),
            words("at least {}").format(words.phrase(preparation.edge_radius))
            if preparation.edge_radius is not None
            else "",
        ),
    )
    return tuple((name, text) for name, text in named if text)


def _step(step: PreparationStep, cautions: tuple[str, ...], words: Words) -> StepView:
    return StepView(
        words.word(step.do),
        step.text,
        step.abrasive or "",
        step.grade or "",
        _acceptance(step, words),
        ". ".join(_limits(step, words)),
        "",
        cautions,
    )


def _acceptance(step: PreparationStep, words: Words) -> str:
    """The author's words; where he names a test alone, what that test shows."""
    if step.acceptance is not None or step.cleanliness is None:
        return step.acceptance or ""
    return words(table("cleanliness_tests").row("id", step.cleanliness)["what"])


def _limits(step: PreparationStep, words: Words) -> Iterator[str]:
    medium = _named("preparation_media", "name", step.medium, words)
    if medium and medium.lower() not in (step.abrasive or "").lower():
        yield words("With {}").format(medium)
    if step.grain is not None:
        yield words("Grain {}").format(words.phrase(step.grain))
    if step.pressure is not None:
        yield words("Pressure at most {}").format(words.phrase(step.pressure))
    if step.zinc_loss is not None:
        yield words("Zinc taken off, at most {}").format(words.phrase(step.zinc_loss))
    if step.profile is not None:
        yield words("Profile {}").format(words.phrase(step.profile)) + _measured(step, words)
    if step.cleanliness is not None:
        document = table("cleanliness_tests").row_citation(table("cleanliness_tests").row("id", step.cleanliness))
        yield words("Tested by {test}{document}").format(
            test=words(step.cleanliness.replace("_", " ")),
            document=words(", {}").format(words(str(document))) if document.document else "",
        )
    if step.unrinsed_acid is not None:
        yield words("Acid stays on the part") if step.unrinsed_acid else words("The acid is rinsed off")


def _measured(step: PreparationStep, words: Words) -> str:
    if step.profile_method is None:
        return ""
    return words(", measured by {method} ({by})").format(
        method=step.profile_method, by=words(table("profile_methods").row("id", step.profile_method)["by"])
    )


def _from_tables(choice: tuple[str, ...], condition: Condition, words: Words) -> StepView:
    title = words.word(StepKind.DEGREASE) if choice == ("degrease",) else words("Make it fit for the first coat")
    return StepView(title, condition.text, "", "", "", "", condition.source, ())


def _place(choice: tuple[str, ...], preparation: Preparation, found: list[StepView]) -> int:
    """Degreasing comes first; what keys the metal before it is dusted off."""
    if choice == ("degrease",):
        return 0
    after = [at for at, step in enumerate(preparation.steps) if step.do is StepKind.DUST_OFF]
    return min(after[-1] + len(found) - len(preparation.steps), len(found)) if after else len(found)


def _others(substrate: Substrate, words: Words) -> str:
    return ", ".join(words(table("materials").row("id", other)["name"]) for other in substrate.mixed_with)


def _named(name: str, column: str, key: str | None, words: Words) -> str:
    return words(table(name).row("id", key)[column]) if key is not None else ""


def _worded(name: str, column: str, key: str | None, words: Words) -> str:
    """`C, scale gone, slight pitting`: a grade and what it means."""
    return f"{key}, {_named(name, column, key, words)}" if key is not None else ""


def _yes_no(said: bool | None, words: Words) -> str:
    if said is None:
        return ""
    return words("yes") if said else words("no")
