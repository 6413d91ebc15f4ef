"""Substances that project, system or job do not allow, and where the products and steps of a job hold them.

Called by the rule on banned substances and by the method statement.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from specgen.model.banned import Banned
from specgen.model.job import Job
from specgen.model.product import Component
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.standards.tables import Row, table

_NUMBER = re.compile(r"[0-9]{2,7}-[0-9]{2}-[0-9]")


def bans_of_job(job: Job, spec: Spec) -> Iterator[tuple[Banned, System | None]]:
    """Each ban with the system it is of; None where it holds for everything used on the job."""
    for ban in (*spec.project.banned, *job.banned):
        yield ban, None
    for system in spec.systems_of(job):
        for ban in system.banned:
            yield ban, system


def name_of(ban: Banned) -> str:
    """The substance as it is printed."""
    row = _row(ban.substance)
    return row["name"] if row is not None else ban.substance


def is_banned(line: Component, ban: Banned) -> bool:
    """True where the component is the substance, by its CAS number or by its name, and above what is accepted."""
    row, substance = _row(ban.substance), ban.substance
    if row is not None:
        same = (line.cas or "") in row["cas"].split() or named_in(line.name, ban)
    elif _NUMBER.fullmatch(substance):
        same = line.cas == substance
    else:
        same = named_in(line.name, ban)
    return same and (ban.limit is None or line.mass_share > ban.limit) and line.mass_share.base > 0


def named_in(text: str, ban: Banned) -> bool:
    """True where the words of the substance stand in a text."""
    row = _row(ban.substance)
    words = row["words"] if row is not None else ban.substance
    return bool(_words(words).search(text))


def _row(substance: str) -> Row | None:
    return next((row for row in table("banned_substances").rows if row["id"] == substance), None)


@cache
def _words(words: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w-])(?:{'|'.join(re.escape(word) for word in words.split(', '))})(?![\w-])", re.I)
