"""`specgen new`: an empty source of a kind, every key with what it is for, by the model, so that it cannot drift.

Keys that must be there stand open; a default stands as the value that counts anyway; every other key is a comment.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Mapping, Set
from dataclasses import replace

from specgen.commands.outcome import CannotRunError, Outcome
from specgen.model.based_on import BasedOn
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.outline import Default, Key, outline
from specgen.model.project import Project
from specgen.model.spec import KINDS, LIST_KINDS, SINGULAR

ABOUT = "Print an empty source to begin with: fill what stands open, take the # away from what else you need."

# an open key without a value behind it, and its remark in one column where there is room
_REMARK_AT = 34

# The model lets each item say it instead, but whoever begins a job says it for all; a range alone has no customer.
_STAND_OPEN: Mapping[type[Node], Set[str]] = {
    Job: {"substrate", "preparation", "system"},
    Project: {"customer"},
}


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", metavar="KIND", choices=list(SINGULAR), help=f"one of: {', '.join(SINGULAR)}")
    parser.add_argument(
        "--schema",
        metavar="FILE",
        help="name this file, made by `specgen schema KIND`, on the first line, where YAML editors look for it",
    )


def run(arguments: argparse.Namespace) -> Outcome:
    block = SINGULAR[arguments.kind]
    key = Key(block, "", True, None, (), "", KINDS[block], block != "project")
    if arguments.schema is not None and (not arguments.schema.strip() or not arguments.schema.isprintable()):
        raise CannotRunError("the name after --schema is no file name; name the file the schema is in")
    schema = f"# yaml-language-server: $schema={arguments.schema}\n" if arguments.schema is not None else ""
    head = f"{schema}# A new {arguments.kind}. Fill every key that stands open; take the # away from those you need besides.\n"
    return Outcome(head + "\n".join(_lines(key, 0, None)) + "\n")


def _lines(key: Key, depth: int, struck: int | None) -> Iterator[str]:
    """The lines of one key at a depth in blanks; what may be left out is struck with # at the column `struck`."""
    if struck is None and not key.required and key.default is None:
        struck = depth
    yield _line(key, " " * depth, struck)
    if key.inner is None:
        return
    below = depth + (4 if key.many else 2)
    for number, held in enumerate(_keys(key.inner)):
        stands = replace(held, required=True) if held.name in _STAND_OPEN.get(key.inner, frozenset()) else held
        lines = list(_lines(stands, below, struck))
        if key.many and number == 0:
            # every entry of a list begins with its id
            lines[0] = lines[0][: below - 2 + _mark(struck)] + "- " + lines[0][below + _mark(struck) :]
        yield from lines


def _keys(model: type[Node]) -> tuple[Key, ...]:
    """The keys of a record; of one that may be based on another, how it says so stands behind its id."""
    name, *others = outline(model)
    return (name, *outline(BasedOn), *others) if model in LIST_KINDS.values() else (name, *others)


_MOST_WORDS = 120  # a line of a source is bounded, and its author is to read it


def _mark(struck: int | None) -> int:
    return 0 if struck is None else 2


def _line(key: Key, indent: str, struck: int | None) -> str:
    text = f"{indent}{key.name}:{_value(key.default)}"
    if struck is not None:
        text = f"{text[:struck]}# {text[struck:]}"
    about = _about(key, marked=struck is not None)
    return f"{text:<{_REMARK_AT}}  # {about}" if about else text


def _value(default: Default) -> str:
    if default is None:
        return ""
    return f" [{', '.join(default)}]" if isinstance(default, tuple) else f" {default}"


def _about(key: Key, *, marked: bool) -> str:
    said = key.about
    # words that the remark names already are not listed again
    if key.words and not all(word in said for word in key.words):
        shown = [word for word, _ in zip(key.words, range(_MOST_WORDS), strict=False)]
        left = len(key.words) - len(shown)
        said += f"; one of: {', '.join(shown)}" + (f" and {left} more, other spellings among them" if left else "")
    if key.table:
        said += f"; `specgen explain table:{key.table}` says what each is"
    return f"{said} (must be there)" if marked and key.required and said else said
