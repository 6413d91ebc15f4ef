"""INS007 The gauge can find the metal below

Checks
    The gauge of each point that reads film, against the metal of the items it reads: a magnetic gauge does not work on aluminium and other metals that are not magnetic.
Why
    On such a metal a magnetic gauge shows nothing or anything; an eddy-current gauge reads the film, with the same counts and limits.
Passes
    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
Fails
    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}    # at jobs.refit.inspection.primer-film.gauge.principle

    jobs.refit.substrate.material: aluminium    # at jobs.refit.inspection.primer-film.gauge.principle
To put right
    Use an eddy-current gauge on metals that are not magnetic, and write it as gauge: {principle: eddy-current}.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.acceptance import GaugePrinciple
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.inspected import film_points, places
from specgen.rules.declare import Problem, rule
from specgen.rules.inspection.points import material_of, principle_of
from specgen.standards.citations import cite


@rule(
    "INS007",
    on=Job,
    severity=Severity.ERROR,
    concern=Concern.ACCEPTANCE,
    source=cite("SSPC-PA-2", "films on metal that is not ferrous"),
)
def gauge_for_the_metal(job: Job, spec: Spec) -> Iterator[Problem]:
    for point in film_points(job):
        path, principle = ("inspection", point.id, "gauge", "principle"), principle_of(point)
        rows = [row for item, _ in places(point, job, spec) if (row := material_of(job, item, spec)) is not None]
        names = sorted({row["name"] for row in rows if row["kind"] == "metal" and row["magnetic"] == "no"})
        if names and principle is GaugePrinciple.MAGNETIC:
            yield Problem(path, f"a magnetic gauge does not measure film on {', '.join(names)}")
        elif names and principle is None:
            what = f"{point.id} names no gauge, so it cannot be judged on {', '.join(names)}"
            yield Problem(path, what, severity=Severity.NOTE)
