"""When the place of work may be entered: after spraying, and at all where it is a confined space.

Called by the method statement and by both cards, which say the same.
"""

from __future__ import annotations

from datetime import date

from specgen.documents.parts.caution_catalogue import (
    DISPERSED,
    ENTRY_HELD,
    ENTRY_NOT_STATED,
    NO_FLOW_FOR_ENTRY,
    POSTED_TIME,
    RE_ENTRY,
    RE_ENTRY_VAPOUR,
)
from specgen.documents.parts.wording import Words
from specgen.facts.job.air import air_of_job, unmeasured_clearance
from specgen.facts.job.confined import is_confined, place_of
from specgen.model.application import Workplace
from specgen.model.job import ConfinedSpace, Job
from specgen.model.spec import Spec


def re_entry(job: Job, spec: Spec, on: date, words: Words) -> str:
    """One line for every card: the posted time, and that of the vapour where it is longer; a permit decides elsewhere."""
    if is_confined(job):
        return words(NO_FLOW_FOR_ENTRY)
    said = words(RE_ENTRY).replace("{posted}", mist_gone(job, words))
    times = [found.back_in for found in air_of_job(job, spec, on) if found.back_in is not None]
    if not times:
        return said
    longest = max(times, key=lambda time: time.number)
    return f"{said} {words(RE_ENTRY_VAPOUR).replace('{time}', words.worked(longest))}"


def mist_gone(job: Job, words: Words) -> str:
    """When the spray mist is taken to have gone, for any place but a confined space."""
    posted = DISPERSED if place_of(job) is Workplace.OUTDOORS else POSTED_TIME
    return words(posted).replace("{time}", unmeasured_clearance())


def entry_permit(job: Job, words: Words) -> tuple[tuple[str, str], ...]:
    """The hold before a confined space is entered, as (what, who or how); empty for any other place."""
    if not is_confined(job):
        return ()
    stated = job.confined_space or ConfinedSpace()
    return (
        (words("Entry"), words(ENTRY_HELD)),
        (words("Entry permit signed by"), stated.permit or words(ENTRY_NOT_STATED)),
        (words("Atmosphere test"), stated.atmosphere_test or words(ENTRY_NOT_STATED)),
        (words("Standby person"), stated.standby or words(ENTRY_NOT_STATED)),
        (words("Rescue"), stated.rescue or words(ENTRY_NOT_STATED)),
    )
