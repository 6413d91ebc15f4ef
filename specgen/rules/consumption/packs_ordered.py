"""USE008 The packs ordered give the specified DFT

Checks
    The packs ordered of each product and variant, against those calculated for all coats and items of the job together, rounded up once. A product of the job, or a variant of it, without a line in the order; a line that names no variant covers all of them.
Why
    With one can too few the last part gets a thin coat or another batch.
Passes
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 1}, {id: q, product: primer, variant: grey, packs: 1}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]
Fails
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 1}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # at jobs.refit.consumption.ordered.p.packs

    jobs.refit.consumption.ordered: [{id: p, product: primer, packs: 2}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}]    # warning at jobs.refit.consumption.ordered

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: red, packs: 2}, {id: g, product: primer, packs: 2}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # warning at jobs.refit.consumption.ordered.p.variant

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 1}, {id: x, product: barrier, packs: 1}]    # at jobs.refit.consumption.ordered.c.packs

    without products.base.solids
    jobs.refit.consumption.ordered: [{id: b, product: base, packs: 1}, {id: p, product: primer, variant: grey, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # note at jobs.refit.consumption.ordered.b.packs    # at jobs.refit.consumption.ordered.p.packs    # also USE009 at products.base.solids.in_can

    Given second good
    jobs.rails.consumption.ordered: [{id: m, product: mastic, packs: 1}, {id: g, product: gloss, packs: 1}]    # at jobs.rails.consumption.ordered.m.packs
To put right
    Order the number calculated; round up once for each product, never down for each coat.
"""

from collections.abc import Sequence

from specgen.facts.job.quantities import PackKey, named_pack, quantities
from specgen.model.job import Ordered
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USE008", on=Job, severity=ERROR, source=LOGIC)
def packs_ordered(job: Job, spec: Spec, on: date) -> Problems:
    lines = job.consumption.ordered if job.consumption is not None else ()
    if not lines:
        return
    figures = quantities(job, spec)
    used = {(layer.product, layer.variant) for layer in spec.layers_of(job) if layer.product is not None}
    for line in lines:
        path = ("consumption", "ordered", line.id)
        keys = {key for key in used if key[0] == line.product and line.variant in {None, key[1]}}
        ordered = sum(other.packs for other in lines if (other.product, other.variant) == (line.product, line.variant))
        if not keys:
            at = "product" if line.variant is None else "variant"
            what = f"no coat of the job uses {named_pack(line.product, line.variant)}"
            yield Problem((*path, at), what, severity=WARNING)
        elif not keys <= figures.packs.keys():
            what = f"the order of {line.product} cannot be assessed: the packs required are not known"
            yield Problem((*path, "packs"), what, severity=NOTE)
        elif ordered < (need := sum(figures.packs[key].number for key in keys)):
            what = f"packs ordered of {named_pack(line.product, line.variant)}: {ordered}; required: {need}"
            yield Problem((*path, "packs"), what)
    for name in sorted(_not_ordered(used, lines)):
        yield Problem(("consumption", "ordered"), f"no packs of {name} are ordered", severity=WARNING)


def _not_ordered(used: set[PackKey], lines: Sequence[Ordered]) -> set[str]:
    """The products without a line; of the others the variants that no line covers."""
    covered = {(line.product, line.variant) for line in lines}
    products = {product for product, _ in covered}
    found = {product for product, _ in used if product not in products}
    for product, variant in used:
        if product in products and variant is not None and not {(product, variant), (product, None)} & covered:
            found.add(named_pack(product, variant))
    return found
