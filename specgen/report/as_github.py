"""The report as workflow commands, which a build server shows beside the lines of a change. Called by `check`.

Syntax and escaping: documentation of GitHub Actions, workflow commands, "Setting an error message".
"""

from __future__ import annotations

from datetime import date

from specgen.findings import Place, Report, Severity, Told
from specgen.report.elsewhere import elsewhere
from specgen.report.lines import one_line, opened, tally
from specgen.report.unjudged import unjudged

_WORD = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "notice"}


def write(report: Report, *, prefix: str, on: date) -> str:
    """One command a finding, and a plain last line that counts. `prefix` leads to the project, as in `specs_demo/`."""
    lines = [_command(entry, prefix) for entry in report.told()]
    if told := unjudged(report):
        lines.append(one_line(told))
    return "\n".join([*lines, f"{tally(report, on)}."]) + "\n"


def _command(told: Told, prefix: str) -> str:
    finding = told.finding
    where = elsewhere(told)
    told_lines = (finding.what, f"also {where}" if where else "", finding.why, finding.remedy)
    said = "\n".join(one_line(text) for text in told_lines if text)
    return command(_WORD[finding.severity], finding.place, prefix, finding.id, said)


def command(word: str, place: Place | None, prefix: str, title: str, said: str) -> str:
    """One workflow command: `word` is error, warning or notice; without a place it stands beside no line."""
    properties = {"title": title}
    if place is not None:
        properties = {
            "file": opened(prefix, place),
            "line": str(place.line),
            "col": str(place.column),
            # their end belongs to the stretch; ours is the first column after it
            "endColumn": str(max(place.end_column - 1, place.column)),
            "title": title,
        }
    named = ",".join(f"{key}={_property(value)}" for key, value in properties.items())
    return f"::{word} {named}::{_data(said)}"


def _data(text: str) -> str:
    # the per cent sign first, or the others would be escaped twice
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
