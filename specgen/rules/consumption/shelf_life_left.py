"""USE010 The packs ordered are within their shelf life when the work starts

Checks
    Each line of the order with the last day of its shelf life, against the first day of the work where the job states it, else against today. A shelf life that ends before the work starts is an error; one that has ended today, where no first day is stated, a warning.
Why
    Paint past its shelf life may be skinned, settled or half reacted in the pack, and nobody sees it on the label of the box.
Passes
    jobs.refit.starts: 2026-12-07
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2, use_by: 2026-12-07}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]
Fails
    jobs.refit.starts: 2026-12-07
    jobs.refit.consumption.ordered: [{id: p, product: primer, variant: grey, packs: 2, use_by: 2026-12-06}, {id: b, product: base, packs: 1}, {id: c, product: clear, packs: 2}, {id: x, product: barrier, packs: 1}]    # at jobs.refit.consumption.ordered.p.use_by

    Given second good
    jobs.lids.consumption.ordered: [{id: w, product: touch-up, variant: white, packs: 2, use_by: 2026-11-24}, {id: g, product: touch-up, variant: grey, packs: 2}, {id: m, product: mastic, packs: 2}, {id: t, product: gloss, packs: 1}]    # warning at jobs.lids.consumption.ordered.w.use_by
To put right
    Order fresh packs, or state the first day of the work.
"""

from specgen.rules.kit import ERROR, LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USE010", on=Job, severity=ERROR, source=LOGIC)
def shelf_life_left(job: Job, spec: Spec, on: date) -> Problems:
    start = job.starts or on
    for line in job.consumption.ordered if job.consumption is not None else ():
        if line.use_by is not None and line.use_by < start:
            ends = "before the work starts on" if job.starts is not None else "before"
            what = f"the shelf life of {line.product} as ordered ends on {line.use_by}, {ends} {start}"
            weight = None if job.starts is not None else WARNING
            yield Problem(("consumption", "ordered", line.id, "use_by"), what, severity=weight)
