"""Finished bytes to disk, so that a reader finds the old file or the new one and never half of either.

Called by the commands and by issuing; the register has its own commit by folder.
"""

from __future__ import annotations

import errno
import os
import secrets
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from specgen.model.file_names import name_fault
from specgen.register.disk import confirm, write_new


def write_atomically(path: Path, data: bytes) -> None:
    """Puts `data` at `path`, whose folder exists, in one step.

    Raises ValueError for a name that is not portable, OSError when the disk refuses. Before the renaming a failure
    leaves what was there untouched; after it the new file stands whole, and the OSError says only that the folder
    could not be confirmed on disk. No temporary file is left either way.
    """
    write_all(path.parent, {path.name: data})


def write_all(folder: Path, files: Mapping[str, bytes]) -> None:
    """Puts several files into `folder`: all are prepared under temporary names, then each is renamed.

    Raises as `write_atomically`, and IsADirectoryError where a folder has one of the names. When preparing fails
    nothing appears. Renaming is one step a file, not one for all:
    a failure there leaves those already renamed, whole, and the others as they were.
    """
    seen: dict[str, str] = {}
    for name in files:
        check_name(name)
        if other := seen.get(name.casefold()):
            raise ValueError(f"The file names {other!r} and {name!r} differ only in capitals. Rename one of them.")
        seen[name.casefold()] = name
    for name in files:
        final = folder / name
        # a link is replaced, wherever it leads; a folder would stop the renaming halfway
        if final.is_dir() and not final.is_symlink():
            raise IsADirectoryError(errno.EISDIR, f"a folder in it has the name {name}")
    replace_all({folder / name: data for name, data in files.items()})


def replace_all(files: Mapping[Path, bytes]) -> None:
    """Puts bytes at several places, whose folders exist, in the order given; raises and keeps as `write_all`."""
    prepared: dict[Path, Path] = {}
    try:
        for final, data in files.items():
            temporary = final.with_name(f".{final.name}.{secrets.token_hex(6)}.tmp")
            prepared[temporary] = final
            write_new(temporary, data)
        for temporary, final in prepared.items():
            os.replace(temporary, final)
        for folder in dict.fromkeys(final.parent for final in files):
            confirm(folder)
    finally:
        # Those renamed are no longer there; of the others nothing may stay, not even when the program is interrupted.
        for temporary in prepared:
            with suppress(OSError):
                temporary.unlink()


def check_name(name: str) -> None:
    """Raises ValueError unless `name` is one file name that every common file system can hold."""
    if reason := name_fault(name):
        raise ValueError(f"The file name {name[:80]!r} cannot be used: {reason}. Choose another.")
