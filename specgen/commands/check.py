"""`specgen check`: every finding on a folder, as text, JSON or annotations. Several folders are checked at the same time."""

from __future__ import annotations

import argparse
from functools import partial
from pathlib import Path

from specgen.commands.folder import checked_folder, declare_folder, prefix_of, project_folder, project_folders
from specgen.commands.outcome import DONE, REFUSED, Outcome
from specgen.commands.shares import shares
from specgen.findings import Severity
from specgen.report import as_github, as_json, as_text
from specgen.rules.declare import all_rules
from specgen.rules.run import Timings
from specgen.side_by_side import side_by_side
from specgen.source.project import beyond_projects

ABOUT = "Check the sources in a folder and report errors. Nothing is written."

_WRITERS = {"json": as_json.write, "github": as_github.write}


def declare(parser: argparse.ArgumentParser) -> None:
    declare_folder(parser)
    parser.add_argument(
        "--format",
        choices=["text", *_WRITERS],
        default="text",
        help="text to read (the default), json for programs, github for annotations of a build",
    )
    parser.add_argument(
        "--by-file",
        action="store_true",
        help="text in the order of files and lines, as editors step through it, not the gravest first",
    )
    parser.add_argument(
        "--fail-on",
        choices=[severity.value for severity in Severity],
        default=Severity.ERROR.value,
        help="lowest severity that gives exit code 1 (default: error)",
    )
    parser.add_argument(
        "--timings",
        action="store_true",
        help="print to standard error the time taken by reading and by each rule, longest first",
    )


def run(arguments: argparse.Namespace) -> Outcome:
    folders = project_folders(arguments)
    if len(folders) == 1:
        return _checked(folders[0], arguments)
    if arguments.format == "json":
        # a program reads one report
        project_folder(arguments)
    each = list(side_by_side([partial(_checked, folder, arguments) for folder in folders], all_rules))
    parts = zip(map(prefix_of, folders), each, strict=True)
    text = "\n".join(f"{prefix}\n\n{one.out}" if arguments.format == "text" else one.out for prefix, one in parts)
    for further in beyond_projects(Path(arguments.path)):
        text += f"\n{prefix_of(further)} holds several projects of its own, which were not checked; name that folder.\n"
    return Outcome(text, max(one.code for one in each), "".join(one.err for one in each))


def _checked(folder: Path, arguments: argparse.Namespace) -> Outcome:
    timings: Timings = {}
    checked = checked_folder(folder, arguments, timings)
    prefix, on = prefix_of(folder), checked.on
    if arguments.format in _WRITERS:
        text = _WRITERS[arguments.format](checked.report, prefix=prefix, on=on)
    else:
        text = as_text.write(checked.report, prefix=prefix, on=on, by_file=arguments.by_file)
    failed = checked.report.at_or_above(Severity(arguments.fail_on))
    return Outcome(text, REFUSED if failed else DONE, shares(timings) if arguments.timings else "")
