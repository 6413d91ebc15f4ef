"""The people of a folder: who stands behind an id in the records. Read from `people.yaml` beside the sources; called by `assessing`.

Records, certificates and pages that are kept hold ids. Names and qualifications stand in this file alone, which is no source, is copied
into no register and is bound to no approval: a name, an entry or the whole file may be erased, and all that was issued still holds.
A name in a record is taken for the id of that person; `register.persons` says whether two names are one.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from specgen.findings import Finding, Place
from specgen.model.declaring import Concern, Polarity, entries, leaf
from specgen.model.field_types import Id, IsoDate, Line
from specgen.model.node import Node
from specgen.model.shape import read_record
from specgen.register.persons import person
from specgen.source.faults import fault
from specgen.source.places import Places
from specgen.source.project import PEOPLE
from specgen.source.reader import read_file
from specgen.source.tree import Mapping as Group


class Qualification(Node):
    """What a person is qualified for."""

    id: Id = leaf(Polarity.NOTE, Concern.DOCUMENT, "id of the entry", required=True)
    what: Line = leaf(Polarity.NOTE, Concern.DOCUMENT, "qualification, as in coating inspector, level 2", required=True)
    until: IsoDate | None = leaf(Polarity.NOTE, Concern.DOCUMENT, "last day of its validity")


class Person(Node):
    """Somebody who works, measures, accepts or releases. All but the id may be erased."""

    id: Id = leaf(Polarity.NOTE, Concern.DOCUMENT, "id of the person, as the records name them", required=True)
    name: Line | None = leaf(Polarity.NOTE, Concern.DOCUMENT, "name of the person")
    employer: Line | None = leaf(Polarity.NOTE, Concern.DOCUMENT, "company or department")
    function: Line | None = leaf(
        Polarity.NOTE, Concern.DOCUMENT, "function, as in coating inspector; printed beside the id"
    )
    qualifications: tuple[Qualification, ...] = entries("qualifications of the person")

    def ended(self, on: date) -> tuple[Qualification, ...]:
        """The qualifications that had ended by a day."""
        return tuple(one for one in self.qualifications if one.until is not None and one.until < on)


class StatedPeople(Node):
    """The whole file."""

    people: tuple[Person, ...] = entries("people named by the records")


@dataclass(frozen=True, slots=True)
class People:
    """Those who are listed, by id; `there` is False where the folder has no such file, `findings` say what in it cannot be read."""

    listed: Mapping[str, Person] = field(default_factory=dict)
    there: bool = False
    findings: tuple[Finding, ...] = ()

    def of(self, text: str) -> Person | None:
        """The person a record means, by id or by name; None for nobody who is listed, and for a name that two have."""
        folded = text.strip().casefold()
        if (found := next((one for key, one in self.listed.items() if key.casefold() == folded), None)) is not None:
            return found
        named = [one for one in self.listed.values() if one.name and person(one.name) == person(text)]
        return named[0] if len(named) == 1 else None


def people_of(folder: Path) -> People:
    """The file of a folder; nobody where there is none."""
    file = folder / PEOPLE
    if not os.path.lexists(file):
        return People()
    try:
        plain = stat.S_ISREG(os.lstat(file).st_mode)
    except OSError:
        plain = False
    if not plain:
        return People(
            there=True, findings=(fault("SRC002", "It is a link or no ordinary file.", Place(PEOPLE, 1, 1, 1)),)
        )
    source, faults = read_file(file, PEOPLE)
    if not isinstance(source.root, Group):
        return People(there=True, findings=tuple(faults))
    record, found = read_record(StatedPeople, source.root, (), Places(source))
    listed = record.people if isinstance(record, StatedPeople) else ()
    return People({one.id: one for one in listed}, there=True, findings=(*faults, *found))
