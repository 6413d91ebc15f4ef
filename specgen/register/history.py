"""The chain of one document: its records, and whether each follows from the one before. Called by `folder`, which reads it.

Whoever reads a chain reads its faults with it, so that no answer is given on a chain that does not hold.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from specgen.model.file_names import file_stem
from specgen.register.record import Record


@dataclass(frozen=True, slots=True)
class Kept:
    """A record as it stands in the register: where, and the SHA-256 of its very bytes, which the next one holds."""

    record: Record
    folder: Path
    sha256: str


@dataclass(frozen=True, slots=True)
class History:
    """The chain of one document as far as it can be read, in order, what stands in the way of reading
    more, and what in it does not hold."""

    document: str
    kept: tuple[Kept, ...] = ()
    faults: tuple[str, ...] = field(default=())

    @property
    def head(self) -> Kept | None:
        return self.kept[-1] if self.kept else None


def link_faults(document: str, records: Sequence[Kept]) -> Iterator[str]:
    """What is wrong with numbers, names, order and links of a document's records, by the records alone."""
    previous, time = "", ""
    revisions: set[str] = set()
    for expected, kept in enumerate(records, 1):
        record, at = kept.record, f"{kept.folder.parent.name}/{kept.folder.name}"
        if record.number != int(kept.folder.name):
            yield f"{at} holds the record {record.number}"
        if int(kept.folder.name) != expected:
            yield f"{at}: record {expected} is missing before it"
            return
        if record.document != document or file_stem(record.document) != kept.folder.parent.name:
            yield f"{at} is a record of {record.document}"
        if record.previous != previous:
            yield f"{at} does not follow from the record before it"
        if record.time < time:
            yield f"{at} is older than the record before it"
        if record.kind == "issue":
            if record.revision in revisions:
                yield f"{at} uses the revision {record.revision} again"
            revisions.add(record.revision)
        elif record.revision not in revisions:
            yield f"{at} speaks of the revision {record.revision}, which was never issued"
        previous, time = kept.sha256, record.time
