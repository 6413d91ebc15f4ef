"""REP001 Repair coats lap far enough on sound paint

Checks
    Items with widths of a repair: the lap of the new coats on the sanded old paint is stated and not below the published 25 mm, and the sanded ring is as wide as the lap.
Why
    A short lap ends on the feathered edge, where the film is thinnest: it lifts there and the ring shows through the finish.
Passes
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}

    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 25 mm, lap: 25 mm}

    Given second good
    jobs.rails.items.LOCKER.repair: {sanded: 2 in, lap: 2 in}
Fails
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 15 mm}    # at jobs.refit.items.DOOR.repair.lap

    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 20 mm, lap: 25 mm}    # at jobs.refit.items.DOOR.repair.sanded

    jobs.refit.items.DOOR.repair: {feather: 20 mm}    # note at jobs.refit.items.DOOR.repair.lap

    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 25 mm, lap: 24.9 mm}    # at jobs.refit.items.STEP.repair.lap

    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 25.9 mm, lap: 26 mm}    # at jobs.refit.items.STEP.repair.sanded

    Given second good
    jobs.rails.items.RAIL.repair: {lap: 1 in}
    jobs.rails.items.LOCKER.repair: {sanded: 3 in, lap: 0.98 in}    # at jobs.rails.items.LOCKER.repair.lap
To put right
    Lap the new coats at least 25 mm on sound old paint that was sanded matt; on large flat parts go to the next edge or line.
"""

from specgen.model.job import Repair
from specgen.rules.kit import LOGIC, NOTE, WARNING, Job, Path, Problem, Problems, Quantity, Spec, date, rule, table

_LAPS = table("repair_laps")


@rule("REP001", on=Job, severity=WARNING, source=_LAPS.row_citation(_LAPS.row("use", "general")))
def lap_wide_enough(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        if item.repair is not None:
            yield from _judge(item.id, item.repair, ("items", item.id, "repair"))


def _judge(item: str, repair: Repair, path: Path) -> Problems:
    row = _LAPS.row("use", "general")
    least = Quantity.of("length", int(row["lap_mm"]), "mm", row["lap_mm"])
    if repair.lap is None:
        what = f"cannot judge: the repair of {item} states no lap; published is at least {least}"
        yield Problem((*path, "lap"), what, f"write lap: {least} or more", severity=NOTE)
    elif repair.lap < least:
        yield Problem(
            (*path, "lap"), f"the new coats of {item} lap {repair.lap} on old paint, published is at least {least}"
        )
    elif repair.sanded is not None and repair.sanded < repair.lap:
        what = f"the new coats of {item} lap {repair.lap}, but the old paint is sanded only {repair.sanded} wide"
        yield Problem((*path, "sanded"), what, "sand as wide as the coats lap, or wider", source=LOGIC)
