"""The tests that a job's customer requires against the reports there are: which are shown, which fall short, and what to test next.

A test of a coat is held against the panels of the product offered or named for it, one of a system or a job against panels of all its
coats. Called by the qualification matrix.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from specgen.facts.offered import coats_offered
from specgen.facts.tests.fit import Mismatch, Tested, mismatches, reports_of, tests_of
from specgen.facts.tests.outcome import Judged, Outcome, judged
from specgen.facts.tests.values import method_row
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.test_required import CoatAsked, Condition, RequiredTest
from specgen.units.quantity import Quantity, Range


class Standing(StrEnum):
    """How a required test stands, the gravest first."""

    FALLS_SHORT = "falls short"
    NOT_TESTED = "not tested"
    OTHER_PANELS = "other panels or conditions"
    NOT_TOLD = "cannot be told"
    IN_WORDS = "in words"
    SHOWN = "shown"


@dataclass(frozen=True, slots=True)
class Candidate:
    """The products that stand in the coats of a system: those of one offer, or those the specification names itself (no `offer`)."""

    offer: str
    supplier: str
    products: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Qualified:
    """One required test and one candidate: the nearest test there is, what it lacks, how the results stand, and what to test next.

    `layer` is None where the whole system is tested; `coats` are the products tested, from the substrate outwards.
    """

    system: System
    layer: Layer | None
    test: RequiredTest
    candidate: Candidate
    coats: tuple[str, ...]
    standing: Standing
    tested: Tested | None = None
    unlike: tuple[Mismatch, ...] = ()
    judged: Judged | None = None

    @property
    def panels(self) -> int:
        """The panels or places to test: as many as required, else as the methods ask for."""
        methods = [self.test.method, self.test.after.method if self.test.after is not None else None]
        least = [int(method_row(method)["least"] or 1) for method in methods if method is not None]
        return max([self.test.specimens or 1, *least])

    @property
    def exposure(self) -> Quantity | Range | None:
        """How long the panels are exposed before."""
        return self.test.after.duration if self.test.after is not None else None


def requires_tests(job: Job, spec: Spec) -> bool:
    """True where the job, a system of it or an open coat requires a test."""
    systems = tuple(spec.systems_of(job))
    layers = [layer for system in systems for layer in system.layers if layer.required is not None]
    return bool(job.tests or any(system.tests for system in systems)) or any(
        layer.required is not None and layer.required.tests for layer in layers
    )


def qualified(job: Job, spec: Spec) -> tuple[Qualified, ...]:
    """Every required test with every candidate, gaps first, each kind in the order of the sources."""
    order = list(Standing)
    found = [
        _held(system, layer, test, candidate, spec)
        for system in spec.systems_of(job)
        for candidate in _candidates(job, system, spec)
        for layer, test in _tests(job, system)
    ]
    return tuple(sorted(found, key=lambda one: order.index(one.standing)))


def _tests(job: Job, system: System) -> Iterator[tuple[Layer | None, RequiredTest]]:
    for layer in system.layers:
        if layer.required is not None:
            yield from ((layer, test) for test in layer.required.tests)
    yield from ((None, test) for test in (*system.tests, *job.tests))


def _candidates(job: Job, system: System, spec: Spec) -> Iterator[Candidate]:
    named = {layer.id: layer.product for layer in system.layers if layer.product is not None}
    if len(named) == len(system.layers):
        yield Candidate("", "", named)
        return
    offers = [offer for offer in spec.offers.values() if offer.job == job.id or offer.system == system.id]
    for offer in offers:
        offered = {
            coat.layer.id: coat.entry.product for coat in coats_offered(offer, spec) if coat.system.id == system.id
        }
        yield Candidate(offer.id, offer.supplier, named | offered)
    if not offers:
        yield Candidate("", "", named)


def _held(system: System, layer: Layer | None, test: RequiredTest, candidate: Candidate, spec: Spec) -> Qualified:
    layers = system.layers if layer is None else (layer,)
    coats = tuple(candidate.products[one.id] for one in layers if one.id in candidate.products)
    common = (system, layer, test, candidate, coats)
    if test.method is None:
        return Qualified(*common, Standing.IN_WORDS)
    if len(coats) < len(layers):
        return Qualified(*common, Standing.NOT_TESTED)
    asked = test if layer is not None else _of_system(test, coats)
    product = spec.products[coats[-1]]
    near = [(tested, mismatches(asked, product, tested, claimed=False)) for tested in _alike(test, product, spec)]
    if not near:
        return Qualified(*common, Standing.NOT_TESTED)
    ranked = [(tested, unlike, judged(test, tested.done)) for tested, unlike in near]
    tested, unlike, result = min(ranked, key=lambda one: (len(one[1]), one[2].outcome is not Outcome.MEETS))
    return Qualified(*common, _standing(unlike, result), tested, unlike, result)


def _standing(unlike: tuple[Mismatch, ...], result: Judged) -> Standing:
    if unlike:
        return Standing.OTHER_PANELS
    by_outcome = {Outcome.MEETS: Standing.SHOWN, Outcome.FALLS_SHORT: Standing.FALLS_SHORT}
    return by_outcome.get(result.outcome, Standing.IN_WORDS if result.in_words else Standing.NOT_TOLD)


def _alike(test: RequiredTest, product: Product, spec: Spec) -> Iterator[Tested]:
    """The tests by the same method after the same kind of exposure, on panels with the product."""
    exposed = test.after.method if test.after is not None else None
    for report in reports_of(product, spec):
        for tested in tests_of(report):
            after = tested.done.after.method if tested.done.after is not None else None
            if (tested.done.method, after) == (test.method, exposed) and not tested.series.control:
                yield tested


def _of_system(test: RequiredTest, coats: tuple[str, ...]) -> RequiredTest:
    """The test with the coats of the candidate on its panels, where it names none itself."""
    condition = test.condition if test.condition is not None else Condition()
    if condition.coats:
        return test
    asked = tuple(CoatAsked.model_construct(id=f"coat-{number}", product=coat) for number, coat in enumerate(coats, 1))
    return test.model_copy(update={"condition": condition.model_copy(update={"coats": asked})})
