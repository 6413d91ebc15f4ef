"""CUS008 A customer's document agrees with itself

Checks
    Each document of the customer's: no other of its number and edition; no clause number twice; it does not supersede itself, at once or over others; no clause moved to itself, at once or over others, or to a clause that its document does not have; no limit whose minimum is above its maximum; no limit that asks for nothing.
Why
    Of two clauses of one number it is unknown which is answered, and a limit that no value meets rejects every job.
Passes
    Given a job made to a document
    contract_documents.yard.supersedes: [{id: first, number: YS-7, edition: "1"}]

    Given a job made to a document
    contract_documents.yard.clauses.film.limit.total: {min: 95 um, max: 180 um}
Fails
    Given a job made to a document
    contract_documents.copy: {id: copy, number: YS-7, title: Painting, edition: "2", clauses: [{id: a, number: "1", text: Paint., force: required}]}    # at contract_documents.copy.number

    Given a job made to a document
    contract_documents.yard.clauses.more: {id: more, number: "4.2", text: Film again., force: permitted}    # at contract_documents.yard.clauses.more.number

    Given a job made to a document
    contract_documents.yard.supersedes: [{id: itself, number: YS-7, edition: "2"}]    # at contract_documents.yard.supersedes.itself

    Given a job made to a document
    contract_documents.yard.supersedes: [{id: other, number: YS-9}]    # at contract_documents.yard.supersedes    # also CUS005 warning at jobs.refit.made_to.yard.document    # also CUS008 at contract_documents.new.supersedes
    contract_documents.new: {id: new, number: YS-9, title: Painting, supersedes: [{id: other, number: YS-7}], clauses: [{id: a, number: "1", text: Paint., force: required}]}

    Given a job made to a document
    contract_documents.yard.clauses.gone: {id: gone, number: "5.3", text: Marking., force: required, moved_to: {number: YS-7, edition: "2", clause: "5.3"}}    # at contract_documents.yard.clauses.gone.moved_to

    Given a job made to a document
    contract_documents.yard.clauses.gone: {id: gone, number: "5.3", text: Marking., force: required, moved_to: {number: YS-7, clause: "9.9"}}    # at contract_documents.yard.clauses.gone.moved_to.clause

    Given a job made to a document
    contract_documents.yard.clauses.may.limit: {film: {min: 90 um, max: 80 um}}    # at contract_documents.yard.clauses.may.limit.film.min

    Given a job made to a document
    contract_documents.yard.clauses.words.limit: {coat: primer}    # at contract_documents.yard.clauses.words.limit
To put right
    Correct the entry by the customer's paper.
"""

from collections.abc import Iterator

from specgen.facts.contract.documents import in_a_circle, moved, moves_in_a_circle, named
from specgen.model.contract_document import ContractClause, ContractDocument
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, date, rule

_WHERE = {"materials", "coat"}


@rule("CUS008", on=ContractDocument, severity=ERROR, source=LOGIC)
def document_agrees(document: ContractDocument, spec: Spec, on: date) -> Problems:
    ids = list(spec.contract_documents)
    for other in spec.contract_documents.values():
        same = (other.number, other.edition) == (document.number, document.edition)
        if same and ids.index(other.id) < ids.index(document.id):
            yield Problem(("number",), f"{other.id} is {named(document)} as well")
    yield from _superseded(document, spec)
    numbers: set[str] = set()
    for clause in document.clauses:
        at = ("clauses", clause.id)
        if clause.number in numbers:
            yield Problem((*at, "number"), f"{named(document)} has the clause {clause.number} twice")
        numbers.add(clause.number)
        yield from (Problem((*at, *one.path), one.what, one.remedy) for one in (*_moved(clause, spec), *_limit(clause)))


def _superseded(document: ContractDocument, spec: Spec) -> Iterator[Problem]:
    itself = [
        entry for entry in document.supersedes if (entry.number, entry.edition) == (document.number, document.edition)
    ]
    for entry in itself:
        yield Problem(("supersedes", entry.id), f"{named(document)} supersedes itself")
    if not itself and in_a_circle(document, spec):
        yield Problem(("supersedes",), f"{named(document)} supersedes a document that supersedes it")


def _moved(clause: ContractClause, spec: Spec) -> Iterator[Problem]:
    if clause.moved_to is None:
        return
    there = moved(clause, spec)
    if moves_in_a_circle(clause, spec):
        yield Problem(("moved_to",), f"the clause {clause.number} moved to a place that leads back to it")
    elif there.document is not None and there.clause is None:
        what = f"{named(there.document)} has no clause {clause.moved_to.clause}"
        yield Problem(("moved_to", "clause"), what)


def _limit(clause: ContractClause) -> Iterator[Problem]:
    limit = clause.limit
    if limit is None:
        return
    for name in ("film", "total"):
        film = getattr(limit, name)
        if film is not None and film.min is not None and film.max is not None and film.min > film.max:
            what = f"the clause {clause.number} asks for at least {film.min} and at most {film.max}"
            yield Problem(("limit", name, "min"), what)
    if not limit.model_fields_set - _WHERE:
        yield Problem(("limit",), f"the limit of the clause {clause.number} asks for nothing")
