"""JOB017 What is left uncoated is masked

Checks
    Each job whose scope, or the name of one of its items, says that something is left bare, uncoated or free of paint, or that rods, shafts, bearings or brakes are fitted while it is blasted or coated: an item lists what is masked, a preparation of the job masks, or a text of the job or its preparations says with what it is covered, masked, plugged or taped. A bare state that lasts for a time alone, or a whole face that nobody sprays, is not read.
Why
    Whoever sprays works by the card. An earthing point or a bore that only the scope speaks of is painted over, and is ground bare later with the coat around it.
Passes
    jobs.refit.scope: Doors and step after repair. Earthing points stay bare.
    jobs.refit.items.DOOR.masked: [{id: earth, what: earthing point}]

    jobs.refit.scope: Doors and step after repair. No part stays bare for more than 4 h.

    jobs.refit.scope: Doors and step after repair. Earthing points remain uncoated under tape.

    jobs.refit.scope: Doors and step. Hydraulic rods and bearings are fitted after coating.

    jobs.refit.scope: Doors and step, outside. The bed that carries the load stays bare.

    jobs.refit.scope: Doors and step, outside. The inside of the box is left uncoated.
Fails
    jobs.refit.scope: Doors and step after repair. Earthing points stay bare.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; threads inside the box stay bare.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; threads are left unpainted.    # at jobs.refit.scope
    jobs.refit.inspection.prepared.method: Comparator and replica tape

    jobs.refit.scope: Doors and step with hydraulic rods and hinge bearings fitted.    # at jobs.refit.scope
To put right
    List it under masked of the item, with its area where it is more than a few square centimetres, or add a step that masks it.
"""

import re
from collections.abc import Iterator

from specgen.facts.texts import CLAUSE, texts
from specgen.model.preparation import StepKind
from specgen.rules.kit import PRACTICE, WARNING, Job, Path, Problem, Problems, Spec, date, rule

_BARE = re.compile(
    r"\b(?:stays?|remains?|(?:is|are|be) (?:left|kept)|keep|leave|left) (?:\w+ ){0,3}?(?:bare|uncoated|unpainted|(?:free|clear) of (?:paint|coating|any coating))\b",
    re.I,
)
_MOVES = re.compile(
    r"\b(?:rods?|shafts?|bearings?|pistons?|brakes?|brake \w+)\b[^.;,]{0,30}?\b(?:fitted|mounted|in place|installed|assembled|built in)\b",
    re.I,
)
_OTHER = re.compile(r"\b(?:no|not|never|nothing|nowhere|longer|until|for|before|after|overnight|hours?|days?)\b", re.I)
_FACE = re.compile(
    r"\W*(?:the |each |every |all )?(?:inside|interior|underside|back|bed|floor|deck|(?:inner|outer|back|rear|reverse|load\w*) (?:faces?|sides?|surfaces?|bed|floor))s? (?:of |that |which |is\b|are\b|stays?\b|remains?\b)",
    re.I,
)
_COVERED = re.compile(
    r"\b(?:(?:un)?mask|tap(?:e|ed|ing)\b|plug|caps?\b|capped|sheath|covered|covering|cover (?:the|all|every|each|them)\b)",
    re.I,
)


@rule("JOB017", on=Job, severity=WARNING, source=PRACTICE)
def uncoated_is_masked(job: Job, spec: Spec, on: date) -> Problems:
    used = (spec.preparation_of(job, item) for item in job.items)
    preparations = {one.id: one for one in used if one is not None}.values()
    if any(item.masked for item in job.items) or any(
        step.do is StepKind.MASK for one in preparations for step in one.steps
    ):
        return
    told = next(
        ((path, clause.strip()) for path, text in _named(job) for clause in CLAUSE.split(text) if _stays_bare(clause)),
        None,
    )
    if told is None or any(
        _COVERED.search(text) and path[-1] != "method"  # a replica tape measures, it covers nothing
        for record in (job, *preparations)
        for path, text, _ in texts(spec, record)
    ):
        return
    yield Problem(told[0], f"'{told[1]}': {job.id} masks nothing")


def _named(job: Job) -> Iterator[tuple[Path, str]]:
    yield ("scope",), job.scope
    for item in job.items:
        yield ("items", item.id, "name"), item.name


def _stays_bare(clause: str) -> bool:
    said = (None if _FACE.match(clause) else _BARE.search(clause)) or _MOVES.search(clause)
    return said is not None and _OTHER.search(clause) is None
