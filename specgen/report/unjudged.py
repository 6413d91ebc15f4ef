"""What could not be judged, in one line. Called by the reports of this floor."""

from __future__ import annotations

from specgen.findings import NotJudged, Report

_SHOWN = 6


def unjudged(report: Report) -> str:
    """`Not judged, for its own faults: products.primer. Not judged in full, for products.primer cannot be relied on:
    systems.cab.` Empty where every rule judged every record."""
    return " ".join(_sentence(entry) for entry in report.not_judged)


def _sentence(entry: NotJudged) -> str:
    left = len(entry.addresses) - _SHOWN
    listed = ", ".join(entry.addresses[:_SHOWN]) + (f" and {left} more" if left > 0 else "")
    return f"Not judged{' in full' if entry.in_part else ''}, {entry.because}: {listed}."
