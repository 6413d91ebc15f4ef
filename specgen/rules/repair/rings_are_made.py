"""REP004 The rings of a repair are made by a step

Checks
    Each item that states how wide existing coats are feathered, or how wide they are abraded around the spot: a step of its preparation feathers the edges, or abrades; sanding may be either. Words of a step count.
Why
    The width alone is no instruction: the edge stays a step that is seen through every coat, or the new paint lies on gloss and peels at its rim.
Passes
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    jobs.refit.items.STEP.repair: {sanded: 200 mm, lap: 25 mm}
Fails
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}
    jobs.refit.items.STEP.preparation: wipe
    jobs.refit.items.STEP.repair: {feather: 75 mm, sanded: 200 mm, lap: 25 mm}    # at jobs.refit.items.STEP.repair.feather    # also REP004 at jobs.refit.items.STEP.repair.sanded    # also PRE008 at preparations.wipe.steps
To put right
    Add a step that feathers the edges, with its papers, and one that abrades the ring.
"""

import re

from specgen.model.preparation import Preparation, StepKind
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule

_FEATHERS = re.compile(r"\bfeather|\bno step\b|\btaper|\bbevel", re.IGNORECASE)
_ABRADES = re.compile(r"\bsand|abrad|scuff|\bmatt|sweep|feather", re.IGNORECASE)
_WORKS = {StepKind.SAND, StepKind.FEATHER, StepKind.SWEEP}


@rule("REP004", on=Job, severity=WARNING, source=LOGIC)
def rings_are_made(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        preparation = spec.preparation_of(job, item)
        if item.repair is None or preparation is None:
            continue
        path = ("items", item.id, "repair")
        if item.repair.feather is not None and not _does(preparation, {StepKind.FEATHER, StepKind.SAND}, _FEATHERS):
            what = f"{item.id}: existing coats are to be feathered over {item.repair.feather}, and no step of {preparation.id} feathers them"
            yield Problem((*path, "feather"), what)
        if item.repair.sanded is not None and not _does(preparation, _WORKS, _ABRADES):
            what = f"{item.id}: a ring of {item.repair.sanded} is to be abraded, and no step of {preparation.id} abrades it"
            yield Problem((*path, "sanded"), what)


def _does(preparation: Preparation, kinds: set[StepKind], words: re.Pattern[str]) -> bool:
    return any(step.do in kinds or words.search(f"{step.text} {step.acceptance or ''}") for step in preparation.steps)
