"""`specgen climate`: air measured at the part, held against the limits of a job and its products, and what would put it right."""

from __future__ import annotations

import argparse
from pathlib import Path

from specgen.commands.outcome import DONE, REFUSED, CannotRunError, Outcome
from specgen.commands.which_job import which_job
from specgen.facts.job.measured_air import Measured, assess
from specgen.model.parse import load
from specgen.report.climate_report import as_json, as_text
from specgen.source.project import find_project
from specgen.trade.known import NotKnown
from specgen.units.quantity import Quantity, QuantityError, parse_quantity

ABOUT = (
    "Hold air and part, as measured, against the limits of a job and its products: dew point, water in the air, each limit met or "
    "not, what would put it right, and how long each coat then waits. Exit code 1 where a limit is not met."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", help="id of the job")
    parser.add_argument("--air", required=True, metavar="T", help='air temperature at the part, as in "8 degC"')
    parser.add_argument("--humidity", required=True, metavar="RH", help='relative humidity there, as in "80 %%"')
    parser.add_argument("--surface", metavar="T", help="surface temperature; as warm as the air if left out")
    parser.add_argument("--path", metavar="PATH", default=".", help="folder of the sources (this folder if left out)")
    parser.add_argument(
        "--format", choices=("text", "json"), default="text", help="text for the screen (default) or json"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    air = _figure("temperature", "--air", arguments.air)
    humidity = _figure("humidity", "--humidity", arguments.humidity)
    surface = _figure("temperature", "--surface", arguments.surface) if arguments.surface is not None else air
    job, spec = which_job(load(find_project(Path(arguments.path))), str(arguments.job))
    at = Measured(air, humidity, surface)
    found = assess(job, spec, at)
    if isinstance(found, NotKnown):
        raise CannotRunError(f"there is no such air: {found.why}")
    write = as_json if arguments.format == "json" else as_text
    return Outcome(write(job.id, at, found), DONE if found.met else REFUSED)


def _figure(kind: str, option: str, text: str) -> Quantity:
    try:
        return parse_quantity(kind, text)
    except QuantityError as error:
        raise CannotRunError(f"{option}: {error}") from None
