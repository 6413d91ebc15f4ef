"""The file of decisions beside the sources, by its name of today or that of source format 1. Called by `compare` and `upgrade`."""

from __future__ import annotations

import os
import stat
from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path

from specgen.commands.outcome import CannotRunError
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.project import DECISIONS, OLD_DECISIONS

NAMES = (DECISIONS, OLD_DECISIONS)


@dataclass(frozen=True, slots=True)
class DecisionFile:
    """Its bytes, and its name as findings give it."""

    name: str
    data: bytes


def decisions_beside(folder: Path) -> DecisionFile | None:
    """The file of decisions in a folder of sources. Raises CannotRunError."""
    there = [name for name in NAMES if os.path.lexists(folder / name)]
    refuse_two(there, str(folder))
    return DecisionFile(there[0], bytes_of(folder / there[0])) if there else None


def refuse_two(there: Collection[str], where: str) -> None:
    """Raises CannotRunError where both names are taken: which of the two files counts is for a person to say."""
    if len(there) > 1:
        raise CannotRunError(
            f"{printable_name(where)} holds both {DECISIONS} and {OLD_DECISIONS}, which is its former name; "
            f"bring them together in {DECISIONS} and delete {OLD_DECISIONS}"
        )


def bytes_of(file: Path) -> bytes:
    """The bytes of an ordinary file of decisions, one more than are read at most. Raises CannotRunError."""
    try:
        if not stat.S_ISREG(os.lstat(file).st_mode):
            raise CannotRunError(
                f"{printable_name(str(file))} is a link or no ordinary file; decisions are not read from it"
            )
        with file.open("rb") as stream:
            return stream.read(FILE_LIMIT + 1)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise CannotRunError(f"{printable_name(str(file))} cannot be opened: {why}") from error
