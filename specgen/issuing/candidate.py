"""A document as it would be issued now: its subject, what it reaches, the frozen model of that, and what stands against it.

Called by approving and issuing, so that what is approved is exactly what is issued.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from specgen.checking import Checked, check
from specgen.comparison.reference_snapshot import Snapshot, reference_snapshot
from specgen.facts.closure import loaded_closure
from specgen.facts.graph import address_of
from specgen.findings import Finding, Severity
from specgen.issuing.refused import Refused
from specgen.issuing.tables_read import tables_read
from specgen.model.control import DocumentControl
from specgen.model.file_names import record_number, sheet_number
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import leaves
from specgen.register.approvals import kept_salt, new_salt, waiting_digests
from specgen.register.chain import sound
from specgen.register.editions import Editions, digest, editions, first_editions
from specgen.register.failure import RegisterError
from specgen.register.folder import history_of
from specgen.register.history import History
from specgen.register.numbering import next_revision
from specgen.register.revisions import Revisions, sheet_revisions
from specgen.register.state import issues
from specgen.source.characters import printable_name

if TYPE_CHECKING:
    from specgen.issuing.recorded import Recorded


@dataclass(frozen=True, slots=True)
class Candidate:
    """`spec` is what the document rests on; `history` is the document's chain, sound; `salt` as kept or newly drawn.

    An as-built record is about its job, and `recorded` is what was recorded of that. `sheets` are the revisions of the data sheets
    that a job rests on, by number.
    """

    document: str
    subject: Job | Product
    checked: Checked
    spec: Spec
    history: History
    revision: str
    salt: bytes
    frozen: Editions
    digest: str
    recorded: Recorded | None = None
    sheets: Mapping[str, Revisions] = field(default_factory=dict)

    @property
    def about(self) -> str:
        if self.recorded is not None:
            return "records"
        return "job" if isinstance(self.subject, Job) else "product"

    @property
    def title(self) -> str:
        control = self.subject.document
        return control.title if control is not None else getattr(self.subject, "name", "")

    @property
    def preparer(self) -> str:
        """Who wrote the document, empty where the sources do not say; of a record nobody, for it is drawn up from readings."""
        if self.recorded is not None:
            return ""
        control: DocumentControl | None = self.subject.document
        return (control.prepared_by or control.owner) if control is not None else ""

    @property
    def numbers(self) -> frozenset[str]:
        """The numbers under which holders are listed: who has a job's document gets its as-built record too."""
        return frozenset({self.document, *([self.recorded.made_to.document] if self.recorded is not None else [])})

    @property
    def readings(self) -> Mapping[str, bytes]:
        """The files an as-built record rests on; none of any other document."""
        return self.recorded.contents if self.recorded is not None else {}

    def readings_stand(self, folder: Path) -> bool:
        """False where the folder keeps other readings by now."""
        return self.recorded is None or self.recorded.stand(folder, self.checked.loaded.spec)

    def sources(self) -> tuple[str, ...]:
        """The files that hold something of it, and what its records are based on."""
        loaded = self.checked.loaded
        addresses: set[tuple[str, ...]] = {
            ("project",),
            *(("project", name) for name in self.spec.project.model_fields_set),
        }
        addresses |= {(kind, key) for kind in LIST_KINDS for key in getattr(self.spec, kind)}
        bases = {base for path in addresses & {*loaded.bases} for base in loaded.bases[path].on}
        files = {loaded.place(path).file for path in addresses | bases}
        for kind in LIST_KINDS:
            for key, record in getattr(self.spec, kind).items():
                files |= {loaded.place((kind, key, *steps)).file for steps, _, _ in leaves(record)}
        return tuple(sorted(files))

    def pictures(self) -> tuple[str, ...]:
        """The files of the pictures it names, those of a range by the way there."""
        records = (self.spec.project, *(one for kind in LIST_KINDS for one in getattr(self.spec, kind).values()))
        stated = {value for record in records for _, value, _ in leaves(record) if isinstance(value, str)}
        shared = self.checked.loaded.range
        named = stated & self.spec.pictures.keys()
        own = {value for value in named if shared is None or value not in shared.pictures}
        before = shared.before if shared is not None else ""
        files = (("" if value in own else before) + value.partition(" sha256:")[0] for value in named)
        return tuple(sorted(files))


def candidate(folder: Path, register: Path, document: str, on: date) -> Candidate:
    """The document as it stands in a folder. Raises SourceError, RegisterError, or Refused with the findings against it."""
    checked = check(folder, on)
    whole = checked.loaded.spec
    if whole is None:
        raise Refused("the folder has no whole project source; `specgen check` says what is wrong")
    job = recorded_job(whole, document)
    subject = job or subject_of(whole, document)
    if checked.loaded.of_range("products", subject.id) and isinstance(subject, Product):
        assert checked.loaded.range is not None  # noqa: S101  # the product is of it
        raise Refused(f"{document} is of the range {checked.loaded.range.named}; approve and issue it there")
    part = loaded_closure(checked.loaded, whole, subject, granted=job is not None)
    spec = part.spec
    assert spec is not None  # noqa: S101  # a part of what is whole
    against = [_line(finding) for finding in _against(checked, spec, of_records=job is not None)]
    if against:
        raise Refused(*against)
    known = sound(history_of(register, document))
    records = _recorded(folder, register, job, whole, on) if job is not None else None
    if known.head is not None and (known.head.record.about == "records") is not (job is not None):
        raise RegisterError(f"the register holds another document under the number {document}; give the job another")
    revision = next_revision([kept.record.revision for kept in issues(known.kept)], whole.project.numbering)
    salt = kept_salt(folder, document, revision) or new_salt()
    again = records.again if records is not None else None
    snapshot = reference_snapshot(tables_read(part, subject, on, again))
    frozen = _frozen(folder, document, revision, spec, salt, snapshot)
    bound = digest(document, revision, frozen, records.hashes if records is not None else None)
    used = spec.products_of(subject) if isinstance(subject, Job) and records is None else ()
    sheets = {sheet_number(one): sheet_revisions(register, checked.loaded, spec, one) for one in used}
    return Candidate(document, subject, checked, spec, known, revision, salt, frozen, bound, records, sheets)


def _recorded(folder: Path, register: Path, job: Job, spec: Spec, on: date) -> Recorded:
    # assessing is asked of by no other document
    from specgen.issuing.recorded import recorded

    return recorded(folder, register, job, spec, on)


def _frozen(folder: Path, document: str, revision: str, spec: Spec, salt: bytes, snapshot: Snapshot) -> Editions:
    """The editions; as format 1 made them where approvals wait that were given to those."""
    present = editions(spec, salt, snapshot)
    waiting = waiting_digests(folder, document)
    if waiting and digest(document, revision, present) not in waiting:
        for first in first_editions(spec, salt, snapshot):
            if digest(document, revision, first) in waiting:
                return first
    return present


def recorded_job(spec: Spec, document: str) -> Job | None:
    """The job whose as-built record has this number; None for the number of any other document, which goes first."""
    if any(job.document.number == document for job in spec.jobs.values()):
        return None
    return next((job for job in spec.jobs.values() if record_number(job) == document), None)


def subject_of(spec: Spec, document: str) -> Job | Product:
    """The job or product a document number stands for. Raises RegisterError."""
    numbered: dict[str, Job | Product] = {sheet_number(product): product for product in spec.products.values()}
    numbered |= {job.document.number: job for job in spec.jobs.values()}
    if document in numbered:
        return numbered[document]
    if document in spec.offers:
        raise RegisterError(
            f"{printable_name(document)} is an offer; its review instructs nobody and is not issued: "
            f"`specgen render --offer {printable_name(document)}` prints it"
        )
    raise RegisterError(
        f"no job or product has the document number {printable_name(document)}; there is: "
        f"{', '.join(sorted(numbered)) or 'none'} (what has errors is left out, see `specgen check`)"
    )


def _against(checked: Checked, spec: Spec, *, of_records: bool) -> Iterator[Finding]:
    """Errors and open warnings of what the document reaches, and errors that stand in no record: those may hide anything.

    A record is of work done to a revision that was clean when it was issued; of warnings only those on concessions hold it up, for a
    waiver ends with the work.
    """
    for finding in checked.report.at_or_above(Severity.WARNING):
        kind, key = address_of(finding.path.split("."))
        reached = key in getattr(spec, kind) if kind in LIST_KINDS else finding.path.startswith("project")
        if of_records and finding.severity is Severity.WARNING and kind != "concessions":
            continue
        if reached or (kind not in LIST_KINDS and finding.severity is Severity.ERROR):
            yield finding


def _line(finding: Finding) -> str:
    return f"{finding.place}: {finding.severity.value} {finding.id} {finding.what}"
