"""The job named on the command line. Called by the commands that take one."""

from __future__ import annotations

from difflib import get_close_matches

from specgen.commands.outcome import CannotRunError
from specgen.model.job import Job
from specgen.model.spec import Spec


def which_job(spec: Spec, asked: str) -> Job:
    """Raises CannotRunError, naming the nearest, where there is none of that id."""
    if asked in spec.jobs:
        return spec.jobs[asked]
    near = get_close_matches(asked, spec.jobs, n=3)
    known = f"nearest: {', '.join(near)}" if near else f"there is: {', '.join(spec.jobs) or 'none'}"
    raise CannotRunError(f"there is no job {asked!r}; {known}")
