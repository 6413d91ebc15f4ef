"""What a source file holds before anyone has judged it: text, with the place where each piece of text stands.

Made by `reader`; read by `places` and by the model's parser. It knows nothing of YAML: a value is the text the author
wrote, never a number, a date or a yes/no, because guessing those is how `1:30` becomes 90. Of the two records a large
folder makes a million: a Scalar is a named tuple, which is made twice as fast as a frozen dataclass, a Mark one whole number, which
takes a third of the room.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

BITS = 24
"""Of a column in a Mark."""
_COLUMN = (1 << BITS) - 1


class Mark(int):
    """A stretch of one line. All three are 1-based; `end_column` is the first column after the stretch.

    What runs over several lines is marked to the end of its first line. A column is below 2 ** 24, sixteen times the size of the
    largest file that is read.
    """

    __slots__ = ()

    def __new__(cls, line: int, column: int, end_column: int) -> Mark:
        # `builder` makes most of them itself, without the call
        return int.__new__(cls, (line << BITS | column) << BITS | end_column)

    @property
    def line(self) -> int:
        return self >> 2 * BITS

    @property
    def column(self) -> int:
        return self >> BITS & _COLUMN

    @property
    def end_column(self) -> int:
        return self & _COLUMN

    def __repr__(self) -> str:
        return f"Mark({self.line}, {self.column}, {self.end_column})"


class FarMark(Mark):
    """A stretch of another file, or of another record, than the one it is met in: `source` is the file, `record` the path of the record
    that states what stands there."""

    source: SourceFile
    record: tuple[str, ...]

    @classmethod
    def of(cls, mark: Mark, source: SourceFile, record: tuple[str, ...]) -> FarMark:
        """The mark with where it is from; a mark that tells that already keeps it."""
        if isinstance(mark, FarMark):
            return mark
        far = int.__new__(cls, mark)
        far.source, far.record = source, record
        return far


class Scalar(NamedTuple):
    """One value as written. `plain` is True for text without quotes (and not in a `|` or `>` block).

    A key with nothing after it (`film:`) is a Scalar with empty text and `plain` True.
    """

    text: str
    mark: Mark
    plain: bool


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with their values, in the order of the file; `keys` says where each key stands."""

    entries: dict[str, Node]
    keys: dict[str, Mark]
    mark: Mark


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list, in the order of the file."""

    items: tuple[Node, ...]
    mark: Mark


Node = Scalar | Mapping | Sequence


@dataclass(frozen=True, slots=True)
class SourceFile:
    """One file as read.

    `name` is relative to the project folder, with forward slashes. `lines` are without line ends; characters that must
    not be printed (control and invisible ones) are replaced in them one for one by U+FFFD, so that columns still count.
    `root` is None if the file holds nothing or could not be read to its end: what is missing then is not known to be
    missing. The reader gives no other root than a Mapping. `nodes` counts its keys and values.
    """

    name: str
    lines: tuple[str, ...]
    root: Node | None
    nodes: int = 0
