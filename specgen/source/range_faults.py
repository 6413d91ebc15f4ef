"""What can be wrong with a shared range and with the file that says what of it was taken in. Called as `faults` are."""

from __future__ import annotations

from specgen.findings import Finding, Place, Severity
from specgen.source.faults import Fault

_TABLE = (
    Fault(
        "RNG001",
        "The shared range cannot be read",
        "Products and systems that the jobs name stand in it; without it nothing can be checked or printed.",
        "Write the way from the folder of the project to the folder of the range, with forward slashes and no link on it, or "
        "git:REVISION: before it.",
        "range: ../ranges   write   range: ../range",
    ),
    Fault(
        "RNG002",
        "The range and the folder of the project lie in each other",
        "One record would stand in both, and nobody could say whose it is.",
        "Put the two folders beside each other.",
        "range: products   write   range: ../range",
    ),
    Fault(
        "RNG003",
        "The range is no project of its own",
        "A range is checked, printed and issued by itself, so it needs one whole project source, and stands on no other range.",
        "Run `specgen check` on the folder of the range, and put right what it reports.",
        "range: ../range   where ../range/project.yaml is missing",
    ),
    Fault(
        "RNG004",
        "The range is another than the one taken in",
        "Jobs that were written for the range as it stood then rest on something else now.",
        "See what is different with `specgen range PATH`, then take it in with `specgen range PATH --accept`.",
        "the maximum DFT of a primer was lowered after it was taken in",
        Severity.NOTE,
    ),
    Fault(
        "RNG005",
        "It is not written down what of the range was taken in",
        "Without it nobody is told when the range changes below the jobs.",
        "Run `specgen range PATH --accept` with the folder of the project source as PATH: it writes range.lock beside it.",
        "range: ../range   without a file range.lock",
        Severity.NOTE,
    ),
    Fault(
        "RNG006",
        "What was taken in of the range cannot be read",
        "Whether the range has changed below the jobs cannot be told.",
        "Fetch range.lock as it was last kept, or write it anew with `specgen range PATH --accept`.",
        "two versions of range.lock merged by hand",
        Severity.WARNING,
    ),
)

RANGE_FAULTS = {entry.id: entry for entry in _TABLE}


def range_fault(
    id: str, what: str, place: Place, path: str = "project.range", remedy: str = "", cause: str = ""
) -> Finding:
    """The finding of this kind; `remedy` goes before the general one where there is one."""
    row = RANGE_FAULTS[id]
    return Finding(row.id, row.severity, place, path, what, row.why, remedy or row.remedy, cause=cause)
