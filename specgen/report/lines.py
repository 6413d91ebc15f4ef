"""Pieces every report is made of: text that is safe on one line of a screen, and the count of findings by severity.

Called by the reports of this floor and by the commands.
"""

from __future__ import annotations

import posixpath
from datetime import date

from specgen.findings import Place, Report, Severity
from specgen.source.characters import printable, printable_name
from specgen.units.locale import counted

_FORMS = {
    Severity.ERROR: ("error", "errors"),
    Severity.WARNING: ("warning", "warnings"),
    Severity.NOTE: ("note", "notes"),
}


def opened(prefix: str, place: Place) -> str:
    """A place as it opens from the current folder; what lies beside the project, in its range, without the way round."""
    if not place.file.startswith("../"):
        return printable_name(f"{prefix}{place.file}")
    # a side of git begins with its revision, which is no folder
    revision, colon, folder = prefix.rpartition(":")
    return printable_name(f"{revision}{colon}{posixpath.normpath(folder + place.file)}")


def located(prefix: str, place: Place) -> str:
    """The same with line and column, as editors and terminals take it."""
    return f"{opened(prefix, place)}:{place.line}:{place.column}"


def one_line(text: str) -> str:
    """The text on a single line; what must not reach a screen is shown as U+FFFD."""
    return printable(" ".join(text.split()))


def tally(report: Report, on: date) -> str:
    """`1 error, 2 warnings and no notes, assessed as at 2026-11-25`."""
    errors, warnings, notes = (_counted(report, weight) for weight in (Severity.ERROR, Severity.WARNING, Severity.NOTE))
    return f"{errors}, {warnings} and {notes}, assessed as at {on.isoformat()}"


def _counted(report: Report, severity: Severity) -> str:
    number = report.count(severity)
    return f"{number or 'no'} {counted(*_FORMS[severity], number)}"
