"""Pictures that sources name: each is read, prepared, and its SHA-256 put behind its name. Called by `parse`, before records are read.

From then on the picture is part of the value that names it: what is compared, approved and frozen changes with it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from specgen.findings import Finding
from specgen.model.field_types import PICTURE_FILE
from specgen.model.named_files import visited
from specgen.model.shape import shape_finding
from specgen.model.walk import Path
from specgen.pictures.prepared import Prepared, prepared
from specgen.pictures.raster import pixels
from specgen.pictures.refused import NotAPicture
from specgen.source.beside import Beside, NotRead
from specgen.source.places import Places
from specgen.source.tree import Scalar, SourceFile

MOST = 200
MOST_PIXELS_TOGETHER = 300_000_000
_LOGO = ("project", "logo")


def pictured(
    files: Iterable[SourceFile], read: Beside | None
) -> tuple[tuple[SourceFile, ...], dict[str, Prepared], list[Finding]]:
    """The files, the pictures by the value that names them, and what is wrong with them."""
    if read is None:
        return tuple(files), {}, []
    found = _Pictures(read)
    done = visited(files, PICTURE_FILE, found.named)
    return done, found.pictures, found.findings


@dataclass(slots=True)
class _Pictures:
    read: Beside
    pictures: dict[str, Prepared] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    _pixels: int = 0
    _known: dict[str, Prepared | NotRead | NotAPicture] = field(default_factory=dict)

    def named(self, stated: Scalar, path: Path, places: Places) -> Scalar:
        name = stated.text
        found = self._picture(name)
        if not isinstance(found, Prepared):
            self._fault("MOD011", path, places, f"{name}: {found.what}", found.remedy)
            return stated
        if found.white and path == _LOGO:
            self._fault("MOD012", path, places, f"nothing of {name} shows on white paper")
        value = f"{name} sha256:{found.digest}"
        self.pictures[value] = found
        return stated._replace(text=value)

    def _picture(self, name: str) -> Prepared | NotRead | NotAPicture:
        if name not in self._known:
            try:
                if len(self._known) >= MOST:
                    raise NotRead(f"the folder names more than {MOST} pictures", "divide the folder")
                data = self.read(name)
                self._pixels += pixels(data)
                if self._pixels > MOST_PIXELS_TOGETHER:
                    raise NotRead(
                        f"the pictures of the folder have more than {MOST_PIXELS_TOGETHER // 1_000_000} million pixels together",
                        "save them smaller: a page shows some four million at most",
                    )
                self._known[name] = prepared(name, data)
            except (NotRead, NotAPicture) as refused:
                self._known[name] = refused
        return self._known[name]

    def _fault(self, id: str, path: Path, places: Places, what: str, remedy: str = "") -> None:
        self.findings.append(shape_finding(id, path, places.place(path), what, remedy))
