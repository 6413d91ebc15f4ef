"""What to order for several jobs at once: their needs of a product and variant summed, then rounded up once.

Rounding each job up by itself would order more cans than are needed. Called by `specgen.documents.order_list.view`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from specgen.facts.job.quantities import PackKey, Quantities, quantities
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.standards.citations import ARITHMETIC
from specgen.trade.given import take
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working, work
from specgen.units.locale import phrase

_ROUNDED_UP = "ceil("
_REFERS = "working:"
# More needs than this in one sum cannot be followed on paper.
_TERMS = 12
_NOT_CHOSEN = "the product is not chosen yet"
_NO_AREA, _NO_DEMAND = "the area of the item is not known", "no area with a DFT is known for it"


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

    def own_workings(self) -> tuple[Working, ...]:
        """The needs of the jobs and their sums; what those build on stands in each job's own annex."""
        needs = {share.id for of_jobs in self.shares.values() for share in of_jobs.values()}
        return tuple(entry for entry in self.workings if entry.id in needs or entry.id.startswith("order."))


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
    packs_of = {}
    numbers = {job.id: job.document.number for job in spec.jobs.values()}
    for key, of_jobs in shares.items():
        name = ".".join(part for part in key if part)
        needed = worked_out(f"packs of {name}", partial(_sum, name, of_jobs, kept, numbers))
        if isinstance(needed, NotKnown):
            gaps.append(NotCounted(", ".join(of_jobs), spec.products[key[0]].name, needed.why))
        else:
            packs_of[key] = needed
    return Orders(packs_of, shares, (*kept.values(), *packs_of.values()), tuple(gaps))


def _of_job(job: str, figures: Quantities) -> dict[str, Working]:
    """The workings of a job by the ids they have in it. Those that build on its parts get its id in front, for two
    jobs may have an item of one name; those of a product alone are the same in every job and keep theirs."""
    stated = {working.id: working for working in figures.workings()}
    found: dict[str, Working] = {}

    def renamed(working: Working) -> Working:
        if working.id not in found:
            inputs = []
            for entry in working.inputs:
                below = stated.get(entry.origin.removeprefix(_REFERS)) if entry.origin.startswith(_REFERS) else None
                inputs.append(entry if below is None else entry._replace(origin=f"{_REFERS}{renamed(below).id}"))
            own = any(entry.origin.startswith(("jobs.", f"{_REFERS}{job}/")) for entry in inputs)
            name = f"{job}/{working.id}" if own else working.id
            found[working.id] = working._replace(id=name, inputs=tuple(inputs))
        return found[working.id]

    for working in stated.values():
        renamed(working)
    return found


def _before_rounding(packs: Working) -> Working:
    """What one job needs in packs and parts of packs: the same figures, the last rounding up left out."""
    exact = packs.formula.removeprefix(_ROUNDED_UP).removesuffix(")")
    return work(
        f"{packs.id}/exact",
        phrase("{name}, not rounded", name=phrase(packs.name)),
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


def _sum(name: str, shares: Mapping[str, Working], kept: dict[str, Working], numbers: Mapping[str, str]) -> Working:
    """The packs to order, each need by the number of its job; the needs of many jobs are added up in groups, each put into `kept`."""
    needs: list[tuple[str, Working]] = [
        (phrase("needed by the job {job}", job=numbers[job]), share) for job, share in shares.items()
    ]
    level = 0
    while len(needs) > _TERMS:
        level += 1
        groups = [needs[at : at + _TERMS] for at in range(0, len(needs), _TERMS)]
        needs = [
            (
                phrase("group {number}", number=number),
                _added(f"order.{name}/{level}-{number}", "packs of a group of jobs", group, places=2),
            )
            for number, group in enumerate(groups, 1)
        ]
        kept.update((group.id, group) for _, group in needs)
    return _added(f"order.{name}", "packs to order", needs, places=0, call=_ROUNDED_UP)


def _added(key: str, name: str, needs: Sequence[tuple[str, Working]], *, places: int, call: str = "(") -> Working:
    inputs = tuple(take(f"N_{number}", said, need) for number, (said, need) in enumerate(needs, 1))
    formula = f"{call}{' + '.join(entry.symbol for entry in inputs)})"
    return work(key, name, formula, inputs, unit=needs[0][1].unit, places=places, source=ARITHMETIC)


def _gaps(job: Job, figures: Quantities, spec: Spec) -> Iterable[NotCounted]:
    """What the sums leave out, so that nobody takes them for the whole."""
    wanted = dict.fromkeys((layer.product, layer.variant) for layer in spec.layers_of(job) if layer.product is not None)
    for item in job.items:
        if item.id not in figures.areas:
            yield NotCounted(job.id, item.id, _NO_AREA)
    for layer in spec.layers_of(job):
        if layer.product is None:
            yield NotCounted(job.id, _coat(layer), _NOT_CHOSEN)
    for product, variant in wanted:
        if (product, variant) not in figures.packs:
            yield NotCounted(job.id, spec.products[product].name, _why(product, figures))


def _coat(layer: Layer) -> str:
    return layer.role.value.replace("-", " ")


def _why(product: str, figures: Quantities) -> str:
    """What stands in the way at the product, else that of the losses, which is told once for all products of a job."""
    for name in (product, "consumption"):
        for gap in figures.not_known:
            if name in gap.at:
                return gap.why
    return _NO_DEMAND
