"""OLD020 The condition of an existing coat in words agrees with its soundness

Checks
    Each existing coat whose condition in words says that it flakes, cracks, peels, blisters or is loose or rusted through: it is not stated as sound. What is denied, or said of some spots or edges alone, is not read.
Why
    New paint over loose paint comes off with it. Stated as sound it is abraded and overcoated, by its words it has to go.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: yes, condition: "No cracks, not chalked."}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: yes, condition: Flakes and cracks all over.}]    # at jobs.refit.items.DOOR.old_coats.factory.condition
To put right
    State the coat as not sound and strip it, or put right its condition.
"""

import re

from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule

_LOOSE = re.compile(
    r"\b(?:flak\w*|crack\w*|peel\w*|blister\w*|loose\b|alligator\w*|delaminat\w*|rust\w* through|undermined|comes? off)",
    re.I,
)
_DENIED = re.compile(
    r"\b(?:no|not|never|without|free of|none|spots?|edges?|beside|around|where|some|local\w*|few|apart from|except|firm)\b",
    re.I,
)


@rule("OLD020", on=Job, severity=WARNING, source=LOGIC)
def words_on_old_paint(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        for coat in item.old_coats:
            found = _LOOSE.search(coat.condition or "")
            if coat.sound and found is not None and not _DENIED.search(coat.condition or ""):
                what = f"{coat.id} of {item.id} is stated as sound; its condition says '{coat.condition}'"
                yield Problem(("items", item.id, "old_coats", coat.id, "condition"), what)
