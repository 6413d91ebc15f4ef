"""`specgen compare`: what changed between two versions of a specification, relaxed requirements first."""

from __future__ import annotations

import argparse
import os
from datetime import date
from pathlib import Path

from specgen.clock import today
from specgen.commands.audience import declare_audience
from specgen.commands.decision_file import DecisionFile, bytes_of
from specgen.commands.outcome import DONE, NOT_RUN, REFUSED, CannotRunError, Outcome
from specgen.commands.sides import Named, about, judged_sides, names_of, read_side, snapshots
from specgen.commands.typed import day
from specgen.comparing import compare_judged
from specgen.comparison.changes import Comparison
from specgen.comparison.decisions import Answers, answers_in
from specgen.comparison.edition import for_customer
from specgen.comparison.gate import GATES, shuts
from specgen.findings import Report, Severity
from specgen.model.declaring import Audience
from specgen.model.parse import without_collector
from specgen.model.spec import Spec
from specgen.report import as_text, change_github, change_json, change_text
from specgen.report.lines import one_line
from specgen.source.characters import printable_name
from specgen.source.project import DECISIONS, OLD_DECISIONS
from specgen.source.reader import read_text

ABOUT = (
    "Compare two versions of a specification and report relaxed requirements first, safety above all. "
    "A side is a folder, a file in it, git:REVISION:PATH, register:DOC@REV, or an issued PDF. "
    "Nothing is written without --notice."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("old", metavar="OLD", help="the earlier version: a folder, a file in it, or git:REVISION:PATH")
    parser.add_argument("new", metavar="NEW", help="the later version, named likewise")
    parser.add_argument(
        "--on",
        metavar="DATE",
        type=day,
        help="assess both sides as at this date, as in 2026-03-31 (today in UTC if left out)",
    )
    parser.add_argument(
        "--format",
        choices=("text", "json", "github"),
        default="text",
        help="text to read (the default), json for programs, github for annotations of a build",
    )
    parser.add_argument(
        "--fail-on",
        choices=list(GATES),
        help="make the exit code 1: relaxed, where anything is relaxed or a person has yet to decide; safety, where that "
        "is so of safety (both also where an entry could not be compared); any, where anything changed at all",
    )
    parser.add_argument("--notice", metavar="DIR", help="write the change notice as PDF and HTML into this folder")
    parser.add_argument(
        "--decisions",
        metavar="FILE",
        help=f"file of decisions (if left out, {DECISIONS} beside the sources of NEW, where there is one)",
    )
    declare_audience(
        parser, "withhold changes in the manufacturer's confidential data (customer, the default) or show them (maker)"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    with without_collector(to_the_end=True):
        return _run(arguments, arguments.on or today())


def _run(arguments: argparse.Namespace, on: date) -> Outcome:
    if arguments.notice == "":
        raise CannotRunError("the name after --notice is empty; name a folder for the notice")
    named = read_side(arguments.old), read_side(arguments.new)
    file = _decisions(arguments.decisions, named[1])
    answers, faults = answers_in(*read_text(file.data, file.name)) if file is not None else (Answers(), [])
    if any(fault.severity is Severity.ERROR for fault in faults):
        return _refused(Report.of(faults), "", "the decisions cannot be read", on)
    judged = judged_sides(*named, on)
    sides = []
    for name, one in zip(named, judged, strict=True):
        if one.side is None:
            return _refused(one.report, name.prefix, f"{name.spelling} cannot be compared", on)
        sides.append(one.side)
    old, new = sides
    record = about(*named, new.spec)
    whole = compare_judged(old, new, answers=answers, tables=snapshots(*named, judged, record), about=record)
    found = whole if arguments.audience == "maker" else for_customer(whole)
    told = _old_words(file, answers) if file is not None else ""
    if arguments.notice is not None:
        told += _notice(arguments, found, named, new.spec, on)
    code = REFUSED if arguments.fail_on is not None and shuts(arguments.fail_on, whole) else DONE
    return Outcome(_report(arguments.format, found, named), code, told)


def _report(format: str, found: Comparison, named: tuple[Named, Named]) -> str:
    old, new = named
    if format == "json":
        for_maker = found.audience is Audience.MAKER
        spelled = (old.spelling, new.spelling) if for_maker else names_of(old, new, for_maker=False)
        return change_json.write(found, old=spelled[0], new=spelled[1])
    if format == "github":
        return change_github.write(found, new_prefix=new.prefix)
    return change_text.write(found, old=old.spelling, new=new.spelling, old_prefix=old.prefix, new_prefix=new.prefix)


def _decisions(named: str | None, new: Named) -> DecisionFile | None:
    if named is None:
        return new.decisions
    file = Path(named)
    if not named or not os.path.lexists(file):
        raise CannotRunError(f"{printable_name(named) or 'the name after --decisions'}: there is no such file")
    return DecisionFile(printable_name(named), bytes_of(file))


def _old_words(file: DecisionFile, answers: Answers) -> str:
    """What the file, or its keys, are called now."""
    if file.name == OLD_DECISIONS:
        return f"specgen: {OLD_DECISIONS} is now called {DECISIONS}, its keys decisions and decision; `specgen upgrade` renames them\n"
    if answers.in_old_words:
        return f"specgen: {file.name}: the keys verdicts and verdict are now called decisions and decision\n"
    return ""


def _refused(report: Report, prefix: str, why: str, on: date) -> Outcome:
    return Outcome(as_text.write(report, prefix=prefix, on=on), NOT_RUN, f"specgen: {one_line(why)}\n")


def _notice(arguments: argparse.Namespace, found: Comparison, named: tuple[Named, Named], spec: Spec, on: date) -> str:
    # only this way of asking needs the whole of the layout
    from specgen.commands.targets import write_files
    from specgen.printing.notice import print_notice
    from specgen.rendering.failure import RenderError

    documents = tuple(dict.fromkeys(side.document for side in named if side.document))
    number = f"CN-{documents[0]}-{'-'.join(side.revision or 'now' for side in named)}" if len(documents) == 1 else ""
    out, for_maker = Path(arguments.notice), arguments.audience == "maker"
    old, new = names_of(*named, for_maker=for_maker)
    try:
        files = print_notice(found, spec, old_name=old, new_name=new, number=number, on=on, for_maker=for_maker)
    except RenderError as reason:
        raise CannotRunError(f"the notice cannot be laid out: {reason}") from reason
    write_files(out, files)
    return "".join(f"{printable_name((out / name).as_posix())} written\n" for name in files)
