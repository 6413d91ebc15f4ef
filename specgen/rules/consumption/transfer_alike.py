"""USE011 Like parts are calculated with like transfer efficiencies

Checks
    Two jobs of a folder whose items have the same shapes and are painted from the same form of pack: their transfer efficiencies differ by less than a factor of two.
Why
    How much paint lands on a part depends on its shape. Of two figures twice apart for like parts one is wrong: the cans run out, or boxes of them are left.
Passes
    Given second good
    jobs.lids.items.FRAME.shapes: [{id: tube, kind: tube, length: 10 ft, diameter: 2 in}]
    jobs.rails.consumption: {transfer_efficiency: 26 %, profile: 1.5 mil, dead_volume: by-band}

    Given second good
    jobs.lids.items.LID.shapes: [{id: tube, kind: tube, length: 10 ft, diameter: 2 in}]
    without jobs.lids.items.LID.area
    jobs.rails.consumption: {transfer_efficiency: 25 %, profile: 1.5 mil, dead_volume: by-band}
Fails
    Given second good
    jobs.lids.items.FRAME.shapes: [{id: tube, kind: tube, length: 10 ft, diameter: 2 in}]
    jobs.rails.consumption: {transfer_efficiency: 25 %, profile: 1.5 mil, dead_volume: by-band}    # at jobs.lids.consumption.transfer_efficiency
To put right
    Weigh one part and its packs before and after, and use the figure for both.
"""

from fractions import Fraction

from specgen.facts.memo import memoised
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Quantity, Spec, date, rule


@rule("USE011", on=Job, severity=NOTE, source=LOGIC)
def transfer_alike(job: Job, spec: Spec, on: date) -> Problems:
    own = _stated(job)
    if own is None:
        return
    apart = {base for base in _figures(spec) if max(own.base, base) >= 2 * min(own.base, base)}
    mine = _likeness(job, spec) if apart else frozenset()
    for other in spec.jobs.values() if mine else ():
        if other.id == job.id:
            return  # a pair is told at the second of the two
        theirs = _stated(other)
        if theirs is not None and theirs.base in apart and mine == _likeness(other, spec):
            what = f"{job.id} is calculated with a transfer efficiency of {own}, {other.id} with {theirs}, on parts of the same shapes"
            yield Problem(("consumption", "transfer_efficiency"), what)
            return


def _stated(job: Job) -> Quantity | None:
    found = job.consumption.transfer_efficiency if job.consumption is not None else None
    return found if found is not None and found.base else None


@memoised
def _figures(spec: Spec) -> frozenset[Fraction]:
    """The figures that jobs state: far fewer than there are jobs."""
    return frozenset(stated.base for job in spec.jobs.values() if (stated := _stated(job)) is not None)


def _likeness(job: Job, spec: Spec) -> frozenset[tuple[str, str]]:
    """The kinds of shape of a job, each with the form of the packs it is painted from; items of a stated area say nothing."""
    found = set()
    for item in job.items:
        system = spec.system_of(job, item)
        forms = {spec.product_of(layer).pack.form.value for layer in system.layers} if system is not None else set()
        found |= {(shape.kind.value, form) for shape in item.shapes for form in forms}
    return frozenset(found)
