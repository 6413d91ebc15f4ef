"""Why the register cannot do what it is asked: one plain line, raised by every module of this floor, shown by the commands."""

from __future__ import annotations

from specgen.findings import CannotDoError


class RegisterError(CannotDoError):
    """The register, a record, an approval or a signature cannot be used; the message says what, why and what to do."""


class TakenError(RegisterError):
    """Another record took the number while this one was being prepared."""
