"""REP005 The words of a preparation and scope keep the rings of the repair

Checks
    A width of feathering, abrading or overlap that the scope of a job, or a step of a preparation of parts under repair, names in words, against the widths stated in the repair of the item: not less. Wider words pass.
Why
    The painter sands as wide as the sentence says, and the new coats end on gloss, from where they peel.
Passes
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    jobs.refit.scope: Doors and step; sound paint is abraded 60 mm round the spots.
Fails
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    jobs.refit.scope: Doors and step; sound paint is abraded 40 mm round the spots.    # at jobs.refit.scope

    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    jobs.refit.scope: Doors and step; new coats overlap the old paint by 10 mm.    # at jobs.refit.scope
To put right
    Write one width in both places.
"""

import re

from specgen.facts.job.in_words import quantities_said
from specgen.facts.pairs.parts import parts_of
from specgen.facts.texts import CLAUSE
from specgen.rules.kit import LOGIC, WARNING, Job, Path, Problem, Problems, Quantity, Spec, date, rule

_DENIED = re.compile(r"\b(?:not|never|bare metal|into sound zinc|beyond|more than)\b", re.I)
_RINGS = (
    ("lap", re.compile(r"\b(?:over)?lap(?:s|ped|ping)?\b", re.I)),
    ("feather", re.compile(r"\bfeather\w*", re.I)),
    (
        "sanded",
        re.compile(r"\b(?:abrad|sand|matt|scuff|key)\w*\b.*\b(?:round|around|beside|beyond|wide|width)\b", re.I),
    ),
)


@rule("REP005", on=Job, severity=WARNING, source=LOGIC)
def words_keep_the_rings(job: Job, spec: Spec, on: date) -> Problems:
    repaired = [part for part in parts_of(job, spec) if part.item.repair is not None]
    if not repaired:
        return
    texts: list[tuple[Path, str]] = [(("jobs", job.id, "scope"), job.scope)]
    for preparation in {part.preparation.id: part.preparation for part in repaired}.values():
        texts += [(("preparations", preparation.id, "steps", step.id, "text"), step.text) for step in preparation.steps]
    repairs = [part.item.repair for part in repaired if part.item.repair is not None]
    for path, text in texts:
        for clause in CLAUSE.split(text):
            widths = quantities_said(clause, "length") if not _DENIED.search(clause) else []
            name = next((name for name, pattern in _RINGS if pattern.search(clause)), None)
            if len(widths) != 1 or name is None:
                continue
            stated: list[Quantity | None] = [getattr(one, name) for one in repairs]
            known = [one for one in stated if one is not None]
            if known and len(known) == len(stated) and all(widths[0] < one for one in known):
                what = (
                    f"'{clause.strip()}'; the repair asks for {name} of at least {min(known, key=lambda one: one.base)}"
                )
                yield Problem(path, what, absolute=True)
