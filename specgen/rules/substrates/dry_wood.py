"""SUB008 Wood is dry and not weathered grey

Checks
    Bare wood: its moisture content, and how long it was outdoors uncoated, against the table. Wood whose moisture content is not stated cannot be assessed.
Why
    Water leaves damp wood through the paint and blisters it; the grey surface of weathered wood is dead fibre that comes off with the paint.
Passes
    jobs.refit.items.STEP.substrate: {material: wood, thickness: 18 mm, moisture: 12 %, bare_outdoors: 3 days}

    jobs.refit.items.STEP.substrate: {material: wood, thickness: 18 mm, moisture: 15 %, bare_outdoors: 14 days}
Fails
    jobs.refit.items.STEP.substrate: {material: wood, thickness: 18 mm, moisture: 19 %, bare_outdoors: 30 days}    # at jobs.refit.items.STEP.substrate.moisture    # also SUB008 at jobs.refit.items.STEP.substrate.bare_outdoors

    jobs.refit.items.STEP.substrate: {material: wood, thickness: 18 mm}    # note at jobs.refit.items.STEP.substrate.moisture

    jobs.refit.items.STEP.substrate: {material: wood, thickness: 18 mm, moisture: 15.1 %, bare_outdoors: 15 days}    # at jobs.refit.items.STEP.substrate.moisture    # at jobs.refit.items.STEP.substrate.bare_outdoors
To put right
    Dry the wood under cover, sand off the grey layer down to sound wood, and measure again.
"""

from fractions import Fraction

from specgen.facts.pairs.parts import Part, parts_of
from specgen.rules.kit import (
    NOTE,
    WARNING,
    Citation,
    Concern,
    Job,
    Problem,
    Problems,
    Quantity,
    Spec,
    cell_citation,
    date,
    rule,
)

_SOURCE = cell_citation("substrates", "wood", "most_moisture_pct")


@rule("SUB008", on=Job, severity=WARNING, concern=Concern.PREPARATION, source=_SOURCE)
def dry_wood(job: Job, spec: Spec, on: date) -> Problems:
    for part in parts_of(job, spec):
        if part.material != "wood" or not part.is_bare:
            continue
        owner = ("items", part.item.id) if part.item.substrate is not None else ()
        path, substrate = (*owner, "substrate"), part.substrate
        moist, moist_source = _limit(part, "most_moisture_pct", "percentage", "%")
        bare, bare_source = _limit(part, "most_days_bare", "duration", "days")
        if substrate.moisture is None:
            what = f"cannot be assessed: the moisture content of the wood is not stated; the maximum is {moist}"
            yield Problem((*path, "moisture"), what, "write the measured moisture content", NOTE, moist_source)
        elif substrate.moisture > moist:
            what = f"the moisture content of the wood is {substrate.moisture}; the maximum is {moist}"
            yield Problem((*path, "moisture"), what, source=moist_source)
        if substrate.bare_outdoors is not None and substrate.bare_outdoors > bare:
            what = f"the wood was outdoors uncoated for {substrate.bare_outdoors}; the maximum is {bare}"
            yield Problem((*path, "bare_outdoors"), what, source=bare_source)


def _limit(part: Part, column: str, kind: str, unit: str) -> tuple[Quantity, Citation]:
    asked = part.asks(column)
    if asked is None:
        raise LookupError(f"the table of substrates has no {column} for {part.material}")
    return Quantity.of(kind, Fraction(asked[0]), unit, asked[0]), asked[1]
