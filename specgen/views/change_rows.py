"""One change as a row of the notice: what it is about, and both sides with the changed words marked. Called by `change_notice`."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from specgen.comparison.changes import Change, Kind
from specgen.comparison.sentences import notes, sentence, subject, value_text
from specgen.model.node import Node
from specgen.model.senses import Audience
from specgen.model.walk import leaves
from specgen.views.marked_words import Run, marked
from specgen.views.wording import Words


@dataclass(frozen=True, slots=True)
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


def change_row(number: str, change: Change, words: Words) -> ChangeRow:
    fact = change.difference
    # a row about the maker's data is made for the maker alone
    everything = fact.audience is Audience.MAKER
    old, new = marked(_text(fact.old, everything=everything), _text(fact.new, everything=everything))
    return ChangeRow(
        number,
        words(change.concern.value),
        words(change.weighed.value),
        subject(change, words.translate),
        old,
        new,
        _places(change, words),
        tuple(_remarks(change, words)),
    )


def _text(value: Any, *, everything: bool) -> str:
    """A value in full; of an entry that came or went, what a customer may see of it."""
    if isinstance(value, Node):
        stated = [
            f"{path[-1].replace('_', ' ')}: {value_text(held)}"
            for path, held, said in leaves(value)
            if (everything or said.audience is Audience.CUSTOMER) and path[-1] != "id"
        ]
        return "; ".join(stated)
    if isinstance(value, tuple) and all(isinstance(part, str) for part in value):
        return ", ".join(value_text(part) for part in value)
    return value_text(value)


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
        yield words("With it: {said}").format(said=sentence(echo, words.translate))
    if change.verdict is not None:
        frame = words("{who} decided on {day}: {answer}. {reason}")
        said = change.verdict
        yield frame.format(who=said.who, day=said.on.isoformat(), answer=words(said.answer.value), reason=said.reason)
    elif change.is_open:
        yield words("Fingerprint for a verdict: {fingerprint}").format(fingerprint=change.fingerprint)
