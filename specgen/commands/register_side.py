"""An issued revision as a side of a comparison: `register:MS-001@B`, or an issued PDF with the model it carries. Called by `sides`."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from specgen.commands.outcome import CannotRunError
from specgen.comparison.reference_snapshot import Snapshot
from specgen.model.file_names import AS_BUILT, record_number
from specgen.register.certificate import read_certificate
from specgen.register.failure import RegisterError
from specgen.register.frozen import frozen_sources, issued_revision, sources_of, thawed
from specgen.register.json_text import PDF_LIMIT, read_bytes, sha256
from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL, REGISTER
from specgen.register.pdf_attachments import attachments
from specgen.register.zip_entries import zip_entries
from specgen.source.characters import printable_name
from specgen.source.project import Sources

_RECORDED = (
    "{document} is an as-built record: what it says stands in its readings, which are not compared; "
    "compare the revisions of the job"
)
_FORM = "write register:DOC@REV, as in register:MS-001@B, or register:FOLDER:DOC@REV"


def revision_at(rest: str) -> tuple[Sources, Snapshot, str, str]:
    """The frozen model of `DOC@REV`, the snapshot it was judged by, DOC and REV; FOLDER is the register, `register` if left out.

    Raises CannotRunError.
    """
    place, colon, named = rest.rpartition(":")
    document, at, revision = (named if colon and Path(place).is_dir() else rest).rpartition("@")
    register = Path(place) if colon and Path(place).is_dir() else Path(REGISTER)
    if not at or not document or not revision:
        raise CannotRunError(f"register:{printable_name(rest)} names no revision; {_FORM}")
    if not register.is_dir():
        raise CannotRunError(f"there is no register in {printable_name(str(register))}; {_FORM}")
    try:
        sources, _ = frozen_sources(register, document, revision)
        record = issued_revision(register, document, revision).record
        if record.about == "records":
            raise CannotRunError(_RECORDED.format(document=document))
        return sources, record.snapshot, document, revision
    except RegisterError as reason:
        raise CannotRunError(str(reason)) from reason


def issued_pdf(path: Path) -> tuple[Sources, str, str]:
    """The customer edition of the model that an issued PDF carries, its document number and revision. Raises CannotRunError."""
    try:
        return _model_of(attachments(read_bytes(path.resolve(), PDF_LIMIT)), printable_name(path.name), "issued PDF")
    except (RegisterError, OSError) as reason:
        raise CannotRunError(str(reason)) from reason


def issued_zip(path: Path) -> tuple[Sources, str, str]:
    """The same of the zip that `register export` writes, for the customer or the maker. Raises CannotRunError."""
    named = printable_name(path.name)
    try:
        return _model_of(zip_entries(read_bytes(path.resolve(), PDF_LIMIT)), named, "exported zip")
    except (RegisterError, OSError) as reason:
        raise CannotRunError(f"{named} cannot be read as an export of a register: {reason}") from reason


def _model_of(carried: Mapping[str, bytes], named: str, what: str) -> tuple[Sources, str, str]:
    if CUSTOMER_MODEL not in carried or CERTIFICATE not in carried:
        raise CannotRunError(f"{named} carries no model; only an {what} does")
    certificate = read_certificate(carried[CERTIFICATE])
    if sha256(carried[CUSTOMER_MODEL]) != certificate.customer_model:
        raise CannotRunError(f"{named} was altered: the model it carries is not the one of its certificate")
    if certificate.document.startswith(AS_BUILT):
        spec = thawed(carried[CUSTOMER_MODEL], named).spec
        if spec is not None and any(record_number(job) == certificate.document for job in spec.jobs.values()):
            raise CannotRunError(_RECORDED.format(document=certificate.document))
    return sources_of(carried[CUSTOMER_MODEL], named), certificate.document, certificate.revision
