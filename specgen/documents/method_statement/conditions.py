"""Conditions of the overcoating tables as sentences of a method: what to do, and on whose word.

Called by `between_coats`, `over_old_paint` and `build`, which leave out what the author's own steps say already.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from specgen.documents.parts.wording import Words
from specgen.facts.pairs.old_paint import pass_limits
from specgen.facts.pairs.overcoat import Overcoating, mechanism
from specgen.facts.pairs.papers import papers_in
from specgen.model.preparation import PreparationStep
from specgen.standards.citations import Citation
from specgen.standards.tables import table
from specgen.units.locale import N_

# Judged by rules on the preparation, the film and the parts: there is nothing left to do at the part.
SAID_ELSEWHERE = frozenset({"thin_film", "min_preparation", "baked_only", "repair_only", "declared_dtm", "spot_grade"})
_ROUGHENING = frozenset({"abrade", "sand"})
NOT_STATED = N_("The overcoating interval is not stated: call before proceeding.")


@dataclass(frozen=True, slots=True)
class Condition:
    """One numbered step. `source` is empty where the author of the job or system says it himself.

    `interval` is true of the step that says how long to wait, which ends the work on a coat; `limit` of what is no step of its own
    but says how far the step before it may go.
    """

    text: str
    source: str
    interval: bool = field(default=False, kw_only=True)
    limit: bool = field(default=False, kw_only=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What conditions are printed for: `old` as it is named in a sentence, `papers` a row of sanding_stages or empty."""

    old: str
    papers: str
    window: str = ""
    late: str = ""


def conditions(
    verdict: Overcoating, met: Iterable[str], asked: Asked, words: Words
) -> Iterator[tuple[tuple[str, ...], Condition]]:
    """Each condition that is not met, with the ids of overcoat_needs it leaves the choice of."""
    done = frozenset(met) | SAID_ELSEWHERE
    for choice in verdict.needs:
        if not done & set(choice):
            said, source = _sentence(choice, asked, words), source_of(verdict, choice, asked, words)
            yield choice, Condition(said, source, interval=choice[0] == "in_window")


def refusal(verdict: Overcoating, words: Words) -> Condition | None:
    """What is said of a pair that the tables do not recommend; None for any other pair."""
    if not verdict.refused:
        return None
    why = "; ".join(words(mechanism(key)["text"]) for key in verdict.mechanisms)
    text = words(
        "According to the published tables this combination is not recommended: {why}. Prove it first with a "
        "test patch of the full system."
    )
    return Condition(
        words("{text} Acceptance criterion: {limits}.").format(
            text=text.format(why=why or words("no reason given")), limits=words(pass_limits())
        ),
        source_of(verdict, (), Asked(old="", papers=""), words),
    )


def unlisted(new: str, old: str, words: Words) -> Condition:
    """What is done where no source speaks of a pair: that is no leave, and no prohibition."""
    text = words(
        "No source covers {new} over {old}. Prove it with a test patch of the full system. Acceptance "
        "criterion: {limits}."
    )
    return Condition(text.format(new=new, old=old, limits=words(pass_limits())), "")


def source_of(verdict: Overcoating, choice: tuple[str, ...], asked: Asked, words: Words) -> str:
    """On whose word, as `MIL-HDBK-1110, 2.3.4 (published)`: both sides where sources differ, and whose papers."""
    said = [words(str(verdict.citation))]
    if verdict.by_likeness:
        said.append(words(verdict.by_likeness))
    if verdict.other is not None:
        both = words("sources differ: {one} states {verdict}, {other} states {contrary}")
        said.append(
            both.format(
                one=words(str(verdict.citation)),
                verdict=words(verdict.verdict.value),
                other=words(str(verdict.other)),
                contrary=words(verdict.other_verdict),
            )
        )
    if asked.papers and _ROUGHENING & set(choice) and not asked.late:
        ground = words(str(_papers_source(asked.papers)))
        if ground not in said:
            said.append(words("abrasive papers: {}").format(ground))
    return "; ".join(dict.fromkeys(said))


def paper_window(papers: str, words: Words) -> str:
    """`P320 to P400` of a row of sanding_stages."""
    row = table("sanding_stages").row("id", papers)
    return words("P{coarsest} to P{finest}").format(coarsest=row["coarsest_p"], finest=row["finest_p"])


def names_papers(steps: Iterable[PreparationStep]) -> bool:
    """True where a step names a paper by its P number."""
    return any(papers_in(step.abrasive) or papers_in(step.text) for step in steps)


def _papers_source(papers: str) -> Citation:
    stages = table("sanding_stages")
    return stages.row_citation(stages.row("id", papers))


def _sentence(choice: tuple[str, ...], asked: Asked, words: Words) -> str:
    paper = words(" with {}").format(paper_window(asked.papers, words)) if asked.papers else ""
    window = words(", {}").format(asked.window) if asked.window else ""
    filled = [
        words(table("overcoat_needs").row("id", need)["step"]).format(
            old=asked.old, paper=paper, window=window, limits=words(pass_limits())
        )
        for need in choice
    ]
    if choice[0] == "in_window" and not asked.window:
        # where no interval is stated nothing can be done within it
        return words(" Or: ").join(filled[1:]) or words(NOT_STATED)
    if choice[0] == "in_window":
        later = asked.late or (filled[1] if len(filled) > 1 else "")
        return (
            words("{inside} If the maximum interval is exceeded: {late}").format(inside=filled[0], late=later)
            if later
            else filled[0]
        )
    return words(" Or: ").join(filled)
