"""What rests on what: which records of the sources each record leads to, and which lead to it. The one answer, both ways.

A link runs from the record that names another to the one it names, through the place in it that does: an item, a layer, a line
of packs ordered. An item that states no system or preparation gets its job's; the link of the job's own value then runs through
the items that get it. What is named and got by nobody (a system that every item overrides) is linked all the same: the document
cannot be read without it. Everything rests on the project.

A data sheet prints one thing more: the products its own windows name, those whose windows name it, and those that are coats on
the panels of the reports its claims rest on. Such a neighbour is in the sheet with the reports it rests on itself, and goes no
further: a job with a primer does not rest on every coat that may follow the primer.

Called by `closure`, `placing`, `usage`, by waivers, by comparing and by issuing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from specgen.facts.memo import memoised
from specgen.facts.tests.fit import tests_of
from specgen.model.guarded import demand_all, demand_found, every
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.product import Evidence, Product
from specgen.model.references import references
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import Path

Address = tuple[str, str]
"""Kind and id of a record, as in `("systems", "cab")`."""

PROJECT: Address = ("project", "")

# each kind rests on those before it
_KINDS = tuple(LIST_KINDS)


class Link(NamedTuple):
    """`source` names `target`; `through` is the path, within the source, of the entry that does, or of the leaf where it is
    the record's own."""

    source: Address
    target: Address
    through: Path


def address_of(path: Sequence[str]) -> Address:
    """The record a path stands in. What stands in none of the lists is the project's, and so everybody's."""
    return (path[0], path[1]) if len(path) > 1 and path[0] in LIST_KINDS else PROJECT


def links_from(spec: Spec, address: Address) -> tuple[Link, ...]:
    """The links to the records this one names, in the order of its items and fields."""
    return _links(spec)[0].get(address, ())


def links_to(spec: Spec, address: Address) -> tuple[Link, ...]:
    """The links from the records that name this one, in the order of the sources.

    Raises NotWholeError where none of those that were read does, and one that was not may, or one names what is in no file.
    """
    found = _links(spec)[1].get(address, ())
    if not found and address[0] in _KINDS:
        demand_found(getattr(spec, address[0]))
        for kind in _KINDS[_KINDS.index(address[0]) + 1 :]:
            demand_all(getattr(spec, kind))
    return found


def sheet_links(spec: Spec, address: Address) -> tuple[Link, ...]:
    """The links from the products whose data sheets tell of this one as of a neighbour. A window of the neighbour's own has its full
    address."""
    return _told(spec)[1].get(address, ())


@memoised
def closure(spec: Spec, address: Address) -> frozenset[Address]:
    """The record, every record it leads to, and the project."""
    return _walked([address], lambda here: (link.target for link in links_from(spec, here))) | {PROJECT}


@memoised
def reach(spec: Spec, address: Address) -> frozenset[Address]:
    """The record and every record that leads to it; for the project all there are."""
    if address == PROJECT:
        return frozenset({PROJECT, *((kind, key) for kind in LIST_KINDS for key in getattr(spec, kind))})
    return _walked([address], lambda here: (link.source for link in links_to(spec, here)))


def document_closure(spec: Spec, address: Address) -> frozenset[Address]:
    """What the document of a job or product rests on: the closure, and beside a product its neighbours."""
    told = (link.target for link in _told(spec)[0].get(address, ()))
    return closure(spec, address).union(*(closure(spec, neighbour) for neighbour in told))


def document_reach(spec: Spec, address: Address) -> frozenset[Address]:
    """The records whose documents rest on this one."""
    found = reach(spec, address)
    return found | {link.source for one in found for link in sheet_links(spec, one)}


def jobs_in(spec: Spec, addresses: Iterable[Address]) -> tuple[str, ...]:
    """The ids of the jobs among the addresses, in the order of the sources."""
    order = _order_of_jobs(spec)
    return tuple(sorted({key for kind, key in addresses if kind == "jobs" and key in order}, key=order.__getitem__))


@memoised
def _order_of_jobs(spec: Spec) -> Mapping[str, int]:
    return {job: at for at, job in enumerate(spec.jobs)}


Linked = Mapping[Address, tuple[Link, ...]]


@memoised
def _links(spec: Spec) -> tuple[Linked, Linked]:
    """The links by their source and by their target."""
    return _both_ways(
        link for kind in LIST_KINDS for key, one in every(getattr(spec, kind)) for link in _links_of((kind, key), one)
    )


@memoised
def _told(spec: Spec) -> tuple[Linked, Linked]:
    """What data sheets tell of neighbours, by the product of the sheet and by the neighbour."""
    return _both_ways(
        link for product in spec.products.values() for link in (*_windows(product, spec), *_panels(product, spec))
    )


def _windows(product: Product, spec: Spec) -> Iterator[Link]:
    """A window is in the sheet of the product that states it and in that of the product it names."""
    own = ("products", product.id)
    for window in product.overcoat:
        if window.next_coat in spec.products and window.next_coat != product.id:
            other, through = ("products", window.next_coat), ("overcoat", window.id)
            yield Link(own, other, through)
            yield Link(other, own, (*own, *through))


def _panels(product: Product, spec: Spec) -> Iterator[Link]:
    """The other products of the panels behind a claim, which the sheet names."""
    for claim in product.claims:
        report = spec.reports.get(claim.evidence.report) if claim.evidence is not None else None
        tests = tests_of(report) if report is not None else ()
        shown = [one for one in tests if claim.evidence is not None and _is_shown(one.done.id, claim.evidence)]
        for named in dict.fromkeys(coat.product for one in shown for coat in one.series.coats):
            if named in spec.products and named != product.id:
                yield Link(("products", product.id), ("products", named), ("claims", claim.id, "evidence"))


def _is_shown(test: str, evidence: Evidence) -> bool:
    """True of both sides of a comparison, and of every test of a report where the claim leaves open which."""
    return evidence.test is None or test in {evidence.test, evidence.than}


def _links_of(address: Address, record: Node) -> Iterator[Link]:
    inherited: set[Address] = set()
    if isinstance(record, Job):
        for target, through in _got(record):
            inherited.add(target)
            yield Link(address, target, through)
    for path, kind, key in references(record):
        if (kind, key) not in inherited:
            yield Link(address, (kind, key), path[:-1] or path)


def _got(job: Job) -> Iterator[tuple[Address, Path]]:
    for item in job.items:
        chosen = (("preparations", item.preparation or job.preparation), ("systems", item.system or job.system))
        for kind, got in chosen:
            if got:
                yield (kind, got), ("items", item.id)


def _both_ways(links: Iterable[Link]) -> tuple[Linked, Linked]:
    by_source: dict[Address, list[Link]] = {}
    by_target: dict[Address, list[Link]] = {}
    for link in links:
        by_source.setdefault(link.source, []).append(link)
        by_target.setdefault(link.target, []).append(link)
    return _fixed(by_source), _fixed(by_target)


def _fixed(listed: Mapping[Address, Sequence[Link]]) -> Linked:
    return {address: tuple(links) for address, links in listed.items()}


def _walked(begin: Iterable[Address], onward: Callable[[Address], Iterable[Address]]) -> frozenset[Address]:
    seen: set[Address] = set()
    waiting = list(begin)
    while waiting:
        here = waiting.pop()
        if here not in seen:
            seen.add(here)
            waiting.extend(onward(here))
    return frozenset(seen)
