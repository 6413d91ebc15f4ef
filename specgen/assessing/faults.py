"""What can be wrong with a file of readings; `specgen explain RDG003` prints a row. Called by the readers and the judgement.

A fault that is an error takes its row out of the count: what it belongs to is then not decided, never a pass.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from specgen.findings import Finding, Place, Severity

MOST = 500
"""Findings that are listed; the others are mostly consequences of them."""


@dataclass(frozen=True, slots=True)
class ReadingFault:
    """One kind of fault.

    `is_open`: while it is told, the job it is told of is not released. So is every error, whose row is not used, and a warning where
    something is missing or contradicts itself. A warning on common practice alone, or on what nothing has to be put right of, is told.
    """

    id: str
    title: str
    why: str
    remedy: str
    severity: Severity = Severity.ERROR
    is_open: bool = True


_ROWS = (
    ReadingFault(
        "RDG001",
        "A file of readings cannot be read",
        "Readings that cannot be read decide nothing.",
        "Save it as CSV, as xlsx, or as the filled form, and no larger than the limit named.",
    ),
    ReadingFault(
        "RDG002",
        "The table of readings has no heading that is known",
        "What a column holds is not guessed.",
        "Name the columns as `specgen assess --help` lists them, or map them: --columns value=Thickness,spot=Batch.",
    ),
    ReadingFault(
        "RDG003",
        "A cell cannot be read",
        "A figure that can be read two ways, or not at all, decides nothing.",
        "Correct the cell in a copy of the file, and keep the file of the instrument.",
    ),
    ReadingFault(
        "RDG004",
        "A cell holds a formula",
        "A formula is no reading: what it shows depends on the program that opens it.",
        "Paste the value in place of the formula.",
    ),
    ReadingFault(
        "RDG005",
        "A film is below zero, or the sign of a gauge that reads nothing",
        "A negative film does not exist, and a row of nines is how a gauge shows that it is off the part or past its range.",
        "Take the reading again at that spot.",
    ),
    ReadingFault(
        "RDG006",
        "Readings of one point are in two units",
        "Limits in um and in mil are two systems, and a figure in the wrong one passes or fails by a factor of 25.",
        "State all readings of a point in one unit.",
    ),
    ReadingFault(
        "RDG007",
        "A reading is there twice",
        "A reading that counts twice moves the mean and the share, and hides one that is missing.",
        "Delete one of the two rows, or give the second its own spot or number.",
    ),
    ReadingFault(
        "RDG008",
        "An inspection point, item, coat or product is none of this job",
        "A reading that belongs to nothing is missing where it belongs.",
        "Write the id as it stands in the job.",
    ),
    ReadingFault(
        "RDG009",
        "The dates cannot be in this order",
        "A film cannot be read before its coat is applied, and nothing was done or read on a day to come.",
        "Correct the date, or the coat the row belongs to; where it is that day already, assess with --on.",
    ),
    ReadingFault(
        "RDG010",
        "A reading was dropped without a repeat, a name or a reason",
        "SSPC-PA 2 lets an unusual reading go only where it does not repeat, and by a person: a program drops none. It counts here.",
        "Repeat it at its spot, and write who dropped it and why.",
    ),
    ReadingFault(
        "RDG011",
        "A value is missing",
        "A row without a value is a reading that was planned and not taken.",
        "Enter the value, or delete the row.",
        Severity.WARNING,
    ),
    ReadingFault(
        "RDG012",
        "The instrument, or its check, is not stated or not in order",
        "Readings of an instrument that was not checked can be wrong by more than the limits are apart. Without a valid check nothing "
        "is decided.",
        "Enter gauge, serial and checked_on; read again with a checked gauge where it was off.",
        Severity.WARNING,
    ),
    ReadingFault(
        "RDG013",
        "A batch had expired, or is not stated",
        "Paint past its shelf life may not cure, and a recall finds only what is recorded.",
        "Call the technical desk; enter batch and expires of every product.",
    ),
    ReadingFault(
        "RDG014",
        "A stated dew point is not that of the air",
        "Dew point and margin follow from air and humidity; where the two disagree one of the three was misread.",
        "Measure air and humidity again.",
        Severity.WARNING,
    ),
    ReadingFault(
        "RDG016",
        "A record sheet is of another job, or of another state of it",
        "A sheet made before items or inspection points were changed asks for other readings than the job does now.",
        "Print the sheet anew, or enter what it holds into the one that holds now.",
    ),
    ReadingFault(
        "RDG017",
        "A recorded word contradicts the figures",
        "Where figures answer what a criterion asks in words, they decide; a word that says the opposite was written without them.",
        "Look at the part again, and correct the word or the reading that is wrong.",
        Severity.WARNING,
    ),
    ReadingFault(
        "RDG018",
        "A row records work that is not known",
        "What was done decides which time it counts for.",
        "Write preparation, application, sanding, repair, acceptance or release in the column work.",
    ),
    ReadingFault(
        "RDG019",
        "A row of work does not say when, who, or what on",
        "Times between coats, and who answers for what, rest on these rows.",
        "Enter on and by; the coat where it was applied or sanded; item and remark where it was repaired.",
    ),
    ReadingFault(
        "RDG020",
        "A person is not in the list of people",
        "A record by somebody nobody knows cannot be answered for.",
        "Enter the person into people.yaml with an id, or correct the id. An entry may be its id alone, where a name was erased.",
    ),
    ReadingFault(
        "RDG021",
        "The release is before the last record, or there are two",
        "A release covers what was recorded before it, and there is one of each item, or of each part of it.",
        "Correct the day, or release again after the last record and delete the release before.",
    ),
    ReadingFault(
        "RDG022",
        "A qualification had ended",
        "Work or an inspection by somebody whose qualification has ended may not be accepted.",
        "Enter the renewed qualification into people.yaml, or have the work inspected again.",
        Severity.WARNING,
    ),
    ReadingFault(
        "RDG023",
        "A concession was agreed after the readings it is used for",
        "Whoever agreed knew the figures. A concession may be granted for what was found; it was no limit while the work was done.",
        "Nothing, where it is so; correct the day of the agreement or of the readings where it is not.",
        Severity.WARNING,
        is_open=False,
    ),
    ReadingFault(
        "RDG024",
        "What is to be deducted is not recorded",
        "The job has the zinc of each part, or the existing coating at each spot, taken off its readings: without it they say "
        "nothing of the paint.",
        "Enter what was measured of that part or spot at the point that measures it.",
    ),
    ReadingFault(
        "RDG025",
        "The check of the instrument falls short of common practice",
        "A gauge that was checked on another day, or is off on its zero plate, may have read everything as much too high or too low. "
        "Which check is enough is not stated by a document we could confirm, so that this decides nothing and keeps no job from release.",
        "Enter zero_before and zero_after; check the gauge on its zero plate before readings, and read again where it was off.",
        Severity.WARNING,
        is_open=False,
    ),
    ReadingFault(
        "RDG015",
        "More faults than are listed",
        "The others are mostly consequences of those listed.",
        "Put the first ones right and assess again.",
    ),
)

READING_FAULTS: Mapping[str, ReadingFault] = {row.id: row for row in _ROWS}


class Faults:
    """The findings on the readings of one run, up to `MOST`, and what they leave undecided.

    `spoiled` are the (point, item) whose rows could not be used; an empty name stands for every one.
    """

    def __init__(self) -> None:
        self._found: list[Finding] = []
        self._more = 0
        self._last: Place | None = None
        self.spoiled: set[tuple[str, str]] = set()

    def tell(
        self,
        id: str,
        what: str,
        place: Place,
        *,
        point: str = "",
        item: str = "",
        weigh: Severity | None = None,
        read: bool = True,
    ) -> None:
        """A finding; where it is an error, what it concerns is left undecided, unless nothing was `read` in the row."""
        row = READING_FAULTS[id]
        severity = weigh or row.severity
        if severity is Severity.ERROR and read:
            self.spoiled.add((point, item))
        if len(self._found) >= MOST:
            self._more, self._last = self._more + 1, place
            return
        self._found.append(Finding(id, severity, place, f"{point}.{item}".strip("."), what, row.why, row.remedy))

    @property
    def count(self) -> int:
        """How many there are, listed or not."""
        return len(self._found) + self._more

    def spoils(self, point: str, item: str) -> bool:
        """True where a row of this point and item, or one that may be, could not be used."""
        return not self.spoiled.isdisjoint({(point, item), (point, ""), ("", item), ("", "")})

    def __iter__(self) -> Iterator[Finding]:
        yield from self._found
        if self._more and self._last is not None:
            row = READING_FAULTS["RDG015"]
            yield Finding(
                row.id, row.severity, self._last, "", f"{self._more} more faults are not listed", row.why, row.remedy
            )
