"""CUS006 A clause is named where it stands

Checks
    Each answer and each deviation of a job: the clause it names has not moved. Each clause that moved: the job is made to the document that holds it now, where the sources have it.
Why
    Whoever looks up a clause by its old place finds nothing there, or what another clause says.
Passes
    Given a job made to a document
    contract_documents.yard.clauses.gone: {id: gone, number: "5.3", text: Marking., force: required, moved_to: {number: YS-7, edition: "2", clause: "5.1"}}

    Given a job made to a document
    contract_documents.yard.clauses.gone: {id: gone, number: "5.3", text: Marking., force: required, moved_to: {number: YS-8, clause: "1"}}
Fails
    Given a job made to a document
    contract_documents.yard.clauses.gone: {id: gone, number: "5.3", text: Marking., force: required, moved_to: {number: YS-7, edition: "2", clause: "5.1"}}
    jobs.refit.made_to.yard.answers.gone: {id: gone, text: Marked by the yard.}    # at jobs.refit.made_to.yard.answers.gone

    Given a job made to a document
    contract_documents.yard.clauses.gone: {id: gone, number: "5.3", text: Marking., force: required, moved_to: {number: YS-8, clause: "1"}}    # at jobs.refit.made_to.yard.document
    contract_documents.mark: {id: mark, number: YS-8, title: Marking, clauses: [{id: a, number: "1", text: Mark., force: required}]}
To put right
    Name the clause by its new place, and make the job to the document that holds it.
"""

from specgen.facts.contract.documents import moved, named
from specgen.facts.contract.trace import clause_named
from specgen.model.contract_document import ContractClause
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("CUS006", on=Job, severity=WARNING, source=LOGIC)
def clause_where_it_stands(job: Job, spec: Spec, on: date) -> Problems:
    made_to = {made.document for made in job.made_to}
    for made in job.made_to:
        document = spec.contract_documents[made.document]
        for kind, entries in (("answers", made.answers), ("deviations", made.deviations)):
            for entry in entries:
                clause = clause_named(document, entry)
                if clause is not None and clause.moved_to is not None:
                    what = f"clause {clause.number} of {named(document)} moved to {_place(clause)}"
                    yield Problem(("made_to", made.id, kind, entry.id), what)
        lost = [
            clause
            for clause in document.clauses
            if (there := moved(clause, spec).document) is not None and there.id not in made_to
        ]
        if lost:
            listed = ", ".join(f"{clause.number} to {_place(clause)}" for clause in lost)
            what = f"clauses of {named(document)} moved to a document that the job {job.id} is not made to: {listed}"
            yield Problem(("made_to", made.id, "document"), what)


def _place(clause: ContractClause) -> str:
    there = clause.moved_to
    if there is None:
        return ""
    edition = f", edition {there.edition}" if there.edition is not None else ""
    return f"{there.number}{edition}, clause {there.clause}"
