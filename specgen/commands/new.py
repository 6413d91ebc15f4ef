"""`specgen new`: an empty source to begin with, a job like another one, or a folder to fill in."""

from __future__ import annotations

import argparse
import re
from pathlib import Path

from specgen.commands.empty_source import empty_source, project_on_range
from specgen.commands.job_like import job_like
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.model.spec import SINGULAR
from specgen.rendering.writing import write_all
from specgen.source.characters import printable_name

ABOUT = (
    "Print an empty source to begin with: what has to be filled stands open. `new job --like JOB` prints a job like one that is "
    "there; `new --folder DIR` lays down a folder to fill in."
)


_WAY = re.compile(r"(git:[\w./-]+:)?\.\.[\w./-]*")


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "kind", metavar="KIND", nargs="?", choices=list(SINGULAR), help=f"one of: {', '.join(SINGULAR)}"
    )
    parser.add_argument(
        "--all", action="store_true", help="print every key with what it is for, not only those that stand open"
    )
    parser.add_argument(
        "--like",
        metavar="JOB",
        help="copy that job without its number, dates, vehicles and items; stale words are marked",
    )
    parser.add_argument(
        "--path", metavar="PATH", default=".", help="folder of the job named by --like (this folder if left out)"
    )
    parser.add_argument("--folder", metavar="DIR", help="make this folder with an empty source of every kind")
    parser.add_argument(
        "--range",
        metavar="WAY",
        help="with --folder: a project on the shared range WAY, as in ../range, and a job",
    )
    parser.add_argument(
        "--schema",
        metavar="FILE",
        help="name this file, made by `specgen schema KIND`, on the first line, where YAML editors look for it",
    )


def run(arguments: argparse.Namespace) -> Outcome:
    if arguments.folder is not None:
        if arguments.kind is not None or arguments.like is not None:
            raise CannotRunError("--folder makes a source of every kind; name neither a KIND nor --like with it")
        return Outcome(_folder(Path(arguments.folder), arguments.range))
    if arguments.range is not None:
        raise CannotRunError(
            "--range goes with --folder DIR; in a project that is there write range: and the way to it"
        )
    if arguments.kind is None:
        raise CannotRunError(f"which kind? It is one of: {', '.join(SINGULAR)}; or --folder DIR")
    if arguments.like is not None:
        if arguments.kind != "job":
            raise CannotRunError(
                "--like copies a job; products, preparations and systems say `based_on` another instead"
            )
        return Outcome(_schema(arguments) + job_like(Path(arguments.path), str(arguments.like)))
    return Outcome(_schema(arguments) + empty_source(arguments.kind, whole=arguments.all))


def _schema(arguments: argparse.Namespace) -> str:
    if arguments.schema is None:
        return ""
    if not arguments.schema.strip() or not arguments.schema.isprintable():
        raise CannotRunError("the name after --schema is no file name; name the file the schema is in")
    return f"# yaml-language-server: $schema={arguments.schema}\n"


def _folder(folder: Path, way: str | None) -> str:
    """Makes the folder, whole or not at all; says what to do next."""
    if folder.exists() or folder.is_symlink():
        raise CannotRunError(f"{printable_name(str(folder))} is there already; name a folder that is not")
    if not folder.parent.is_dir():
        raise CannotRunError(f"{printable_name(str(folder.parent))} is no folder; make it first")
    if way is not None and not _WAY.fullmatch(way):
        raise CannotRunError("--range is the way from the new folder to the range, as in ../range")
    texts = {kind: empty_source(kind) for kind in SINGULAR}
    if way is not None:
        texts = {"project": project_on_range(way), "job": texts["job"]}
    folder.mkdir()
    write_all(folder, {f"{kind}.yaml": text.encode() for kind, text in texts.items()})
    shown = printable_name(str(folder))
    return f"{shown} is made. Fill in what stands open; `specgen check {shown}` lists what is missing.\n"
