"""One change as a row of the notice: what it is about, and both sides with the changed words marked. Called by `change_notice`."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.comparison.changes import Change, Kind
from specgen.comparison.sentences import notes, sentence, subject, whole_text
from specgen.documents.change_notice.marked_words import Run, marked
from specgen.documents.change_notice.tables import CONCERNS, EFFECTS
from specgen.documents.parts.wording import Words
from specgen.model.declaring import Audience


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """`old` and `new` are empty where the side says nothing; `remarks` are finished sentences below the subject."""

    number: str
    concern: str
    effect: str
    subject: str
    old: tuple[Run, ...]
    new: tuple[Run, ...]
    places: str
    remarks: tuple[str, ...]


def change_row(number: str, change: Change, words: Words, *, for_maker: bool) -> ChangeRow:
    """`for_maker` says where in the sources both sides stand, which is nothing to a customer."""
    fact = change.difference
    # a row about the maker's data is made for the maker alone
    everything = fact.audience is Audience.MAKER
    before, after = (
        whole_text(value, everything=everything, language=words.translate) for value in (fact.old, fact.new)
    )
    # of a record that is named its name, for its id says nothing to a reader
    old, new = marked(change.names[0] or before, change.names[1] or after)
    return ChangeRow(
        number=number,
        concern=words(CONCERNS[change.concern]),
        effect=words(EFFECTS[change.weighed]),
        subject=subject(change, words.translate, by_name=True),
        old=old,
        new=new,
        places=_places(change, words) if for_maker else "",
        remarks=tuple(_remarks(change, words)),
    )


def _places(change: Change, words: Words) -> str:
    old = f"{change.old_place.file}:{change.old_place.line}" if change.old_place is not None else ""
    new = f"{change.new_place.file}:{change.new_place.line}" if change.new_place is not None else ""
    if change.difference.kind is Kind.REMOVED:
        return old
    if change.difference.kind is Kind.ADDED or old == new:
        return new
    return words("{old}, now {new}").format(old=old, new=new)


def _remarks(change: Change, words: Words) -> Iterator[str]:
    yield from notes(change, words.translate)
    for echo in change.follows:
        yield words("Consequence: {said}").format(said=sentence(echo, words.translate, by_name=True))
    if change.decision is not None:
        frame = words("{who} decided on {day}: {answer}. {reason}")
        said = change.decision
        yield frame.format(who=said.who, day=said.on.isoformat(), answer=words(said.answer.value), reason=said.reason)
    elif change.is_open:
        yield words("Fingerprint for the decision: {fingerprint}").format(fingerprint=change.fingerprint)
