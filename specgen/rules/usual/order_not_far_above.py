"""USU010 An order is not far above the packs calculated

Checks
    The packs ordered of each product and variant, against those calculated for the job: more than a quarter above them, and more than two packs besides. Three times as many and more is a warning, of spray cans where a full box of twelve does not explain it.
Why
    A surplus for repairs is usual; an order of several times the need has an area, a count or a DFT that is not what it seems, or leaves cans that age in the store.
Passes
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 4}, {id: b, product: base, packs: 3}, {id: c, product: clear, packs: 4}, {id: x, product: barrier, packs: 3}]

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2}, {id: q, product: primer, variant: grey, packs: 2}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]
Fails
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 5}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 4}]    # at jobs.refit.consumption.ordered.p.packs    # at jobs.refit.consumption.ordered.x.packs

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2}, {id: q, product: primer, variant: grey, packs: 3}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # at jobs.refit.consumption.ordered.p.packs    # at jobs.refit.consumption.ordered.q.packs

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 14}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # note at jobs.refit.consumption.ordered.p.packs

    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 15}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 4}]    # warning at jobs.refit.consumption.ordered.p.packs    # warning at jobs.refit.consumption.ordered.x.packs
To put right
    Compare the areas and the count of the items with the drawing; order less, or leave the number as it is where full boxes or a stock is meant.
"""

from specgen.facts.job.quantities import named_pack, quantities
from specgen.facts.usual import proportion
from specgen.model.product import PackForm
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USU010", on=Job, severity=NOTE, source=PRACTICE)
def order_not_far_above(job: Job, spec: Spec, on: date) -> Problems:
    lines = job.consumption.ordered if job.consumption is not None else ()
    if not lines:
        return
    packs = quantities(job, spec).packs
    for line in lines:
        needs = [
            pack.number for key, pack in packs.items() if key[0] == line.product and line.variant in {None, key[1]}
        ]
        ordered = sum(other.packs for other in lines if (other.product, other.variant) == (line.product, line.variant))
        need = sum(needs)
        if needs and ordered > proportion("order_share") * need + proportion("order_packs"):
            what = f"packs ordered of {named_pack(line.product, line.variant)}: {ordered}; required: {need}"
            spare = proportion("order_box" if _is_can(line.product, spec) else "order_packs")
            far = ordered >= proportion("order_far") * need and ordered > need + spare
            yield Problem(("consumption", "ordered", line.id, "packs"), what, severity=WARNING if far else None)


def _is_can(product: str, spec: Spec) -> bool:
    found = spec.products.get(product)
    return found is not None and found.pack.form is PackForm.AEROSOL
