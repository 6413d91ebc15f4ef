"""What `specgen register` tells: lists, chains, faults, what was in force, what is due. Nothing is written. Called by `register`."""

from __future__ import annotations

import argparse
from datetime import date
from pathlib import Path

from specgen.clock import today
from specgen.commands.outcome import DONE, REFUSED, Outcome
from specgen.model.job import Job
from specgen.register.failure import RegisterError
from specgen.register.folder import histories, history_of
from specgen.register.history import History, Kept
from specgen.register.json_text import read_bytes, sha256
from specgen.register.record import Record
from specgen.register.state import in_force, issues, not_acknowledged, standing, until
from specgen.source.characters import printable_name
from specgen.source.project import find_project
from specgen.units.locale import counted


def list_revisions(arguments: argparse.Namespace, register: Path) -> Outcome:
    lines, faults = [], []
    for found in histories(register):
        faults += [f"damaged: {fault}" for fault in found.faults]
        for kept in issues(found.kept):
            record = kept.record
            lines.append(
                f"{record.document} {record.revision}  {record.day}  {_stands(record.revision, found)}  {record.title}"
            )
    return lines_of([*lines, *faults] or ["The register is empty."], REFUSED if faults else DONE)


def show(arguments: argparse.Namespace, register: Path) -> Outcome:
    document, _, revision = (
        arguments.document.rpartition("@") if "@" in arguments.document else (arguments.document, "", "")
    )
    found = _known(register, document)
    shown = [kept for kept in found.kept if not revision or kept.record.revision == revision]
    if not shown and not found.faults:
        raise RegisterError(
            f"there is no {document} {revision}; there is: {', '.join(k.record.revision for k in issues(found.kept))}"
        )
    lines = [line for kept in shown for line in _described(kept, found)]
    lines += [f"not acknowledged by {holder}" for holder in not_acknowledged(found)]
    lines += [f"damaged: {fault}" for fault in found.faults]
    return lines_of(lines, REFUSED if found.faults else DONE)


def verify(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.register.chain import all_faults, left_behind
    from specgen.register.receipt import beyond, lost_since

    found = histories(register)
    faults = [fault for one in found for fault in all_faults(one)]
    receipt = read_bytes(Path(arguments.receipt)) if arguments.receipt else None
    if receipt is not None:
        faults += lost_since(receipt, found)
    kept = sum(len(one.kept) for one in found)
    number = f"{kept} {counted('record', 'records', kept)}"
    notes = [
        f"left behind by an issuing that was cut off, may be deleted: {printable_name(name)}"
        for name in left_behind(register)
    ]
    if receipt is not None:
        notes += beyond(receipt, found)
    if faults:
        return lines_of(
            [*faults, *notes, f"{len(faults)} {counted('fault', 'faults', len(faults))} in {number}."], REFUSED
        )
    end = (
        "against the receipt too"
        if arguments.receipt
        else "only a receipt can show that the newest record of a document has been lost"
    )
    return lines_of(
        [*notes, f"{number} of {len(found)} {counted('document', 'documents', len(found))}, all whole; {end}."]
    )


def as_of(arguments: argparse.Namespace, register: Path) -> Outcome:
    lines, faults = [], []
    on: date = arguments.date
    for found in histories(register):
        faults += [f"damaged: {fault}" for fault in found.faults]
        kept = in_force(found, on)
        if kept is not None:
            lines.append(f"{kept.record.document} {kept.record.revision}  since {kept.record.day}  {kept.record.title}")
        elif until(found, on):
            lines.append(f"{found.document}  none in force, withdrawn")
    return lines_of([*lines, *faults] or [f"Nothing was in force on {on}."], REFUSED if faults else DONE)


def overdue(arguments: argparse.Namespace, register: Path) -> Outcome:
    from specgen.commands.register_place import of_range
    from specgen.comparison.reference_snapshot import reference_snapshot
    from specgen.facts.closure import loaded_closure
    from specgen.issuing.tables_read import tables_read
    from specgen.model.parse import load
    from specgen.register.due import due, subject_of

    on: date = arguments.on or today()
    folder = find_project(Path(arguments.path))
    loaded = load(folder)
    spec = loaded.spec

    def looked_into(record: Record) -> frozenset[str]:
        subject = subject_of(record, spec) if spec is not None else None
        if spec is None or subject is None:
            return frozenset()
        return tables_read(loaded_closure(loaded, spec, subject), subject, on)

    def readings(job: Job) -> dict[str, str]:
        from specgen.assessing.kept import kept_of

        kept = kept_of(job, folder, spec).contents if spec is not None else {}
        return {name: sha256(data) for name, data in kept.items()}

    listed = histories(register)
    found = {one.document: one for one in listed}
    sheets = {one.document: one for one in of_range(loaded)}
    held = list(due(found, spec, reference_snapshot(), on, looked_into, sheets, readings))
    lines = [
        f"{one.record.document} {one.record.revision}: {one.why}{'; asks for a revision' if one.forces else ''}"
        for one in held
    ]
    lines += [
        f"{one.document} {current.record.revision}: not acknowledged by {holder}"
        for one in listed
        if (current := in_force(one)) is not None
        for holder in not_acknowledged(one)
    ]
    lines += [f"damaged: {fault}" for one in listed for fault in one.faults]
    return lines_of(lines, REFUSED) if lines else lines_of(["Nothing is overdue."])


def _described(kept: Kept, found: History) -> list[str]:
    record = kept.record
    head = f"{record.number}  {record.time}  "
    if record.kind == "withdrawal":
        return [f"{head}{record.document} {record.revision} withdrawn by {record.by}: {record.reason}"]
    if record.kind == "receipt":
        return [f"{head}{record.document} {record.revision} acknowledged by {record.by}"]
    lines = [
        f"{head}{record.document} {record.revision} issued: {record.reason}",
        f"    {_stands(record.revision, found)}",
        f"    certificate {record.certificate}",
    ]
    lines += [f"    rests on {one.document} {one.revision or '(not issued)'}" for one in record.references]
    lines += [f"    held by {holder}" for holder in record.holders]
    if record.next_review:
        lines.append(f"    to be reviewed by {record.next_review}")
    lines += [f"    {name}" for name in record.files if name.startswith("documents/")]
    return lines


def _stands(revision: str, found: History) -> str:
    now_ = standing(revision, found.kept)
    if now_.word == "superseded":
        return f"superseded by {now_.by}"
    if now_.word == "withdrawn":
        return f"withdrawn on {now_.since}: {now_.reason}"
    return now_.word


def _known(register: Path, document: str) -> History:
    if not register.exists():
        histories(register)
    found = history_of(register, document)
    if not found.kept and not found.faults:
        raise RegisterError(f"this register does not know {printable_name(document)}")
    return found


def lines_of(lines: list[str], code: int = DONE) -> Outcome:
    """The lines as they may reach a screen: what stands in a register may have come from anyone."""
    return Outcome("".join(f"{printable_name(line)}\n" for line in lines), code)
