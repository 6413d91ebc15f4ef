"""The tests that a job's customer requires against the reports there are: which are shown, which fall short, and what to test next.

A test of a coat is held against the panels of the product offered or named for it, one of a system or a job against panels of all its
coats. Called by the qualification matrix and by the review of an offer.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from specgen.facts.offered import coats_offered, open_coats
from specgen.facts.tests.shown import Shown, Standing, shown, supplier_shows
from specgen.facts.tests.values import method_row
from specgen.model.job import Job
from specgen.model.offer import Offer
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.test_required import RequiredTest
from specgen.units.quantity import Quantity, Range


class Bid(NamedTuple):
    """A job with one offer for it; None where the specification names its products itself, or nobody has offered any."""

    job: Job
    offer: Offer | None


class Qualified(NamedTuple):
    """One required test: how it stands by the reports, and what to test next.

    `layer` is None where the whole system is tested; `coats` are the products tested, from the substrate outwards.
    """

    system: System
    layer: Layer | None
    test: RequiredTest
    coats: tuple[str, ...]
    shown: Shown

    @property
    def standing(self) -> Standing:
        return self.shown.standing

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


def bids(job: Job, spec: Spec) -> tuple[Bid, ...]:
    """The job with each offer for it; by itself where there is none."""
    systems = list(spec.systems_of(job))
    open_yet = any(layer.product is None for system in systems for layer in system.layers)
    named = {system.id for system in systems}
    offers = [offer for offer in spec.offers.values() if offer.job == job.id or offer.system in named]
    return tuple(Bid(job, offer) for offer in offers) if open_yet and offers else (Bid(job, None),)


def qualified(bid: Bid, spec: Spec) -> tuple[Qualified, ...]:
    """Every required test with the products named and offered, gaps first, each kind in the order of the sources."""
    order = list(Standing)
    found = [
        _held(system, layer, test, _products(system, bid.offer, spec), spec)
        for system in spec.systems_of(bid.job)
        for layer, test in _tests(bid.job, system)
    ]
    return tuple(sorted(found, key=lambda one: order.index(one.standing)))


def _tests(job: Job, system: System) -> Iterator[tuple[Layer | None, RequiredTest]]:
    for layer in system.layers:
        if layer.required is not None:
            yield from ((layer, test) for test in layer.required.tests)
    yield from ((None, test) for test in (*system.tests, *job.tests))


def of_offer(offer: Offer, spec: Spec) -> Iterator[Qualified]:
    """The tests of all coats together that the supplier of an offer has to show, with the products offered."""
    tests = spec.jobs[offer.job].tests if offer.job is not None else ()
    for id in dict.fromkeys(system.id for system, _ in open_coats(offer, spec)):
        system = spec.systems[id]
        products = _products(system, offer, spec)
        for test in (*system.tests, *tests):
            if supplier_shows(test):
                yield _held(system, None, test, products, spec)


def _products(system: System, offer: Offer | None, spec: Spec) -> dict[str, str]:
    """The product of each coat: named by the specification, else offered."""
    named = {layer.id: layer.product for layer in system.layers if layer.product is not None}
    if offer is None:
        return named
    offered = {coat.layer.id: coat.entry.product for coat in coats_offered(offer, spec) if coat.system.id == system.id}
    return named | offered


def _held(
    system: System, layer: Layer | None, test: RequiredTest, products: Mapping[str, str], spec: Spec
) -> Qualified:
    layers = system.layers if layer is None else (layer,)
    coats = tuple(products[one.id] for one in layers if one.id in products)
    if test.method is None:
        found = Shown(Standing.IN_WORDS)
    elif len(coats) < len(layers):
        found = Shown(Standing.NOT_TESTED)
    else:
        found = shown(test, spec.products[coats[-1]], spec, coats if layer is None else ())
    return Qualified(system, layer, test, coats, found)
