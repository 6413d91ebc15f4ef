"""Which faults of the published table can occur with the products and parts of a job. Called by the method statement."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from specgen.facts.job.stack import Stack, stacks
from specgen.facts.pairs.families import ZINC_RICH, binder_family
from specgen.facts.pairs.layers import LayerPair, layer_pairs
from specgen.facts.pairs.overcoat import Verdict
from specgen.facts.pairs.papers import COLOUR
from specgen.facts.pairs.parts import BLASTING, members
from specgen.facts.product.curing import cured_by_moisture
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.job import Job
from specgen.model.preparation import StepKind
from specgen.model.product import CuringKind, Product, Role
from specgen.model.spec import Spec
from specgen.standards.tables import Row, table

_SOFT = {"soluble", "softens"}
_AMINE = {"epoxy_2k", "epoxy_latent", "epoxy_phenolic", "coal_tar_epoxy"}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Work:
    """What a job does, as far as it decides which faults can occur."""

    products: tuple[Product, ...]
    roles: frozenset[Role]
    steps: frozenset[StepKind]
    stacks: tuple[Stack, ...]
    job: Job
    spec: Spec


def possible_faults(job: Job, spec: Spec) -> tuple[Row, ...]:
    """The rows of the table, in its order, without those that the products and parts of the job cannot have."""
    work = _work(job, spec)
    return tuple(row for row in table("faults").rows if OCCURS[row["when"]](work))


def _work(job: Job, spec: Spec) -> _Work:
    preparations = [spec.preparation_of(job, item) for item in job.items]
    return _Work(
        products=tuple(map(spec.product_of, spec.layers_of(job))),
        roles=frozenset(layer.role for system in spec.systems_of(job) for layer in system.layers),
        steps=frozenset(
            step.do for preparation in preparations if preparation is not None for step in preparation.steps
        ),
        stacks=tuple(stacks(job, spec)),
        job=job,
        spec=spec,
    )


def _families(work: _Work) -> set[str]:
    return {product.binder for product in work.products}


def _strong_on_soft(work: _Work) -> bool:
    """True where a strong solvent meets a coat that may dissolve; two coats that the tables accept are not meant."""
    meets = [
        (pair.verdict.new, pair.verdict.old)
        for pair in _layer_pairs(work)
        if pair.verdict.verdict not in {Verdict.ACCEPTED, Verdict.SAME}
    ]
    meets.extend(
        (whole.first.family, whole.top_of_old.family or "")
        for whole in work.stacks
        if whole.first is not None and whole.top_of_old is not None
    )
    return any(binder_family(new)["solvent_strength"] == "strong" and _soft(below) for new, below in meets)


def _soft(family: str) -> bool:
    """True for paint that a solvent takes; unknown old paint counts as such."""
    return (
        not family or binder_family(family)["cured_rub"] in {*_SOFT, ""} or binder_family(family)["cure"] == "oxidative"
    )


def _layer_pairs(work: _Work) -> Iterator[LayerPair]:
    for system in work.spec.systems_of(work.job):
        yield from layer_pairs(system, work.spec)


def _polyurethane_on_epoxy(work: _Work) -> bool:
    return any(pair.verdict.new in members("pu") and pair.verdict.old in _AMINE for pair in _layer_pairs(work))


OCCURS: Mapping[str, Callable[[_Work], bool]] = {
    "always": lambda _: True,
    "several_coats": lambda work: any(len(whole.new) > 1 for whole in work.stacks),
    "isocyanate_and_moisture": lambda work: any(isocyanates_in(product) for product in work.products),
    "zinc_rich": lambda work: bool(_families(work) & ZINC_RICH),
    "cures_by_moisture": lambda work: any(cured_by_moisture(product) for product in work.products),
    "two_pack": lambda work: any(product.curing is CuringKind.LIQUID_TWO_PACK for product in work.products),
    "fast_solvent": lambda work: any(product.curing is CuringKind.PHYSICAL for product in work.products),
    "amine": lambda work: bool(_families(work) & _AMINE),
    "polyurethane_on_epoxy": _polyurethane_on_epoxy,
    "strong_on_soft": _strong_on_soft,
    "bitumen_below": lambda work: any(old.family == "bituminous" for whole in work.stacks for old in whole.old),
    "blasted": lambda work: bool(work.steps & BLASTING),
    "base_coat": lambda work: Role.BASECOAT in work.roles,
    "colour": lambda work: bool(work.roles & COLOUR),
}
"""What a row of the table of faults may name under `when`."""
