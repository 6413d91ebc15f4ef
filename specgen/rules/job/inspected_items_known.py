"""JOB005 An inspection point looks at items of its job

Checks
    Each id under items of an inspection point is an item of the job, and one that gets the layer the point follows.
Why
    A point that looks at nothing is ticked all the same.
Passes
    jobs.refit.inspection.primer-film.items: [DOOR]
Fails
    jobs.refit.inspection.primer-film.items: [DOOR, DOORS]    # at jobs.refit.inspection.primer-film.items

    jobs.refit.inspection.primer-film.items: [DOOR, STEP]    # at jobs.refit.inspection.primer-film.items
To put right
    Name items of the job, or leave items out to look at all of them.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.field_types import nearest_of
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.inspected import places
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import LOGIC


@rule("JOB005", on=Job, severity=Severity.ERROR, concern=Concern.ACCEPTANCE, source=LOGIC)
def inspected_items_known(job: Job, spec: Spec) -> Iterator[Problem]:
    known = [item.id for item in job.items]
    layers = {layer.id for system in spec.systems_of(job) for layer in system.layers}
    for point in job.inspection:
        path = ("inspection", point.id, "items")
        reached = {item.id for item, _ in places(point, job, spec)}
        for named in point.items:
            if named not in known:
                yield Problem(path, f"{named} is no item of the job {job.id}", nearest_of(named, known))
            # a layer that no system has is told by another rule
            elif named not in reached and point.after in layers:
                yield Problem(path, f"the system of {named} has no layer {point.after}, which {point.id} follows")
