"""From the bytes of a file to its lines, and the faults that are found in single characters.

Called by `reader` before anything is parsed. Each refused character is replaced by one other, so that every line and
column stays where the author sees it.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, field

from specgen.findings import Finding, Place
from specgen.source.faults import fault

FILE_LIMIT = 1024 * 1024
LINE_LIMIT = 2_000
# far more than are ever listed, so that the first ones listed are the first ones in the file
COLLECT_LIMIT = 2_000

# C0 and C1 controls but for tab and line ends, the two Unicode line ends, and what is no character at all
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufffe\uffff]")
# soft hyphen, zero-width signs, changes of writing direction, and the tag characters nobody can see
_INVISIBLE = re.compile("[\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\U000e0000-\U000e007f]")
_LOOKS_BLANK = "\u00a0\u2000-\u200a\u202f\u205f\u3000"
# only where a blank divides: in front of the text, after `- `, and right after the colon of a key
_FALSE_BLANK = re.compile(rf"^(?:-?[ \t])*([{_LOOKS_BLANK}]+)|^(?:-?[ \t])*[\w-]+:([{_LOOKS_BLANK}]+)")
_ANY = re.compile(f"{_CONTROL.pattern[:-1]}{_INVISIBLE.pattern[1:-1]}{_LOOKS_BLANK}\t\ufffd]")
_DAMAGED = re.compile("[\udc80-\udcff\ufffd]")
_LINE_END = re.compile("\r\n|\r|\n")

REPLACED = "\ufffd"
_IN_NO_NAME = str.maketrans(dict.fromkeys("\n\r\t", REPLACED))


@dataclass(slots=True)
class Characters:
    """The lines of one file.

    `shown` goes into findings; `parsed` is what the YAML reader gets, with ordinary blanks for tabs and false blanks.
    `faulty` are the 0-based lines with a fault, `tabs` those with a tab, `tab_indented` those with one in front.
    `whole` is False if nothing of it is to be parsed.
    """

    shown: list[str] = field(default_factory=list)
    parsed: list[str] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    faulty: set[int] = field(default_factory=set)
    tabs: list[int] = field(default_factory=list)
    tab_indented: set[int] = field(default_factory=set)
    whole: bool = True


def place_in(name: str, lines: list[str], line: int, start: int, end: int) -> Place:
    """A Place from 0-based line and columns, moved inside the file if a parser's mark lies beyond its end.

    A line over the limit is not carried along: a report would print all of it.
    """
    if not lines:
        return Place(name, 1, 1, 1)
    if line >= len(lines):
        line = len(lines) - 1
        while line and not lines[line].strip():
            line -= 1
        start = end = len(lines[line].rstrip())
    text = lines[line]
    start = min(start, len(text))
    end = min(max(end, start), len(text))
    return Place(name, line + 1, start + 1, end + 1, text if len(text) <= LINE_LIMIT else "")


def printable(text: str) -> str:
    """The text with U+FFFD for every character that must not reach a screen or a page."""
    return _INVISIBLE.sub(REPLACED, _CONTROL.sub(REPLACED, text))


def printable_name(text: str) -> str:
    """The name of a file or folder as it may stand in a line of its own: a line end or tab in it is replaced too."""
    return printable(text).translate(_IN_NO_NAME)


def named(character: str) -> str:
    """`U+202E (right-to-left override)`; control characters have no name of their own."""
    name = unicodedata.name(character, "").lower()
    return f"U+{ord(character):04X}" + (f" ({name})" if name else "")


def first_refused(text: str) -> str | None:
    """The first control or invisible character, for text that came out of an escape such as `\\x07`."""
    found = _CONTROL.search(text) or _INVISIBLE.search(text)
    return found.group() if found else None


def split_lines(text: str) -> list[str]:
    """Lines without their ends; a last line end does not begin another line."""
    lines = _LINE_END.split(text)
    if lines[-1] == "":
        lines.pop()
    return lines


def decode(raw: bytes, name: str) -> Characters:
    """The lines of a file and what is wrong with single characters. Never raises."""
    result = Characters()
    if len(raw) > FILE_LIMIT:
        line = raw.count(b"\n", 0, FILE_LIMIT) + 1
        what = f"The file is larger than 1 MiB: the limit is passed in line {line}."
        result.findings.append(fault("SRC001", what, Place(name, line, 1, 1)))
        result.whole = False
        return result
    wide = _wide_encoding(raw)
    if wide:
        result.findings.append(fault("SRC004", f"The file is saved as {wide}, not as UTF-8.", Place(name, 1, 1, 1)))
        result.whole = False
        return result
    if raw.startswith(b"\xef\xbb\xbf"):
        raw = raw[3:]
    # a byte that is not UTF-8 arrives as a lone surrogate that still tells which byte it was
    result.shown = split_lines(raw.decode("utf-8", errors="surrogateescape"))
    result.parsed = list(result.shown)
    for number, text in enumerate(result.parsed.copy()):
        if _ANY.search(text):
            if len(result.findings) < COLLECT_LIMIT:
                _examine(result, name, number, text)
            else:
                result.shown[number] = printable(text)
                result.parsed[number] = result.shown[number].replace("\t", " ")
        if len(text) <= LINE_LIMIT:
            continue
        # such a line is not parsed: looking along it again for each of its values would take minutes
        result.whole = False
        if len(result.findings) < COLLECT_LIMIT:
            what = f"The line has {len(text):,} characters; the limit is {LINE_LIMIT:,}."
            result.findings.append(
                fault("SRC008", what, place_in(name, result.shown, number, LINE_LIMIT, LINE_LIMIT + 1))
            )
    return result


def _wide_encoding(raw: bytes) -> str | None:
    if raw.startswith((b"\xff\xfe\x00\x00", b"\x00\x00\xfe\xff")):
        return "UTF-32"
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "UTF-16"
    # without a mark in front, every other byte of Latin text is zero
    return "UTF-16" if len(raw) >= 4 and raw.count(0) * 5 >= len(raw) * 2 else None


def _examine(result: Characters, name: str, number: int, line: str) -> None:
    """The character faults of one line, each kind once with its count, and the line mended for printing and parsing."""
    damaged = list(_DAMAGED.finditer(line))
    controls = [m for m in _CONTROL.finditer(line) if not "\udc80" <= m.group() <= "\udcff"]
    invisible = list(_INVISIBLE.finditer(line))
    shown = printable(line)
    result.shown[number] = shown
    mended = shown.replace("\t", " ")

    def report(id: str, what: str, start: int, end: int) -> None:
        result.faulty.add(number)
        result.findings.append(fault(id, what, place_in(name, result.shown, number, start, end)))

    if damaged:
        at = damaged[0].start()
        if line[at] == REPLACED:
            what = "U+FFFD is here: the original character was lost when the file was saved."
        else:
            offset = len(line[:at].encode("utf-8", errors="surrogateescape")) + 1
            what = f"Byte {offset:,} of line {number + 1} is 0x{ord(line[at]) - 0xDC00:02X}, which is not UTF-8."
        report("SRC003", what + _more(damaged), at, at + 1)
    for id, found, text in (
        ("SRC005", controls, "There is the control character {} here."),
        ("SRC006", invisible, "There is the invisible character {} here."),
    ):
        if found:
            at = found[0].start()
            report(id, text.format(named(found[0].group())) + _more(found), at, at + 1)
    false_blank = _FALSE_BLANK.search(shown)
    if false_blank:
        group = 1 if false_blank.group(1) else 2
        start, end = false_blank.span(group)
        report("SRC041", f"{named(shown[start])} is used where a space is meant.", start, end)
        mended = mended[:start] + " " * (end - start) + mended[end:]
    if "\t" in line:
        result.tabs.append(number)
        if "\t" in line[: len(line) - len(line.lstrip(" \t"))]:
            result.tab_indented.add(number)
    result.parsed[number] = mended


def _more(found: list[re.Match[str]]) -> str:
    return f" {len(found) - 1} more in this line." if len(found) > 1 else ""
