"""USE012 The last day of use is not past the shelf life of the product

Checks
    Each line of the order that states a last day of use, with the product's shelf life: it is no later than the shelf life counted from the first day of the work, or from today where that is later or none is stated.
Why
    A pack that is filled on the day the work begins would be out of date before that day: the year is mistyped, or the date is that of another product.
Passes
    jobs.refit.starts: 2026-12-07
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2, use_by: 2028-12-07}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]
Fails
    jobs.refit.starts: 2026-12-07
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2, use_by: 2031-12-07}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # at jobs.refit.consumption.ordered.p.use_by
To put right
    Read the date on the pack again, or correct the shelf life of the product.
"""

from specgen.facts.product.shelf_life import months_between
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USE012", on=Job, severity=WARNING, source=LOGIC)
def use_by_within_shelf_life(job: Job, spec: Spec, on: date) -> Problems:
    latest = max(job.starts or on, on)
    for line in job.consumption.ordered if job.consumption is not None else ():
        product = spec.products.get(line.product)
        if line.use_by is None or product is None or product.shelf_life is None:
            continue
        if months_between(latest, line.use_by) > product.shelf_life.months:
            what = f"{line.product} as ordered may be used until {line.use_by}; its shelf life is {product.shelf_life}"
            yield Problem(("consumption", "ordered", line.id, "use_by"), what)
