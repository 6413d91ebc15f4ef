"""Whether a job is done in a confined space, and what is missing before anybody may enter it.

Called by the rules on air, by the figures of ventilation and by the documents.
"""

from __future__ import annotations

from specgen.model.application import Workplace
from specgen.model.job import Job

# What an entry permit stands on, in the order it is asked for.
NEEDED = {
    "permit": "who signs the entry permit",
    "atmosphere_test": "the atmosphere test",
    "standby": "the standby person",
    "rescue": "the rescue",
}


def is_confined(job: Job) -> bool:
    """True where the place of work says so, or what an entry asks for is stated."""
    return job.workplace is Workplace.CONFINED or job.confined_space is not None


def place_of(job: Job) -> Workplace | None:
    """Where the work is done, for whoever words a caution: a confined space wherever anything says so; None where not stated."""
    return Workplace.CONFINED if is_confined(job) else job.workplace


def lacking(job: Job) -> tuple[str, ...]:
    """The names of what is not stated; empty for a place that is not confined."""
    if not is_confined(job):
        return ()
    stated = job.confined_space
    return tuple(said for name, said in NEEDED.items() if stated is None or getattr(stated, name) is None)
