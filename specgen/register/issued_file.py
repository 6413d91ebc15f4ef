"""Is this file what was issued, and may it still be worked to? Called by `specgen verify`.

Only the register can say that nothing was altered: it holds the SHA-256 of the finished file. Without it a PDF can be compared with
the certificate it carries, which whoever alters it may have altered too. An attached file is read, never a page.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from specgen.register.certificate import Carried, Certificate, fingerprint, read_certificate
from specgen.register.failure import RegisterError
from specgen.register.folder import histories, read_kept
from specgen.register.history import History, Kept
from specgen.register.json_text import PDF_LIMIT, read_bytes, sha256
from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL, READINGS
from specgen.register.pdf_attachments import attachments
from specgen.register.persons import names_person
from specgen.register.signatures import key_of, signer_of
from specgen.register.state import standing

_GIVEN = ("documents/", f"{READINGS}/")


@dataclass(frozen=True, slots=True)
class Verdict:
    """`good` where the file may be worked to as far as can be known; `word` in a word, `lines` in sentences."""

    good: bool
    word: str
    lines: tuple[str, ...]


def verify(path: Path, register: Path | None = None, allowed: bytes | None = None) -> Verdict:
    """The verdict on a file, by a register where one is named. Raises RegisterError where either cannot be read at all."""
    data = read_bytes(path, PDF_LIMIT)
    return judged(data, None if register is None else histories(register), allowed)


def judged(data: bytes, register: list[History] | None, allowed: bytes | None = None) -> Verdict:
    """The verdict on the bytes of a file; `register` as read, None where there is none."""
    if register is not None and (found := _issued(sha256(data), register)) is not None:
        return _unaltered(*found, allowed)
    carried = attachments(data)
    certificate, fault = _certificate(carried)
    if register is not None:
        return _not_issued(carried, certificate, fault, register)
    if certificate is None:
        return Verdict(False, "no certificate", (fault or "The file carries no certificate of this program.",))
    altered = _model_fault(carried, certificate)
    if altered:
        return Verdict(False, "altered", (altered,))
    said = f"{certificate.document} {certificate.revision}, issued {certificate.issued}"
    approvals = list(_approvals(certificate, allowed))
    lines = tuple(line for _, line in approvals)
    if not all(holds for holds, _ in approvals):
        return Verdict(False, "approval does not hold", (f"{said}: an approval does not hold.", *lines))
    mark = fingerprint(sha256(carried[CERTIFICATE]))
    return Verdict(
        True,
        "consistent, no proof of origin",
        (
            f"{said}: the file is consistent with its own certificate ({mark}). That is no proof of origin.",
            "Whether its pages were altered, and whether it is still in force, only the register can say (--register).",
            *lines,
        ),
    )


def _issued(hashed: str, register: list[History]) -> tuple[History, Kept, str] | None:
    """The newest record that holds the file: one issued unchanged in two revisions is worked to by the later one."""
    holding = [
        (found, kept, name)
        for found in register
        for kept in found.kept
        for name, (known, _) in kept.record.files.items()
        if known == hashed and name.startswith(_GIVEN)
    ]
    return max(holding, key=lambda one: (_is_current(*one[:2]), one[1].record.time, one[1].record.number), default=None)


def _is_current(found: History, kept: Kept) -> bool:
    return standing(kept.record.revision, found.kept).word == "in force"


def _unaltered(found: History, kept: Kept, name: str, allowed: bytes | None) -> Verdict:
    record = kept.record
    said = f"{record.document} {record.revision} of {record.day}, {name.removeprefix('documents/')}"
    if found.faults:
        return Verdict(
            False,
            "register damaged",
            (f"The file is the one recorded for {said}, but the register itself is damaged: {found.faults[0]}",),
        )
    now = standing(record.revision, found.kept)
    if now.word == "withdrawn":
        line = f"{said}: unaltered, but withdrawn on {now.since} by {now.by}: {_ended(now.reason)} Do not work to it."
        return Verdict(False, "withdrawn", (line,))
    if now.word == "superseded":
        line = f"{said}: unaltered, but superseded by {now.by}; the next revision is of {now.since}. Do not work to it."
        return Verdict(False, "superseded", (line,))
    if allowed is None:
        return Verdict(True, "unaltered and current", (f"{said}: unaltered and current.",))
    try:
        approvals = list(_approvals(read_certificate(read_kept(kept, CERTIFICATE)), allowed))
    except RegisterError as reason:
        return Verdict(False, "register damaged", (f"{said}: {reason}",))
    lines = tuple(line for _, line in approvals)
    if not all(holds for holds, _ in approvals):
        return Verdict(False, "approval does not hold", (f"{said}: unaltered, but an approval does not hold.", *lines))
    return Verdict(True, "unaltered and current", (f"{said}: unaltered and current.", *lines))


def _not_issued(
    carried: dict[str, bytes], certificate: Certificate | None, fault: str, register: list[History]
) -> Verdict:
    """No such file was ever issued: unknown here, or one of ours that was altered."""
    known = {one.record.certificate: one for found in register for one in found.kept if one.record.kind == "issue"}
    hashed = sha256(carried[CERTIFICATE]) if CERTIFICATE in carried else ""
    if hashed in known and certificate is not None:
        record = known[hashed].record
        said = f"{record.document} {record.revision}"
        model = _model_fault(carried, certificate)
        if model:
            return Verdict(False, "altered", (f"{said}: altered. {model}",))
        return Verdict(
            False,
            "altered",
            (
                f"{said}: altered. Its certificate and model are those issued, so its pages or the file around them are not.",
            ),
        )
    if certificate is not None:
        for kept in known.values():
            if (kept.record.document, kept.record.revision) == (certificate.document, certificate.revision):
                said = f"{certificate.document} {certificate.revision}"
                return Verdict(False, "altered", (f"{said}: altered. Its certificate is not the one issued.",))
        said = f"{certificate.document} {certificate.revision}"
        return Verdict(False, "unknown here", (f"The file says it is {said}, which this register does not know.",))
    if fault:
        return Verdict(False, "altered", (f"Altered: {fault}.",))
    return Verdict(
        False, "unknown here", ("This register knows no such file, and it carries no certificate that can be read.",)
    )


def _ended(sentence: str) -> str:
    """What a person wrote, with one full stop at its end."""
    return sentence if sentence.endswith((".", "!", "?")) else f"{sentence}."


def _certificate(carried: dict[str, bytes]) -> tuple[Certificate | None, str]:
    if CERTIFICATE not in carried:
        return None, ""
    try:
        return read_certificate(carried[CERTIFICATE]), ""
    except RegisterError as reason:
        return None, str(reason)


def _model_fault(carried: dict[str, bytes], certificate: Certificate) -> str:
    if CUSTOMER_MODEL not in carried:
        return "The model it was printed from is no longer attached."
    if sha256(carried[CUSTOMER_MODEL]) != certificate.customer_model:
        return "The attached model is not the one of its certificate."
    return ""


def _approvals(certificate: Certificate, allowed: bytes | None) -> Iterator[tuple[bool, str]]:
    """Whether each approval holds as far as can be known, and a sentence on it."""
    for one in certificate.approvals:
        approval = one.approval
        said = f"{approval.role} by {approval.name}, {approval.time}"
        bound = (approval.document, approval.revision, approval.digest)
        if bound != (certificate.document, certificate.revision, certificate.digest):
            yield False, f"{said}: bound to something else than this certificate."
        elif not one.signature:
            yield True, f"{said}: recorded, not signed."
        else:
            holds, how = _signature(one, allowed)
            yield holds, f"{said}: {how}"


def _signature(one: Carried, allowed: bytes | None) -> tuple[bool, str]:
    try:
        if allowed is not None:
            signer = signer_of(one.text, one.signature, allowed, one.approval.time)
            if not names_person(signer, one.approval.name):
                return False, f"signed with the key of {signer}, who is somebody else."
            return True, f"signed, the signature holds, by the key of {signer}."
        key = key_of(one.text, one.signature)
    except RegisterError as reason:
        return False, f"{reason}."
    return True, f"signed, the signature holds, by the key {key}; whose key that is the file cannot say."
