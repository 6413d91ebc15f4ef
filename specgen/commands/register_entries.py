"""What `specgen register` adds to the register (withdrawals, receipts of holders) or writes beside it. Called by `register`."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path

from specgen.clock import now
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.commands.register_reports import lines_of
from specgen.register.failure import RegisterError
from specgen.register.folder import histories, history_of
from specgen.register.state import issues
from specgen.source.characters import printable_name
from specgen.source.project import find_project


def withdraw_revision(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.notes import withdraw

    document, revision = named(arguments.document)
    kept = withdraw(register, document, revision, reason=arguments.reason, by=arguments.by, now=now())
    told = issues(history_of(register, document).kept)[-1].record.holders
    lines = [f"{document} {revision} withdrawn {kept.record.time}; record {kept.record.number}: {kept.sha256}"]
    return lines_of(lines + ([f"To be told: {'; '.join(told)}."] if told else []))


def acknowledge_revision(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.notes import acknowledge

    document, revision = named(arguments.document)
    kept = acknowledge(register, document, revision, by=arguments.by, now=now())
    return lines_of([f"{kept.record.by} has {document} {revision}; record {kept.record.number}: {kept.sha256}"])


def export_revision(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.model.parse import load
    from specgen.model.senses import Audience
    from specgen.register.export import export
    from specgen.register.frozen import issued_revision
    from specgen.rendering.writing import write_atomically

    document, revision = named(arguments.document)
    kept = issued_revision(register, document, revision)
    spec = load(find_project(Path(arguments.path))).spec
    maker = spec.project.maker.name if spec is not None else "the maker"
    data = export(kept, Audience(arguments.reader), maker)
    return _written(Path(arguments.out), data, write_atomically)


def write_receipt(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.receipt import receipt_text
    from specgen.rendering.writing import write_atomically

    found = histories(register)
    if faults := [fault for one in found for fault in one.faults]:
        raise RegisterError(f"no receipt is given for a damaged register: {faults[0]}")
    return _written(Path(arguments.file), receipt_text(found), write_atomically)


def _written(out: Path, data: bytes, write: Callable[[Path, bytes], None]) -> Outcome:
    try:
        write(out, data)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise CannotRunError(f"{printable_name(str(out))} cannot be written: {why}") from error
    return Outcome(f"{printable_name(out.as_posix())} written\n")


def named(spelled: str) -> tuple[str, str]:
    document, at, revision = spelled.rpartition("@")
    if not at or not document or not revision:
        raise CannotRunError(f"{printable_name(spelled)} names no revision; write number and revision, as in MS-001@B")
    return document, revision
