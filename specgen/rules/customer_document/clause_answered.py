"""CUS003 Every clause of the document is answered

Checks
    Each required and advised clause of each document a job is made to: the job states what its limit is held against, or its author answers it (`answers`). An advised clause gives a note.
Why
    A clause that nothing answers is found at the handover, by the customer.
Passes
    Given a job made to a document
    jobs.refit.made_to.yard.answers: [{id: words, at: jobs.refit.inspection.look, text: Every door is looked at.}, {id: advice, text: Panels are kept by the desk.}]

    Given a job made to a document
    jobs.refit.made_to.yard.answers: [{id: say, clause: "5.1", applies: no, text: No part is galvanised.}, {id: advice, text: Panels are kept.}]
Fails
    Given a job made to a document
    without jobs.refit.made_to.yard.answers.words    # at jobs.refit.made_to.yard.document

    Given a job made to a document
    without jobs.refit.made_to.yard.answers.advice    # note at jobs.refit.made_to.yard.document

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {profile: 25..50 um}    # at jobs.refit.made_to.yard.document
To put right
    State in the job what the clause asks for, or answer it under `answers`: where it is met (`at`), in words (`text`), or `applies: no` with the reason.
"""

from specgen.facts.contract.documents import named
from specgen.facts.contract.held import Verdict
from specgen.facts.contract.trace import Traced, traced
from specgen.model.contract_document import Force
from specgen.rules.broken_clauses import asked_of
from specgen.rules.kit import LOGIC, NOTE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("CUS003", on=Job, severity=WARNING, source=LOGIC)
def clause_answered(job: Job, spec: Spec, on: date) -> Problems:
    for force, weight in ((Force.REQUIRED, None), (Force.ADVISED, NOTE)):
        left: dict[str, list[Traced]] = {}
        for clause in traced(job, spec):
            if clause.verdict is Verdict.NOT_ANSWERED and clause.clause.force is force:
                left.setdefault(clause.made.id, []).append(clause)
        for made, clauses in left.items():
            told = "; ".join(f"{clause.clause.number} ({_asked(clause)})" for clause in clauses)
            what = f"nothing in the job {job.id} answers what {named(clauses[0].document)} has {force.value}: {told}"
            yield Problem(("made_to", made, "document"), what, severity=weight)


def _asked(clause: Traced) -> str:
    """The limits that are open, or the words of a clause without any."""
    open_yet = clause.those(Verdict.NOT_ANSWERED)
    return ", ".join(dict.fromkeys(asked_of(held) for held in open_yet)) or clause.clause.text.rstrip(".")
