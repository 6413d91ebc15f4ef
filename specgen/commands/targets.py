"""Finished bytes to the place a command was told, where nothing is lost by it. Called by every command that writes a file.

Refused: what is no ordinary file, a file that is not of the kind that is written there, and any place inside a register, among the
approvals or in the shipped templates. Folders of sources take documents: their names never meet those of sources.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from specgen.commands.outcome import CannotRunError
from specgen.register.names import APPROVALS, RECORD, record_folder
from specgen.rendering.assets import templates_folder
from specgen.rendering.failure import RenderError
from specgen.rendering.writing import write_all, write_atomically
from specgen.source.characters import printable_name

REGISTER_KEPT = "a register"
_FIRST = f"{record_folder(1)}/{RECORD}"


def write_files(folder: Path, files: Mapping[str, bytes]) -> None:
    """The files into a folder, which is made where it is not there. Raises CannotRunError."""
    _refuse_kept_places(folder)
    for name in files:
        _refuse_odd(folder / name)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_all(folder, files)
    except (OSError, ValueError) as error:
        raise _cannot(folder, error) from error


def write_file(file: Path, data: bytes, ours: Callable[[Path], bool]) -> None:
    """One file; `ours` tells whether what stands there was written by the same command before. Raises CannotRunError."""
    _refuse_kept_places(file.parent)
    _refuse_odd(file)
    try:
        if file.exists() and not ours(file):
            raise CannotRunError(
                f"{printable_name(str(file))} is something else, which would be lost; name another file"
            )
        write_atomically(file, data)
    except (OSError, ValueError) as error:
        raise _cannot(file, error) from error


def _cannot(place: Path, error: Exception) -> CannotRunError:
    why = getattr(error, "strerror", None) or error
    return CannotRunError(f"{printable_name(str(place))} cannot be written to: {why}")


def _refuse_odd(file: Path) -> None:
    try:
        mode = os.lstat(file).st_mode
    except (OSError, ValueError):
        return  # nothing there, or nothing that writing will get past
    if not stat.S_ISREG(mode) and not stat.S_ISDIR(mode):
        raise CannotRunError(f"{printable_name(str(file))} is a link or no ordinary file; name another file")


def _refuse_kept_places(folder: Path) -> None:
    for place in _and_above(folder):
        kept = kept_as(place)
        if kept:
            raise CannotRunError(f"{printable_name(str(folder))} lies in {kept}; name a folder outside")


def _and_above(folder: Path) -> Iterator[Path]:
    try:
        real = folder.resolve()
    except (OSError, ValueError, RuntimeError) as error:
        raise _cannot(folder, error) from error
    yield from (real, *real.parents)


def kept_as(place: Path) -> str:
    """What is kept in a folder that nothing else may be written to; empty for any other."""
    try:
        # a record, the folder of a document, or the register of several
        if (place / RECORD).exists() or (place / _FIRST).exists() or any(place.glob(f"*/{_FIRST}")):
            return REGISTER_KEPT
        if place.name == APPROVALS and any(place.glob("*/*.json")):
            return "the approvals of a folder of sources"
        return "the shipped templates" if place == templates_folder() else ""
    except (OSError, RenderError):
        return ""
