"""The thinners and cleaners a job orders: chemicals beside the coatings. Called by the rule on them and by the documents."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.model.job import Job, Supply, SupplyKind

CHEMICALS = frozenset({SupplyKind.THINNER, SupplyKind.CLEANER})


def chemicals(job: Job) -> Iterator[Supply]:
    """The supplies that are thinners or cleaners."""
    for entry in job.consumption.supplies if job.consumption is not None else ():
        if entry.kind in CHEMICALS:
            yield entry


def supply_codes(job: Job) -> tuple[str, ...]:
    """Every H statement of its thinners and cleaners, each once."""
    return tuple(dict.fromkeys(code for entry in chemicals(job) for code in entry.statements))
