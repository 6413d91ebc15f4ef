"""`specgen assess`: readings of a job held against its acceptance criteria, item by item, and the conformity report."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from specgen.assessing.as_built import Built, assessed, open_of
from specgen.assessing.cells import Dates
from specgen.assessing.columns import COLUMNS
from specgen.assessing.kept import Kept, kept_of
from specgen.assessing.readings import File
from specgen.assessing.results import Assessment
from specgen.assessing.text_table import MOST_BYTES
from specgen.checking import check
from specgen.clock import today
from specgen.commands.outcome import DONE, REFUSED, CannotRunError, Outcome
from specgen.commands.typed import day
from specgen.commands.which_job import which_job
from specgen.findings import Severity
from specgen.model.parse import Loaded, load, without_collector
from specgen.model.spec import Spec
from specgen.register.names import READINGS, REGISTER
from specgen.register.people import people_of
from specgen.report.assessment_report import as_json, as_text
from specgen.source.characters import printable_name
from specgen.source.project import find_project
from specgen.trade.verdict import ACCEPTED

ABOUT = (
    "Hold the readings of a job against its acceptance criteria: conforming, conforming under a concession, not conforming or not decided, "
    "item by item, with reasons, "
    "what is missing, and where to measure next. Files are CSV (any separator, decimal comma, UTF-8 or UTF-16), xlsx, or the filled "
    "form. Exit code 1 where anything does not conform or is not decided: missing or unreadable readings never pass."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", help="id of the job")
    parser.add_argument(
        "readings",
        metavar="READINGS",
        nargs="*",
        help="files of readings; those kept in the folder `readings`, each called by its job, if left out",
    )
    parser.add_argument("--path", metavar="PATH", default=".", help="folder of the sources (this folder if left out)")
    parser.add_argument(
        "--columns",
        metavar="NAME=HEADING,...",
        default="",
        help=f"headings of the instrument by our names, as in value=Thickness,spot=Place. Needed is value; known are {', '.join(COLUMNS)}",
    )
    parser.add_argument(
        "--all",
        metavar="NAME=TEXT",
        action="append",
        default=[],
        help="what holds for every row that does not say it, as in --all point=primer-film --all unit=um",
    )
    parser.add_argument(
        "--dates",
        choices=[one.value for one in Dates],
        help="how days with strokes are read, as in 03/04/2026; without it only those that can be read one way",
    )
    parser.add_argument("--on", metavar="DATE", type=day, help="assess as at this date (today in UTC if left out)")
    parser.add_argument(
        "--report",
        metavar="DIR",
        help="write the conformity report as PDF and HTML into this folder; beside it the as-built record, where no READINGS are named",
    )
    parser.add_argument(
        "--format", choices=("text", "json"), default="text", help="text for the screen (default) or json"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    columns, fixed = _pairs("--columns", arguments.columns.split(",")), _pairs("--all", arguments.all)
    if arguments.report == "":
        raise CannotRunError("the name after --report is empty; name a folder for the report")
    on = arguments.on or today()
    folder = find_project(Path(arguments.path))
    loaded = _loaded(folder, on, for_report=arguments.report is not None)
    job, spec = which_job(loaded, str(arguments.job))
    kept = kept_of(job, folder, spec) if not arguments.readings else Kept(tuple(map(_file, arguments.readings)))
    if not kept.files:
        raise CannotRunError(f"name the files of readings; the folder {READINGS} holds none that is called by {job.id}")
    dates = Dates(arguments.dates) if arguments.dates is not None else kept.dates
    kept = replace(kept, columns={**kept.columns, **columns}, dates=dates)
    with without_collector(to_the_end=True):
        people = people_of(folder)
        found = assessed(job, spec, kept, people, on, fixed)
    write = as_json if arguments.format == "json" else as_text
    open_ = open_of(job, spec, found, kept, people) if not arguments.readings else None
    built = Built(found, open_, people) if open_ is not None else None
    told = _report(arguments.report, found, spec, folder / REGISTER, built) if arguments.report is not None else ""
    return Outcome(write(found, open_), DONE if found.verdict in ACCEPTED else REFUSED, told)


def _loaded(folder: Path, on: date, *, for_report: bool) -> Loaded:
    """The sources; for a report they have to check without errors, as for every document."""
    if not for_report:
        return load(folder)
    checked = check(folder, on)
    if checked.report.at_or_above(Severity.ERROR):
        raise CannotRunError("the sources have errors, so no report is written; `specgen check` lists them")
    return checked.loaded


def _pairs(option: str, texts: Sequence[str]) -> dict[str, str]:
    found = {}
    for text in texts:
        if not text.strip():
            continue
        name, sign, value = (part.strip() for part in text.partition("="))
        if name not in COLUMNS or not sign or not value:
            known = f"the names are {', '.join(COLUMNS)}" if name not in COLUMNS else "write it as in value=Thickness"
            raise CannotRunError(f"{option}: {text.strip()!r} is not understood; {known}")
        found[name] = value
    return found


def _file(name: str) -> File:
    path = Path(name)
    try:
        if path.stat().st_size > MOST_BYTES:
            raise CannotRunError(f"{printable_name(name)}: is larger than {MOST_BYTES // 1024 // 1024} MiB; split it")
        return File(printable_name(path.as_posix()), path.read_bytes())
    except OSError as reason:
        raise CannotRunError(f"{printable_name(name)}: cannot be read ({reason.strerror or 'no file'})") from None


def _report(folder: str, found: Assessment, spec: Spec, register: Path, built: Built | None) -> str:
    # only this way of asking needs the whole of the layout
    from specgen.commands.targets import write_files
    from specgen.printing.conformity import print_conformity
    from specgen.rendering.failure import RenderError

    out = Path(folder)
    try:
        files = print_conformity(found, spec, register, built)
    except RenderError as reason:
        raise CannotRunError(f"the report cannot be laid out: {reason}") from reason
    write_files(out, files)
    return "".join(f"{printable_name((out / name).as_posix())} written\n" for name in files)
