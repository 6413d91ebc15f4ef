"""Certificate and model out of a zip of `register export`, and whether a file is one. Called by `export` and by comparing.

A zip may list a million entries, lie about every size, and pack a gigabyte into a page: it is read aside, and each entry up to a bound.
"""

from __future__ import annotations

import io
import zipfile
import zlib
from lzma import LZMAError
from pathlib import Path

from specgen.register.aside import aside
from specgen.register.failure import RegisterError
from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL
from specgen.source.bounded_json import JSON_LIMIT

_COSTLY = "it would take more memory or time than any export of ours"
# RuntimeError: a locked entry, and as NotImplementedError a way of packing that is not known
_BROKEN = (OSError, ValueError, RuntimeError, EOFError, zipfile.BadZipFile, zlib.error, LZMAError)


def zip_entries(data: bytes) -> dict[str, bytes]:
    """Certificate and model by their names, as far as they are there. Raises RegisterError, which says why it cannot be read."""
    found, why = aside(lambda: _entries(data), (dict[str, bytes](), _COSTLY))
    if why:
        raise RegisterError(why)
    return found


def zip_names(file: Path) -> frozenset[str]:
    """What the first folder of a zip holds; nothing where the file is none, or costs too much to look into."""
    return aside(lambda: _names(file), frozenset[str]())


def _entries(data: bytes) -> tuple[dict[str, bytes], str]:
    found: dict[str, bytes] = {}
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as whole:
            for entry in whole.infolist():
                name = entry.filename.partition("/")[2]
                if name in (CERTIFICATE, CUSTOMER_MODEL) and name not in found:
                    with whole.open(entry) as stream:
                        # what a header says of a size is no bound; a byte more than is read tells that there is more
                        found[name] = stream.read(JSON_LIMIT + 1)
    except _BROKEN as reason:
        return {}, str(reason) or "it is damaged"
    return found, ""


def _names(file: Path) -> frozenset[str]:
    try:
        with zipfile.ZipFile(file) as whole:
            return frozenset(name.partition("/")[2] for name in whole.namelist())
    except _BROKEN:
        return frozenset()
