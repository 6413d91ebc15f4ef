"""The only module that reads the clock. Every command that judges by date takes `--on` and falls back to `today`."""

from __future__ import annotations

from datetime import UTC, date, datetime


def today() -> date:
    """Today's date in UTC, so that two machines agree."""
    return datetime.now(UTC).date()


def now() -> datetime:
    """This moment in UTC, in whole seconds. What is recorded bears it: approvals and records of the register."""
    return datetime.now(UTC).replace(microsecond=0)
