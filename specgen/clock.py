"""The only module that reads today's date. Every command that judges by date takes `--on` and falls back to this."""

from __future__ import annotations

from datetime import UTC, date, datetime


def today() -> date:
    """Today's date in UTC, so that two machines agree."""
    return datetime.now(UTC).date()
