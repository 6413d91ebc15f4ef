"""JOB014 Left and right parts are as many of each

Checks
    The number of parts of an item that are left and right: it is even, for half of them are of each hand.
Why
    An odd number says that one hand has a part more, and not which; a part is then left out, or one too many is painted.
Passes
    jobs.refit.items.DOOR.hand: left-and-right

    jobs.refit.items.DOOR.count: 3
    jobs.refit.items.DOOR.hand: left
Fails
    jobs.refit.items.DOOR.count: 3    # at jobs.refit.items.DOOR.count
    jobs.refit.items.DOOR.hand: left-and-right

    Given second good
    jobs.lids.items.LID.count: 1    # at jobs.lids.items.LID.count
    jobs.lids.items.LID.hand: left-and-right
To put right
    Correct the number, or write two items, hand: left and hand: right, each with its number.
"""

from specgen.model.job import Hand
from specgen.rules.kit import ERROR, LOGIC, Concern, Job, Problem, Problems, Spec, date, rule


@rule("JOB014", on=Job, severity=ERROR, concern=Concern.DOCUMENT, source=LOGIC)
def hands_in_pairs(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        if item.hand is Hand.BOTH and item.count % 2:
            what = f"the {item.count} parts of {item.id} are left and right, and cannot be as many of each"
            yield Problem(("items", item.id, "count"), what)
