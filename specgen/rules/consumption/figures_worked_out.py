"""USE009 Every figure of a job can be calculated

Checks
    Areas, target WFTs, packs and litres of each job: figures that contradict each other are an error at the faulty value; where something is only not stated, a note names it.
Why
    A figure that cannot be calculated is missing on paper, and someone guesses it at the part.
Passes
    jobs.refit.items.DOOR.masked: [{id: glass, what: window, area: 0.2 m2}]

    Given second good
Fails
    jobs.refit.items.DOOR.masked: [{id: glass, what: window, area: 2 m2}]    # at jobs.refit.items.DOOR

    without jobs.refit.consumption    # note at jobs.refit.consumption.transfer_efficiency

    without products.primer.composition    # note at products.primer.solids.in_can

    products.clear.pack.dispensed: 0 %    # at products.clear.pack.dispensed    # also USU001 at products.clear.pack.dispensed

    Given second good
    without jobs.lids.consumption    # note at jobs.lids.consumption.transfer_efficiency

    Given second good
    jobs.rails.items.LOCKER.masked: [{id: hinge, what: hinge, area: 7 ft2}]    # at jobs.rails.items.LOCKER
To put right
    Correct the value that is impossible, or write the one that is missing.
"""

from specgen.facts.job.quantities import quantities
from specgen.rules.kit import ERROR, LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("USE009", on=Job, severity=ERROR, source=LOGIC)
def figures_worked_out(job: Job, spec: Spec, on: date) -> Problems:
    for gap in quantities(job, spec).not_known:
        if gap.missing:
            what, remedy = (
                f"a figure cannot be calculated: {gap.why}",
                "write it; until then the figures that depend on it are left out",
            )
            yield Problem(gap.at, what, remedy, severity=NOTE, absolute=True)
        else:
            yield Problem(gap.at, gap.why, absolute=True)
