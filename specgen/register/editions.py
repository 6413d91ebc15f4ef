"""The frozen model: what a document rests on, as two JSON texts, and the digest an approval is bound to. Called by approving and issuing.

The maker edition is the canonical form and the salt. In the customer edition each withheld leaf stands as a hash under the
address a customer may see. A bare hash of a mass share could be found by trying all shares, and so could a bare hash of the
maker edition, which a certificate publishes; therefore both rest on the salt, drawn once when a revision is first approved
(or issued) and kept with the maker. From one record on, equal input gives equal bytes.
The hash of a leaf has a key of its own: the maker can show one leaf to an auditor, with its key, and no other.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256 as _sha256
from typing import Any

from specgen.model.audience import customer_path
from specgen.model.canonical import as_first_written, canonical, model_of, text_of
from specgen.model.canonical import written as leaf_text
from specgen.model.declaring import Audience
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import leaves
from specgen.register.json_text import sha256, written

SALT_BYTES = 32
SALT, WITHHELD = "salt", "withheld"


@dataclass(frozen=True, slots=True)
class Editions:
    """Both texts of one frozen model, the snapshot of the reference data it rests on, and the salted hash an approval goes by."""

    maker: bytes
    customer: bytes
    snapshot: Mapping[str, str]
    content: str

    @property
    def maker_sha256(self) -> str:
        return sha256(self.maker)

    @property
    def customer_sha256(self) -> str:
        return sha256(self.customer)


def editions(spec: Spec, salt: bytes, snapshot: Mapping[str, str]) -> Editions:
    """Both editions of a specification already cut to what its document rests on.

    `snapshot` is of each table and document that judging and wording looked into, name to SHA-256: noted, for a table left
    out by guess could change a figure behind an approval. What is administrative is printed and kept, but not approved.
    """
    maker = model_of(spec) | {SALT: salt.hex()}
    content = model_of(spec, content=True) | {SALT: salt.hex()}
    return Editions(written(maker), _customer(spec, salt), dict(snapshot), sha256(written(content)))


def first_editions(spec: Spec, salt: bytes, snapshot: Mapping[str, str]) -> Iterator[Editions]:
    """The editions as format 1 made them: what was approved before the sources were upgraded is issued as it was approved."""
    for stated in (True, False):
        maker = written(as_first_written(model_of(spec), stated=stated) | {SALT: salt.hex()})
        customer = written(as_first_written(json.loads(_customer(spec, salt)), stated=stated))
        yield Editions(maker, customer, dict(snapshot), sha256(maker))


def _customer(spec: Spec, salt: bytes) -> bytes:
    withheld: dict[str, list[str]] = {}
    for path, text in _withheld(spec):
        withheld.setdefault(customer_path(path), []).append(sealed(salt, path, text))
    customer = model_of(spec, Audience.CUSTOMER)
    return written(customer | {WITHHELD: {address: sorted(hashes) for address, hashes in withheld.items()}})


def leaf_key(salt: bytes, path: str) -> bytes:
    """The key of one leaf, which gives back neither the salt nor another key."""
    return hmac.new(salt, path.encode("utf-8"), _sha256).digest()


def sealed(salt: bytes, path: str, text: str) -> str:
    """The salted hash of one withheld leaf; `text` is its canonical form."""
    return hmac.new(leaf_key(salt, path), text.encode("utf-8"), _sha256).hexdigest()


def content_sha256(spec: Spec) -> str:
    """The hash of what is stated, without salt: for the maker's own records, to see whether sources have changed since."""
    return sha256(canonical(spec, content=True).encode("utf-8"))


def is_content(spec: Spec, recorded: str) -> bool:
    """Whether a record of whatever format is of what is stated now."""
    if recorded == content_sha256(spec):
        return True
    first = (as_first_written(model_of(spec), stated=stated) for stated in (True, False))
    return any(recorded == sha256(text_of(model).encode("utf-8")) for model in first)


def record_contents(spec: Spec) -> dict[str, str]:
    """The like for each record by itself: `products.primer` to SHA-256."""
    return _by_record(model_of(spec, content=True))


def is_record_content(spec: Spec, record: str, recorded: str | None) -> bool:
    """Whether a record of whatever format is of what stands under this address now, `products.primer`."""
    first = as_first_written(model_of(spec), stated=True)
    return recorded in {_by_record(model).get(record) for model in (model_of(spec, content=True), first)}


def _by_record(model: Mapping[str, Any]) -> dict[str, str]:
    return {
        f"{kind}.{key}": sha256(written(stated)) for kind in LIST_KINDS for key, stated in model.get(kind, {}).items()
    }


def digest(document: str, revision: str, frozen: Editions, readings: Mapping[str, str] | None = None) -> str:
    """What an approval is bound to: document, revision to be issued, content of the maker edition, snapshot.

    Of an as-built record also `readings`, the SHA-256 of each file it rests on, by its name.
    """
    bound: Mapping[str, Any] = {
        "document": document,
        "revision": revision,
        "maker": frozen.content,
        "snapshot": dict(frozen.snapshot),
    }
    if readings is not None:
        bound = {**bound, "readings": dict(readings)}
    return sha256(written(bound))


def _withheld(spec: Spec) -> Iterator[tuple[str, str]]:
    for path, value, said in _all_leaves(spec):
        if said is Audience.MAKER:
            yield path, json.dumps(leaf_text(value), ensure_ascii=False)


def _all_leaves(spec: Spec) -> Iterator[tuple[str, Any, Audience]]:
    for path, value, said in leaves(spec.project, ("project",)):
        yield ".".join(path), value, said.audience
    for kind in LIST_KINDS:
        for key, record in getattr(spec, kind).items():
            for path, value, said in leaves(record, (kind, key)):
                yield ".".join(path), value, said.audience
