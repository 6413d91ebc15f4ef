"""The one transaction: check, approvals, pages, frozen model, record, and one renaming that makes it so. Called by `specgen issue`.

Until that renaming nothing is there; after it everything is. The steps before it may fail, be cut off, or run twice at once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from pathlib import Path

from specgen import __version__
from specgen.documents.parts.issue_block import issue_block
from specgen.issuing.candidate import Candidate, candidate
from specgen.issuing.refused import Refused
from specgen.model.file_names import sheet_number
from specgen.model.job import Job
from specgen.printing.files import Issue
from specgen.register.approvals import Collected, allowed_signers, binding, collected, conflicts
from specgen.register.certificate import Certificate, carried, certificate_text, code_text, fingerprint
from specgen.register.editions import content_sha256, is_record_content, record_contents
from specgen.register.failure import RegisterError
from specgen.register.folder import Step, append, history_of, no_step
from specgen.register.history import History, Kept
from specgen.register.json_text import read_bytes, sha256
from specgen.register.names import (
    ALLOWED_SIGNERS,
    CERTIFICATE,
    CUSTOMER_MODEL,
    MAKER_MODEL,
    RANGE_SOURCES,
    SOURCES,
    safe,
)
from specgen.register.policy import missing_approvals, next_review, policy_lines
from specgen.register.record import Record, Reference, file_hashes
from specgen.register.revisions import revisions, sheet_register
from specgen.register.state import in_force, issues
from specgen.rendering.attachments import Attachment
from specgen.rendering.environment import translation
from specgen.source.beside import NotRead
from specgen.source.characters import printable_name

Printer = Callable[[Candidate, Issue], Mapping[str, bytes]]
"""From a candidate and what makes it an issue to its documents, name to content."""
Versions = Callable[[], Mapping[str, str]]

_PROGRAM = f"specgen {__version__}"


@dataclass(frozen=True, slots=True)
class Issued:
    """The new record, its documents, and the fingerprint on their pages."""

    kept: Kept
    fingerprint: str

    @property
    def documents(self) -> tuple[Path, ...]:
        return tuple(self.kept.folder / name for name in self.kept.record.files if name.startswith("documents/"))


def print_with_typesetter(found: Candidate, issue: Issue) -> Mapping[str, bytes]:
    """The documents as `printing` sets them."""
    from specgen.printing.documents import print_issue

    earlier = {**found.sheets, found.document: revisions(found.history)}
    if found.recorded is None:
        return print_issue(found.checked, found.spec, found.subject, issue, earlier)
    earlier |= {found.recorded.made_to.document: found.recorded.of_job}
    return print_issue(found.checked, found.spec, found.recorded.built, issue, earlier)


def versions_in_use() -> Mapping[str, str]:
    """What set the pages."""
    from dataclasses import asdict

    from specgen.rendering.engine_versions import engine_versions

    return {"specgen": __version__, **asdict(engine_versions())}


def issue(
    folder: Path,
    register: Path,
    document: str,
    *,
    reason: str,
    on: date,
    now: datetime,
    step: Step = no_step,
    printer: Printer = print_with_typesetter,
    versions: Versions = versions_in_use,
) -> Issued:
    """Issues the next revision of a document into the register.

    `on` is the day the sources are judged by, `now` the moment of issue (UTC). Raises SourceError, RegisterError (TakenError
    where someone else was first), RenderError, or Refused with what is missing; the register is then as it was.
    """
    step("check")
    found = candidate(folder, register, document, on)
    kept_under = {name: f"{_kept(found, name)}.txt" for name in found.sources()}
    kept_under |= {name: _kept(found, name) for name in found.pictures()}
    # the records of a job are kept as they are, under their own names
    kept_under |= {name: name for name in found.readings}
    if odd := [name for name, path in kept_under.items() if not safe(path)]:
        raise Refused(
            *(
                f"{name} has a name that no register can keep (characters, length, or a leading space); rename it"
                for name in odd
            )
        )
    before = _source_bytes(folder, found, kept_under)
    head = found.history.head
    time = now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    if head is not None and time < head.record.time:
        raise RegisterError(
            f"the last record of {document} is of {head.record.time}, this clock says {time}; set the clock"
        )
    step("collect approvals")
    approvals = _approvals(folder, found, time)
    step("certify")
    certificate = _certificate(found, approvals, reason, time)
    text = certificate_text(certificate)
    step("print")
    documents = printer(found, _issue(found, approvals, certificate, text, now))
    files: dict[str, bytes] = {f"documents/{name}": data for name, data in documents.items()}
    files |= {CERTIFICATE: text, MAKER_MODEL: found.frozen.maker, CUSTOMER_MODEL: found.frozen.customer}
    files |= {kept_under[name]: data for name, data in before.items()}
    files |= _approval_files(folder, approvals)
    step("look at the sources again")
    if _source_bytes(folder, found, before) != before or not found.readings_stand(folder):
        raise RegisterError("the sources were changed while they were being issued; nothing was issued, begin again")
    record = replace(
        _record(found, register, reason, time, certificate, text),
        previous=head.sha256 if head is not None else "",
        number=(head.record.number if head is not None else 0) + 1,
        files=file_hashes(files),
        engines=dict(versions()),
        policy=tuple(policy_lines(found.spec.project.policies)),
    )
    return Issued(append(register, record, files, step), fingerprint(sha256(text)))


def _approvals(folder: Path, found: Candidate, time: str) -> list[Collected]:
    waiting = collected(folder, found.document)
    bound = binding(waiting, found.document, found.revision, found.digest)
    lines = [
        f"{one.file} is of {one.approval.time}, after this moment; approve again, or set the clock"
        for one in bound
        if one.approval.time > time
    ]
    lines += [*conflicts(bound, found.preparer), *missing_approvals(found.spec.project.policies, bound)]
    if lines:
        void = [one for one in waiting if one not in bound and one.approval.revision == found.revision]
        lines += [f"{one.file} is void: the content was changed after it was given" for one in void]
        raise Refused(*lines)
    return bound


def _certificate(found: Candidate, approvals: Sequence[Collected], reason: str, time: str) -> Certificate:
    earlier = issues(found.history.kept)
    return Certificate(
        found.document,
        found.revision,
        time,
        reason,
        _PROGRAM,
        found.digest,
        found.frozen.maker_sha256,
        found.frozen.customer_sha256,
        earlier[-1].record.certificate if earlier else "",
        carried(approvals),
    )


def _issue(
    found: Candidate, approvals: Sequence[Collected], certificate: Certificate, text: bytes, now: datetime
) -> Issue:
    hashed = sha256(text)
    view = issue_block(
        found.revision,
        certificate.issued[:10],
        certificate.reason,
        [(one.approval, one.signer) for one in approvals],
        fingerprint(hashed),
        code_text(certificate, text),
        translation(found.spec.project.language),
    )
    attached = (
        Attachment(CERTIFICATE, text, "application/json", "Data", "Certificate of this revision"),
        Attachment(CUSTOMER_MODEL, found.frozen.customer, "application/json", "Source", "What it was printed from"),
    )
    return Issue(view, attached, now, bytes.fromhex(hashed)[:16])


def _record(found: Candidate, register: Path, reason: str, time: str, certificate: Certificate, text: bytes) -> Record:
    """All of the record but its place in the chain, its files and what printed them."""
    policies = found.spec.project.policies
    return Record(
        "issue",
        0,
        found.document,
        found.revision,
        time,
        reason,
        about=found.about,
        subject=found.subject.id,
        title=found.title,
        certificate=sha256(text),
        digest=found.digest,
        content=content_sha256(found.spec),
        # a record of what was done is of its day, and is not looked at again
        next_review=next_review(date.fromisoformat(certificate.issued[:10]), policies)
        if found.recorded is None
        else "",
        judged_on=found.checked.on.isoformat(),
        snapshot=dict(found.frozen.snapshot),
        contents=record_contents(found.spec),
        references=tuple(_references(found, register)),
        holders=tuple(
            holder.name
            for holder in found.spec.project.distribution
            if not holder.documents or not found.numbers.isdisjoint(holder.documents)
        ),
    )


def _references(found: Candidate, register: Path) -> Iterator[Reference]:
    """The data sheets of the products a job uses, as they stand in the register now; of an as-built record the job's document."""
    if found.recorded is not None:
        yield found.recorded.made_to
    if found.recorded is not None or not isinstance(found.subject, Job):
        return
    loaded = found.checked.loaded
    for product in found.spec.products_of(found.subject):
        number = sheet_number(product)
        known: History = history_of(sheet_register(register, loaded, product.id), number)
        current = in_force(known)
        if current is None:
            yield Reference(number, "", "", differs=False)
        else:
            named = f"products.{product.id}"
            differs = not is_record_content(found.spec, named, current.record.contents.get(named))
            yield Reference(number, current.record.revision, current.record.certificate, differs)


def _kept(found: Candidate, name: str) -> str:
    """Where a record keeps a source: what stands in a range apart from what stands in the folder."""
    shared = found.checked.loaded.range
    if shared is not None and name.startswith(shared.before):
        return f"{RANGE_SOURCES}/{name.removeprefix(shared.before)}"
    return f"{SOURCES}/{name}"


def _source_bytes(folder: Path, found: Candidate, names: Iterable[str]) -> dict[str, bytes]:
    shared = found.checked.loaded.range
    raw = shared.raw if shared is not None else None
    held: dict[str, bytes] = {}
    for name in names:
        if raw is not None and shared is not None and name.startswith(shared.before):
            try:
                held[name] = raw(name)
            except NotRead as refused:
                raise RegisterError(f"{printable_name(name)} cannot be read: {refused.what}") from refused
        else:
            held[name] = read_bytes((folder / name).resolve())
    return held


def _approval_files(folder: Path, approvals: Sequence[Collected]) -> dict[str, bytes]:
    files: dict[str, bytes] = {}
    for one in approvals:
        files[f"approvals/{one.file}"] = one.text
        if one.signature is not None:
            files[f"approvals/{one.file}.sig"] = one.signature
    allowed = allowed_signers(folder)
    if allowed is not None and any(one.signature is not None for one in approvals):
        files[f"approvals/{ALLOWED_SIGNERS}"] = allowed
    return files
