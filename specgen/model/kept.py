"""Files that stand behind a source and are kept as they are (a report as PDF, its readings as a spreadsheet): each is read and its SHA-256
put behind its name. Called by `parse`, before records are read.

What is in them is not read. From then on the file is part of the value that names it, and a rule holds it against the SHA-256 stated.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from hashlib import sha256

from specgen.findings import Finding
from specgen.model.field_types import KEPT_FILE
from specgen.model.named_files import visited
from specgen.model.shape import shape_finding
from specgen.model.walk import Path
from specgen.source.beside import Beside, NotRead
from specgen.source.places import Places
from specgen.source.tree import Scalar, SourceFile

MOST = 20_000
DIGEST = " sha256:"
"""Between the name of a file and the SHA-256 of what was read."""


def kept(files: Iterable[SourceFile], read: Beside | None) -> tuple[tuple[SourceFile, ...], list[Finding]]:
    """The files of the sources with what was read behind each name, and what cannot be read."""
    if read is None:
        return tuple(files), []
    found = _Kept(read)
    return visited(files, KEPT_FILE, found.named), found.findings


def name_and_digest(value: str) -> tuple[str, str]:
    """The name of a kept file and the SHA-256 of what was read; the second is empty where nothing was."""
    name, _, digest = value.partition(DIGEST)
    return name, digest


@dataclass(slots=True)
class _Kept:
    read: Beside
    findings: list[Finding] = field(default_factory=list)
    _known: dict[str, str | NotRead] = field(default_factory=dict)

    def named(self, stated: Scalar, path: Path, places: Places) -> Scalar:
        name = stated.text
        if name not in self._known:
            self._known[name] = self._digest(name)
        found = self._known[name]
        if isinstance(found, NotRead):
            self.findings.append(
                shape_finding("MOD013", path, places.place(path), f"{name}: {found.what}", found.remedy)
            )
            return stated
        return stated._replace(text=f"{name}{DIGEST}{found}")

    def _digest(self, name: str) -> str | NotRead:
        try:
            if len(self._known) >= MOST:
                return NotRead(f"the folder names more than {MOST} files of reports", "divide the folder")
            return sha256(self.read(name)).hexdigest()
        except NotRead as refused:
            return refused
