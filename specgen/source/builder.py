"""Builds the tree of one file from the parser's events and notes every fault that reading can survive.

Called by `reader`, one call an event. Lines and columns come in 0-based, as the parser gives them, and leave as Marks.
The builder keeps its own stack, so that no nesting can exhaust Python's.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import NoReturn

from specgen.findings import Finding
from specgen.source.characters import COLLECT_LIMIT, first_refused, named, place_in, printable
from specgen.source.faults import fault
from specgen.source.tree import BITS, Mapping, Mark, Node, Scalar, Sequence

DEPTH_LIMIT = 20
NODE_LIMIT = 200_000
TEXT_LIMIT = 4_000

_NOTHING = frozenset({"~", "null", "Null", "NULL"})
# Words `word` leaves to `scalar`, which has something to say on them.
_WATCHED = _NOTHING | {"", "<<"}
_PROPERTY = re.compile(r"\s*([&!][^\s,\[\]{}]*)")
_SWALLOWED = re.compile(r"\s+(#\S.*)")
# lower case only, so that a standard such as ISO8501-1:2007 in a list is left alone
_UNSPACED = re.compile(r"\s*(?:-\s+)*(([a-z_][a-z0-9_]+):)(?!//)\S")
_ADDRESSES = frozenset({"mailto", "tel", "urn", "doi", "http", "https"})
_BEFORE_A_QUESTION = frozenset("[{,")
_QUOTES = ("'", '"')
_BLOCKS = ("|", ">")
_BLOCK_WITH_DIGIT = re.compile(r"[|>][+-]?[0-9]")

_new_mark = int.__new__
Spot = tuple[int, int]


class TooManyNodesError(Exception):
    """Reading must stop here; the finding is already noted."""


@dataclass(slots=True)
class _Open:
    """A mapping or list that has begun and not ended."""

    mark: Mark
    entries: dict[str, Node] | None
    keys: dict[str, Mark] = field(default_factory=dict)
    items: list[Node] = field(default_factory=list)
    key: str | None = None
    key_line: int = -1
    at_key: bool = True
    dropped: bool = False


class TreeBuilder:
    """Feed it the events in order; then `root` is the tree and `findings` what was wrong with it."""

    def __init__(self, name: str, shown: list[str], parsed: list[str], quotes_wanted: bool) -> None:
        self.root: Node | None = None
        self.findings: list[Finding] = []
        self.nodes = 0
        self.quoted: list[tuple[Spot, Spot]] = []
        self._name = name
        self._shown = shown
        self._parsed = parsed
        self._quotes_wanted = quotes_wanted
        self._stack: list[_Open] = []
        # the line of the word before, and whether it holds nothing that `word` leaves to `scalar`
        self._line, self._plain_line = -1, True
        # of a word that stands in a file a thousand times one copy is kept
        self._texts: dict[str, str] = {}

    def note(self, id: str, what: str, line: int, start: int, end: int) -> None:
        """A finding of this kind, unless it lies in a part that is refused as a whole."""
        if not (self._stack and self._stack[-1].dropped) and len(self.findings) < COLLECT_LIMIT:
            self.findings.append(fault(id, what, place_in(self._name, self._shown, line, start, end)))

    def word(self, text: str, line: int, column: int, end_column: int) -> None:
        """One value or key without quotes, on one line and off the margin: what nearly every event of a file is."""
        if line != self._line:
            parsed, self._line = self._parsed[line], line
            self._plain_line = "#" not in parsed and "?" not in parsed
        stack = self._stack
        if not self._plain_line or ":" in text or text in _WATCHED or len(text) > TEXT_LIMIT or not stack:
            self.scalar(text, "", (line, column), (line, end_column), has_property=False)
            return
        self.nodes += 1
        if self.nodes > NODE_LIMIT:
            self._stop(line, column)
        top = stack[-1]
        if top.dropped:
            return
        # Mark(line + 1, column + 1, end_column + 1) without the call: a large folder has a million of them
        mark = _new_mark(Mark, ((line + 1) << BITS | column + 1) << BITS | end_column + 1)
        text = self._texts.setdefault(text, text)
        if top.entries is None:
            top.items.append(Scalar(text, mark, True))
        elif not top.at_key:
            if top.key is not None:
                top.entries[top.key] = Scalar(text, mark, True)
            top.at_key = True
        elif text in top.keys:
            self.nodes -= 1
            self._add(Scalar(text, mark, True))
        else:
            top.keys[text] = mark
            top.key = text
            top.key_line = line
            top.at_key = False

    def scalar(self, text: str, style: str, start: Spot, end: Spot, has_property: bool) -> None:
        """One value or key; `style` is empty or one of `'`, `"`, `|`, `>`."""
        if has_property:
            start = self._properties(start)
        line, column = start
        plain = not style
        if end[0] == line:
            mark = Mark(line + 1, column + 1, end[1] + 1)
        else:
            mark = Mark(line + 1, column + 1, max(len(self._parsed[line].rstrip()), column) + 1)
            if style in _QUOTES:
                self._at_margin(line + 1, end[0])
        if column == 0 and len(self._stack) > 1:
            self._at_margin(line, line)
        if plain:
            text = self._plain(text, start, end, mark)
        else:
            if self._quotes_wanted and style in _QUOTES:
                self.quoted.append((start, end))
            if style == '"' and (refused := first_refused(text)):
                id = "SRC006" if refused.isprintable() or ord(refused) > 0x9F else "SRC005"
                what = f"The text contains {named(refused)}, written as a code with a backslash."
                self.note(id, what, line, column, mark.end_column - 1)
                text = printable(text)
            if style in _BLOCKS and not text.strip() and _BLOCK_WITH_DIGIT.match(self._parsed[line], column):
                written = self._parsed[line][column:].strip()
                what = (
                    f"`{short(written)}` is read as the beginning of a text of several lines, and that text is empty."
                )
                self.note("SRC025", what, line, column, len(self._parsed[line].rstrip()))
        if len(text) > TEXT_LIMIT:
            what = f"The value has {len(text):,} characters; the limit is {TEXT_LIMIT:,}."
            self.note("SRC022", what, line, column, mark.end_column - 1)
        self._add(Scalar(text, mark, plain))

    def alias(self, name: str, start: Spot, end: Spot) -> None:
        """`*name`: refused; an empty value stands in its place."""
        self.note("SRC014", f"`*{short(name)}` refers to a value written elsewhere.", *start, end[1])
        self._add(Scalar("", Mark(start[0] + 1, start[1] + 1, end[1] + 1), True), no_key=True)

    def open(self, mapping: bool, flow: bool, start: Spot, has_property: bool) -> None:
        """A mapping or a list begins."""
        if has_property:
            start = self._properties(start)
        line, column = start
        text = self._parsed[line] if line < len(self._parsed) else ""
        above = self._stack[-1] if self._stack else None
        dropped = above is not None and above.dropped
        if not dropped:
            if flow and text.startswith("{{", column):
                closing = text.find("}}", column)
                self.note(
                    "SRC028",
                    "The value begins with {{, which opens a group of keys.",
                    line,
                    column,
                    closing + 2 if closing > 0 else len(text.rstrip()),
                )
                dropped = True
            elif len(self._stack) >= DEPTH_LIMIT:
                what = f"This is more than {DEPTH_LIMIT} levels deep."
                self.note("SRC020", what, line, column, len(text.rstrip()))
                dropped = True
        self._count(line, column)
        mark = Mark(line + 1, column + 1, max(len(text.rstrip()), column) + 1)
        self._stack.append(_Open(mark, {} if mapping else None, dropped=dropped))

    def close(self) -> None:
        """The innermost mapping or list ends."""
        done = self._stack.pop()
        if done.dropped:
            # its text stands in for it, so that no level above sees a group where a value is meant
            self._add(Scalar("", done.mark, True), no_key=True, counted=True)
        elif done.entries is None:
            self._add(Sequence(tuple(done.items), done.mark), counted=True)
        else:
            self._add(Mapping(done.entries, done.keys, done.mark), counted=True)

    def _count(self, line: int, column: int) -> None:
        self.nodes += 1
        if self.nodes > NODE_LIMIT:
            self._stop(line, column)

    def _stop(self, line: int, column: int) -> NoReturn:
        self._stack.clear()
        self.note("SRC021", f"The file contains more than {NODE_LIMIT:,} keys and values.", line, column, column + 1)
        raise TooManyNodesError

    def _add(self, node: Node, no_key: bool = False, counted: bool = False) -> None:
        if not counted:
            self._count(node.mark.line - 1, node.mark.column - 1)
        if not self._stack:
            self.root = node
            return
        top = self._stack[-1]
        if top.dropped:
            return
        if top.entries is None:
            top.items.append(node)
        elif top.at_key:
            top.key = None if no_key else self._key(top, node)
            top.key_line = node.mark.line - 1
            top.at_key = False
        else:
            if top.key is not None:
                top.entries[top.key] = node
            top.at_key = True

    def _key(self, top: _Open, node: Node) -> str | None:
        """The key's text, or None if the entry is not to be kept."""
        mark = node.mark
        spot = (mark.line - 1, mark.column - 1, mark.end_column - 1)
        if not isinstance(node, Scalar):
            self.note("SRC018", "A list or a group of keys is given where a key is meant.", *spot)
            return None
        if node.text == "":
            # a refused word for nothing has its finding already
            if spot[1] == spot[2] or not node.plain:
                self.note("SRC018", "The key has no name.", spot[0], spot[1], max(spot[2], spot[1] + 1))
            return None
        line = self._parsed[spot[0]]
        before = line[: spot[1]] if "?" in line else ""
        if before and _ends_in_question(before):
            at = before.rindex("?")
            self.note("SRC018", "`? ` announces a key of several lines.", spot[0], at, at + 1)
            return None
        if node.plain and node.text == "<<":
            self.note("SRC016", "`<<` copies keys from another place.", *spot)
            return None
        earlier = top.keys.get(node.text)
        if earlier is not None:
            what = f"`{short(node.text)}` is in line {earlier.line} and again in line {mark.line}."
            self.note("SRC017", what, *spot)
            return None
        top.keys[node.text] = mark
        return node.text

    def _properties(self, start: Spot) -> Spot:
        """Notes the anchor and tag in front of a value and returns where the value itself begins."""
        line, column = start
        text = self._parsed[line]
        at = column
        while found := _PROPERTY.match(text, at):
            word, begin, at = found.group(1), found.start(1), found.end()
            if word[0] == "&":
                what = f"`{short(word)}` gives the value a name for use elsewhere."
                self.note("SRC013", what, line, begin, at)
            else:
                self.note("SRC015", f"`{short(word)}` is a tag.", line, begin, at)
        return line, len(text) - len(text[at:].lstrip()) if text[at:].strip() else at

    def _plain(self, text: str, start: Spot, end: Spot, mark: Mark) -> str:
        """Looks at unquoted text: words for nothing, a comment that swallowed the rest, a missing blank."""
        line, column = start
        if text in _NOTHING:
            self.note("SRC019", f"`{text}` is a null value.", line, column, mark.end_column - 1)
            return ""
        last = self._parsed[end[0]] if end[0] < len(self._parsed) else ""
        # the blanks at the end go first: a pattern that leaves them out goes over a long gap once for each of its blanks
        if "#" in last and (lost := _SWALLOWED.match(last.rstrip(), end[1])):
            what = f"Everything after # is a comment: `{short(lost.group(1))}` is left out."
            self.note("SRC023", what, end[0], *lost.span(1))
        if ":" in text:
            self._missing_blank(start, end)
        return text

    def _missing_blank(self, start: Spot, end: Spot) -> None:
        """`dft:60 um` on a line of its own, or as a list entry, is text; it was most likely meant as a key."""
        top = self._stack[-1] if self._stack else None
        beside_key = top is not None and top.entries is not None and top.key_line == start[0]
        if top is not None and top.entries is not None and top.at_key:
            return
        for line in range(start[0] + beside_key, end[0] + 1):
            found = _UNSPACED.match(self._parsed[line])
            if found and found.group(2) not in _ADDRESSES and (line > start[0] or found.start(1) == start[1]):
                what = f"`{short(found.group(1))}` has no space after its colon."
                self.note("SRC024", what, line, *found.span(1))

    def _at_margin(self, first: int, last: int) -> None:
        """Text or brackets that run on at the left margin look like the next key, and are cut there by the reader
        when it looks for further faults; so they are refused in every file alike."""
        for line in range(first, last + 1):
            text = self._parsed[line] if line < len(self._parsed) else ""
            if text[:1].strip():
                self.note(
                    "SRC033", "What the line above began continues at the left margin.", line, 0, len(text.rstrip())
                )
                return


def _ends_in_question(before: str) -> bool:
    """Whether a key stands behind `? `; only the end is looked at, for one line can hold thousands of keys."""
    told = before.rstrip()
    if len(told) == len(before) or not told.endswith("?"):
        return False
    return len(told) == 1 or told[-2].isspace() or told[-2] in _BEFORE_A_QUESTION


def short(text: str) -> str:
    """Text of the file as it may stand in a message: printable, on one line, at most 40 characters."""
    text = " ".join(printable(text).split())
    return text if len(text) <= 40 else text[:39] + "…"
