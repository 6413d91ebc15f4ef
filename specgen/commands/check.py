"""`specgen check`: every finding on a folder, or on several, as text, JSON or annotations."""

from __future__ import annotations

import argparse
from pathlib import Path

from specgen.checking import Checked
from specgen.commands.folder import checked_folders, declare_folder, prefix_of, project_folder, project_folders
from specgen.commands.outcome import DONE, REFUSED, Outcome
from specgen.commands.shares import shares
from specgen.findings import Severity
from specgen.report import as_github, as_json, as_text
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
    if len(folders) > 1 and arguments.format == "json":
        # a program reads one report
        project_folder(arguments)
    checked = checked_folders(folders, arguments)
    each = [_told(folder, one, arguments) for folder, one in zip(folders, checked, strict=True)]
    if len(each) == 1:
        return each[0]
    parts = zip(map(prefix_of, folders), each, strict=True)
    text = "\n".join(f"{prefix}\n\n{one.out}" if arguments.format == "text" else one.out for prefix, one in parts)
    for further in beyond_projects(Path(arguments.path)):
        text += f"\n{prefix_of(further)} holds several projects of its own, which were not checked; name that folder.\n"
    return Outcome(text, max(one.code for one in each), "".join(one.err for one in each))


def _told(folder: Path, checked: Checked, arguments: argparse.Namespace) -> Outcome:
    prefix, on = prefix_of(folder), checked.on
    if arguments.format in _WRITERS:
        text = _WRITERS[arguments.format](checked.report, prefix=prefix, on=on)
    else:
        text = as_text.write(checked.report, prefix=prefix, on=on, by_file=arguments.by_file)
    failed = checked.report.at_or_above(Severity(arguments.fail_on))
    return Outcome(text, REFUSED if failed else DONE, shares(checked.timings) if arguments.timings else "")
