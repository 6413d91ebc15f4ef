"""REP001 Repair coats overlap sound paint far enough

Checks
    Items with widths of a repair: the overlap of the new coats on the abraded existing coating is stated and is not below the published 25 mm, and the abraded ring is at least as wide as the overlap; narrower is an error, for then the new coats lie on gloss.
Why
    A narrow overlap ends on the feathered edge, where the film is thinnest: it lifts there and the ring shows through the finish.
Passes
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}

    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 25 mm, lap: 25 mm}

    Given second good
    jobs.rails.items.LOCKER.repair: {sanded: 2 in, lap: 2 in}
Fails
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 15 mm}    # warning at jobs.refit.items.DOOR.repair.lap

    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 20 mm, lap: 25 mm}    # at jobs.refit.items.DOOR.repair.sanded

    jobs.refit.items.DOOR.repair: {feather: 20 mm}    # note at jobs.refit.items.DOOR.repair.lap

    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 25 mm, lap: 24.9 mm}    # warning at jobs.refit.items.STEP.repair.lap

    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 25.9 mm, lap: 26 mm}    # at jobs.refit.items.STEP.repair.sanded

    Given second good
    jobs.rails.items.RAIL.repair: {lap: 1 in}
    jobs.rails.items.LOCKER.repair: {sanded: 3 in, lap: 0.98 in}    # warning at jobs.rails.items.LOCKER.repair.lap
To put right
    Overlap the new coats by at least 25 mm onto sound existing coating that has been abraded matt; on large flat parts continue to the next edge or trim line.
"""

from specgen.model.job import Repair
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Job,
    Path,
    Problem,
    Problems,
    Quantity,
    Spec,
    date,
    rule,
    table,
)

_LAPS = table("repair_laps")


@rule("REP001", on=Job, severity=ERROR, source=LOGIC)
def lap_wide_enough(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        if item.repair is not None:
            yield from _judge(item.id, item.repair, ("items", item.id, "repair"))


def _judge(item: str, repair: Repair, path: Path) -> Problems:
    row = _LAPS.row("use", "general")
    least = Quantity.of("length", int(row["lap_mm"]), "mm", row["lap_mm"])
    if repair.lap is None:
        what = f"the repair of {item} cannot be assessed: no overlap is stated; the published minimum is {least}"
        yield Problem((*path, "lap"), what, f"write repair.lap: {least} or more", NOTE, _LAPS.row_citation(row))
    elif repair.lap < least:
        what = f"the new coats of {item} overlap the existing coating by {repair.lap}; the published minimum is {least}"
        yield Problem((*path, "lap"), what, severity=WARNING, source=_LAPS.row_citation(row))
    elif repair.sanded is not None and repair.sanded < repair.lap:
        what = f"the new coats of {item} overlap by {repair.lap}, but the existing coating is abraded only {repair.sanded} wide"
        yield Problem((*path, "sanded"), what, "abrade at least as wide as the overlap")
