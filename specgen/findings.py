"""What is wrong with a specification, and where.

Every reader, parser and rule speaks in these records; the reports print them. This module knows nothing of YAML or of rules.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum


class CannotDoError(Exception):
    """What was asked cannot be done at all; the message is one plain line for the user (exit code 2 of a command)."""


class Severity(StrEnum):
    """How much a finding weighs.

    ERROR: the document must not be issued. WARNING: it may be issued with a recorded waiver.
    NOTE: for information, or the sources do not hold enough to decide.
    """

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"

    @property
    def weight(self) -> int:
        """Larger is worse."""
        return {Severity.ERROR: 3, Severity.WARNING: 2, Severity.NOTE: 1}[self]


@dataclass(frozen=True, slots=True)
class Place:
    """A stretch of one line in a source file.

    `file` is relative to the project folder, with forward slashes. `line` and `column` are 1-based;
    `end_column` is the first column after the stretch. `text` is the source line without its line end.
    """

    file: str
    line: int
    column: int
    end_column: int
    text: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to put right: where, what, why, what to do, and on whose word.

    `id` is the family and number of the rule. `path` addresses the value by ids (`systems.cab.layers.primer.film.max`),
    empty where the file could not be read that far. `source` names the document the judgement rests on. `cause` is the same
    text for findings of one rule that have one cause, empty where a finding stands for itself. What another record states
    (`carried_over`) is told after what that one states.
    """

    id: str
    severity: Severity
    place: Place
    path: str
    what: str
    why: str = ""
    remedy: str = ""
    source: str = ""
    cause: str = ""
    carried_over: bool = False


@dataclass(frozen=True, slots=True)
class Told:
    """What is told once: a finding, and the findings of the same rule, weight, remedy and cause that stand after it."""

    finding: Finding
    also: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class NotJudged:
    """Addresses of records that no rule, or not every rule, could judge. `because` says why, in words that go on from
    `not judged` or, where some rules did judge them (`in_part`), `not judged in full`."""

    addresses: tuple[str, ...]
    because: str
    in_part: bool


@dataclass(frozen=True, slots=True)
class Report:
    """The findings of one run in reading order: by file, line, column, then id. Each place has its own; `told` folds them.

    `not_judged` says what could not be judged, or not in full.
    """

    findings: tuple[Finding, ...] = ()
    not_judged: tuple[NotJudged, ...] = ()

    @classmethod
    def of(cls, findings: Iterable[Finding], not_judged: Iterable[NotJudged] = ()) -> Report:
        """Sorted, each finding once."""
        unique = dict.fromkeys(findings)
        return cls(tuple(sorted(unique, key=_order)), tuple(not_judged))

    def __iter__(self) -> Iterator[Finding]:
        return iter(self.findings)

    def __len__(self) -> int:
        return len(self.findings)

    def told(self) -> tuple[Told, ...]:
        """One entry a cause, in the order of the first finding of each."""
        groups: dict[tuple[object, ...], list[Finding]] = {}
        for number, finding in enumerate(self.findings):
            one = (finding.id, finding.severity, finding.remedy, finding.cause) if finding.cause else (number,)
            groups.setdefault(one, []).append(finding)
        return tuple(Told(first, tuple(also)) for first, *also in groups.values())

    def count(self, severity: Severity) -> int:
        """How many causes of this weight there are."""
        return sum(entry.finding.severity is severity for entry in self.told())

    def at_or_above(self, severity: Severity) -> tuple[Finding, ...]:
        return tuple(f for f in self.findings if f.severity.weight >= severity.weight)


def _order(finding: Finding) -> tuple[object, ...]:
    place = finding.place
    return place.file, place.line, place.column, finding.id, finding.carried_over, finding.path, finding.what
