"""`specgen upgrade`: the sources of a folder rewritten in the present version of the source format; comments and layout stay."""

from __future__ import annotations

import argparse
from pathlib import Path

from specgen.commands.decision_file import decisions_beside
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.model.project import SCHEMA_VERSION
from specgen.model.upgrade import decisions_rewritten, rewritten
from specgen.register.disk import confirm
from specgen.rendering.writing import replace_all
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.project import DECISIONS, OLD_DECISIONS, find_project, read_project

ABOUT = (
    "Rewrite the sources of a folder in the present version of the source format. Words are replaced where they stand; comments, "
    "order and layout stay. Nothing is written unless the whole folder can be rewritten."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("path", metavar="PATH", help="folder of the sources, or a file in it")


def run(arguments: argparse.Namespace) -> Outcome:
    if not arguments.path:
        raise CannotRunError("the path is empty; name the folder of the sources")
    folder = find_project(Path(arguments.path))
    beside = decisions_beside(folder)
    sources = read_project(folder)
    try:
        raw = {file.name: _bytes(folder / file.name) for file in sources.files}
        files = rewritten(sources, raw)
        answers = decisions_rewritten(beside.name, beside.data) if beside is not None else None
        if any(_bytes(folder / name) != data for name, data in raw.items()) or decisions_beside(folder) != beside:
            raise CannotRunError("the sources were changed meanwhile; nothing was rewritten, begin again")
        # the project comes last: stopped in between, the folder says what it was, and the decisions read under either name
        every = [*([answers] if answers is not None else []), *files]
        replace_all({(folder / file.name).resolve(): file.data for file in every})
        renamed = beside is not None and beside.name == OLD_DECISIONS
        if renamed:
            (folder / OLD_DECISIONS).rename(folder / DECISIONS)
            confirm(folder)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise CannotRunError(f"{printable_name(str(folder))} cannot be rewritten: {why}") from error
    if not every and not renamed:
        return Outcome(f"The folder is in source format {SCHEMA_VERSION} already; nothing was rewritten.\n")
    lines = [f"{printable_name(file.name)}: {_words(file.words)}" for file in every]
    if renamed:
        lines.append(f"{OLD_DECISIONS} is now called {DECISIONS}")
    return Outcome("\n".join([*lines, f"The folder is now in source format {SCHEMA_VERSION}."]) + "\n")


def _words(count: int) -> str:
    return "its version" if count == 0 else "1 word replaced" if count == 1 else f"{count} words replaced"


def _bytes(path: Path) -> bytes:
    with path.open("rb") as stream:
        return stream.read(FILE_LIMIT + 1)
