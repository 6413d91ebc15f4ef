"""What `specgen register` adds to the register (withdrawals, receipts of holders) or writes beside it. Called by `register`."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path

from specgen.clock import now
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.commands.register_place import receipt_written
from specgen.commands.register_reports import lines_of
from specgen.register.folder import history_of
from specgen.register.state import issues
from specgen.source.characters import printable_name
from specgen.source.project import find_project


def withdraw_revision(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.notes import withdraw

    document, revision = named(arguments.document)
    kept = withdraw(register, document, revision, reason=arguments.reason, by=arguments.by, now=now())
    told = issues(history_of(register, document).kept)[-1].record.holders
    lines = [f"{document} {revision} withdrawn {kept.record.time}; record {kept.record.number}: {kept.sha256}"]
    return _added([*lines, *([f"To be told: {'; '.join(told)}."] if told else [])], arguments, register)


def acknowledge_revision(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.notes import acknowledge

    document, revision = named(arguments.document)
    kept = acknowledge(register, document, revision, by=arguments.by, now=now())
    line = f"{kept.record.by} has {document} {revision}; record {kept.record.number}: {kept.sha256}"
    return _added([line], arguments, register)


def _added(lines: list[str], arguments: argparse.Namespace, register: Path) -> Outcome:
    return Outcome(lines_of(lines).out + receipt_written(arguments, register))


def export_revision(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.model.declaring import Audience
    from specgen.model.parse import load
    from specgen.register.export import export, is_export
    from specgen.register.frozen import issued_revision

    document, revision = named(arguments.document)
    kept = issued_revision(register, document, revision)
    spec = load(find_project(Path(arguments.path))).spec
    maker = spec.project.maker.name if spec is not None else "the maker"
    data = export(kept, Audience(arguments.audience), maker)
    return _written(Path(arguments.out), data, is_export)


def write_receipt(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.receipt import is_receipt, receipt

    return _written(Path(arguments.file), receipt(register), is_receipt)


def _written(out: Path, data: bytes, ours: Callable[[Path], bool]) -> Outcome:
    from specgen.commands.targets import write_file

    write_file(out, data, ours)
    return Outcome(f"{printable_name(out.as_posix())} written\n")


def named(spelled: str) -> tuple[str, str]:
    document, at, revision = spelled.rpartition("@")
    if not at or not document or not revision:
        raise CannotRunError(f"{printable_name(spelled)} names no revision; write number and revision, as in MS-001@B")
    return document, revision
