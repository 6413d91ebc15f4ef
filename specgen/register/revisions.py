"""The revisions of a document for its own pages: which there were, when and why, and on whose word. Called by printing and issuing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from specgen.model.file_names import sheet_number
from specgen.model.parse import Loaded
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.register.certificate import read_certificate
from specgen.register.editions import is_content, is_record_content
from specgen.register.failure import RegisterError
from specgen.register.folder import history_of, read_kept
from specgen.register.history import History
from specgen.register.names import CERTIFICATE, REGISTER
from specgen.register.state import in_force, issues, standing


@dataclass(frozen=True, slots=True)
class Revision:
    """One that was issued: `who` are role and name of each approval; `withdrawn` is the day it was, and why, or empty."""

    revision: str
    day: str
    reason: str
    who: tuple[tuple[str, str], ...]
    withdrawn: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True)
class Revisions:
    """Those issued so far, in order; none of them, and `whole` False, where the chain does not hold.

    `current` is the one in force where the sources still say what it says; None where they do not, or where nobody asked.
    """

    issued: tuple[Revision, ...] = ()
    whole: bool = True
    current: Revision | None = None


def revisions_of(register: Path, document: str, now: Callable[[], Spec] | None = None) -> Revisions:
    """By the number of the document; none where the register does not know it. `now` is what it rests on as the sources stand."""
    try:
        history = history_of(register, document)
        found = revisions(history)
    except RegisterError:
        return Revisions(whole=False)
    kept = in_force(history) if found.whole else None
    if kept is None or now is None or not is_content(now(), kept.record.content):
        return found
    return replace(found, current=found.issued[-1])


def sheet_register(register: Path, loaded: Loaded, product: str) -> Path:
    """Where the data sheet of a product is issued: with the folder, or with the range that states the product."""
    shared = loaded.range
    return register if shared is None or not loaded.of_range("products", product) else shared.folder / REGISTER


def sheet_revisions(register: Path, loaded: Loaded, spec: Spec, product: Product) -> Revisions:
    """Those of a data sheet that a job rests on; `current` where what the product states is what its revision in force says."""
    try:
        history = history_of(sheet_register(register, loaded, product.id), sheet_number(product))
        found = revisions(history)
    except RegisterError:
        return Revisions(whole=False)
    kept, named = in_force(history) if found.whole else None, f"products.{product.id}"
    if kept is None or not is_record_content(spec, named, kept.record.contents.get(named)):
        return found
    return replace(found, current=found.issued[-1])


def revisions(found: History) -> Revisions:
    """Raises RegisterError where a certificate was altered since it was issued."""
    if found.faults:
        return Revisions(whole=False)
    listed = []
    for kept in issues(found.kept):
        given = read_certificate(read_kept(kept, CERTIFICATE)).approvals
        stands = standing(kept.record.revision, found.kept)
        listed.append(
            Revision(
                kept.record.revision,
                kept.record.day,
                kept.record.reason,
                tuple((one.approval.role, one.approval.name) for one in given),
                (stands.since, stands.reason) if stands.word == "withdrawn" else None,
            )
        )
    return Revisions(tuple(listed))
