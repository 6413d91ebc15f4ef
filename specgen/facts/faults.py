"""Why a figure cannot be worked out, and where in the sources to look. Raised in `plan`, told by `quantities`."""

from __future__ import annotations

from specgen.model.walk import Path
from specgen.trade.working import WorkingError


class FaultyValueError(WorkingError):
    """A stated value that cannot be, such as solids of zero: `path` is where it stands, whatever asked for it."""

    def __init__(self, what: str, path: Path) -> None:
        super().__init__(what)
        self.path = path


class NotStatedError(WorkingError):
    """Something a figure needs is not stated at `path`; nothing that is stated is wrong."""

    def __init__(self, what: str, path: Path) -> None:
        super().__init__(what)
        self.path = path
