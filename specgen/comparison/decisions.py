"""A person's decisions on what the program cannot order, and declared changes of id, read from `decisions.yaml` beside the sources.

Called by the command. The file is read as strictly as a source: every fault is a finding with its place.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Annotated

from specgen.comparison.changes import Answer, Decision
from specgen.findings import Finding
from specgen.model.declaring import Concern, Polarity, entries, leaf
from specgen.model.field_types import Code, IsoDate, Line, Text, choice
from specgen.model.format_1 import decisions_upgraded
from specgen.model.node import Node
from specgen.model.shape import read_record
from specgen.model.walk import Path
from specgen.source.places import Places
from specgen.source.tree import Mapping as Group
from specgen.source.tree import SourceFile


class StatedDecision(Node):
    """One decision: on which change, what was said, by whom, why and when."""

    fingerprint: Code = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "fingerprint of the change, as compare prints it", required=True
    )
    decision: Annotated[Answer, choice(Answer)] = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "tightened, relaxed or neutral", required=True
    )
    who: Line = leaf(Polarity.NOTE, Concern.DOCUMENT, "who decided", required=True)
    reason: Text = leaf(Polarity.NOTE, Concern.DOCUMENT, "why", required=True)
    on: IsoDate = leaf(Polarity.NOTE, Concern.DOCUMENT, "day of the decision", required=True)


class StatedRename(Node):
    """One change of id: the address of the entry on the old side, and its new id."""

    old: Line = leaf(Polarity.NOTE, Concern.DOCUMENT, "old address, as in systems.cab.layers.primer", required=True)
    new: Line = leaf(Polarity.NOTE, Concern.DOCUMENT, "new id, as in base", required=True)


class StatedAnswers(Node):
    """The whole file."""

    decisions: tuple[StatedDecision, ...] = entries("decisions on changes")
    renames: tuple[StatedRename, ...] = entries("entries that were given another id")


@dataclass(frozen=True, slots=True)
class Answers:
    """What persons have said; empty where nobody has. `in_old_words` where the file still has keys of source format 1."""

    decisions: tuple[Decision, ...] = ()
    renames: Mapping[Path, str] = field(default_factory=dict)
    in_old_words: bool = False


def answers_in(source: SourceFile, faults: list[Finding]) -> tuple[Answers, list[Finding]]:
    """The answers in a file already read. Two decisions on one change: the later line counts."""
    if not isinstance(source.root, Group):
        return Answers(), faults
    renamed = decisions_upgraded(source.root)
    places = Places(replace(source, root=renamed.root))
    record, found = read_record(StatedAnswers, renamed.root, (), places)
    if not isinstance(record, StatedAnswers):
        return Answers(), [*faults, *found]
    decisions = tuple(
        Decision(
            said.fingerprint, said.decision, said.who, said.reason, said.on, places.place(("decisions", f"[{at}]"))
        )
        for at, said in enumerate(record.decisions)
    )
    renames = {tuple(said.old.split(".")): said.new for said in record.renames}
    return Answers(decisions, renames, bool(renamed.edits)), [*faults, *found]
