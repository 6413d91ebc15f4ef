"""CUS007 An answer names a clause of its document, once

Checks
    Each document a job is made to stands once in its list, and its items are items of the job. Each answer and each deviation names one clause of that document; no clause is answered twice; an address that an answer names (`at`) leads to something the sources state; an answer says where or in words, and gives the reason where the clause does not apply.
Why
    An answer to a clause that is not there leaves the clause it was meant for open.
Passes
    Given a job made to a document
    jobs.refit.made_to.yard.answers.words: {id: words, at: systems.cab.layers.primer.film.min}

    Given a job made to a document
    jobs.refit.made_to.yard.answers.words: {id: say, clause: "5.1", text: Looked at.}
Fails
    Given a job made to a document
    jobs.refit.made_to.yard.answers.extra: {id: extra, text: Done.}    # at jobs.refit.made_to.yard.answers.extra.id

    Given a job made to a document
    jobs.refit.made_to.yard.answers.extra: {id: extra, clause: "5.9", text: Done.}    # at jobs.refit.made_to.yard.answers.extra.clause

    Given a job made to a document
    jobs.refit.made_to.yard.answers.again: {id: again, clause: "5.1", text: Done.}    # at jobs.refit.made_to.yard.answers.again

    Given a job made to a document
    jobs.refit.made_to.yard.deviations: [{id: words, text: None is needed., agreed_by: Yard office}]    # at jobs.refit.made_to.yard.deviations.words

    Given a job made to a document
    jobs.refit.made_to.yard.answers.words: {id: words, at: jobs.refit.inspection.lock}    # at jobs.refit.made_to.yard.answers.words.at

    Given a job made to a document
    jobs.refit.made_to.yard.answers.words: {id: words}    # at jobs.refit.made_to.yard.answers.words    # also CUS003 warning at jobs.refit.made_to.yard.document

    Given a job made to a document
    jobs.refit.made_to.yard.answers.words: {id: words, applies: no}    # at jobs.refit.made_to.yard.answers.words

    Given a job made to a document
    jobs.refit.made_to.yard.items: [DOOR, HATCH]    # at jobs.refit.made_to.yard.items

    Given a job made to a document
    jobs.refit.made_to.twice: {id: twice, document: yard, items: [DOOR], answers: [{id: words, text: Done.}, {id: advice, text: Done.}]}    # at jobs.refit.made_to.twice.document
To put right
    Name the clause by its id or its number as the document has it, and answer it once.
"""

from collections.abc import Iterator

from specgen.facts.contract.documents import named
from specgen.facts.contract.trace import clause_named
from specgen.facts.stated import stands_at
from specgen.model.contract_document import ClauseAnswer, ContractDocument, Deviation, MadeTo
from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.rules.kit import ERROR, LOGIC, Job, Path, Problem, Problems, Spec, date, rule


@rule("CUS007", on=Job, severity=ERROR, source=LOGIC)
def answers_name_clauses(job: Job, spec: Spec, on: date) -> Problems:
    items = [item.id for item in job.items]
    seen: dict[str, list[MadeTo]] = {}
    for made in job.made_to:
        document, at = spec.contract_documents[made.document], ("made_to", made.id)
        for item in made.items:
            if item not in items:
                what = f"{item} is not an item of the job {job.id}"
                yield Problem((*at, "items"), what, nearest_of(item, items, IDS_SHOWN))
        if any(_share_items(made, other) for other in seen.setdefault(document.id, [])):
            yield Problem((*at, "document"), f"the job {job.id} is made to {named(document)} twice for the same items")
        seen[document.id].append(made)
        yield from _entries(made, document, at)
        yield from _answers(made, spec, at)


def _share_items(one: MadeTo, other: MadeTo) -> bool:
    return not one.items or not other.items or bool({*one.items} & {*other.items})


def _entries(made: MadeTo, document: ContractDocument, at: Path) -> Iterator[Problem]:
    taken: dict[str, str] = {}
    lists: tuple[tuple[str, tuple[ClauseAnswer | Deviation, ...]], ...] = (
        ("answers", made.answers),
        ("deviations", made.deviations),
    )
    for kind, entries in lists:
        for entry in entries:
            clause, path = clause_named(document, entry), (*at, kind, entry.id)
            if clause is None:
                name = entry.clause or entry.id
                known = [one for clause in document.clauses for one in (clause.id, clause.number)]
                what = f"{name} is no clause of {named(document)}, or the number of several"
                field = "clause" if entry.clause is not None else "id"
                yield Problem((*path, field), what, nearest_of(name, known, IDS_SHOWN))
                continue
            first = taken.setdefault(clause.id, entry.id)
            if first != entry.id or (kind == "deviations" and any(one.id == entry.id for one in made.answers)):
                yield Problem(path, f"clause {clause.number} of {named(document)} is answered twice")


def _answers(made: MadeTo, spec: Spec, at: Path) -> Iterator[Problem]:
    for answer in made.answers:
        path = (*at, "answers", answer.id)
        if answer.at is not None and not stands_at(answer.at, spec):
            yield Problem((*path, "at"), f"{answer.at} is the address of nothing that the sources state")
        if not answer.applies and answer.text is None:
            yield Problem(path, f"the answer {answer.id} gives no reason why the clause does not apply")
        elif answer.applies and answer.text is None and answer.at is None:
            yield Problem(path, f"the answer {answer.id} says neither where the clause is met nor how")
