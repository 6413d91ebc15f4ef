"""The steps of a preparation as printed, each with every limit it has, and what the surface must be when they are done.

Called by `method_statement`, which adds what the tables ask besides, by `inspection_plan` and by `job_card`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.parts.wording import Words
from specgen.model.preparation import Preparation, PreparationStep, StepKind
from specgen.standards.tables import table

_WHOSE = re.compile(r"^(?:ISO [\d-]+|SSPC)")
_BY_PAPER = (StepKind.SAND, StepKind.FEATHER, StepKind.POWER_TOOL, StepKind.HAND_TOOL)


@dataclass(frozen=True, slots=True, kw_only=True)
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


def steps(
    preparation: Preparation, words: Words, cautions: tuple[tuple[str, ...], ...] = (), drawn: Sequence[str] = ()
) -> tuple[StepView, ...]:
    """The steps of a preparation in their order; `cautions` are those of each step and `drawn` the figures, or none at all."""
    told = cautions or ((),) * len(preparation.steps)
    seen = drawn or ("",) * len(preparation.steps)
    return tuple(
        _step(step, said, figure, words) for step, said, figure in zip(preparation.steps, told, seen, strict=True)
    )


def handed_over(preparation: Preparation, words: Words) -> tuple[tuple[str, str], ...]:
    """What the surface must be when the preparation is done."""
    salt, grade = preparation.salt_limit, preparation.edge_grade
    dust = (
        (words("quantity {}"), preparation.dust_quantity),
        (words("size {}"), preparation.dust_size),
    )
    said = ", ".join(text.format(limit) for text, limit in dust if limit is not None)
    told = (
        (
            words("Soluble salts, as sodium chloride"),
            words("at most {}").format(words.phrase(salt)) if salt is not None else "",
        ),
        (words("Dust on tape, ISO 8502-3"), words("at most {}").format(said) if said else ""),
        (
            words("Preparation grade of welds and edges, ISO 8501-3"),
            graded("steel_defect_grades", "name", grade, words),
        ),
        (
            words("Edge radius"),
            words("at least {}").format(words.phrase(preparation.edge_radius))
            if preparation.edge_radius is not None
            else "",
        ),
    )
    return tuple((name, text) for name, text in told if text)


def prepared_to(preparation: Preparation, words: Words) -> str:
    """`P Ma, P150, then P180` or `Sa 2 1/2, profile 20 to 33 µm`: the grades the steps reach, each with the paper or the profile; of
    a preparation without a grade its papers. Empty where the steps name neither.
    """
    graded_steps = [step for step in preparation.steps if step.grade is not None]
    told = graded_steps or [step for step in preparation.steps if step.do in _BY_PAPER and step.abrasive is not None]
    return "; ".join(", ".join(_reached(step, words)) for step in told)


def _reached(step: PreparationStep, words: Words) -> Iterator[str]:
    if step.grade is not None:
        yield step.grade
    if step.profile is not None:
        yield words("profile {}").format(words.phrase(step.profile))
    elif step.abrasive is not None and step.do in _BY_PAPER:
        yield step.abrasive


def _step(step: PreparationStep, cautions: tuple[str, ...], drawn: str, words: Words) -> StepView:
    return StepView(
        title=words.word(step.do),
        text=step.text,
        abrasive=step.abrasive or "",
        grade=step.grade or "",
        acceptance=_acceptance(step, words),
        limits=". ".join((*_limits(step, words), *((drawn[:1].upper() + drawn[1:],) if drawn else ()))),
        source="",
        cautions=cautions,
    )


def _acceptance(step: PreparationStep, words: Words) -> str:
    """The author's words; where he names a test alone, what that test shows."""
    if step.acceptance is not None or step.cleanliness is None:
        return step.acceptance or ""
    return words(table("cleanliness_tests").row("id", step.cleanliness)["what"])


def _limits(step: PreparationStep, words: Words) -> Iterator[str]:
    medium = named("preparation_media", "name", step.medium, words)
    if medium and medium.lower() not in (step.abrasive or "").lower():
        yield words("With {}").format(medium)
    if step.grain is not None:
        yield words("Abrasive grain size {}").format(words.phrase(step.grain))
    if step.pressure is not None:
        yield words("Blast pressure at most {}").format(words.phrase(step.pressure))
    if step.zinc_loss is not None:
        yield words("Zinc removal at most {}").format(words.phrase(step.zinc_loss))
    if step.profile is not None:
        yield words("Surface profile {}").format(words.phrase(step.profile)) + _measured(step, words)
    if step.cleanliness is not None:
        document = table("cleanliness_tests").row_citation(table("cleanliness_tests").row("id", step.cleanliness))
        yield words("Tested by {test}{document}").format(
            test=words(step.cleanliness.replace("_", " ")),
            document=words(", {}").format(words(str(document))) if document.document else "",
        )
    if step.unrinsed_acid is not None:
        yield words("Acid not rinsed off") if step.unrinsed_acid else words("Acid rinsed off")


def _measured(step: PreparationStep, words: Words) -> str:
    if step.profile_method is None:
        return ""
    return words(", measured by {method} ({by})").format(
        method=step.profile_method, by=words(table("profile_methods").row("id", step.profile_method)["by"])
    )


def named(name: str, column: str, key: str | None, words: Words) -> str:
    """The words of a published table for one of its keys; empty for none."""
    return words(table(name).row("id", key)[column]) if key is not None else ""


def grade_in_full(grade: str, words: Words) -> str:
    """`P Ma (local machine abrading, ISO 8501-2)`: a grade with its name and whose it is; alone where the table has no name for it."""
    name = named("preparation_grades", "name", grade, words)
    return f"{grade} ({', '.join((name, *_series(grade)))})" if name else grade


def _series(grade: str) -> Iterator[str]:
    """The standard of a grade, or the body whose specification it is."""
    series = table("preparation_grades").row("id", grade)["series"]
    yield from _WHOSE.findall(series)


def graded(name: str, column: str, key: str | None, words: Words) -> str:
    """`C, mill scale rusted away, slight pitting`: a grade and what it means."""
    return f"{key}, {named(name, column, key, words)}" if key is not None else ""
