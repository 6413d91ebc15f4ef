"""Which of the customer's documents replaces which, and where a clause that moved stands now. Asked by rules and pages."""

from __future__ import annotations

from typing import NamedTuple

from specgen.model.contract_document import ContractClause, ContractDocument, Superseded
from specgen.model.spec import Spec


class Moved(NamedTuple):
    """Where a clause is said to stand now: the document and clause of the sources, None where these do not hold it."""

    document: ContractDocument | None
    clause: ContractClause | None


def named(document: ContractDocument) -> str:
    """`BT-114, edition 3`, as a finding or a page names it."""
    return f"{document.number}, edition {document.edition}" if document.edition is not None else document.number


def superseded_by(document: ContractDocument, spec: Spec) -> tuple[ContractDocument, ...]:
    """The documents of the sources that replace this one."""
    return tuple(
        other
        for other in spec.contract_documents.values()
        if other is not document and any(_replaces(other, entry, document) for entry in other.supersedes)
    )


def _replaces(newer: ContractDocument, entry: Superseded, older: ContractDocument) -> bool:
    """An entry without an edition speaks of every edition of another number, and of the earlier ones of its own."""
    if entry.number != older.number:
        return False
    if entry.edition is not None:
        return entry.edition == older.edition
    if newer.number != older.number:
        return True
    return newer.date is not None and older.date is not None and older.date < newer.date


def in_a_circle(document: ContractDocument, spec: Spec) -> bool:
    """True where a document comes back to itself over those that replace it."""
    seen: set[str] = set()
    waiting = list(superseded_by(document, spec))
    while waiting:
        here = waiting.pop()
        if here is document:
            return True
        if here.id not in seen:
            seen.add(here.id)
            waiting.extend(superseded_by(here, spec))
    return False


def moved(clause: ContractClause, spec: Spec) -> Moved:
    """The place a clause names, as far as the sources hold it."""
    there = clause.moved_to
    if there is None:
        return Moved(None, None)
    documents = [
        one
        for one in spec.contract_documents.values()
        if one.number == there.number and there.edition in {None, one.edition}
    ]
    # of several editions the latest
    document = max(documents, key=lambda one: (one.date is not None, one.date), default=None) if documents else None
    found = (
        next((one for one in document.clauses if one.number == there.clause), None) if document is not None else None
    )
    return Moved(document, found)


def moves_in_a_circle(clause: ContractClause, spec: Spec) -> bool:
    """True where a clause comes back to itself over the places it moved to."""
    seen: list[ContractClause] = []
    here: ContractClause | None = clause
    while here is not None and here.moved_to is not None:
        here = moved(here, spec).clause
        if here is clause:
            return True
        if any(here is one for one in seen):
            return False
        if here is not None:
            seen.append(here)
    return False
