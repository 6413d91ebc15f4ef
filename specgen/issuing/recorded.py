"""The as-built record of a job as it would be issued: what the kept readings come to, their files, and the revision worked to.

Called by `candidate`. An issued record names persons by their ids in the list of people alone, so that a name can be erased there.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from specgen.assessing.as_built import Built, assessed, open_of
from specgen.assessing.kept import Kept, kept_of
from specgen.facts.closure import cut_to_closure
from specgen.issuing.names_kept import names_kept
from specgen.issuing.refused import Refused
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.register.editions import is_content
from specgen.register.folder import history_of
from specgen.register.json_text import sha256
from specgen.register.names import READINGS
from specgen.register.people import People, people_of
from specgen.register.record import Reference
from specgen.register.revisions import Revisions, revisions_of
from specgen.register.state import in_force
from specgen.source.characters import printable_name
from specgen.source.project import PEOPLE

_MOST_LINES = 20


@dataclass(frozen=True, slots=True)
class Recorded:
    """`kept` are the files it rests on and was assessed from; `made_to` is the job's revision in force, and `of_job` all its
    revisions, for the pages."""

    built: Built
    kept: Kept
    made_to: Reference
    of_job: Revisions

    @property
    def contents(self) -> dict[str, bytes]:
        """What it rests on, by the names in the folder: `readings/DOORS-film.csv`, `readings/columns.txt`."""
        return self.kept.contents

    @property
    def hashes(self) -> dict[str, str]:
        """What an approval is bound to beside the specification: each file by its SHA-256."""
        return {name: sha256(data) for name, data in self.contents.items()}

    def stand(self, folder: Path, spec: Spec | None) -> bool:
        """False where the folder keeps other readings of the job by now."""
        return spec is not None and kept_of(self.built.found.job, folder, spec).contents == self.contents

    def again(self, spec: Spec, day: date) -> Built:
        """The same files held against another specification, the part of it that the record rests on."""
        return _built(self.built.found.job, spec, self.kept, self.built.people, day)


def recorded(folder: Path, register: Path, job: Job, spec: Spec, day: date) -> Recorded:
    """The records of a job that release it. `spec` is the whole folder's.

    Raises RegisterError, or Refused with what is open, persons named by more than an id, and a job whose revision in force says
    something else than its sources.
    """
    made_to = _made_to(register, job, spec)
    kept = kept_of(job, folder, spec)
    if not kept.files:
        raise Refused(f"the folder {READINGS} holds no file that is called by {job.id}")
    built = _built(job, spec, kept, people_of(folder), day)
    against = [f"{one.where}: {one.what}" for one in built.open]
    # a name in a cell is told once, by the cell
    against += list(_names(built)) or list(names_kept(kept.contents, built.people))
    if against:
        raise Refused(*_some(against))
    of_job = revisions_of(register, job.document.number, partial(cut_to_closure, spec, job))
    return Recorded(built, kept, made_to, of_job)


def _built(job: Job, spec: Spec, kept: Kept, people: People, day: date) -> Built:
    found = assessed(job, spec, kept, people, day)
    return Built(found, open_of(job, spec, found, kept, people), people)


def _made_to(register: Path, job: Job, spec: Spec) -> Reference:
    """The revision of the job that is in force and says what the sources say. Raises Refused where there is none."""
    number = job.document.number
    kept = in_force(history_of(register, number))
    if kept is None:
        raise Refused(f"{number} has no revision in force; what was built is recorded against the revision worked to")
    if not is_content(cut_to_closure(spec, job), kept.record.content):
        raise Refused(
            f"the sources say something else than {number} {kept.record.revision}, which is in force; the readings would be held "
            "against limits nobody was given: issue its next revision first, or put the sources back"
        )
    return Reference(number, kept.record.revision, kept.record.certificate, differs=False)


def _names(built: Built) -> Iterator[str]:
    """Persons that the records name otherwise than by the id of an entry."""
    if not built.people.there:
        yield f"the folder has no {PEOPLE}; list who stands behind the ids in the records"
        return
    for text, person in built.persons:
        if person is None:
            yield f"{printable_name(text)} is nobody of {PEOPLE}; list the person, and write the id in the records"
        elif text.strip().casefold() != person.id.casefold():
            yield f"the records name {printable_name(text)}; write the id, {person.id}, so that the name can be erased later"


def _some(lines: list[str]) -> list[str]:
    rest = len(lines) - _MOST_LINES
    more = [f"and {rest} more; `specgen assess` lists all"] if rest > 0 else []
    return [*lines[:_MOST_LINES], *more]
