"""Files that stand beside the sources and are named in them: pictures and reports. Called by the model's parser through `Sources.beside`.

Nothing outside the folder is read, and nothing through a link: what a link leads to may change unnoticed, and git holds none of it.
"""

from __future__ import annotations

import stat
from collections.abc import Callable
from pathlib import Path

# what a register keeps of one file
LARGEST = 16 * 1024 * 1024

Beside = Callable[[str], bytes]
"""The bytes of a file by its name from the project folder, with forward slashes. Raises NotRead."""


class NotRead(Exception):  # noqa: N818  # reads as what happened
    """A file beside the sources cannot be used: what is wrong with it, and what to do."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what, self.remedy = what, remedy


def not_there() -> NotRead:
    return NotRead("there is no such file in the folder", "put the file into the folder, or correct its name")


def too_large_beside() -> NotRead:
    return NotRead(
        f"the file is larger than {LARGEST // 1024 // 1024} MiB", "save it smaller; of a picture 1800 pixels are enough"
    )


def read_beside(folder: Path, name: str) -> bytes:
    """The bytes of a file below the folder. Raises NotRead."""
    at = folder
    try:
        for step in name.split("/"):
            at = at / step
            if step in ("", ".", "..") or at.is_symlink():
                raise NotRead("it is reached through a link", "copy the file itself into the folder")
        if not stat.S_ISREG(at.lstat().st_mode):
            raise NotRead("it is not an ordinary file", "name a file")
        with at.open("rb") as file:
            data = file.read(LARGEST + 1)
    except (FileNotFoundError, NotADirectoryError):
        raise not_there() from None
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "the name cannot be used"
        raise NotRead(f"the file cannot be opened: {why}", "check that you may read it") from None
    if len(data) > LARGEST:
        raise too_large_beside()
    return data
