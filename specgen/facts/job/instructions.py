"""Every instruction in words that the painter of a job reads: its scope, its inspection and what stands between its coats."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.walk import Path


def instructions(job: Job, spec: Spec) -> Iterator[tuple[Path, str]]:
    """Each text with its address from the top of the sources."""
    yield ("jobs", job.id, "scope"), job.scope
    for point in job.inspection:
        at = ("jobs", job.id, "inspection", point.id)
        texts = {
            "check": point.check,
            "method": point.method,
            "frequency": point.frequency,
            "if_failed": point.if_failed,
        }
        for name, text in texts.items():
            if text is not None:
                yield (*at, name), text
        if point.criterion.text is not None:
            yield (*at, "criterion", "text"), point.criterion.text
    for system in spec.systems_of(job):
        for layer in system.layers:
            for name, text in (("before_next", layer.before_next), ("if_exceeded", layer.if_exceeded)):
                if text is not None:
                    yield ("systems", system.id, "layers", layer.id, name), text
