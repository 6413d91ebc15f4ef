"""What a source file holds before anyone has judged it: text, with the place where each piece of text stands.

Made by `reader`; read by `places` and by the model's parser. It knows nothing of YAML: a value is the text the author
wrote, never a number, a date or a yes/no, because guessing those is how `1:30` becomes 90. The two records of which a large
folder makes a million are named tuples, which are made twice as fast as frozen dataclasses.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple


class Mark(NamedTuple):
    """A stretch of one line. All three are 1-based; `end_column` is the first column after the stretch.

    What runs over several lines is marked to the end of its first line.
    """

    line: int
    column: int
    end_column: int


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
