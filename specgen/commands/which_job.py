"""The job named on the command line. Called by the commands that take one."""

from __future__ import annotations

from difflib import get_close_matches

from specgen.commands.outcome import CannotRunError
from specgen.model.job import Job
from specgen.model.parse import Loaded
from specgen.model.spec import Spec

_SHOWN = 5


def which_job(loaded: Loaded, asked: str) -> tuple[Job, Spec]:
    """The job and the specification it stands in.

    Raises CannotRunError where there is no whole project, no job of that id (naming the nearest), or one that cannot be read (with
    the place of every fault in it).
    """
    spec = loaded.spec
    if spec is None:
        raise CannotRunError("the folder has no whole project source; `specgen check` says what is wrong with it")
    if asked in spec.jobs:
        return spec.jobs[asked], spec
    if asked in loaded.ids.get("jobs", ()):
        faults = [fault for fault in loaded.findings if f"{fault.path}.".startswith(f"jobs.{asked}.")]
        told = "; ".join(f"{fault.place}: {fault.what}" for fault in faults[:_SHOWN])
        if len(faults) > _SHOWN or not told:
            told = f"{told}{'; ' if told else ''}`specgen check` says all that is wrong with it"
        raise CannotRunError(f"the job {asked} cannot be read: {told}")
    near = get_close_matches(asked, spec.jobs, n=3)
    known = f"nearest: {', '.join(near)}" if near else f"there is: {', '.join(spec.jobs) or 'none'}"
    raise CannotRunError(f"there is no job {asked!r}; {known}")
