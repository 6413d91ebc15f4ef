"""CUS004 Whether a clause is met can be told

Checks
    Each required and advised clause of each document a job is made to: what the job states and what the clause asks for can be compared. Results of tests, grades that no published table ranks and colours of two standards cannot, and are left to a person.
Why
    What was never compared counts as met until the customer compares it.
Passes
    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {coat: clearcoat, product: {tests: [{id: cut, test: "ISO 2409", limit: class 0 or 1}]}}
    jobs.refit.inspection.look.method: Cross-cut, ISO 2409
    jobs.refit.made_to.yard.answers.film: {id: film, text: Class 0 or 1 is accepted at the point Finish.}
Fails
    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {coat: clearcoat, product: {tests: [{id: cut, test: "ISO 2409", limit: class 0 or 1}]}}    # at jobs.refit.made_to.yard.document
    jobs.refit.inspection.look.method: Cross-cut, ISO 2409

    Given a job made to a document
    contract_documents.yard.clauses.film.limit: {grade: Sa 2 1/2}    # at jobs.refit.made_to.yard.document
To put right
    Compare the two and answer the clause under `answers`, with the result.
"""

from specgen.facts.contract.held import Verdict
from specgen.facts.contract.trace import traced
from specgen.rules.broken_clauses import asked_of, named_clause, said
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("CUS004", on=Job, severity=NOTE, source=LOGIC)
def clause_can_be_told(job: Job, spec: Spec, on: date) -> Problems:
    for clause in traced(job, spec):
        if clause.verdict is not Verdict.NOT_TOLD:
            continue
        untold = clause.those(Verdict.NOT_TOLD)
        told = "; ".join(
            dict.fromkeys(f"{asked_of(held)}, here {said(held.found, held)} ({held.why})" for held in untold)
        )
        what = f"whether the job {job.id} meets {named_clause(clause)} cannot be told: {told}"
        yield Problem(("made_to", clause.made.id, "document"), what)
