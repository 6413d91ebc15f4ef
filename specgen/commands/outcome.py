"""What a command comes to: text for the screen, and the exit code. Made by every command, printed by `main`."""

from __future__ import annotations

from dataclasses import dataclass

from specgen.findings import CannotDoError

DONE = 0
REFUSED = 1
NOT_RUN = 2


@dataclass(frozen=True, slots=True)
class Outcome:
    """`out` goes to the standard output, `err` (whole lines too) to the standard error output."""

    out: str
    code: int = DONE
    err: str = ""


class CannotRunError(CannotDoError):
    """The command could not do its work at all (exit code 2); the message is one plain line for the user."""
