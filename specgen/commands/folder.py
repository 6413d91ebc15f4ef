"""What `check` and `render` share: the folder and the day on the command line, and the way to the folder's files."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from pathlib import Path

from specgen.checking import Checked, check_each
from specgen.clock import today
from specgen.commands.outcome import CannotRunError
from specgen.commands.typed import day
from specgen.model.parse import without_collector
from specgen.source.characters import printable_name
from specgen.source.project import find_project, projects_in


def declare_folder(parser: argparse.ArgumentParser) -> None:
    """PATH and --on."""
    parser.add_argument(
        "path",
        metavar="PATH",
        help="folder of the sources, or a file in it: then the nearest folder above it that holds a project.yaml; of a folder of "
        "several projects each",
    )
    parser.add_argument(
        "--on",
        metavar="DATE",
        type=day,
        help="assess as at this date, as in 2026-03-31 (today in UTC if left out); waivers that ended before it no longer apply",
    )


def checked_folders(folders: Iterable[Path], arguments: argparse.Namespace) -> list[Checked]:
    """Each folder checked. Raises CannotDoError where one cannot be read at all."""
    with without_collector(to_the_end=True):
        return list(check_each(folders, arguments.on or today()))


def project_folders(arguments: argparse.Namespace) -> tuple[Path, ...]:
    """The folder PATH belongs to, or those in it where it holds several projects. Raises CannotDoError where there is none."""
    return (projects_in(Path(arguments.path)) if arguments.path else ()) or (project_folder(arguments),)


def project_folder(arguments: argparse.Namespace) -> Path:
    """The one folder PATH belongs to. Raises CannotDoError where there is none, or there are several."""
    if not arguments.path:
        raise CannotRunError("the path is empty; name the folder of the sources")
    return find_project(Path(arguments.path))


def prefix_of(folder: Path) -> str:
    """What goes before a file name so that it opens from the current folder: `specs_demo/`, or nothing.

    Signs that must not reach a screen are shown as U+FFFD.
    """
    whole = folder.resolve()
    try:
        here = Path.cwd().resolve()
    except OSError:  # the current folder has been deleted
        here = None
    shown = whole.relative_to(here) if here is not None and whole.is_relative_to(here) else whole
    named = printable_name(shown.as_posix())
    return "" if named == "." else f"{named.rstrip('/')}/"
