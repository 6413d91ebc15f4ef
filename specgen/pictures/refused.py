"""Why a picture is not taken. Raised by `raster` and `vector`; told by the model's parser at the line that names the file."""

from __future__ import annotations


class NotAPicture(Exception):  # noqa: N818  # reads as what was found
    """What is wrong with the file, and what to do about it."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what, self.remedy = what, remedy
