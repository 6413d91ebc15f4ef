"""One picture, from the bytes of its file to what may stand on a page. Called by the model's parser; drawn by `rendering`."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass

from specgen.pictures.raster import STARTS, photograph
from specgen.pictures.refused import NotAPicture
from specgen.pictures.vector import drawing

ENDINGS = (*STARTS, "svg")


@dataclass(frozen=True, slots=True)
class Prepared:
    """A picture as it is printed: `digest` is that of the file (SHA-256), `white` says that nothing of it shows on white paper."""

    digest: str
    media_type: str
    data: bytes
    width: int
    height: int
    white: bool

    @property
    def address(self) -> str:
        """How a page names it."""
        return f"picture:{self.digest}"


def digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def prepared(name: str, data: bytes) -> Prepared:
    """The picture in the bytes of the file `name`. Raises NotAPicture."""
    ending = name.rpartition(".")[2].lower()
    for other, start in STARTS.items():
        if data.startswith(start) and start != STARTS.get(ending):
            raise NotAPicture(f"the file is a {other.upper()} under another ending", f"name the file with .{other}")
    if ending in STARTS and not data.startswith(STARTS[ending]):
        raise NotAPicture(f"the file is no {ending.upper()}", "save it as PNG, JPEG or SVG under its own ending")
    if ending == "svg":
        return Prepared(digest(data), "image/svg+xml", *drawing(data))
    return Prepared(digest(data), *photograph(data))
