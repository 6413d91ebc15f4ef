"""Where a job meets each clause of the documents it is made to: by figures, by the author's word, not at all, or nobody can tell.

The one answer for rules, pages and commands.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.facts.contract.held import GRAVEST, Ground, Held, Verdict
from specgen.facts.contract.limits import held_limits
from specgen.facts.memo import memoised
from specgen.model.contract_document import ClauseAnswer, ContractClause, ContractDocument, Deviation, Force, MadeTo
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.walk import Path


class Traced(NamedTuple):
    """One clause with its verdict. `held` are its limits, `answer` and `deviation` what the author says of it."""

    made: MadeTo
    document: ContractDocument
    clause: ContractClause
    verdict: Verdict
    held: tuple[Held, ...] = ()
    answer: ClauseAnswer | None = None
    deviation: Deviation | None = None

    @property
    def path(self) -> Path:
        """The address of the clause."""
        return ("contract_documents", self.document.id, "clauses", self.clause.id)

    def those(self, verdict: Verdict) -> tuple[Held, ...]:
        return tuple(held for held in self.held if held.verdict is verdict)


def clause_named(document: ContractDocument, entry: ClauseAnswer | Deviation) -> ContractClause | None:
    """The clause that an answer or a deviation speaks of, by its id or its number; None where the document has none or several."""
    named = entry.clause or entry.id
    found = [clause for clause in document.clauses if named in {clause.id, clause.number}]
    exact = [clause for clause in found if clause.id == named]
    chosen = exact or found
    return chosen[0] if len(chosen) == 1 else None


def traced(job: Job, spec: Spec) -> tuple[Traced, ...]:
    """Every clause of every document the job is made to, in their order."""
    return _traced(spec, job.id) if spec.jobs.get(job.id) is job else tuple(_of_job(job, spec))


@memoised
def _traced(spec: Spec, job_id: str) -> tuple[Traced, ...]:
    return tuple(_of_job(spec.jobs[job_id], spec))


def _of_job(job: Job, spec: Spec) -> Iterator[Traced]:
    for made in job.made_to:
        document = spec.contract_documents[made.document]
        items = tuple(item for item in job.items if not made.items or item.id in made.items)
        for clause in document.clauses:
            yield _clause(made, document, clause, Ground(job, spec, items))


def _clause(made: MadeTo, document: ContractDocument, clause: ContractClause, ground: Ground) -> Traced:
    answer = next((one for one in made.answers if clause_named(document, one) is clause), None)
    deviation = next((one for one in made.deviations if clause_named(document, one) is clause), None)
    if clause.moved_to is not None:
        return Traced(made, document, clause, Verdict.MOVED)
    limit = clause.limit
    held = tuple(held_limits(limit, made, ground.narrowed(limit), clause.text)) if limit is not None else ()
    if deviation is not None:
        verdict = Verdict.DEVIATION
    elif answer is not None and not answer.applies:
        verdict = Verdict.NOT_APPLICABLE
    elif clause.force is Force.PERMITTED:
        verdict = Verdict.PERMISSION
    elif limit is not None and limit.materials and not ground.narrowed(limit).items:
        verdict = Verdict.NOT_APPLICABLE
    else:
        verdict = _of_limits(held, answer)
    return Traced(made, document, clause, verdict, held, answer, deviation)


def _of_limits(held: tuple[Held, ...], answer: ClauseAnswer | None) -> Verdict:
    """The gravest verdict of the limits; the author's word stands where figures say nothing against it."""
    said = answer is not None and (answer.text is not None or answer.at is not None)
    found = {one.verdict for one in held}
    verdict = next((one for one in GRAVEST if one in found), Verdict.NOT_ANSWERED)
    if said and verdict in {Verdict.NOT_ANSWERED, Verdict.NOT_TOLD}:
        return Verdict.BY_WORD
    return verdict
