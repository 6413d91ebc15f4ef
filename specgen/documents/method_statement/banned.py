"""The substances a job does not allow, as printed. Called by `safety`."""

from __future__ import annotations

from specgen.documents.parts.wording import Words
from specgen.facts.job.banned import bans_of_job, name_of
from specgen.model.job import Job
from specgen.model.spec import Spec


def banned(job: Job, spec: Spec, words: Words) -> tuple[tuple[str, str], ...]:
    """(substance, the most that is accepted), each once, in the order they are stated."""
    lines = (
        (
            words(name_of(ban)),
            words("at most {} by mass").format(words.phrase(ban.limit)) if ban.limit is not None else words("none"),
        )
        for ban, _ in bans_of_job(job, spec)
    )
    return tuple(dict.fromkeys(lines))
