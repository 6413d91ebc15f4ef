"""Bytes and names that stand on disk once the call is back. Called by the register and by the writing of documents."""

from __future__ import annotations

import os
from pathlib import Path


def write_new(path: Path, data: bytes) -> None:
    """A new file, confirmed on disk. Raises FileExistsError where something of that name is there, OSError when the disk refuses."""
    # O_EXCL: never through a link someone placed there. Mode 0666 less the umask: a document is for others to read.
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    handle = os.open(path, flags, 0o666)
    try:
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]
        os.fsync(handle)
    finally:
        os.close(handle)


def confirm(folder: Path) -> None:
    """The names in a folder, confirmed on disk. Raises OSError."""
    if os.name == "nt":  # a folder cannot be opened there; the file system keeps its own journal of names
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
