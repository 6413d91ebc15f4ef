"""What the work of a job asks to be worn that no coating states: gloves for its cleaners and thinners, a mask for bare-part dust.

Called by the tables of what to wear and by the cautions at the steps of a preparation, so that they say the same.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.parts.caution_catalogue import BREATH_OF_CHEMICAL, ITS_SHEET, THINNER
from specgen.documents.parts.wording import Words
from specgen.facts.job.chemicals import chemicals
from specgen.facts.job.thinners import not_ordered
from specgen.facts.pairs.parts import BLASTING
from specgen.facts.product.dangers import STATEMENTS
from specgen.facts.product.protection import TASK_OF_STEP, usual_needs
from specgen.model.hazards import Task
from specgen.model.job import Job, Supply, SupplyKind
from specgen.model.spec import Spec

# What harms who breathes it, for which the hazard card asks for respiratory protection.
_INHALED = frozenset({*STATEMENTS["lungs"], *STATEMENTS["poison"], *STATEMENTS["airways"]})


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkWear:
    """At one task, for what; empty where nothing is asked of breathing, hands or eyes."""

    task: Task
    whose: str
    respiratory: str = ""
    hands: str = ""
    eyes: str = ""


def work_wear(job: Job, spec: Spec, words: Words) -> tuple[WorkWear, ...]:
    """In the order of the tasks. Steps that blast ask for a helmet of their own and are not among them."""
    prepared = {one.id: one for item in job.items if (one := spec.preparation_of(job, item)) is not None}
    done = {step.do for one in prepared.values() for step in one.steps}
    dusty = any(TASK_OF_STEP.get(do) is Task.SANDING and do not in BLASTING for do in done)
    practice = words("{} (common practice)")
    breath, hands, eyes = (practice.format(words(need)) for need in usual_needs(Task.SANDING))
    dust = (
        (WorkWear(task=Task.SANDING, whose=words("bare part"), respiratory=breath, hands=hands, eyes=eyes),)
        if dusty
        else ()
    )
    return (*_cleaners(job, words), *dust, *_thinners(job, spec, words))


def wear_for_cleaners(job: Job, words: Words) -> str:
    """`Wear: Respiratory: ...; Hands: ...` with the mask and the gloves of each cleaner; empty where the job names none."""
    cleaners = _cleaners(job, words)
    parts = (
        (words("Respiratory"), [f"{one.respiratory} ({one.whose})" for one in cleaners if one.respiratory]),
        (words("Hands"), [f"{one.hands} ({one.whose})" for one in cleaners]),
    )
    told = "; ".join(f"{part}: {'; '.join(said)}" for part, said in parts if said)
    return words("Wear: {}.").format(told) if told else ""


def _cleaners(job: Job, words: Words) -> tuple[WorkWear, ...]:
    """Each cleaner with its gloves, those of usual practice where it states none, and a mask where its vapour harms the lungs."""
    _, gloves, _ = usual_needs(Task.PREPARATION)
    usual = words("{} (common practice)").format(words(gloves))
    return tuple(
        WorkWear(
            task=Task.PREPARATION,
            whose=entry.what,
            respiratory=_breath(entry, words),
            hands=(entry.gloves or usual).rstrip("."),
        )
        for entry in chemicals(job)
        if entry.kind is SupplyKind.CLEANER
    )


def _thinners(job: Job, spec: Spec, words: Words) -> tuple[WorkWear, ...]:
    ordered = (
        (entry.what, entry.gloves, _breath(entry, words))
        for entry in chemicals(job)
        if entry.kind is SupplyKind.THINNER
    )
    others = ((thinner.name or words(THINNER), None, "") for thinner in not_ordered(job, spec))
    return tuple(
        WorkWear(task=Task.MIXING, whose=whose, respiratory=breath, hands=gloves or words("not stated"))
        for whose, gloves, breath in (*ordered, *others)
    )


def _breath(entry: Supply, words: Words) -> str:
    """Where to find the mask of a chemical that harms who breathes it, for nothing here states it; empty for any other."""
    if not _INHALED & {*entry.statements}:
        return ""
    sheet = entry.safety_data_sheet
    return words(BREATH_OF_CHEMICAL).replace("{sheet}", sheet.number if sheet is not None else words(ITS_SHEET))
