"""`specgen where-used`: every system, job and issued revision that a product, preparation, system or published table reaches, and every
job whose records name a batch of paint."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterable, Iterator, Set
from difflib import get_close_matches
from pathlib import Path

from specgen.assessing.batch_use import IssuedUse, recall, recall_issued
from specgen.assessing.records import columns
from specgen.commands.folder import prefix_of
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.commands.register_place import declare_place, of_range, register_of
from specgen.facts.usage import Use, uses_of_clause, uses_of_record, uses_of_table
from specgen.model.parse import Loaded, load
from specgen.model.spec import LIST_KINDS, Spec
from specgen.register.folder import histories
from specgen.register.history import History
from specgen.register.state import issues, standing
from specgen.source.characters import printable_name
from specgen.source.project import find_project, projects_in
from specgen.standards.tables import table_names

ABOUT = (
    "List every system, job and issued revision that a product, preparation, system, job or published table reaches; with batch:NUMBER "
    "every job whose records name that batch, for a recall. Records are the files in the folder `readings`, each called by its job."
)

_TABLE, _BATCH = "table:", "batch:"
_DOCUMENTS = "contract_documents"
_CLAUSE = re.compile(rf"{_DOCUMENTS}\.(?P<document>[^.]+)\.clauses\.(?P<clause>.+)")
_batch_columns = columns("item", "part", "coat", "product", "cans", "on", "by")


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "id",
        metavar="ID",
        help="id of a source, as in primer-210 or systems.cab; contract_documents.ID.clauses.NUMBER; or table:NAME",
    )
    declare_place(parser)


def run(arguments: argparse.Namespace) -> Outcome:
    several = projects_in(Path(arguments.path))
    asked = str(arguments.id)
    lines: list[str] = []
    unknown: list[CannotRunError] = []
    for folder in several:
        try:
            lines += (f"{prefix_of(folder)} {line}" for line in _lines(folder, arguments, asked))
        except CannotRunError as reason:
            unknown.append(reason)
    if not several:
        lines = _lines(find_project(Path(arguments.path)), arguments, asked)
    elif len(unknown) == len(several):
        raise unknown[0]
    if not lines:
        return Outcome(f"Nothing uses {asked}.\n")
    return Outcome("".join(f"{printable_name(line)}\n" for line in lines))


def _lines(folder: Path, arguments: argparse.Namespace, asked: str) -> list[str]:
    """What uses it in one folder. Raises CannotRunError where the folder does not know it."""
    loaded = load(folder)
    spec = loaded.spec
    if spec is None:
        raise CannotRunError("the folder has no whole project source; `specgen check` says what is wrong with it")
    if asked.startswith(_BATCH):
        return list(_of_batch(folder, spec, asked.removeprefix(_BATCH), register_of(arguments, folder)))
    if asked.startswith(_TABLE):
        uses = _of_table(spec, asked.removeprefix(_TABLE))
        reaches = {use.address for use in uses}
    elif _unused(loaded, asked):
        uses, reaches = [], set()
    elif (clause := _CLAUSE.fullmatch(asked)) is not None:
        document = _record(spec, f"{_DOCUMENTS}.{clause['document']}")[1]
        uses, reaches = _of_clause(spec, document, clause["clause"]), set()
    else:
        kind, key = _record(spec, asked)
        uses = _of_record(loaded, spec, kind, key)
        reaches = {f"{kind}.{key}"}
    lines = [f"{use.address}  {_through(use)}" for use in uses]
    register = register_of(arguments, folder)
    lines += _issued("register", histories(register) if register.exists() else [], reaches)
    if loaded.range is not None:
        lines += _issued(f"register of {loaded.range.named}", of_range(loaded), reaches)
    return lines


def _of_batch(folder: Path, spec: Spec, batch: str, register: Path) -> Iterator[str]:
    """A line for each record of the batch, then what no answer is given on. Raises CannotRunError for a batch without a number."""
    if not batch.strip():
        raise CannotRunError("name the batch, as in batch:B12345")
    found = recall(batch, folder, spec)
    for use in found.uses:
        vehicles = ", ".join(use.job.vehicles) or "no vehicle stated"
        item, part, coat, product, cans, on, by = _batch_columns(use.record)
        where = f"{item} part {part}" if item and part else item or ", ".join(one.id for one in use.job.items)
        packs = f"{cans} {'pack' if cans == '1' else 'packs'}" if cans else ""
        said = (coat, product, packs, on, by)
        place = use.record.place()
        yield "  ".join(
            (f"jobs.{use.job.id}", vehicles, where, *(part for part in said if part), f"{place.file}:{place.line}")
        )
    unread = list(found.unread)
    issued = list(recall_issued(batch, histories(register) if register.exists() else [], unread))
    yield from map(_issued_row, issued)
    if jobs := [*(use.job for use in found.uses), *(one.job for one in issued)]:
        vehicles = ", ".join(dict.fromkeys(vehicle for job in jobs for vehicle in job.vehicles))
        yield f"Vehicles or plant: {vehicles or 'none stated'}"
    else:
        near = get_close_matches(batch, found.batches, n=3)
        yield f"No record names the batch {batch}" + (f"; nearest: {', '.join(near)}" if near else "")
    if found.unrecorded:
        yield f"Not known: no batch is recorded of {', '.join(f'jobs.{job}' for job in found.unrecorded)}"
    for gap in found.gaps:
        yield f"Not known: jobs.{gap.job} records no batch of {gap.product} on {', '.join(gap.items)}"
    yield from (f"Not known: {why}" for why in unread)


def _issued_row(use: IssuedUse) -> str:
    vehicles = ", ".join(use.job.vehicles) or "no vehicle stated"
    return f"register: {use.issue.document} {use.issue.revision}  {use.stands}  {vehicles}  {', '.join(use.items)}"


def _unused(loaded: Loaded, asked: str) -> bool:
    """True for a record of the range that nothing here uses."""
    held = loaded.range.unused if loaded.range is not None else {}
    return any(asked in (f"{kind}.{key}", key) for kind, keys in held.items() for key in keys)


def _issued(register: str, found: Iterable[History], reaches: Set[str]) -> Iterator[str]:
    """The issued revisions that hold one of the records, and how each stands."""
    for history in found:
        for kept in issues(history.kept):
            if not reaches.isdisjoint(kept.record.contents):
                word = standing(kept.record.revision, history.kept).word
                yield f"{register}: {kept.record.document} {kept.record.revision}  {word}"
        yield from (f"{register}: damaged: {fault}" for fault in history.faults)


def _through(use: Use) -> str:
    return ", ".join(use.through)


def _of_record(loaded: Loaded, spec: Spec, kind: str, key: str) -> list[Use]:
    """What leans on a record, what is based on it, and what leans on that; each once."""
    found = {use.address: use for use in uses_of_record(spec, kind, key)}
    for heir, based in loaded.bases.items():
        if (kind, key) in based.on and heir[1] in getattr(spec, kind):
            found.setdefault(".".join(heir), Use(".".join(heir), ("based_on",)))
            for use in uses_of_record(spec, *heir):
                found.setdefault(use.address, use)
    return list(found.values())


def _of_clause(spec: Spec, document: str, clause: str) -> list[Use]:
    clauses = spec.contract_documents[document].clauses
    if not any(clause in {one.id, one.number} for one in clauses):
        known = ", ".join(f"{one.id} ({one.number})" for one in clauses)
        raise CannotRunError(f"{document} has no clause {clause!r}; it has {known}")
    return uses_of_clause(spec, document, clause)


def _of_table(spec: Spec, name: str) -> list[Use]:
    if name not in table_names():
        near = get_close_matches(name, table_names(), n=3)
        known = f"nearest: {', '.join(near)}" if near else f"there is: {', '.join(table_names())}"
        raise CannotRunError(f"there is no table {name!r}; {known}")
    return uses_of_table(spec, name)


def _record(spec: Spec, asked: str) -> tuple[str, str]:
    known = [f"{kind}.{key}" for kind in LIST_KINDS for key in getattr(spec, kind)]
    found = [name for name in known if asked in (name, name.partition(".")[2])]
    if len(found) > 1:
        raise CannotRunError(f"{asked} is the id of more than one source; name it in full: {', '.join(found)}")
    if not found:
        ids = [*known, *(name.partition(".")[2] for name in known)]
        near = get_close_matches(asked, ids, n=3)
        raise CannotRunError(f"there is no source {asked!r}" + (f"; nearest: {', '.join(near)}" if near else ""))
    kind, _, key = found[0].partition(".")
    return kind, key
