"""A revision as one zip an auditor checks with common tools, README in it. Called by `register export`.

The maker's zip is the record's folder, as it is. The customer's holds the documents, the certificate, the customer edition, and of an
as-built record the readings; the record stays with the maker, for it holds hashes of the sources.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Iterable
from pathlib import Path

from specgen.model.declaring import Audience
from specgen.register.certificate import fingerprint
from specgen.register.failure import RegisterError
from specgen.register.folder import read_kept, sums_text
from specgen.register.history import Kept
from specgen.register.json_text import read_bytes, sha256
from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL, READINGS, RECORD, SUMS
from specgen.register.signatures import NAMESPACE
from specgen.register.zip_entries import zip_names

README = "README.txt"
EXPORT_LIMIT = 256 * 1024 * 1024
"""Bytes of all files of one export; those of a job of the demo are a five-hundredth of it."""
# a zip holds the local time of each file; a fixed one makes equal content give equal bytes (the first a zip can hold)
_STAMP = (1980, 1, 1, 0, 0, 0)

_TEXT = """{document} {revision}, issued {time} by {maker}
{title}

Fingerprint of the certificate: {fingerprint}

To check that every file is as it was put here:

    sha256sum -c SHA256SUMS

On macOS: shasum -a 256 -c SHA256SUMS.

certificate.json says who approved what. Its SHA-256 is

    {certificate}

and the fingerprint printed on every page is the first 80 bits of that in Crockford's base 32. An approval that was signed stands in it
as text and signature. To check one, write the two into files of their own, byte for byte, and ask OpenSSH, with the maker's list of
allowed signers:

    ssh-keygen -Y verify -n {namespace} -f allowed_signers -I PERSON -s SIGNATURE < TEXT

That these files are in order does not say that the revision is still in force: ask the maker, or run
`specgen verify FILE.pdf --register REGISTER`. The current safety data sheet, local regulations and qualified
professional practice take precedence.
{more}"""
_READ = """
readings/ holds the readings as they were recorded; persons stand in them by the ids of the maker's list of people.
"""
_MAKERS = """
approvals/ holds approvals and signatures as files. record.json holds the SHA-256 of every file and, as `previous`, that of the
record.json before it; sources/ holds copies of the sources, with .txt after their names so that no program takes them for sources.
This package contains data of the manufacturer (model.maker.json, sources, record.json). It does not go to a customer.
"""


def export(kept: Kept, audience: Audience, maker: str) -> bytes:
    """The zip of an issued revision, every file of it checked on the way. Raises RegisterError where one was altered."""
    record = kept.record
    files = {name: of for name, of in record.files.items() if audience is Audience.MAKER or _customers(name)}
    if sum(size for _, size in files.values()) > EXPORT_LIMIT:
        raise RegisterError(
            f"the files of {record.document} {record.revision} are larger than {EXPORT_LIMIT // 1024 // 1024} MiB together; "
            "hand over a copy of its folder"
        )
    read = _READ if any(name.startswith(f"{READINGS}/") for name in files) else ""
    added = {README: _readme(kept, maker, read + (_MAKERS if audience is Audience.MAKER else ""))}
    if audience is Audience.MAKER:
        added[RECORD] = read_bytes(kept.folder / RECORD)
    hashes = {name: hashed for name, (hashed, _) in files.items()} | {
        name: sha256(data) for name, data in added.items()
    }
    added[SUMS] = sums_text(hashes)
    return _zipped(sorted({*files, *added}), lambda name: added[name] if name in added else read_kept(kept, name), kept)


def is_export(file: Path) -> bool:
    """True for a zip that an earlier export wrote."""
    return zip_names(file) >= {README, SUMS, CERTIFICATE}


def _customers(name: str) -> bool:
    return name.startswith(("documents/", f"{READINGS}/")) or name in (CERTIFICATE, CUSTOMER_MODEL)


def _readme(kept: Kept, maker: str, more: str) -> bytes:
    record = kept.record
    text = _TEXT.format(
        document=record.document,
        revision=record.revision,
        time=record.time,
        maker=maker,
        title=record.title,
        certificate=record.certificate,
        fingerprint=fingerprint(record.certificate),
        namespace=NAMESPACE,
        more=more,
    )
    return text.encode("utf-8")


def _zipped(names: Iterable[str], content: Callable[[str], bytes], kept: Kept) -> bytes:
    """One file after the other, so that no more than one is held beside the zip."""
    folder = f"{kept.folder.parent.name}-{kept.record.revision}"
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as whole:
        for name in names:
            info = zipfile.ZipInfo(f"{folder}/{name}", _STAMP)
            info.compress_type, info.external_attr = zipfile.ZIP_DEFLATED, 0o644 << 16
            whole.writestr(info, content(name))
    return out.getvalue()
