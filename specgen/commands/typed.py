"""Types of arguments on the command line: a day, a line of text. Called by every command that takes one; imports next to nothing."""

from __future__ import annotations

import argparse
import re
from datetime import date, datetime

from specgen.source.characters import first_refused

LINE_LIMIT = 200
"""As in the sources (`model.field_types`); a test compares the two."""


def day(text: str) -> date:
    """A date on the command line."""
    try:
        # fromisoformat alone would also take 20260331 and 2026-W13-2
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            return date.fromisoformat(text)
    except ValueError:
        pass
    raise argparse.ArgumentTypeError(f"{text!r} is not a day; write year, month and day, as in 2026-03-31")


def moment(text: str) -> datetime:
    """A day and time on the command line."""
    try:
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:[0-9]{2}", text):
            return datetime.fromisoformat(text)
    except ValueError:
        pass
    raise argparse.ArgumentTypeError(f"{text!r} is not a day and time; write them as in 2026-11-27 14:00")


def line(value: str) -> str:
    """A line of text that can be printed."""
    shown = " ".join(value.split())
    if not shown or len(shown) > LINE_LIMIT or first_refused(shown) is not None:
        raise argparse.ArgumentTypeError(f"write one line of at most {LINE_LIMIT} characters that can be printed")
    return shown
