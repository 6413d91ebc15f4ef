"""Why a document is not approved or issued. Raised by `candidate` and what it asks, told by the commands."""

from __future__ import annotations


class Refused(Exception):  # noqa: N818  # reads as what happened: the issue was refused
    """The document cannot be approved or issued as it stands; one line for each thing that is missing."""

    def __init__(self, *lines: str) -> None:
        super().__init__("; ".join(lines))
        self.lines = lines
