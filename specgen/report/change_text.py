"""What changed, as a person reads it at a screen: what became weaker first, safety before all else. Called by `compare`."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from specgen.comparison.changes import Change, Comparison, Effect, FigureMoved, FindingMoved
from specgen.comparison.sentences import reach_text, sentence
from specgen.comparison.tally import by_effect
from specgen.report.as_text import WIDTH
from specgen.report.lines import located, one_line
from specgen.source.characters import printable_name
from specgen.units.locale import counted

MOST = 500
"""So many changes a report for reading lists; JSON holds them all."""

_GROUPS = (
    ("RELAXED", "more is accepted, or less is asked for"),
    ("FOR A PERSON TO DECIDE", "the program cannot order the two sides"),
    ("TIGHTENED", "less is accepted, or more is asked for"),
    ("FACTS", "no requirement; what follows from them is judged"),
    ("EDITORIAL", "nothing that is asked for changed"),
)


def write(found: Comparison, *, old: str, new: str, old_prefix: str, new_prefix: str) -> str:
    """The report. `old` and `new` are the sides as the user named them, the prefixes lead to their files."""
    changes = found.changes
    blocks = [f"{printable_name(old)} -> {printable_name(new)}: {one_line(by_effect(found))}"]
    blocks[1:1] = _listed(
        "NOT READ (what stands in these files is not compared)",
        [f"{side}: {printable_name(file)}" for side, file in found.unread_files],
    )
    errors = {id(entry) for entry in found.new_errors}
    blocks += _listed(
        "ERRORS THAT ARE NEW (they shut every gate)", [_finding(e) for e in found.findings if id(e) in errors]
    )
    blocks += _changes(changes[:MOST], old_prefix, new_prefix)
    if len(changes) > MOST:
        more = len(changes) - MOST
        said = counted("more change is not listed here", "more changes are not listed here", more)
        blocks.append(f"{more} {said}; --format json holds them all.")
    figures = [_figure(entry) for entry in found.figures if entry.is_listed]
    if others := len(found.figures) - len(figures):
        figures.append(
            f"{others} more came or went with these changes; --format json lists {counted('it', 'them', others)}"
        )
    blocks += _listed("FIGURES THAT MOVED", figures)
    blocks += _listed("FINDINGS", [_finding(e) for e in found.findings if id(e) not in errors])
    blocks += _listed("TABLES AND EDITIONS", [f"{entry.name} {entry.kind.value}" for entry in found.tables])
    blocks += _listed(
        "NOT COMPARED (has errors on one side, or may stand in a file that was not read)", list(found.not_compared)
    )
    blocks += _listed(
        "DECISIONS WITHOUT THEIR CHANGE",
        [
            f"{entry.fingerprint} by {entry.who}, {entry.on.isoformat()}: {entry.place}"
            for entry in found.unused_decisions
        ],
    )
    return "\n\n".join(blocks) + "\n"


def group_of(change: Change) -> int:
    """The place of a change among the groups of a report."""
    if change.is_open:
        return 1
    return {Effect.RELAXED: 0, Effect.TIGHTENED: 2, Effect.FACT: 3, Effect.EDITORIAL: 4}[change.weighed]


def _changes(changes: Sequence[Change], old_prefix: str, new_prefix: str) -> Iterator[str]:
    for at, (name, about) in enumerate(_GROUPS):
        held = [change for change in changes if group_of(change) == at]
        if held:
            lines = [line for change in held for line in _change(change, old_prefix, new_prefix)]
            yield "\n".join([f"{name} ({about})", *lines])


def _change(change: Change, old_prefix: str, new_prefix: str) -> list[str]:
    lines = _wrapped(f"{change.concern.value}, {change.weighed.value}: {sentence(change)}", "- ", "  ")
    places = [
        f"{label} {located(prefix, place)}"
        for label, prefix, place in (("old", old_prefix, change.old_place), ("new", new_prefix, change.new_place))
        if place is not None
    ]
    lines += [f"    {place}" for place in places]
    if said := reach_text(change):
        lines += _wrapped(said, "    ", "    ")
    for echo in change.follows:
        lines += _wrapped(f"with it: {sentence(echo)}", "    ", "      ")
    if change.is_open:
        lines.append(f"    fingerprint {change.fingerprint}")
    if change.decision is not None:
        said = f"decision {change.decision.answer.value}, {change.decision.who}, {change.decision.on.isoformat()}: "
        lines += _wrapped(said + change.decision.reason, "    ", "      ")
    return lines


def _figure(entry: FigureMoved) -> str:
    if not entry.old or not entry.new:
        said = f"{entry.name} ({entry.id}) {'is new' if entry.new else 'is gone'}: {entry.old or entry.new}"
    else:
        said = f"{entry.name} ({entry.id}) was {entry.old} and is now {entry.new}"
    causes = [*entry.causes, *(["data withheld by the manufacturer"] if entry.makers_cause else [])]
    where = entry.jobs or entry.products
    stands = ", ".join(where[:3]) + (f" and {len(where) - 3} more" if len(where) > 3 else "")
    return f"{said}; {stands}; from {', '.join(causes[:4]) or 'a cause not found'}" + (" …" if len(causes) > 4 else "")


def _finding(entry: FindingMoved) -> str:
    held = entry.new if entry.new is not None else entry.old
    if held is None:
        raise ValueError("a finding moved from nowhere to nowhere")
    if entry.old is not None and entry.new is not None:
        return f"{held.id} at {held.path}: was {entry.old.severity.value}, is now {entry.new.severity.value}"
    word = "appeared" if entry.new is not None else "vanished"
    return f"{word}: {held.severity.value} {held.id} at {held.path}" + (f": {one_line(held.what)}" if held.what else "")


def _listed(heading: str, lines: Sequence[str]) -> Iterator[str]:
    if lines:
        shown = [text for line in lines[:MOST] for text in _wrapped(line, "- ", "  ")]
        more = [f"- and {len(lines) - MOST} more"] if len(lines) > MOST else []
        yield "\n".join([heading, *shown, *more])


def _wrapped(text: str, first: str, other: str) -> list[str]:
    return textwrap.wrap(
        one_line(text),
        WIDTH,
        initial_indent=first,
        subsequent_indent=other,
        break_long_words=False,
        break_on_hyphens=False,
    )
