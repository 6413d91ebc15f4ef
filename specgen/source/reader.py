"""Reads one YAML source into a tree of text with places, and notes every fault it can find in one run.

Called by `project` and by commands that check a single file. The only module that imports yaml. Events are taken from
the parser, so nothing is resolved or constructed: every value stays text, no alias is expanded, no tag is obeyed.
"""

from __future__ import annotations

import re
import stat
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml

from specgen.findings import Finding, Place, Severity
from specgen.source.builder import TooManyNodesError, TreeBuilder, short
from specgen.source.characters import COLLECT_LIMIT, FILE_LIMIT, Characters, decode, place_in
from specgen.source.faults import fault
from specgen.source.shipped_rows import parted
from specgen.source.syntax import Explained, Last, Trouble, explain
from specgen.source.tree import Mapping, Mark, Node, Scalar, Sequence, SourceFile

# the parser written in C reads ten times faster; PyYAML falls back to its own where it was built without
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_BASE_LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class _ShippedLoader(_BASE_LOADER):  # type: ignore[misc]  # which of the two it is depends on how PyYAML was built
    """Makes nodes and asks nobody what type a text might be.

    The loader asks so three times a node; what answers is written in C, takes whatever it is given and returns nothing but "".
    """

    resolve = descend_resolver = ascend_resolver = "".format


FINDING_LIMIT = 500
_KEPT = 64  # files
_MENDS = 20
_REREAD_LIMIT = 4 * FILE_LIMIT
_DOCUMENT = re.compile(r"(---|\.\.\.)(?=\s|$)")
_DIRECTIVE = re.compile(r"%[A-Za-z]")
# a line at the margin begins a new part of the file unless it closes a bracket or goes on with a list
_CONTINUES = re.compile(r"[\s#\]}]|[-:](?:\s|$)|$")


def read_file(path: Path, name: str) -> tuple[SourceFile, list[Finding]]:
    """The file at `path`, called `name` in findings. What cannot be opened is a finding (SRC002), not an exception."""
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            # a pipe would keep us waiting for ever
            raise OSError("it is not an ordinary file")
        with path.open("rb") as stream:
            raw = stream.read(FILE_LIMIT + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        what = f"The file cannot be opened: {reason}."
        return SourceFile(name, (), None), [fault("SRC002", what, Place(name, 1, 1, 1))]
    return read_text(raw, name)


def read_text(raw: bytes, name: str) -> tuple[SourceFile, list[Finding]]:
    """The bytes of one file as a SourceFile and the faults found in it, in the order of the file. Never raises.

    The root is None where the file could not be read to its end. A range that several projects share is read once.
    """
    file, findings = _read(raw)
    return replace(file, name=name), [replace(one, place=replace(one.place, file=name)) for one in findings]


@lru_cache(maxsize=_KEPT)
def _read(raw: bytes, name: str = "") -> tuple[SourceFile, list[Finding]]:
    characters = decode(raw, name)
    if not characters.whole:
        findings = _bounded(characters.findings, name, characters.shown)
        return SourceFile(name, tuple(characters.shown), None), findings
    reading = _Reading(name, characters)
    root = reading.run()
    file = SourceFile(name, tuple(characters.shown), root, reading.nodes)
    return file, _bounded(reading.findings, name, characters.shown)


def too_large(name: str) -> tuple[SourceFile, list[Finding]]:
    """What `read_text` gives for a file past FILE_LIMIT whose bytes nobody wants to hold."""
    return SourceFile(name, (), None), [fault("SRC001", "The file is larger than 1 MiB.", Place(name, 1, 1, 1))]


def read_shipped(raw: bytes) -> object:
    """Dicts, lists and texts of a data file that ships with the program.

    Without places and without a search for faults, which takes eight times as long, and rows that are simple line by line: a test
    reads every such file with `read_text` as well and compares.
    """
    found = parted(raw.decode("utf-8"), _shipped)
    if found is None:
        return _shipped(raw)
    head, rows = found
    entries = _shipped(head)
    return {**entries, "rows": rows} if isinstance(entries, dict) else _shipped(raw)


def _shipped(text: str | bytes) -> object:
    loader = _ShippedLoader(text)
    try:
        return _held(loader.get_single_node())
    finally:
        loader.dispose()


def _held(node: yaml.Node) -> object:
    if isinstance(node, yaml.MappingNode):
        return {key.value: _held(value) for key, value in node.value}
    return [_held(item) for item in node.value] if isinstance(node, yaml.SequenceNode) else node.value


def _bounded(findings: list[Finding], name: str, lines: list[str]) -> list[Finding]:
    ordered = sorted(dict.fromkeys(findings), key=lambda f: (f.place.line, f.place.column, f.id))
    if len(ordered) <= FINDING_LIMIT:
        return ordered
    place = ordered[FINDING_LIMIT].place
    what = f"The faults from line {place.line} on are not listed."
    return [*ordered[:FINDING_LIMIT], fault("SRC037", what, place)]


class _Reading:
    """One run over one file."""

    def __init__(self, name: str, characters: Characters) -> None:
        self.name = name
        self.shown = characters.shown
        self.lines = characters.parsed
        self.characters = characters
        self.findings = list(characters.findings)
        self.quoted: list[tuple[tuple[int, int], tuple[int, int]]] = []
        self.left: list[Trouble] = []
        self.spent = 0
        self.broken = False
        self.nodes = 0

    def run(self) -> Node | None:
        documents = self._documents()
        if self.characters.tabs:
            self._restore_tabs(documents)
        roots = [root for first, last in documents if (root := self._document(first, last)) is not None]
        self._note_tabs()
        for trouble in self.left:
            caused_by_tab = bool(self.characters.tab_indented)
            self._explained(explain(trouble, self.lines), tabs=caused_by_tab, certain=not self._errors())
        if self.broken:
            return None
        if not roots:
            last = max((n for n, line in enumerate(self.shown) if line.strip()), default=0)
            end = len(self.shown[last]) if self.shown else 0
            if not any(f.severity is Severity.ERROR for f in self.findings):
                self._note("SRC011", "The file is empty.", last, 0, end)
            return None
        root = roots[0]
        if isinstance(root, Mapping):
            return root
        self._not_a_mapping(root)
        return None

    def _note(self, id: str, what: str, line: int, start: int, end: int) -> None:
        self.findings.append(fault(id, what, place_in(self.name, self.shown, line, start, end)))

    def _documents(self) -> list[tuple[int, int]]:
        """The stretches of lines between document lines; those and the directives are blanked after a finding."""
        documents, begin, content = [], 0, False
        for number, line in enumerate(self.lines):
            if line[:1] == "%" and _DIRECTIVE.match(line):
                self._note("SRC010", f"`{short(line)}` is an instruction to the reader.", number, 0, len(line.rstrip()))
                self.lines[number] = ""
            elif line[:1] in ("-", ".") and (found := _DOCUMENT.match(line)):
                if found.group(1) == "...":
                    self._note("SRC009", "`...` ends the document here.", number, 0, 3)
                elif content:
                    self._note("SRC009", "`---` begins another document here.", number, 0, 3)
                if content:
                    documents.append((begin, number))
                    begin = number
                    content = False
                self.lines[number] = "   " + line[3:]
                content = content or bool(line[3:].split("#")[0].strip())
            elif not content and line.strip() and not line.lstrip().startswith("#"):
                content = True
        documents.append((begin, len(self.lines)))
        return documents

    def _restore_tabs(self, documents: list[tuple[int, int]]) -> None:
        """Tabs within quotes are text: a first reading shows where quotes stand, and those tabs are put back."""
        for first, last in documents:
            builder = self._builder()
            self._parse(first, last, builder)
            self.quoted += builder.quoted
        for number in self.characters.tabs:
            line = self.shown[number]
            signs = list(self.lines[number])
            for at in (n for n, sign in enumerate(line) if sign == "\t" and self._in_quotes(number, n)):
                signs[at] = "\t"
            self.lines[number] = "".join(signs)
        self.quoted.clear()

    def _in_quotes(self, line: int, column: int) -> bool:
        # the stretches come in the order of the file and never overlap
        before = bisect_right(self.quoted, (line, column), key=lambda stretch: stretch[0])
        return before > 0 and (line, column) < self.quoted[before - 1][1]

    def _note_tabs(self) -> None:
        for number in self.characters.tabs:
            found = [n for n, sign in enumerate(self.shown[number]) if sign == "\t" and not self._in_quotes(number, n)]
            if found:
                more = f" {len(found) - 1} more in this line." if len(found) > 1 else ""
                where = "in the indentation" if number in self.characters.tab_indented else "outside quotes"
                self._note("SRC007", f"A tab stands {where}.{more}", number, found[0], found[0] + 1)

    def _document(self, first: int, last: int) -> Node | None:
        """The tree of one document. If the parser gives up, each part of it is read again by itself."""
        builder = self._builder()
        trouble = self._parse(first, last, builder)
        if trouble is None:
            self._keep(builder)
            return builder.root
        self.broken = True
        before = len(self.findings)
        keys: dict[str, Mark] = {}
        starts = [n for n in range(first, last) if not _CONTINUES.match(self.lines[n])]
        if not starts or any(line.strip() for line in self._content(first, starts[0])):
            starts.insert(0, first)
        for begin, end in zip(starts, [*starts[1:], last], strict=True):
            self._part(begin, end, keys)
            if len(self.findings) > COLLECT_LIMIT:
                break
        if not any(f.severity is Severity.ERROR for f in self.findings[before:]):
            # the parts are sound one by one, so it is how they stand together
            self.left.append(trouble)
        return None

    def _content(self, first: int, last: int) -> Iterator[str]:
        return (line for line in self.lines[first:last] if not line.lstrip().startswith("#"))

    def _errors(self) -> bool:
        return any(f.severity is Severity.ERROR for f in self.findings)

    def _part(self, first: int, last: int, keys: dict[str, Mark]) -> None:
        """Reads the lines of one part, mending what stops the parser, until it is through or past mending."""
        size = sum(map(len, self.lines[first:last])) + last - first
        seen: set[tuple[str, int, int]] = set()
        while True:
            builder = self._builder()
            trouble = self._parse(first, last, builder)
            if trouble is None:
                self._keep(builder)
                self._join(builder.root, keys, {line for _, line, _ in seen})
                return
            found = explain(trouble, self.lines)
            spot = (found.id, found.line, found.start)
            # brackets refused for their depth end in the parser's own limit: that is the same fault
            deep = found.id == "SRC020" and any(f.id == "SRC020" for f in builder.findings)
            if spot not in seen and not deep:
                self._explained(found, tabs=any(first <= n < last for n in self.characters.tab_indented))
            self.spent += size
            mendable = found.mended is not None and spot not in seen and first <= found.line < last
            if not mendable or len(seen) >= _MENDS or self.spent > _REREAD_LIMIT:
                break
            seen.add(spot)
            for line, text in found.mended or ():
                self.lines[line] = text
        self._keep(builder)

    def _join(self, root: Node | None, keys: dict[str, Mark], told: set[int]) -> None:
        """Checks a part that could be read against those before it; of the lines `told` enough is said already."""
        if isinstance(root, Mapping):
            for key, mark in root.keys.items():
                earlier = keys.setdefault(key, mark)
                if earlier is not mark:
                    what = f"`{short(key)}` is in line {earlier.line} and again in line {mark.line}."
                    self._note("SRC017", what, mark.line - 1, mark.column - 1, mark.end_column - 1)
        elif isinstance(root, Scalar):
            if root.mark.line - 1 in told or self._faulted(root.mark.line):
                return
            end = len(self.shown[root.mark.line - 1].rstrip())
            what = f"`{short(self.shown[root.mark.line - 1])}` has no colon."
            self._note("SRC035", what, root.mark.line - 1, root.mark.column - 1, end)
        elif isinstance(root, Sequence):
            self._not_a_mapping(root)

    def _faulted(self, line: int) -> bool:
        return any(f.severity is Severity.ERROR and f.place.line == line for f in self.findings)

    def _not_a_mapping(self, root: Node) -> None:
        mark = root.mark
        if isinstance(root, Scalar):
            if self._faulted(mark.line) or any(f.id == "SRC024" for f in self.findings):
                return
            what = "The file contains one piece of text and no key."
        else:
            what = "The file begins with a list, not with a key."
        self._note("SRC012", what, mark.line - 1, mark.column - 1, mark.end_column - 1)

    def _explained(self, found: Explained, tabs: bool = False, certain: bool = False) -> None:
        """A fault of syntax, unless a bad character in the same line, or a tab in the indentation, is its cause."""
        if certain or not (tabs or found.line in self.characters.faulty):
            self._note(found.id, found.what, found.line, found.start, found.end)

    def _builder(self) -> TreeBuilder:
        return TreeBuilder(self.name, self.shown, self.lines, bool(self.characters.tabs))

    def _keep(self, builder: TreeBuilder) -> None:
        self.findings += builder.findings
        self.quoted += builder.quoted
        self.nodes += builder.nodes

    def _parse(self, first: int, last: int, builder: TreeBuilder) -> Trouble | None:
        """Feeds the lines `first` to `last` (not included) to the builder; the trouble, if the parser gives up."""
        loader = _LOADER("\n".join(self.lines[first:last]) + "\n")
        latest: Any = None
        next_event, word, scalar, stream_end = loader.get_event, builder.word, yaml.ScalarEvent, yaml.StreamEndEvent
        try:
            while True:
                event = next_event()
                kind = type(event)
                # what nearly every event of a file is goes the shortest way
                if kind is scalar and not event.style and event.anchor is None and event.tag is None:
                    start, end = event.start_mark, event.end_mark
                    line, column = start.line, start.column
                    if column > 0 and line == end.line:
                        word(event.value, line + first, column, end.column)
                        latest = event
                        continue
                elif event is None or kind is stream_end:
                    return None
                _feed(event, builder, first)
                latest = event
        except TooManyNodesError:
            self.broken = True
            return None
        except yaml.YAMLError as error:
            return _trouble(error, latest, first)
        finally:
            loader.dispose()


def _feed(event: Any, builder: TreeBuilder, first: int) -> None:
    """Hands one event to the builder. Anchors and tags are told by the event, their places by the line."""
    kind = type(event)
    if kind is yaml.ScalarEvent:
        start, end = event.start_mark, event.end_mark
        has_property = event.anchor is not None or event.tag is not None
        spots = (start.line + first, start.column), (end.line + first, end.column)
        builder.scalar(event.value, event.style or "", *spots, has_property)
    elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
        start = event.start_mark
        has_property = event.anchor is not None or event.tag is not None
        spot = (start.line + first, start.column)
        builder.open(kind is yaml.MappingStartEvent, bool(event.flow_style), spot, has_property)
    elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
        builder.close()
    elif kind is yaml.AliasEvent:
        start, end = event.start_mark, event.end_mark
        builder.alias(event.anchor, (start.line + first, start.column), (end.line + first, end.column))


def _trouble(error: yaml.YAMLError, latest: Any, first: int) -> Trouble:
    if not isinstance(error, yaml.MarkedYAMLError):
        # a character the parser refuses; those are replaced before it sees them
        return Trouble(str(error), first, 0, "", first, 0, Last("other", False, (first, 0), (first, 0)))
    kinds = {
        yaml.ScalarEvent: "scalar",
        yaml.AliasEvent: "alias",
        yaml.MappingEndEvent: "end",
        yaml.SequenceEndEvent: "end",
    }
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + first, mark.column) if mark else (first, 0)
    context = error.context_mark
    above, beside = (context.line + first, context.column) if context else (line, column)
    nowhere = Last("other", False, (first, 0), (first, 0))
    if latest is None:
        last = nowhere
    else:
        start, end = latest.start_mark, latest.end_mark
        quoted = getattr(latest, "style", None) in ("'", '"')
        spots = (start.line + first, start.column), (end.line + first, end.column)
        last = Last(kinds.get(type(latest), "other"), quoted, *spots)
    return Trouble(error.problem or "", line, column, error.context or "", above, beside, last)
