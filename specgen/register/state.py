"""What follows from the records: which revision is in force on a day, which is superseded or withdrawn, which rests on something
that moved, who has not answered, what is due for review. Nothing of it is written down. Called by the commands and by verifying.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from specgen.register.history import History, Kept
from specgen.register.record import Record


@dataclass(frozen=True, slots=True)
class Standing:
    """How one revision stands on a day: `in force`, `superseded` by a later one, or `withdrawn`; since when, and by what."""

    word: str
    since: str = ""
    by: str = ""
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Suspect:
    """A revision in force that rests on another document as it no longer stands."""

    record: Record
    reference: str
    why: str


def until(found: History, day: date | None) -> tuple[Kept, ...]:
    """The records up to the end of a day (UTC), all of them for None."""
    return found.kept if day is None else tuple(kept for kept in found.kept if kept.record.day <= day.isoformat())


def issues(kept: Iterable[Kept]) -> list[Kept]:
    return [one for one in kept if one.record.kind == "issue"]


def in_force(found: History, day: date | None = None) -> Kept | None:
    """The revision to work by at the end of the day, None where there is none or it is withdrawn."""
    known = until(found, day)
    issued = issues(known)
    if not issued or standing(issued[-1].record.revision, known).word != "in force":
        return None
    return issued[-1]


def standing(revision: str, known: tuple[Kept, ...]) -> Standing:
    """How an issued revision stands, by the records given. A withdrawal goes before a later issue: it says not to use it."""
    issued = issues(known)
    for one in known:
        if one.record.kind == "withdrawal" and one.record.revision == revision:
            return Standing("withdrawn", one.record.day, one.record.by, one.record.reason)
    at = next((n for n, one in enumerate(issued) if one.record.revision == revision), None)
    if at is None:
        return Standing("unknown")
    if at + 1 < len(issued):
        after = issued[at + 1].record
        return Standing("superseded", after.day, issued[-1].record.revision)
    return Standing("in force", issued[at].record.day)


def suspects(all_of: Mapping[str, History], sheets: Mapping[str, History] | None = None) -> Iterator[Suspect]:
    """Revisions in force that were issued against another revision of a document than the one in force, or one withdrawn since.

    `sheets` are documents of another register that those of this one rest on.
    """
    known = {**all_of, **(sheets or {})}
    for found in all_of.values():
        kept = in_force(found)
        if kept is None:
            continue
        for reference in kept.record.references:
            other = known.get(reference.document)
            current = in_force(other) if other is not None else None
            named = f"{reference.document} {reference.revision}".rstrip()
            if not reference.revision:
                if current is not None:
                    why = f"{reference.document} was not issued then; {current.record.revision} is in force"
                    yield Suspect(kept.record, named, why)
            elif other is None:
                yield Suspect(kept.record, named, f"{reference.document} is not in this register")
            elif (now := standing(reference.revision, other.kept)).word == "withdrawn":
                yield Suspect(kept.record, named, f"it was withdrawn on {now.since}: {now.reason}")
            elif kept.record.about == "records":
                # what was built to a revision stays built to it
                continue
            elif current is not None and current.record.revision != reference.revision:
                why = f"{reference.document} {current.record.revision} is in force since {current.record.day}"
                yield Suspect(kept.record, named, why)
            elif reference.differs:
                yield Suspect(
                    kept.record, named, "the sources already said something else than it when this was issued"
                )


def not_acknowledged(found: History) -> tuple[str, ...]:
    """The holders of the revision in force who have not said that they have it."""
    kept = in_force(found)
    if kept is None:
        return ()
    have = {
        one.record.by
        for one in found.kept
        if one.record.kind == "receipt" and one.record.revision == kept.record.revision
    }
    return tuple(holder for holder in kept.record.holders if holder not in have)


def overdue(found: History, on: date) -> bool:
    """True where the revision in force was to be looked at again before the day."""
    kept = in_force(found, on)
    return kept is not None and bool(kept.record.next_review) and kept.record.next_review < on.isoformat()
