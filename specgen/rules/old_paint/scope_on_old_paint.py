"""OLD021 What the words of a job say of existing paint is what is typed of it

Checks
    The scope of each job and the condition of its substrates, where they speak of old or existing paint: lead or chromate in it, where every existing coat of the job is stated to have none; a generic type that none of its existing coats has; paint that flakes, peels or cracks all over, where every one is stated as sound; heavy chalking, where each that states a degree has 0 or 1. What is denied, or said of spots or of other work, is not read.
Why
    Protection, patch test and first coat follow what is typed: where the words are right, lead dust is breathed and the existing coating lifts.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: works, family: oem_finish, thickness: 110 um, sound: yes, lead: no, chromate: no}]
    jobs.refit.scope: Doors and steps. The old paint holds no lead and is sound.

    jobs.refit.scope: Doors and steps. The old paint of other parts holds lead.
Fails
    jobs.refit.items.DOOR.old_coats: [{id: works, family: oem_finish, thickness: 110 um, sound: yes, lead: no, chromate: no}]
    jobs.refit.scope: Doors and steps. The old paint holds lead.    # at jobs.refit.scope

    jobs.refit.items.DOOR.old_coats: [{id: works, family: oem_finish, thickness: 110 um, sound: yes, lead: no, chromate: no}]
    jobs.refit.scope: Doors and steps. The existing coating is a cellulose lacquer.    # at jobs.refit.scope

    jobs.refit.items.DOOR.old_coats: [{id: works, family: oem_finish, thickness: 110 um, sound: yes, lead: no, chromate: no}]
    jobs.refit.scope: Doors and steps. The old finish flakes all over.    # at jobs.refit.scope
To put right
    Find out what is on the parts, and write it into old_coats; or put right the words.
"""

import re
from collections.abc import Iterator

from specgen.facts.texts import CLAUSE
from specgen.model.job import OldCoat
from specgen.rules.kit import LOGIC, WARNING, Job, Path, Problem, Problems, Spec, date, rule

_OLD = r"\b(?:old|existing|works|present) (?:\w+ )?(?:paint|coatings?|coats?|finish|enamel|primer|paintwork|system)\b"
_DENIED = re.compile(
    r"\b(?:no|not|never|without|free of|none|neither|if|where|unless|some|spots?|edges?|local\w*|other|others|tested for|may)\b",
    re.I,
)
_POISON = {
    "lead": re.compile(r"\b(?:red )?lead(?:ed)?\b(?! time)", re.I),
    "chromate": re.compile(r"\bchromates?\b", re.I),
}
_HOLDS = re.compile(r"\b(?:holds?|contains?|has|have|with|is|are)\b", re.I)
_ALL_OVER = re.compile(
    r"\b(?:flakes?|peels?|cracks?|blisters?|comes? off|is loose)\b[^.;,]{0,12}?\b(?:all over|everywhere|throughout|in sheets)\b",
    re.I,
)
_CHALKS = re.compile(
    r"\bchalks? (?:heavily|badly|strongly|a lot)\b|\b(?:heav\w+|badly|strongly) chalk(?:ed|s|ing)\b", re.I
)
_IS = rf"{_OLD}(?: on \w+)? (?:is|are|consists? of|was made with) (?:an? |all )?(?:\w+ )??"
# What a generic type is called, with the beginnings of the ids it may have in the table of binder families.
_CALLED: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"(?:nitro)?cellulose\b", ("nitrocellulose",)),
    (r"alkyd\b|oil paint\b|synthetic enamel\b", ("oil_alkyd", "alkyd", "oem", "stoving")),
    (r"chlorinated rubber\b", ("chlorinated",)),
    (r"bitum\w+|tar\b", ("bituminous", "coal_tar")),
    (r"epoxy\b", ("epoxy", "coal_tar_epoxy", "ecoat", "powder", "oem")),
    (r"polyurethane\b", ("pu_", "polyurea", "polyaspartic", "oem", "powder")),
    (r"vinyl\b", ("vinyl",)),
    (r"powder\b", ("powder",)),
)


@rule("OLD021", on=Job, severity=WARNING, source=LOGIC)
def scope_on_old_paint(job: Job, spec: Spec, on: date) -> Problems:
    coats = [coat for item in job.items for coat in item.old_coats]
    if not coats:
        return
    for path, text in _texts(job):
        for clause in CLAUSE.split(text):
            if re.search(_OLD, clause, re.I) and not _DENIED.search(clause):
                for what in _apart(clause, coats):
                    yield Problem(path, f"'{clause.strip()}'; {what}")


def _texts(job: Job) -> Iterator[tuple[Path, str]]:
    yield ("scope",), job.scope
    if job.substrate is not None and job.substrate.condition is not None:
        yield ("substrate", "condition"), job.substrate.condition


def _apart(clause: str, coats: list[OldCoat]) -> Iterator[str]:
    for mark, named in _POISON.items():
        if named.search(clause) and _HOLDS.search(clause) and all(getattr(coat, mark) is False for coat in coats):
            yield f"every existing coat states {mark}: no"
    if _ALL_OVER.search(clause) and all(coat.sound for coat in coats):
        yield "every existing coat is stated as sound"
    degrees = [coat.chalking for coat in coats if coat.chalking is not None]
    if _CHALKS.search(clause) and degrees and max(degrees) <= 1:
        yield f"the degree of chalking is stated as {max(degrees)}"
    families = [coat.family for coat in coats]
    for called, begins in _CALLED:
        said = re.search(_IS + f"({called})", clause, re.I)
        if said is not None and all(family is not None and not family.startswith(begins) for family in families):
            yield f"no existing coat is stated as {said[1].lower()}"
