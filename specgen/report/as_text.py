"""The report a person reads: each finding with its source line, why it matters, what to do, and on whose word.

Called by `check`, and by `render` where it refuses.
"""

from __future__ import annotations

import textwrap
from datetime import date

from specgen.findings import Report, Told
from specgen.report.elsewhere import elsewhere
from specgen.report.lines import located, one_line, tally
from specgen.report.order import gravest_first, totals
from specgen.report.source_line import source_line
from specgen.report.unjudged import unjudged

WIDTH = 100
"""Columns that running text is wrapped at."""


def write(report: Report, *, prefix: str, on: date, by_file: bool = False) -> str:
    """The report, the gravest findings first, or all in the order of the files; two last lines count by rule and by severity.

    `prefix` leads from the current folder to the project: `specs_demo/`.
    """
    if not len(report):
        return f"No findings, assessed as at {on.isoformat()}.\n"
    found = report.told() if by_file else gravest_first(report)
    pieces = ["\n".join(_told(entry, prefix)) for entry in found]
    if told := unjudged(report):
        pieces.append(_wrapped(one_line(told)))
    return "\n\n".join([*pieces, f"{_wrapped(totals(found))}.\n{tally(report, on)}."]) + "\n"


def _told(told: Told, prefix: str) -> list[str]:
    finding = told.finding
    # the first line is never wrapped: editors and terminals take the place from it
    place = finding.place
    lines = [f"{located(prefix, place)}: {finding.severity.value} {finding.id} {one_line(finding.what)}"]
    lines += source_line(place)
    # a waiver names this address
    lines += _labelled("at", finding.path)
    lines += _labelled("also", elsewhere(told))
    lines += _labelled("why", finding.why)
    lines += _labelled("do", finding.remedy)
    lines += _labelled("source", finding.source)
    return lines


def _wrapped(text: str) -> str:
    return textwrap.fill(text, WIDTH, break_long_words=False, break_on_hyphens=False)


def _labelled(label: str, text: str) -> list[str]:
    said = one_line(text)
    if not said:
        return []
    front = f"  {label + ':':<8}"
    # an address is copied as a whole, so no word is broken
    return textwrap.wrap(
        said,
        WIDTH,
        initial_indent=front,
        subsequent_indent=" " * len(front),
        break_long_words=False,
        break_on_hyphens=False,
    )
