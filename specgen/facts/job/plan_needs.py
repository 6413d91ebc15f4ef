"""What the steps of a plan need on their day: packs, and moments at which the ambient conditions are read. Called by `schedule`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime, timedelta

from specgen.facts.job.plan import Step
from specgen.facts.job.quantities import quantities
from specgen.facts.job.schedule_stated import Group
from specgen.model.job import Job
from specgen.model.schedule import Work
from specgen.model.spec import Spec

_READINGS = timedelta(hours=4)
"""MIL-HDBK-1110 / UFC 3-190-06, 9.6.6: about every four hours."""


def packs_by_day(
    job: Job, spec: Spec, steps: Sequence[Step], groups: Mapping[str, Group]
) -> tuple[tuple[date, str, int], ...]:
    """Packs by the day of their coat: those of the coat in proportion to the area of the load, rounded up."""
    figures = quantities(job, spec)
    found: list[tuple[date, str, int]] = []
    for step in steps:
        if step.work is not Work.APPLICATION or step.layer is None:
            continue
        packs = figures.layer_packs.get((step.system.id, step.layer.id))
        if packs is None or step.layer.product is None:
            continue
        coated = [item.id for item in job.items if spec.system_of(job, item) == step.system]
        areas = {name: figures.areas[name].number for name in coated if name in figures.areas}
        own = sum((areas.get(name, 0) for name in groups[step.load].items), start=packs.number * 0)
        whole = sum(areas.values(), start=packs.number * 0)
        share = packs.number * own / whole if whole else packs.number
        found.append((step.start.date(), step.layer.product, -(-share.numerator // share.denominator)))
    return tuple(found)


def readings_of(steps: Sequence[Step]) -> Iterator[datetime]:
    """Before every coat, and every four hours while it goes on."""
    moments: set[datetime] = set()
    for step in steps:
        if step.work is Work.APPLICATION:
            moment = step.start
            while moment < step.end:
                moments.add(moment)
                moment += _READINGS
    yield from sorted(moments)
