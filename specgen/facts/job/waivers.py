"""Whether a waiver is in force on a day. Called by the judgement of waivers and by the method statement."""

from __future__ import annotations

from datetime import date

from specgen.model.control import Waiver


def in_force(waiver: Waiver, day: date) -> bool:
    """Its last day counts: whoever took the finding on did so until that day and no longer."""
    return day <= waiver.until
