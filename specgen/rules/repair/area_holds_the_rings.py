"""REP003 The area of a repair holds its rings

Checks
    The area of a part under repair, stated or calculated from its shapes, against the least area that the feathered rings and the overlap cover: a quarter of a circle, as at a corner of the part.
Why
    Paint is ordered and spots are measured for the area stated; where not even the rings of one small spot fit into it, either the area or the rings are wrong.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: yes}]
    jobs.refit.items.DOOR.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    preparations.sand-steel.steps.sand.abrasive: P180

    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    jobs.refit.items.STEP.repair: {feather: 75 mm, sanded: 200 mm, lap: 25 mm}
    jobs.refit.items.STEP.area: 0.0079 m2
Fails
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes}]
    jobs.refit.items.STEP.repair: {feather: 75 mm, sanded: 200 mm, lap: 25 mm}
    jobs.refit.items.STEP.area: 0.0078 m2    # at jobs.refit.items.STEP.repair

    Given second good
    jobs.rails.items.LOCKER.repair: {feather: 3 in, sanded: 3 in, lap: 2 in}
    jobs.rails.items.LOCKER.area: 0.3 ft2    # at jobs.rails.items.LOCKER.repair
To put right
    Correct the area of the repaired places on one part, or the widths of the rings.
"""

from fractions import Fraction

from specgen.facts.job.quantities import quantities
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, show
from specgen.trade.area import CIRCLE


@rule("REP003", on=Job, severity=WARNING, source=LOGIC)
def area_holds_the_rings(job: Job, spec: Spec, on: date) -> Problems:
    areas = quantities(job, spec).areas
    for item in job.items:
        if item.repair is None or item.id not in areas:
            continue
        feather, lap = (_metres(width) for width in (item.repair.feather, item.repair.lap))
        # each existing coat is feathered by so much
        reach = feather * max(len(item.old_coats), 1) + lap
        least, area = CIRCLE * (reach / 2) ** 2, areas[item.id].quantity.to("m2") / max(item.count, 1)
        if area < least:
            one, rings = (Quantity.of("area", figure, "m2") for figure in (area, least))
            what = f"the area of one part of {item.id} is {show(one)}; its rings alone cover at least {show(rings)}"
            yield Problem(("items", item.id, "repair"), what)


def _metres(width: Quantity | None) -> Fraction:
    return width.to("m") if width is not None else Fraction(0)
