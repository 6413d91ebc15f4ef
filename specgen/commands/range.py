"""`specgen range`: what of the shared range is another than the one taken in, as a comparison shows it; `--accept` takes it in."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from dataclasses import replace
from difflib import get_close_matches
from pathlib import Path

from specgen.checking import check_loaded
from specgen.clock import today
from specgen.commands.folder import declare_folder, prefix_of, project_folder
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.commands.targets import write_file
from specgen.comparing import compare_judged, side_of
from specgen.findings import Place
from specgen.model.canonical import model_of, text_of
from specgen.model.parse import Loaded, load, parse, without_collector
from specgen.model.range_lock import DamagedLock, Differing, Records, as_used, differing, lock_text, taken_in
from specgen.model.walk import Path as Address
from specgen.register.frozen import sources_of
from specgen.report import change_text
from specgen.source.shared_range import LOCK
from specgen.units.locale import counted

ABOUT = (
    "Show what of the shared range is another than the one taken in, as `specgen compare` shows it. "
    "Nothing is written without --accept."
)


def declare(parser: argparse.ArgumentParser) -> None:
    declare_folder(parser)
    parser.add_argument(
        "--accept",
        metavar="ID",
        nargs="*",
        help=f"take records of the range into {LOCK} as they stand: those named, as in primer-210 or systems.cab, or all",
    )


def run(arguments: argparse.Namespace) -> Outcome:
    folder = project_folder(arguments)
    with without_collector():
        return _run(arguments, folder)


def _run(arguments: argparse.Namespace, folder: Path) -> Outcome:
    loaded = load(folder)
    if loaded.range is None or loaded.spec is None:
        named = any(finding.path == "project.range" for finding in loaded.findings)
        raise CannotRunError(
            "`specgen check` says what is wrong with the range or the project"
            if named or loaded.spec is None
            else "the project names no range; write `range: ../range` into it"
        )
    try:
        held = taken_in(loaded)
    except DamagedLock as fault:
        if arguments.accept is None:
            raise CannotRunError(f"{LOCK} {fault}; `specgen explain RNG006` says what to do") from None
        held = None
    found = differing(loaded, held or {})
    shown = _shown(arguments, folder, loaded, held, found)
    if arguments.accept is None:
        return Outcome(shown)
    chosen = _chosen(arguments.accept, found, held)
    now = as_used(loaded)
    broken = sorted({f"{kind}.{key}" for kind, key in loaded.range.used} - {*now})
    if broken:
        raise CannotRunError(f"{broken[0]} has faults, so nothing is taken in; `specgen check` says which")
    if not chosen and held is not None:
        return Outcome(shown)
    kept = {address: record for address, record in (held or {}).items() if address not in chosen}
    taken = {address: now[address] for address in chosen if address in now}
    try:
        text = lock_text(kept | taken)
    except DamagedLock as fault:
        raise CannotRunError(f"{LOCK} {fault}; divide the folder") from None
    write_file(folder / LOCK, text, lambda _: True)
    number = len(chosen)
    return Outcome(
        f"{shown}\n{prefix_of(folder)}{LOCK} written, {number} {counted('record', 'records', number)} taken in.\n"
    )


def _chosen(named: Sequence[str], found: Differing, held: Records | None) -> frozenset[str]:
    """The addresses to take in: those named, or all that are different."""
    if not named or held is None:
        if named:
            raise CannotRunError(f"there is no {LOCK} yet; take in the whole of it first, with --accept alone")
        return frozenset(found.addresses)
    chosen = set()
    for name in named:
        meant = [address for address in found.addresses if name in (address, address.split(".", 1)[1])]
        if len(meant) != 1:
            near = get_close_matches(name, [*found.addresses, *(one.split(".", 1)[1] for one in found.addresses)], n=3)
            why = "stands for more than one record; name its kind too" if meant else "is not among what is different"
            raise CannotRunError(f"{name} {why}" + (f"; nearest: {', '.join(near)}" if near and not meant else ""))
        chosen.add(meant[0])
    return frozenset(chosen)


def _shown(arguments: argparse.Namespace, folder: Path, loaded: Loaded, held: Records | None, found: Differing) -> str:
    assert loaded.range is not None  # noqa: S101  # asked by the caller
    named = loaded.range.named
    if held is None:
        number = len(found.new)
        told = f"{number} {counted('record', 'records', number)} of {named} used, none taken in yet"
        return f"{told}.\n" if arguments.accept is not None else f"{told}; --accept takes them in.\n"
    if not found:
        return f"What is used of {named} is as it was taken in.\n"
    text = ""
    if found.moved or found.gone:
        text = _compared(arguments, folder, loaded, held)
    for addresses, said in (
        (found.new, "Used and not taken in yet"),
        (found.gone, "Taken in and no longer in the range"),
        (found.unused, "Taken in and no longer used"),
    ):
        if addresses:
            text += ("\n" if text else "") + f"{said}: {', '.join(addresses)}.\n"
    return text


def _compared(arguments: argparse.Namespace, folder: Path, loaded: Loaded, held: Records) -> str:
    """The folder on the range as taken in, against the folder on the range as it stands."""
    on = arguments.on or today()
    spec = loaded.spec
    assert spec is not None and loaded.range is not None  # noqa: S101, PT018  # asked by the caller
    before = model_of(spec)
    for address, record in held.items():
        kind, key = address.split(".", 1)
        before[kind] = before[kind] | {key: record}
    old = side_of(check_loaded(parse(sources_of(text_of(before).encode(), LOCK)), on))
    lines = {address: number for number, address in enumerate(sorted(held), start=2)}

    def place(path: Address) -> Place:
        line = lines.get(".".join(path[:2]))
        return Place(LOCK, line, 1, 2) if line is not None else loaded.place(path)

    new = side_of(check_loaded(replace(loaded, range=replace(loaded.range, watched=False)), on))
    compared = compare_judged(replace(old, place=place), new)
    prefix = prefix_of(folder)
    return change_text.write(compared, old=LOCK, new=loaded.range.named, old_prefix=prefix, new_prefix=prefix)
