"""The whole specification of a folder: one project, its products, preparations, systems and jobs, by id.

Rules and views ask it for what an item really gets: an item's own system, preparation and substrate go before the job's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from specgen.model.concession import Concession
from specgen.model.contract_document import ContractDocument
from specgen.model.guarded import with_record
from specgen.model.job import Item, Job
from specgen.model.node import Node
from specgen.model.offer import Offer
from specgen.model.preparation import Preparation, Substrate
from specgen.model.product import Product, Variant
from specgen.model.project import Project
from specgen.model.safety_sets import SETS, SafetySet
from specgen.model.stand_in import stand_in
from specgen.model.system import Layer, System
from specgen.model.test_report import LabReport
from specgen.pictures.prepared import Prepared

# What a source file may hold at its top level, and the record each entry becomes.
LIST_KINDS: Mapping[str, type[Node]] = {
    "reports": LabReport,
    "products": Product,
    "preparations": Preparation,
    "systems": System,
    "contract_documents": ContractDocument,
    "jobs": Job,
    "concessions": Concession,
    "offers": Offer,
}
KINDS: Mapping[str, type[Node]] = {"project": Project, SETS: SafetySet, **LIST_KINDS}

# What one entry is called, for `specgen schema KIND` and `specgen new KIND`.
SINGULAR: Mapping[str, str] = {
    "project": "project",
    "safety-set": SETS,
    "product": "products",
    "preparation": "preparations",
    "system": "systems",
    "contract-document": "contract_documents",
    "job": "jobs",
    "concession": "concessions",
    "offer": "offers",
    "report": "reports",
}


@dataclass(frozen=True, slots=True, eq=False, weakref_slot=True)
class Spec:
    """Everything that was read and is whole. References inside it resolve. Two are the same only if they are one.

    `pictures` are those that were read, by the leaf that names them; of a frozen model there are none.
    """

    project: Project
    products: Mapping[str, Product] = field(default_factory=dict)
    preparations: Mapping[str, Preparation] = field(default_factory=dict)
    systems: Mapping[str, System] = field(default_factory=dict)
    contract_documents: Mapping[str, ContractDocument] = field(default_factory=dict)
    jobs: Mapping[str, Job] = field(default_factory=dict)
    concessions: Mapping[str, Concession] = field(default_factory=dict)
    offers: Mapping[str, Offer] = field(default_factory=dict)
    reports: Mapping[str, LabReport] = field(default_factory=dict)
    pictures: Mapping[str, Prepared] = field(default_factory=dict)
    _stand_ins: dict[int, tuple[Layer, Product]] = field(default_factory=dict, init=False, repr=False)
    _systems: dict[int, tuple[Job, tuple[System, ...]]] = field(default_factory=dict, init=False, repr=False)

    def system_of(self, job: Job, item: Item) -> System | None:
        chosen = item.system or job.system
        return self.systems.get(chosen) if chosen else None

    def preparation_of(self, job: Job, item: Item) -> Preparation | None:
        chosen = item.preparation or job.preparation
        return self.preparations.get(chosen) if chosen else None

    def substrate_of(self, job: Job, item: Item) -> Substrate | None:
        return item.substrate or job.substrate

    def product_of(self, layer: Layer) -> Product:
        """The product of a coat; where it only requires one, a stand-in of what it requires."""
        if layer.product is not None:
            return self.products[layer.product]
        if id(layer) not in self._stand_ins:
            # the layer is kept, so that its id is that of no other
            self._stand_ins[id(layer)] = layer, stand_in(layer)
        return self._stand_ins[id(layer)][1]

    def variant_of(self, layer: Layer) -> Variant | None:
        return self.product_of(layer).variant(layer.variant) if layer.variant else None

    def systems_of(self, job: Job) -> Iterator[System]:
        """Every system some item of the job gets, each once, in the order of the items."""
        if id(job) not in self._systems:
            seen: dict[str, System] = {}
            for item in job.items:
                system = self.system_of(job, item)
                if system is not None:
                    seen.setdefault(system.id, system)
            # the job is kept, so that its id is that of no other
            self._systems[id(job)] = job, tuple(seen.values())
        return iter(self._systems[id(job)][1])

    def products_of(self, job: Job) -> Iterator[Product]:
        """Every product that the job names, each once, in the order it is laid down."""
        yield from self._named(self.layers_of(job))

    def with_system(self, system: System) -> Spec:
        """The same specification with this system in the place of the one of its id."""
        return replace(self, systems=with_record(self.systems, system.id, system))

    def paints_of(self, job: Job) -> tuple[Product, ...]:
        """Every product that the job names, each once, and the stand-in of every coat that names none."""
        return tuple({product.id: product for product in map(self.product_of, self.layers_of(job))}.values())

    def products_in(self, system: System) -> tuple[Product, ...]:
        """Every product that the system names, each once."""
        return self._named(system.layers)

    def _named(self, layers: Iterable[Layer]) -> tuple[Product, ...]:
        return tuple({layer.product: self.product_of(layer) for layer in layers if layer.product is not None}.values())

    def layers_of(self, job: Job) -> Iterator[Layer]:
        """Every coat of the job, those of one system together."""
        for system in self.systems_of(job):
            yield from system.layers
