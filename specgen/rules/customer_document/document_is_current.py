"""CUS005 The document a job is made to is not superseded

Checks
    Each document a job is made to: no other document of the sources supersedes it.
Why
    The customer accepts by the document in force; a job made to the one before it is right by a paper that is no longer in force.
Passes
    Given a job made to a document
    contract_documents.old: {id: old, number: YS-7, title: Painting, edition: "1", clauses: [{id: a, number: "1", text: Paint., force: required}]}

    Given a job made to a document
    contract_documents.new: {id: new, number: YS-7, title: Painting, edition: "3", date: 2027-01-01, supersedes: [{id: first, number: YS-7, edition: "1"}], clauses: [{id: a, number: "1", text: Paint., force: required}]}
Fails
    Given a job made to a document
    contract_documents.new: {id: new, number: YS-7, title: Painting, edition: "3", date: 2027-01-01, supersedes: [{id: all, number: YS-7}], clauses: [{id: a, number: "1", text: Paint., force: required}]}    # at jobs.refit.made_to.yard.document

    Given a job made to a document
    contract_documents.new: {id: new, number: YS-9, title: Painting and marking, supersedes: [{id: other, number: YS-1}, {id: second, number: YS-7, edition: "2"}], clauses: [{id: a, number: "1", text: Paint., force: required}]}    # at jobs.refit.made_to.yard.document
To put right
    Make the job to the document in force, or, where the contract names the earlier one, take the entry out of `supersedes` for that contract and say so.
"""

from specgen.facts.contract.documents import named, superseded_by
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("CUS005", on=Job, severity=WARNING, source=LOGIC)
def document_is_current(job: Job, spec: Spec, on: date) -> Problems:
    for made in job.made_to:
        document = spec.contract_documents[made.document]
        newer = superseded_by(document, spec)
        if newer:
            what = f"{named(document)} is superseded by {' and '.join(named(one) for one in newer)}"
            yield Problem(("made_to", made.id, "document"), what)
