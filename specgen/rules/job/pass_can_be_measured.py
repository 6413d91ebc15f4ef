"""JOB007 Acceptance criteria are measurable

Checks
    The acceptance criterion of each inspection point and preparation step: it does not rest on a word that accepts anything (table vague_words), unless a figure or a further clause is given with it.
Why
    Two honest people read such a word differently, and the dispute follows after the work.
Passes
    jobs.refit.inspection.prepared.criterion.text: good, no gloss left in raking light

    preparations.sand-steel.steps.degrease.acceptance: Good to 1 drop in 10

    Given second good
    jobs.rails.inspection.film.if_failed: as required
Fails
    jobs.refit.inspection.prepared.criterion.text: Satisfactory surface    # at jobs.refit.inspection.prepared.criterion.text

    preparations.sand-steel.steps.degrease.acceptance: clean as required    # at preparations.sand-steel.steps.degrease.acceptance

    Given second good
    jobs.lids.inspection.clean.criterion.text: Good    # at jobs.lids.inspection.clean.criterion.text
    preparations.abrade.steps.sand.acceptance: As Required    # at preparations.abrade.steps.sand.acceptance
To put right
    State what is inspected, how, and what it must show: a figure, a grade, or what must not be visible.
"""

import re
from collections.abc import Iterator

from specgen.rules.kit import (
    PRACTICE,
    WARNING,
    Job,
    Node,
    Path,
    Preparation,
    Problem,
    Problems,
    Row,
    Spec,
    date,
    rule,
    table,
)
from specgen.standards.reads import remembered

# A figure, or a second clause that says more than the vague word does.
_SAYS_MORE = re.compile(r"\d|[,;:.]\s*\S")


@rule("JOB007", on=Node, severity=WARNING, source=PRACTICE)
def pass_can_be_measured(subject: Node, spec: Spec, on: date) -> Problems:
    for path, text in _texts(subject):
        row = _vague(text)
        if row is not None and not _SAYS_MORE.search(text):
            yield Problem(path, f"“{row['words']}” cannot be measured; state {row['ask']}")


def _texts(subject: Node) -> Iterator[tuple[Path, str]]:
    if isinstance(subject, Job):
        for point in subject.inspection:
            yield ("inspection", point.id, "criterion", "text"), point.criterion.text or ""
    elif isinstance(subject, Preparation):
        for step in subject.steps:
            yield ("steps", step.id, "acceptance"), step.acceptance or ""


def _vague(text: str) -> Row | None:
    found = _pattern().search(text)
    return table("vague_words").row("words", found[0].casefold()) if found else None


@remembered
def _pattern() -> re.Pattern[str]:
    words = (re.escape(row["words"]) for row in table("vague_words").rows)
    return re.compile(rf"\b(?:{'|'.join(words)})\b", re.IGNORECASE)
