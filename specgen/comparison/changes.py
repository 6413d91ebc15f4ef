"""The records a comparison is told in: what differs, where on both sides, how it is judged, and what follows from it.

Made by `differences`, `effects` and `compare`; printed by `report` and by the change notice. Nothing here is a sentence.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction
from typing import Any

from specgen.findings import Finding, Place, Severity
from specgen.model.declaring import Audience, Concern, Polarity
from specgen.model.node import Node
from specgen.model.walk import Path


class Kind(StrEnum):
    """What happened to a value or an entry."""

    CHANGED = "changed"
    ADDED = "added"
    REMOVED = "removed"
    REORDERED = "reordered"
    RENAMED = "renamed"


class Effect(StrEnum):
    """What a change does to what is accepted."""

    TIGHTENED = "tightened"
    RELAXED = "relaxed"
    SHIFTED = "shifted"
    REPLACED = "replaced"
    REWORDED = "reworded"
    FACT = "fact"  # no requirement: what follows from it is judged, not it
    EDITORIAL = "editorial"


# what the program cannot order, so that a person has to
OPEN = frozenset({Effect.SHIFTED, Effect.REPLACED, Effect.REWORDED})


class Answer(StrEnum):
    """What a person may say to a change the program cannot order."""

    TIGHTENED = "tightened"
    RELAXED = "relaxed"
    NEUTRAL = "neutral"


@dataclass(frozen=True, slots=True)
class Decision:
    """A person's answer to one change, kept by the fingerprint of that change."""

    fingerprint: str
    answer: Answer
    who: str
    reason: str
    on: date
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Owner:
    """A record on the way to a value: the field that holds it, its id or empty, and what it is on both sides.

    One that is `implied` is what the whole comparison is about, and goes without saying where another record is named.
    """

    name: str
    key: str
    old: Node | None
    new: Node | None
    implied: bool = False

    @property
    def record(self) -> Node:
        found = self.new if self.new is not None else self.old
        if found is None:
            raise ValueError("a record is on one side at least")
        return found


@dataclass(frozen=True, slots=True)
class Difference:
    """One fact. `path` goes by the ids of the new side, `old_path` by those of the old one.

    A side on which the value is not stated has None; a value that counts where nothing is stated is in `default`.
    An entry added or removed is one difference, its values those of its whole record. `owners` leads from the
    source to the record that holds the value. `name` is the field, or of an entry the list that holds it.

    `through` is set where the two sides are two records, one in the place of the other: their addresses, empty for none.
    """

    kind: Kind
    path: Path
    old_path: Path
    owners: tuple[Owner, ...]
    name: str
    polarity: Polarity
    concern: Concern
    audience: Audience
    about: str
    old: Any
    new: Any
    default: Any = None
    refers: str = ""
    through: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True)
class Rounding:
    """What a change of unit left over: the signed difference in both units, and as a share of the old value."""

    in_old_unit: Fraction
    old_unit: str
    in_new_unit: Fraction
    new_unit: str
    percent: Fraction | None
    by_rounding: bool


@dataclass(frozen=True, slots=True)
class FigureMoved:
    """A computed figure that differs, and the jobs and products it stands in; what moves alike in several is one.

    `where` names those jobs and products as a reader knows them: number of the document, name of the product.
    `old` or `new` is empty where the figure stands on one side only. `causes` are the addresses of the changes it comes
    from, empty where none is known; `makers_cause` says that one of them is the maker's. `is_makers` marks a figure whose
    very name tells of the composition. `told` says in names which record it is of, jobs aside.
    """

    id: str
    name: str
    old: str
    new: str
    jobs: tuple[str, ...]
    products: tuple[str, ...]
    where: tuple[str, ...]
    causes: tuple[str, ...]
    makers_cause: bool = False
    is_makers: bool = False
    told: str = ""

    @property
    def of(self) -> str:
        """Which of several figures of one name it is, without its address: `cab, primer` of `wet.cab.primer`."""
        _, *steps = re.split(r"[./]", self.id)
        return ", ".join(step for step in steps if step not in self.jobs)

    @property
    def is_listed(self) -> bool:
        """False for what came or went with a change and is no order: a reader wants its number, not a line of each."""
        return bool(self.old and self.new) or self.id.startswith("packs.")


@dataclass(frozen=True, slots=True)
class Reached:
    """A job that a changed record has a part in: the number of its document, and the items, where it goes by items."""

    number: str
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """A difference with its judgement. `follows` are its echoes: changes that come of it.

    `alike` are changes that swap the same reference in other places, told with it by their number. `note` says in words why the
    effect is what it is, where that is not plain. `names` are those of the records that a reference leads to on the two sides,
    or of the rows of a published table, empty for any other value.
    """

    difference: Difference
    effect: Effect
    concern: Concern
    old_place: Place | None
    new_place: Place | None
    fingerprint: str
    note: str = ""
    rounding: tuple[Rounding, ...] = ()
    decision: Decision | None = None
    follows: tuple[Change, ...] = ()
    reaches: tuple[Reached, ...] = ()
    names: tuple[str, str] = ("", "")
    alike: tuple[Change, ...] = ()

    @property
    def path(self) -> str:
        """The address on the new side, or on the old one for what is gone."""
        gone = self.difference.kind is Kind.REMOVED
        return ".".join(self.difference.old_path if gone else self.difference.path)

    @property
    def weighed(self) -> Effect:
        """The effect once a person has spoken."""
        if self.decision is None:
            return self.effect
        said = {Answer.TIGHTENED: Effect.TIGHTENED, Answer.RELAXED: Effect.RELAXED, Answer.NEUTRAL: Effect.EDITORIAL}
        return said[self.decision.answer]

    @property
    def is_open(self) -> bool:
        """True where it waits for a person."""
        return self.decision is None and self.effect in OPEN


@dataclass(frozen=True, slots=True)
class FindingMoved:
    """A finding that is on one side only, or weighs otherwise on the two."""

    old: Finding | None
    new: Finding | None


@dataclass(frozen=True, slots=True)
class TableMoved:
    """A published table or document whose content is not the same on both sides."""

    name: str
    kind: Kind


@dataclass(frozen=True, slots=True)
class Comparison:
    """Everything that differs, the heaviest first. `withheld` changes are the maker's and not shown to a customer, whose `audience`
    is another than that of all there is.

    `not_compared` are addresses of entries, `unread_files` the side (`old` or `new`) and name of files that could not be read.
    """

    changes: tuple[Change, ...] = ()
    figures: tuple[FigureMoved, ...] = ()
    findings: tuple[FindingMoved, ...] = ()
    tables: tuple[TableMoved, ...] = ()
    not_compared: tuple[str, ...] = ()
    unread_files: tuple[tuple[str, str], ...] = ()
    unused_decisions: tuple[Decision, ...] = ()
    withheld: int = 0
    audience: Audience = Audience.MAKER

    def numbers(self) -> dict[str, int]:
        """The number of each change, from 1, by its address and those of the changes told with it as alike."""
        numbered = [(at, one) for at, top in enumerate(self.changes, start=1) for one in (*top.alike, top)]
        return {change.path: at for at, change in numbered}

    def relaxed(self) -> Sequence[Change]:
        return [change for change in self.changes if change.weighed is Effect.RELAXED]

    def open(self) -> Sequence[Change]:
        return [change for change in self.changes if change.is_open]

    @property
    def is_whole(self) -> bool:
        """False where something could not be read or compared, so that it may have become weaker unseen."""
        return not (self.not_compared or self.unread_files)

    @property
    def new_errors(self) -> Sequence[FindingMoved]:
        """What the rules refuse on the new side and did not on the old one."""
        return [
            moved
            for moved in self.findings
            if moved.new is not None
            and moved.new.severity is Severity.ERROR
            and (moved.old is None or moved.old.severity is not Severity.ERROR)
        ]

    @property
    def is_empty(self) -> bool:
        return not (
            self.changes or self.figures or self.findings or self.tables or self.not_compared or self.unread_files
        )
