"""REL008 A film that cures by heat is heated by somebody

Checks
    Each job with a product that states its full cure in heat alone (above the table usual_proportions, row forced): scope, use, a step or an inspection point says that it is heated, baked or cured, or the product states its stoving.
Why
    Heat-resistant silicone is touch-dry in an hour and stays soft until it has been heated: packed, rained on or run up to full load at once, it rubs off or blisters.
Passes
    jobs.refit.scope: Doors and step of a vehicle, dried in the air.
Fails
    products.barrier.drying: [{id: hand, stage: dry-to-handle, time: 8 h, air: 15 degC}, {id: cure, stage: fully-cured, time: 1 h, air: 200 degC}]    # at jobs.refit.scope    # also REL004 note at systems.chassis.service_after    # also USU002 at products.barrier.drying.cure.air    # also USU018 at products.barrier.pot_life.time
To put right
    Say in the scope who heats the parts, how slowly, to what temperature and how long; and add an inspection point for the cure.
"""

import re

from specgen.facts.job.looked_for import words_of
from specgen.facts.product.drying import cures_in_heat_alone
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule

_HEATED = re.compile(
    r"\bheat(?:s|ed|ing)?\b(?!-resist)|\bbak\w+|\bcur(?:e|es|ed|ing)\b|\bstov\w+|\boven\b|first run|run[- ]?up|burn(?:t|ed)? in|°C|degC",
    re.IGNORECASE,
)


@rule("REL008", on=Job, severity=WARNING, source=PRACTICE)
def heat_cure_is_said(job: Job, spec: Spec, on: date) -> Problems:
    systems = {system.id: system for item in job.items if (system := spec.system_of(job, item)) is not None}
    words = [job.scope, *map(words_of, job.inspection), *(system.use or "" for system in systems.values())]
    preparations = {one.id: one for item in job.items if (one := spec.preparation_of(job, item)) is not None}
    words += [step.text for one in preparations.values() for step in one.steps]
    if any(_HEATED.search(text) for text in words):
        return
    for product in spec.products_of(job):
        if not product.stoving and cures_in_heat_alone(product):
            yield Problem(
                ("scope",), f"{product.id} cures fully in heat alone, and nothing in {job.id} says that it is heated"
            )
