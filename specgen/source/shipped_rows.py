"""The rows of a data file that ships with the program, read line by line: a tenth of the time of the library, which makes a record of
every cell.

Called by `reader.read_shipped`. What is not as simple as nearly every row is, is left to the library; a test reads every such file
in full as well and compares.
"""

from __future__ import annotations

import re
from collections.abc import Callable

_ROWS = "\nrows:\n"
# in quotes without an escape, or bare: beginning with a letter or figure and without a sign that could mean anything else
_CELL = r""" *(?:"([^"\\\n]*)"|'([^'\n]*)'|(\w[^\[\]{},:#"'\\\n]*?)) *"""
_PAIR = rf" *(\w+):(?= ){_CELL}"
_SIMPLE = {"[": (re.compile(rf"{_CELL}(?:,{_CELL})*"), "]"), "{": (re.compile(rf"{_PAIR}(?:,{_PAIR})*"), "}")}
_CELLS, _PAIRS = re.compile(rf"{_CELL}(?:,|$)"), re.compile(rf"{_PAIR}(?:,|$)")


def parted(text: str, read_one: Callable[[str], object]) -> tuple[str, list[object]] | None:
    """What stands before the rows, and each row; None where they are not one a line. `read_one` reads what is not simple."""
    head, found, rest = text.partition(_ROWS)
    if not found:
        return None
    rows: list[object] = []
    for line in rest.splitlines():
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        opens = line[4:5]
        if not line.startswith("  - ") or opens not in _SIMPLE:
            return None
        simple, closes = _SIMPLE[opens]
        if not line.endswith(closes):
            return None
        within = line[5:-1]
        if simple.fullmatch(within) is None:
            rows.append(read_one(line[4:]))
        elif opens == "[":
            rows.append([double or single or bare for double, single, bare in _CELLS.findall(within)])
        else:
            rows.append({key: double or single or bare for key, double, single, bare in _PAIRS.findall(within)})
    return f"{head}\n", rows
