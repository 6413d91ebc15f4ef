"""`specgen schedule`: when each step of a job begins and ends, and when the parts go back into service."""

from __future__ import annotations

import argparse
from datetime import datetime
from pathlib import Path

from specgen.commands.outcome import DONE, REFUSED, CannotRunError, Outcome
from specgen.commands.typed import moment
from specgen.commands.which_job import which_job
from specgen.facts.job.schedule import NoPlan, Plan, schedule
from specgen.model.parse import load
from specgen.report.schedule_report import as_json, as_text, faults_as_text, none_as_text
from specgen.source.project import find_project

ABOUT = (
    "Plan a job from its start: each step with its latest start, what is left of each interval, nights and days off, when the parts "
    "may be handled, return to service and are fully cured. Exit code 1 where no plan is found or something is not stated."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", help="id of the job")
    parser.add_argument(
        "--start", metavar="TIME", type=moment, help='start of the work, as in "2026-11-27 14:00"; else that of the job'
    )
    parser.add_argument("--path", metavar="PATH", default=".", help="folder of the sources (this folder if left out)")
    parser.add_argument(
        "--format", choices=("text", "json", "ics"), default="text", help="text (default), json, or ics for a calendar"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    spec = load(find_project(Path(arguments.path))).spec
    if spec is None:
        raise CannotRunError("the folder has no whole project source; `specgen check` says what is wrong with it")
    job = which_job(spec, str(arguments.job))
    start: datetime | None = arguments.start
    found = schedule(job, spec, start)
    code = DONE if isinstance(found, Plan) else REFUSED
    if arguments.format == "json":
        return Outcome(as_json(job.id, found), code)
    if isinstance(found, NoPlan):
        return Outcome(none_as_text(job.id, found), code)
    if not isinstance(found, Plan):
        return Outcome(faults_as_text(job.id, found), code)
    if arguments.format == "ics":
        from specgen.report.schedule_calendar import as_calendar

        return Outcome(as_calendar(job.id, found), code)
    return Outcome(as_text(job.id, found), code)
