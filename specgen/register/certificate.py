"""The certificate an issued PDF carries: what it is, who approved it, what it rests on, what came before. Called by issuing and verifying.

It cannot hold the hash of the PDF it travels in; the record outside holds that, and the hash of the certificate. Nothing of the
maker's goes into it: the hashes of the models rest on the salt (see `editions`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from specgen.register.approvals import Approval, Collected, read_approval
from specgen.register.failure import RegisterError
from specgen.register.json_text import parsed, sha256, written

# Crockford's alphabet: without I, L, O and U, which are misread or spell words.
_SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_SHOWN_BITS = 80
_TEXTS = ("document", "revision", "issued", "reason", "program", "digest", "maker_model", "customer_model", "previous")


@dataclass(frozen=True, slots=True)
class Carried:
    """An approval within a certificate: its very text and its signature, empty where it is not signed."""

    approval: Approval
    text: bytes
    signature: bytes


@dataclass(frozen=True, slots=True)
class Certificate:
    """`issued` is UTC; hashes are SHA-256 in hex; `previous` is the hash of the certificate before, empty for the first."""

    document: str
    revision: str
    issued: str
    reason: str
    program: str
    digest: str
    maker_model: str
    customer_model: str
    previous: str
    approvals: tuple[Carried, ...]


def certificate_text(certificate: Certificate) -> bytes:
    value: dict[str, Any] = {field: getattr(certificate, field) for field in _TEXTS}
    value["approvals"] = [
        {"text": one.text.decode("utf-8"), "signature": one.signature.decode("ascii", "replace")}
        for one in certificate.approvals
    ]
    return written({"certificate": "1", **value})


def read_certificate(data: bytes) -> Certificate:
    """Raises RegisterError where the bytes are no certificate as issuing writes it."""
    value = parsed(data, "the certificate")
    if set(value) != {"certificate", "approvals", *_TEXTS} or value["certificate"] != "1":
        raise RegisterError("the certificate lacks something or holds too much")
    if not all(isinstance(value[field], str) for field in _TEXTS) or not isinstance(value["approvals"], list):
        raise RegisterError("the certificate holds something that is no text")
    carried = []
    for entry in value["approvals"]:
        if not isinstance(entry, dict) or set(entry) != {"text", "signature"}:
            raise RegisterError("the certificate holds an approval that is none")
        text, signature = (str(entry[key]).encode("utf-8", "replace") for key in ("text", "signature"))
        carried.append(Carried(read_approval(text, "an approval of the certificate"), text, signature))
    fields: dict[str, Any] = {field: value[field] for field in _TEXTS}
    return Certificate(**fields, approvals=tuple(carried))


def carried(approvals: Sequence[Collected]) -> tuple[Carried, ...]:
    return tuple(Carried(one.approval, one.text, one.signature or b"") for one in approvals)


def fingerprint(certificate_sha256: str) -> str:
    """The first 80 bits of a certificate's hash, for eyes and telephones: `7Q4K-0V2M-XN9P-3DTA`."""
    bits = int(certificate_sha256, 16) >> (256 - _SHOWN_BITS)
    signs = "".join(_SIGNS[(bits >> shift) & 31] for shift in range(_SHOWN_BITS - 5, -1, -5))
    return "-".join(signs[at : at + 4] for at in range(0, len(signs), 4))


def code_text(certificate: Certificate, text: bytes) -> str:
    """What the square code of a page says: number, revision, day, and the hash of the certificate."""
    return f"{certificate.document} {certificate.revision} {certificate.issued[:10]} {sha256(text).upper()}"
