"""The substances a job does not allow, as printed. Called by `safety`."""

from __future__ import annotations

from specgen.documents.parts.wording import Words
from specgen.facts.job.banned import bans_of_job, name_of
from specgen.facts.requirement import names_products
from specgen.model.job import Job
from specgen.model.spec import Spec


def banned(job: Job, spec: Spec, words: Words) -> tuple[tuple[str, str], ...]:
    """(substance, the most that is accepted), each once, in the order they are stated.

    Of products that are still to be offered nobody has said yet that they are free of it.
    """
    none = words("none") if names_products(job, spec) else words("none may be contained; the supplier declares it")
    lines = (
        (
            words(name_of(ban)),
            words("at most {} by mass").format(words.phrase(ban.limit)) if ban.limit is not None else none,
        )
        for ban, _ in bans_of_job(job, spec)
    )
    return tuple(dict.fromkeys(lines))
