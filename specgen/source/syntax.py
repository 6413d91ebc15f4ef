"""Says in plain words what an author got wrong where the YAML parser could not go on.

Called by `reader`. A parser's own words name what it hoped for next, which is seldom what is wrong; so the judgement is
made from the shape of the line. Where the line can be made harmless without moving anything, the mended line is handed
back, and the reader goes on to find the next fault.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from specgen.source.builder import short

_COMMENT = re.compile(r"\s+#.*$|\s+$")
_UNSPACED_KEY = re.compile(r"\s*(?:-\s+)*([\w-]+:)(?=\S)")
_ENDS_IN_BRACKETS = re.compile(r"[,\]}]")
_SIGN_NAMES = {
    "%": "a percent sign",
    "@": "an at sign",
    "`": "a backquote",
    "*": "a star",
    "&": "an ampersand",
    "!": "an exclamation mark",
    ",": "a comma",
    "?": "a question mark followed by a space",
    "]": "a closing bracket",
    "}": "a closing brace",
}


@dataclass(frozen=True, slots=True)
class Last:
    """The last thing read before the trouble: `scalar`, `alias`, `end` (of a group) or `other`, and its stretch."""

    kind: str
    quoted: bool
    start: tuple[int, int]
    end: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Trouble:
    """Where the parser gave up and what it said; lines and columns 0-based."""

    problem: str
    line: int
    column: int
    context: str
    context_line: int
    context_column: int
    last: Last


@dataclass(frozen=True, slots=True)
class Explained:
    """The fault behind a trouble: id, words, 0-based stretch, and the lines that let reading go on (or None)."""

    id: str
    what: str
    line: int
    start: int
    end: int
    mended: tuple[tuple[int, str], ...] | None = None


def explain(trouble: Trouble, lines: Sequence[str]) -> Explained:
    """The fault an author most likely made. `lines` are the whole file as the parser got it."""
    return _Case(trouble, lines).judge()


def _open_brackets(text: str) -> bool:
    """Whether a bracket stands open at the end of this much of a line."""
    return text.count("[") + text.count("{") > text.count("]") + text.count("}")


class _Case:
    """One trouble with the lines it happened in."""

    def __init__(self, trouble: Trouble, lines: Sequence[str]) -> None:
        self.trouble = trouble
        self.lines = lines
        self.line = trouble.line
        self.column = trouble.column
        self.text = self._text(trouble.line)
        self.lead = len(self.text) - len(self.text.lstrip())

    def judge(self) -> Explained:
        problem, context = self.trouble.problem, self.trouble.context
        if "nesting depth" in problem:
            return Explained("SRC020", "This is nested far too deep.", self.line, self.column, self.column + 1)
        if "escape" in problem or "escape" in context:
            return self._escape()
        if "unexpected end of stream" in problem or "document indicator" in problem:
            return self._open_quote(self.trouble.context_line, self.trouble.context_column)
        if "block scalar" in context:
            line, column = self.trouble.context_line, self.trouble.context_column
            written = short(self._text(line)[column:])
            return self._value(
                "SRC025", f"`{written}` is read as the beginning of a text of several lines.", line, column
            )
        if "scanning a" in context and "simple key" not in context and "quoted" not in context:
            return self._sign(self.trouble.context_line, self.trouble.context_column)
        if "flow" in context:
            return self._brackets()
        if "cannot start any token" in problem or "node content" in problem or "mapping keys are not" in problem:
            return self._sign(self.line, self.column)
        if "mapping values are not" in problem:
            return self._second_colon()
        if "sequence entries are not" in problem:
            what = "A list entry begins in the line of its key."
            return self._value("SRC034", what, self.line, self.column)
        if "could not find expected ':'" in problem:
            return self._no_colon(self.trouble.context_line)
        if "document start" in problem:
            return self._left_over()
        if self.column > self.lead:
            return self._after_value()
        return self._misplaced()

    def _text(self, line: int) -> str:
        return self.lines[line] if 0 <= line < len(self.lines) else ""

    def _value(self, id: str, what: str, line: int, column: int) -> Explained:
        """A fault of the value from here to the end of its line; mended by a harmless word of the same length."""
        text = self._text(line)
        end = max(len(_COMMENT.sub("", text[column:])) + column, column + 1)
        if _open_brackets(text[:column]) and (closing := _ENDS_IN_BRACKETS.search(text, column + 1, end)):
            end = closing.start()
            return Explained(id, what, line, column, end, ((line, text[:column] + "x" * (end - column) + text[end:]),))
        return Explained(id, what, line, column, end, ((line, text[:column] + "x" * (end - column)),))

    def _sign(self, line: int, column: int) -> Explained:
        text = self._text(line)
        sign = text[column : column + 1]
        if sign in ("[", "{"):
            return self._value("SRC042", "The brackets begin here and cannot be read.", line, column)
        if sign not in _SIGN_NAMES:
            return self._unknown()
        found = self._value("SRC026", "", line, column)
        return replace(found, what=f"The value begins with {_SIGN_NAMES[sign]}: `{short(text[column : found.end])}`.")

    def _escape(self) -> Explained:
        at = self.text.rfind("\\", 0, self.column + 1)
        if at < 0:
            return self._unknown()
        what = f"`{short(self.text[at : at + 2])}` within double quotes is not a code with a meaning."
        mended = self.text[:at] + "x" + self.text[at + 1 :]
        return Explained("SRC032", what, self.line, at, at + 2, ((self.line, mended),))

    def _open_quote(self, line: int, column: int) -> Explained:
        sign = "single" if self._text(line)[column : column + 1] == "'" else "double"
        return self._value("SRC030", f"The {sign} quote that begins here is not closed in this line.", line, column)

    def _brackets(self) -> Explained:
        line, column = self.trouble.context_line, self.trouble.context_column
        text = self._text(line)
        if text[column : column + 1] not in ("[", "{"):
            # the parser names the entry, not the brackets around it
            column = max(text.rfind("[", 0, column), text.rfind("{", 0, column))
            if column < 0:
                return self._unknown()
        if text.startswith("{{", column):
            return self._value("SRC028", "The value begins with {{, which opens a group of keys.", line, column)
        closing = {"[": "]", "{": "}"}.get(text[column : column + 1], "]")
        if self.line == line and closing in text[self.column :]:
            found = short(self.text[self.column : self.column + 12]) or "the end of the line"
            what = f"The brackets cannot be read from `{found}` on."
            whole = self._value("SRC042", what, line, column)
            return Explained("SRC042", what, line, self.column, self.column + 1, whole.mended)
        what = f"The bracket that begins here is not closed by {closing}."
        whole = self._value("SRC031", what, line, column)
        # what stands deeper below may be the rest of the brackets: it cannot be told from a group of keys
        deeper = self._indent_below(line) > len(text) - len(text.lstrip())
        return Explained("SRC031", what, line, column, whole.end, None if deeper else whole.mended)

    def _indent_below(self, line: int) -> int:
        for text in self.lines[line + 1 :]:
            if text.strip() and not text.lstrip().startswith("#"):
                return len(text) - len(text.lstrip())
        return -1

    def _second_colon(self) -> Explained:
        last = self.trouble.last
        start_line, start = last.start
        if last.kind == "scalar" and start_line == self.line:
            if last.quoted:
                return self._behind_quote()
            what = f"`{short(self.text[start:])}` contains a colon followed by a space."
            return self._value("SRC027", what, self.line, start)
        if last.kind == "scalar" and not last.quoted and start_line < self.line:
            above = self._text(start_line)
            if not above[:start].strip():
                # text on a line of its own with a key below it: it was meant as a key as well
                return self._no_colon(start_line)
            what = f"`{short(self.text)}` is indented further, though the value above it is complete."
            return self._indentation(what)
        if last.kind == "scalar" and last.quoted:
            return self._open_quote(*last.start)
        return self._unknown()

    def _indentation(self, what: str) -> Explained:
        end = max(len(_COMMENT.sub("", self.text)), self.lead + 1)
        return Explained("SRC033", what, self.line, self.lead, end)

    def _no_colon(self, line: int) -> Explained:
        text = self._text(line)
        lead = len(text) - len(text.lstrip())
        end = max(len(_COMMENT.sub("", text)), lead + 1)
        if text[lead : lead + 1] in ("'", '"') and text.count(text[lead]) % 2:
            return self._open_quote(line, lead)
        found = _UNSPACED_KEY.match(text)
        if found:
            start, stop = found.span(1)
            mended = text[:stop] + " " + text[stop + 1 :]
            what = f"`{short(found.group(1))}` has no space after its colon."
            return Explained("SRC024", what, line, start, stop, ((line, mended),))
        # what stands deeper below would hang in the air without a key, so one is made of the line itself
        mended = (
            text[: max(end - 1, lead)] + ":" if self._indent_below(line) > lead else " " * lead + "#" + text[lead + 1 :]
        )
        return Explained("SRC035", f"`{short(text)}` has no colon.", line, lead, end, ((line, mended),))

    def _left_over(self) -> Explained:
        """The file's content ended before the file did."""
        first = next((n for n, t in enumerate(self.lines) if t.strip() and not t.lstrip().startswith("#")), self.line)
        text = self._text(first)
        lead = len(text) - len(text.lstrip())
        if lead:
            what = "The first line is indented further than the lines below that belong to it."
            return Explained("SRC033", what, first, lead, len(_COMMENT.sub("", text)))
        return self._after_value() if self.column > self.lead else self._no_colon(self.line)

    def _behind_quote(self) -> Explained:
        start = self.trouble.last.start[1]
        rest = _COMMENT.sub("", self.text)
        what = f"`{short(self.text[self.column : len(rest)])}` is after the closing quote."
        whole = self._value("SRC029", what, self.line, start)
        return Explained("SRC029", what, self.line, self.column, max(len(rest), self.column + 1), whole.mended)

    def _after_value(self) -> Explained:
        """Something stands in this line after a value that is already complete."""
        last = self.trouble.last
        if last.kind == "scalar" and last.quoted:
            if last.start[0] < self.line:
                return self._open_quote(*last.start)
            return self._behind_quote()
        if last.kind == "alias" and last.start[0] == self.line:
            return self._sign(*last.start)
        if last.kind == "end" and last.end[0] == self.line:
            return self._behind_brackets()
        return self._unknown()

    def _behind_brackets(self) -> Explained:
        opening = re.match(r"(?:\s|-\s+)*(?:[^\s\[{#'\"][^\[{#'\"]*?:\s+)?([\[{])", self.text)
        rest = max(len(_COMMENT.sub("", self.text)), self.column + 1)
        what = f"`{short(self.text[self.column : rest])}` is after the closing bracket."
        if not opening:
            return Explained("SRC029", what, self.line, self.column, rest)
        start = opening.start(1)
        if self.text.startswith("{{", start):
            return self._value("SRC028", "The value begins with {{, which opens a group of keys.", self.line, start)
        whole = self._value("SRC029", what, self.line, start)
        return Explained("SRC029", what, self.line, self.column, rest, whole.mended)

    def _misplaced(self) -> Explained:
        """A line that begins where neither the list nor the group above it goes on."""
        dash = re.match(r"-(\s|$)", self.text[self.lead :]) is not None
        in_list = "collection" in self.trouble.context
        end = max(len(_COMMENT.sub("", self.text)), self.lead + 1)
        if self.text.startswith(":", self.lead):
            return Explained("SRC018", "The colon has no key in front of it.", self.line, self.lead, self.lead + 1)
        if self.column == self.trouble.context_column and dash != in_list:
            what = "A list entry is among keys." if dash else "A key is among the entries of a list."
            return Explained("SRC034", what, self.line, self.lead, end)
        if self.text[self.lead : self.lead + 1] in ("]", "}"):
            return self._sign(self.line, self.lead)
        return self._indentation(f"`{short(self.text)}` lines up with nothing above it.")

    def _unknown(self) -> Explained:
        end = max(len(_COMMENT.sub("", self.text)), self.column + 1)
        return Explained("SRC036", "The line cannot be understood from here on.", self.line, self.column, end)
