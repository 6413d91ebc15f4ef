"""`specgen schedule`: when each step of a job begins and ends, and when the parts go back into service."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

from specgen.checking import check
from specgen.clock import today
from specgen.commands.outcome import DONE, REFUSED, Outcome
from specgen.commands.typed import day, moment
from specgen.commands.which_job import which_job
from specgen.facts.job.plan import NoPlan, Plan
from specgen.facts.job.schedule import schedule
from specgen.findings import Finding, Report, Severity
from specgen.report.schedule_report import as_json, as_text, faults_as_text, none_as_text, stopped
from specgen.source.project import find_project

ABOUT = (
    "Plan a job from its start: each step with its latest start, what is left of each interval, nights and days off, when the parts "
    "may be handled, return to service and are fully cured. Exit code 1 where no plan is found, something is not stated, or the sources "
    "have errors: nothing is worked to their plan."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", help="id of the job")
    parser.add_argument(
        "--start", metavar="TIME", type=moment, help='start of the work, as in "2026-11-27 14:00"; else that of the job'
    )
    parser.add_argument("--on", metavar="DATE", type=day, help="assess as at this date (today in UTC if left out)")
    parser.add_argument("--path", metavar="PATH", default=".", help="folder of the sources (this folder if left out)")
    parser.add_argument(
        "--format", choices=("text", "json", "ics"), default="text", help="text (default), json, or ics for a calendar"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    checked = check(find_project(Path(arguments.path)), arguments.on or today())
    job, spec = which_job(checked.loaded, str(arguments.job))
    start: datetime | None = arguments.start
    found = schedule(job, spec, start)
    # what the sources lack for a plan is told by the plan itself
    errors = tuple(_errors(checked.report)) if isinstance(found, Plan | NoPlan) else ()
    code = DONE if isinstance(found, Plan) and not errors else REFUSED
    warned = stopped(errors)
    if arguments.format == "json":
        return Outcome(as_json(job.id, found, errors), code)
    if isinstance(found, NoPlan):
        return Outcome(warned + none_as_text(job.id, found), code)
    if not isinstance(found, Plan):
        placed = tuple((str(checked.loaded.place(fault.at)), fault) for fault in found)
        return Outcome(faults_as_text(job.id, placed), code)
    if arguments.format == "ics":
        from specgen.report.schedule_calendar import as_calendar

        return Outcome("" if errors else as_calendar(job.id, found), code, warned)
    return Outcome(warned + as_text(job.id, found), code)


def _errors(report: Report) -> Iterator[Finding]:
    return (finding for finding in report if finding.severity is Severity.ERROR)
