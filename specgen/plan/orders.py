"""What to order for several jobs at once: their needs of a product and variant summed, then rounded up once.

Rounding each job up by itself would order more cans than are needed. Called by `specgen.views.order_list`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.plan.quantities import PackKey, Quantities, quantities
from specgen.standards.citations import ARITHMETIC
from specgen.trade.given import take
from specgen.trade.working import Working, work

_ROUNDED_UP = "ceil("
_REFERS = "working:"


@dataclass(frozen=True, slots=True)
class NotCounted:
    """A need that is not in the sums: of which job and which product or item, and why."""

    job: str
    of: str
    why: str


@dataclass(frozen=True, slots=True)
class Orders:
    """`packs` to order by (product, variant); `shares` what each job needs of them, not rounded, by job id.

    `workings` holds both and all they build on, each before those that build on it.
    """

    packs: Mapping[PackKey, Working]
    shares: Mapping[PackKey, Mapping[str, Working]]
    workings: tuple[Working, ...]
    not_counted: tuple[NotCounted, ...]


def orders(spec: Spec) -> Orders:
    """The packs for all jobs of a folder."""
    shares: dict[PackKey, dict[str, Working]] = {}
    kept: dict[str, Working] = {}
    gaps: list[NotCounted] = []
    for job in spec.jobs.values():
        figures = quantities(job, spec)
        renamed = _of_job(job.id, figures)
        for key, packs in figures.packs.items():
            need = _before_rounding(renamed[packs.id])
            shares.setdefault(key, {})[job.id] = need
            for working in _below(need, {one.id: one for one in renamed.values()}):
                kept.setdefault(working.id, working)
        gaps.extend(_gaps(job, figures, spec))
    packs_of = {key: _sum("-".join(part for part in key if part), of_jobs) for key, of_jobs in shares.items()}
    return Orders(packs_of, shares, (*kept.values(), *packs_of.values()), tuple(gaps))


def _of_job(job: str, figures: Quantities) -> dict[str, Working]:
    """The workings of a job by their own ids. Those that build on its parts get its id in front, for two jobs may
    have an item of one name; those of a product alone are the same in every job and keep theirs."""
    found: dict[str, Working] = {}
    for working in figures.workings():
        inputs = tuple(replace(entry, origin=_origin(entry.origin, found)) for entry in working.inputs)
        own = any(entry.origin.startswith(("jobs.", f"{_REFERS}{job}.")) for entry in inputs)
        found[working.id] = replace(working, id=f"{job}.{working.id}" if own else working.id, inputs=inputs)
    return found


def _origin(origin: str, found: Mapping[str, Working]) -> str:
    below = found.get(origin.removeprefix(_REFERS)) if origin.startswith(_REFERS) else None
    return f"{_REFERS}{below.id}" if below is not None else origin


def _before_rounding(packs: Working) -> Working:
    """What one job needs in packs and parts of packs: the same figures, the last rounding up left out."""
    exact = packs.formula.removeprefix(_ROUNDED_UP).removesuffix(")")
    return work(
        f"{packs.id}-exact",
        f"{packs.name}, not rounded",
        exact,
        packs.inputs,
        unit=packs.unit,
        places=2,
        source=packs.source,
        note=packs.note,
    )


def _below(working: Working, known: Mapping[str, Working]) -> Iterator[Working]:
    """The working and all it builds on, the deepest first."""
    for entry in working.inputs:
        below = known.get(entry.origin.removeprefix(_REFERS))
        if entry.origin.startswith(_REFERS) and below is not None:
            yield from _below(below, known)
    yield working


def _sum(name: str, shares: Mapping[str, Working]) -> Working:
    inputs = tuple(
        take(f"N_{number}", f"needed by the job {job}", share) for number, (job, share) in enumerate(shares.items(), 1)
    )
    formula = f"{_ROUNDED_UP}{' + '.join(entry.symbol for entry in inputs)})"
    unit = next(iter(shares.values())).unit
    return work(f"order-{name}", "packs to order", formula, inputs, unit=unit, places=0, source=ARITHMETIC)


def _gaps(job: Job, figures: Quantities, spec: Spec) -> Iterable[NotCounted]:
    """What the sums leave out, so that nobody takes them for the whole."""
    wanted = {(layer.product, layer.variant): None for system in spec.systems_of(job) for layer in system.layers}
    for item in job.items:
        if item.id not in figures.areas:
            yield NotCounted(job.id, item.id, "the area of the item is not known")
    for product, variant in wanted:
        if (product, variant) not in figures.packs:
            named = spec.products[product].name
            why = next((fault.why for fault in figures.unsolved if product in fault.path), "the sources do not tell")
            yield NotCounted(job.id, named, why)
