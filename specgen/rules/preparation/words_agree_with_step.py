"""PRE028 The words of a preparation agree with its figures

Checks
    Title, instructions and acceptance criteria in words, against what is typed beside them: the preparation grade, the profile, the papers, the blast medium and the blast pressure of the step; the limit for soluble salts, the dust rating, the grade of edges and welds and the edge radius of the preparation. Stricter salt (unless by just ten times), dust and edges pass, and so does a paper between the first and the last of the step. Words that speak of another state, or name several limits, are not read.
Why
    The blaster reads the sentence, the inspector the figure: where they part each can show that the work is right, and one of them is wrong.
Passes
    preparations.sand-steel.steps.sand.text: Abrade with P80, then P100 and P150.
    preparations.sand-steel.steps.sand.abrasive: P80, then P100, then P150

    Given second good
    preparations.blast.title: Blast to SP 10

    Given second good
    preparations.blast.edge_grade: P2
    preparations.blast.steps.blast.text: Blast; edges and welds P3 to ISO 8501-3.

    preparations.sand-steel.salt_limit: 50 mg/m2
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts., acceptance: At most 20 mg/m2.}
Fails
    preparations.sand-steel.salt_limit: 100 mg/m2
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts., acceptance: At most 10 mg/m2.}    # at preparations.sand-steel.steps.salt.acceptance

    preparations.sand-steel.steps.sand.text: Abrade with P40.    # at preparations.sand-steel.steps.sand.text

    Given second good
    preparations.blast.title: Blast to SP 6    # at preparations.blast.title

    Given second good
    preparations.blast.steps.blast.text: Blast to Sa 3.    # at preparations.blast.steps.blast.text

    Given second good
    preparations.blast.steps.blast.medium: garnet
    preparations.blast.steps.blast.text: Blast with alumina.    # at preparations.blast.steps.blast.text

    Given second good
    preparations.blast.steps.blast.acceptance: Profile 3 to 4 mil.    # at preparations.blast.steps.blast.acceptance

    Given second good
    preparations.blast.edge_radius: 2 mm
    preparations.blast.steps.blast.text: Round edges to 1 mm and blast.    # at preparations.blast.steps.blast.text

    Given second good
    preparations.blast.dust_quantity: 1
    preparations.blast.steps.blast.acceptance: Dust quantity 3 at most.    # at preparations.blast.steps.blast.acceptance
To put right
    Write one and the same in both places, or leave the figure out of the sentence.
"""

import re
from collections.abc import Iterator

from specgen.facts.job.in_words import (
    grades_said,
    is_a_tenth,
    is_inside,
    looser,
    pressure_said,
    profile_said,
    salt_said,
    same_grade,
)
from specgen.facts.job.looked_for import SALT
from specgen.facts.pairs.papers import papers_in
from specgen.model.preparation import PreparationStep
from specgen.rules.kit import LOGIC, WARNING, Path, Preparation, Problem, Problems, Spec, date, rule, table
from specgen.standards.reads import remembered

_ALSO_CALLED = {
    "corundum": "alumina",
    "aluminium oxide": "alumina",
    "iron grit": "chilled iron",
    "glass bead": "glass beads",
}
_FORBIDDEN = re.compile(r"\b(?:not|no|never|instead|without|other than|met|used (?:for|on)|before|from)\b", re.I)


@rule("PRE028", on=Preparation, severity=WARNING, source=LOGIC)
def words_agree_with_step(preparation: Preparation, spec: Spec, on: date) -> Problems:
    grades = [step.grade for step in preparation.steps if step.grade is not None]
    other = [named for named in grades_said(preparation.title) if not _is_one_of(named, grades)] if grades else []
    if other:
        yield Problem(
            ("title",), f"the title of {preparation.id} names {other[0]}; its steps ask for {', '.join(grades)}"
        )
    for step in preparation.steps:
        for key, text in (("text", step.text), ("acceptance", step.acceptance)):
            if not text:
                continue
            path: Path = ("steps", step.id, key)
            for said, typed in _parted(text, step):
                yield Problem(path, f"{key} of {step.id} says {said}; typed beside it is {typed}")
            of_salt = SALT.search(f"{step.text} {text}") is not None
            for said, asked in looser(text, [preparation], of_salt=of_salt, of_grade=False):
                yield Problem(path, f"{key} of {step.id} accepts {said}; {asked}")
            said_salt = salt_said(text) if of_salt else None
            limit = preparation.salt_limit
            if said_salt is not None and limit is not None and is_a_tenth(said_salt, limit):
                what = f"{key} of {step.id} accepts soluble salts up to {said_salt}; {preparation.id} limits them to ten times that, {limit}"
                yield Problem(path, what)


def _parted(text: str, step: PreparationStep) -> Iterator[tuple[str, str]]:
    """What a text says of its own step beside what the step states, where the two part: read for what is stated alone."""
    if step.grade is not None:
        named = grades_said(text)
        if named and not any(same_grade(one, step.grade) for one in named):
            yield f"the grade {', '.join(named)}", step.grade
    if step.profile is not None:
        profile = profile_said(text)
        if profile is not None and not is_inside(profile, step.profile):
            yield f"a profile of {profile}", str(step.profile)
    papers = sorted(map(int, papers_in(step.abrasive)))
    other = [paper for paper in papers_in(text) if not papers[0] <= int(paper) <= papers[-1]] if papers else []
    if other:
        yield f"P{other[0]}", step.abrasive or ""
    blasts_with = _blast_media().get(step.medium or "")
    if blasts_with is not None:
        other_media = [name for name in _media_said(text) if name != blasts_with]
        if other_media:
            yield other_media[0], blasts_with
    if step.pressure is not None:
        pressure = pressure_said(text)
        if pressure is not None and pressure > step.pressure:
            yield f"a pressure of {pressure}", f"at most {step.pressure}"


def _media_said(text: str) -> list[str]:
    """The blast media that a text orders, by the names of the table."""
    clauses = [clause for clause in re.split(r"[;,\n]|\.(?!\d)", text) if not _FORBIDDEN.search(clause)]
    named = {**{name: name for name in _blast_media().values()}, **_ALSO_CALLED}
    return [named[word] for word in named if any(re.search(rf"\b{word}\b", clause, re.I) for clause in clauses)]


@remembered
def _blast_media() -> dict[str, str]:
    """The names of what is blasted with, without those that stand for many."""
    rows = table("preparation_media").rows
    return {row["id"]: row["name"] for row in rows if row["kind"] == "blast medium" and "blast" not in row["name"]}


def _is_one_of(named: str, grades: list[str]) -> bool:
    return any(same_grade(named, grade) for grade in grades)
