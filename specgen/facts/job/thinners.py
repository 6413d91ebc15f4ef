"""The thinner a job takes, and a folder of jobs: what its coats take of one thinner as one figure, for a buyer orders it once.

Called by the documents that order.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from specgen.facts.job.chemicals import chemicals
from specgen.facts.job.quantities import Quantities, quantities
from specgen.facts.memo import memoised
from specgen.model.hazards import SafetyDataSheet
from specgen.model.job import Job, Supply, SupplyKind
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.standards.citations import ARITHMETIC
from specgen.trade.given import take
from specgen.trade.working import Working, work
from specgen.units.locale import phrase

_MOST_TERMS = 12
"""More in one sum cannot be followed on paper."""


@dataclass(slots=True)
class Thinner:
    """`name` as the product data sheets have it, empty where they name none; `products` are thinned with it.

    `amount` is what all its coats take, in mL; `sums` are what it is added up of where those are several.
    """

    name: str
    products: list[Product] = field(default_factory=list)
    parts: list[tuple[str, Working]] = field(default_factory=list)
    sums: tuple[Working, ...] = ()

    @property
    def amount(self) -> Working:
        return self.sums[-1] if self.sums else self.parts[0][1]


def thinners_of(job: Job, spec: Spec) -> tuple[Thinner, ...]:
    """Each thinner of a job with what all its coats take of it."""
    return _of_job(spec, job.id)


@memoised
def _of_job(spec: Spec, job_id: str) -> tuple[Thinner, ...]:
    figures: Quantities = quantities(spec.jobs[job_id], spec)
    found: dict[str, Thinner] = {}
    for (system_id, layer_id), needed in figures.thinners.items():
        layer = next(layer for layer in spec.systems[system_id].layers if layer.id == layer_id)
        product = spec.product_of(layer)
        name = thinner_named(product)
        # of two products that name none it is not known to be one thinner
        thinner = found.setdefault(name or f"/{product.id}", Thinner(name))
        if product not in thinner.products:
            thinner.products.append(product)
        said = phrase("thinner of {product}", product=product.name)
        thinner.parts.append((said, needed))
    for key, thinner in found.items():
        thinner.sums = _added(f"thinner-of.{job_id}.{key}", thinner.parts)
    return tuple(found.values())


def thinners_of_all(spec: Spec) -> dict[str, Thinner]:
    """Each thinner that is named with what all jobs of the folder take of it."""
    found: dict[str, Thinner] = {}
    for job in sorted(spec.jobs.values(), key=lambda job: job.document.number):
        for thinner in thinners_of(job, spec):
            if thinner.name:
                whole = found.setdefault(thinner.name, Thinner(thinner.name))
                said = phrase("needed by the job {job}", job=job.document.number)
                whole.parts.append((said, thinner.amount))
    for name, whole in found.items():
        whole.sums = _added(f"order.thinner.{name}", whole.parts)
    return found


def thinner_named(product: Product) -> str:
    """The thinner of a product by its name; empty where it names none."""
    mixing = product.application.mixing if product.application is not None else None
    return (mixing.thinner or "").strip() if mixing is not None else ""


def ordered_as(thinner: Thinner, supplies: Iterable[Supply]) -> Supply | None:
    """The line of the supplies under which a thinner is ordered, by its whole name: thinner 12 is not thinner 1."""
    if not thinner.name:
        return None
    name = re.compile(rf"(?<!\w){re.escape(thinner.name)}(?!\w)", re.IGNORECASE)
    return next((one for one in supplies if one.kind is SupplyKind.THINNER and name.search(one.what)), None)


def without_hazards(job: Job, spec: Spec) -> tuple[tuple[str, SafetyDataSheet | None], ...]:
    """Thinners and cleaners whose hazards nobody states: supplies without statements, then the thinner of a coat that none orders.

    Each with its safety data sheet where one is named; the name is empty where the product names no thinner.
    """
    silent = [(entry.what, entry.safety_data_sheet) for entry in chemicals(job) if not entry.statements]
    return (*silent, *((thinner.name, None) for thinner in not_ordered(job, spec)))


def not_ordered(job: Job, spec: Spec) -> tuple[Thinner, ...]:
    """The thinners of coats that no line of the supplies orders; one without a name may be any thinner among them."""
    ordered = job.consumption.supplies if job.consumption is not None else ()
    some = any(entry.kind is SupplyKind.THINNER for entry in ordered)
    return tuple(
        thinner
        for thinner in thinners_of(job, spec)
        if ordered_as(thinner, ordered) is None and (thinner.name or not some)
    )


def _added(key: str, needs: list[tuple[str, Working]]) -> tuple[Working, ...]:
    """The sum with what it is added up of in groups, itself last; nothing of one need."""
    if len(needs) < 2:
        return ()
    made: list[Working] = []
    level = 0
    while len(needs) > _MOST_TERMS:
        level += 1
        cut = [needs[at : at + _MOST_TERMS] for at in range(0, len(needs), _MOST_TERMS)]
        groups = [_sum(f"{key}/{level}-{number}", some) for number, some in enumerate(cut, 1)]
        made += groups
        needs = [(phrase("group {number}", number=number), group) for number, group in enumerate(groups, 1)]
    return (*made, _sum(key, needs))


def _sum(key: str, needs: list[tuple[str, Working]]) -> Working:
    inputs = tuple(take(f"V_{number}", said, need, "volume", "mL") for number, (said, need) in enumerate(needs, 1))
    formula = " + ".join(entry.symbol for entry in inputs)
    return work(key, "thinner, all together", formula, inputs, kind="volume", unit="mL", places=0, source=ARITHMETIC)
