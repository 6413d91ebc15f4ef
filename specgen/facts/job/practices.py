"""What the sentences of a job order that spoils the coat or endangers people, by the table of such practices.

A sentence is read once, by all rows together. What is forbidden in the same clause, or excused by the row, is no order.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from specgen.facts.job.instructions import instructions
from specgen.facts.memo import memoised
from specgen.facts.pairs.parts import parts_of
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.walk import Path
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table

_SENTENCE = re.compile(r"[;\n]|\.(?!\d)")
_BREAK = re.compile(r",(?!\d)|\bbut\b")
_FORBIDDEN = re.compile(
    r"\b(?:not|never|no|none|nobody|nothing|nowhere|neither|nor|without|forbid\w*|forbidden|prohibit\w*|ban|banned|avoid\w*|instead of|rather than|"
    r"unless|except|reject\w*|refus\w*|must not|excluded|free of|against|until (?:it|they) (?:is|are)|other than)\b",
    re.I,
)
_MOST_TEXTS = 20_000


def practices(job: Job, spec: Spec) -> list[tuple[Path, str, Row]]:
    """Where a sentence of the job or of its preparations orders such a thing, in its own words, with the row."""
    return _practices(spec, job.id)


@memoised
def _practices(spec: Spec, job_id: str) -> list[tuple[Path, str, Row]]:
    job = spec.jobs[job_id]
    rows = {row["id"]: row for row in table("practices_in_words").rows}
    return [
        (path, words, rows[row])
        for path, text in _texts(job, spec)
        for row, words in _ordered(text)
        if rows[row]["where"] in {"", path[-1]}
    ]


def _texts(job: Job, spec: Spec) -> Iterator[tuple[Path, str]]:
    yield from instructions(job, spec)
    at = ("jobs", job.id)
    if job.ventilation is not None and job.ventilation.statement is not None:
        yield (*at, "ventilation", "statement"), job.ventilation.statement
    if job.confined_space is not None:
        for name in ("permit", "atmosphere_test", "standby", "rescue"):
            if (text := getattr(job.confined_space, name)) is not None:
                yield (*at, "confined_space", name), text
    for preparation in {part.preparation.id: part.preparation for part in parts_of(job, spec)}.values():
        for step in preparation.steps:
            for name, said in (("text", step.text), ("acceptance", step.acceptance)):
                if said:
                    yield ("preparations", preparation.id, "steps", step.id, name), said


@lru_cache(maxsize=_MOST_TEXTS)
def _ordered(text: str) -> tuple[tuple[str, str], ...]:
    return tuple(_read(text))


def _read(text: str) -> Iterator[tuple[str, str]]:
    every, unless, left_out = _pattern(), _excuses(), _left_out()
    told: set[str] = set()
    for sentence in _SENTENCE.split(text):
        for found in every.finditer(sentence):
            row = str(found.lastgroup)
            start, end = found.span()
            excused = unless.get(row)
            if row in told or (excused is not None and excused.search(sentence)):
                continue
            before = _BREAK.split(sentence[:start])[-1]
            after = _BREAK.split(sentence[end:])[0]
            said = (before, after) if row in left_out else (before, found[0], after)
            if not any(_FORBIDDEN.search(one) for one in said):
                told.add(row)
                yield row, found[0].strip()


@remembered
def _pattern() -> re.Pattern[str]:
    rows = table("practices_in_words").rows
    return re.compile("|".join(rf"(?P<{row['id']}>(?<!\w)(?:{row['words']}))" for row in rows), re.I)


@remembered
def _excuses() -> dict[str, re.Pattern[str]]:
    rows = table("practices_in_words").rows
    return {row["id"]: re.compile(row["unless"], re.I) for row in rows if row["unless"]}


@remembered
def _left_out() -> frozenset[str]:
    """The rows whose practice is to leave something out, so that a denial within their words excuses nothing."""
    return frozenset(row["id"] for row in table("practices_in_words").rows if row["denied"])
