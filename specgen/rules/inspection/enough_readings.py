"""INS010 Enough readings for the acceptance rule

Checks
    Planned areas, spots and readings against what SSPC-PA 2 or ISO 19840 requires for the area of all items measured at the point: in square metres, or by the figures in feet where every item states its area in square feet.
Why
    With too few readings the result is incomplete, never accepted, and the part waits for the inspector to return.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1, spots: 5, readings: 15}

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.readings: {readings: 10}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1, spots: 5, readings: 15}
    jobs.refit.items.DOOR.shapes.skin: {id: skin, kind: plate, length: 1000 mm, width: 1000 mm, sides: 1}
    jobs.refit.items.DOOR.count: 10

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.readings: {readings: 10}
    jobs.refit.items.DOOR.shapes.skin: {id: skin, kind: plate, length: 1000 mm, width: 1000 mm, sides: 1}
    jobs.refit.items.DOOR.count: 3
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1, spots: 5, readings: 15}    # at jobs.refit.inspection.primer-film.readings.areas    # also INS010 at jobs.refit.inspection.primer-film.readings.spots    # also INS010 at jobs.refit.inspection.primer-film.readings.readings
    jobs.refit.items.DOOR.count: 20

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1, spots: 5, readings: 12}    # at jobs.refit.inspection.primer-film.readings.readings

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.readings: {readings: 8}    # at jobs.refit.inspection.primer-film.readings.readings

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1}    # note at jobs.refit.inspection.primer-film.readings.areas
    jobs.refit.items.DOOR.masked: [{id: all, what: all of it, area: 2 m2}]    # also USE009 at jobs.refit.items.DOOR

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1, spots: 10, readings: 30}    # at jobs.refit.inspection.primer-film.readings.areas
    jobs.refit.items.DOOR.shapes.skin: {id: skin, kind: plate, length: 1000 mm, width: 1000 mm, sides: 1}
    jobs.refit.items.DOOR.count: 10
    jobs.refit.items.STEP.system: cab

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 1, spots: 6, readings: 17}    # at jobs.refit.inspection.primer-film.readings.readings

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}
    jobs.refit.inspection.primer-film.readings: {areas: 2, spots: 9, readings: 30}    # at jobs.refit.inspection.primer-film.readings.spots

    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, readings: {spots: 4}, criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 15 um, max: 30 um}}    # at jobs.refit.inspection.base-film.readings.spots
    jobs.refit.inspection.primer-film.readings: {spots: 1}    # also INS013 at jobs.refit.inspection.base-film.criterion.max    # also INS013 at jobs.refit.inspection.base-film.criterion.min
To put right
    Plan at least the number the rule requires; SSPC-PA 2 requires five spots an area and three readings a spot.
"""

from specgen.facts.job.counts import area_at, counts_of_rule
from specgen.facts.job.inspected import film_points
from specgen.model.acceptance import AcceptanceRule
from specgen.rules.kit import ERROR, NOTE, WARNING, Job, Problem, Problems, Spec, date, rule, table
from specgen.trade.known import NotKnown


@rule("INS010", on=Job, severity=ERROR, source=table("sspc_pa_2_areas").citation)
def enough_readings(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        plan, rule_named = point.readings, point.criterion.rule
        if plan is None or rule_named not in {AcceptanceRule.PA_2, AcceptanceRule.ISO_19840}:
            continue
        stated = [name for name in ("areas", "spots", "readings") if getattr(plan, name) is not None]
        if not stated:
            continue
        found = area_at(point, job, spec)
        if isinstance(found, NotKnown):
            what = f"{found.why}, so its number of readings cannot be assessed"
            yield Problem(("inspection", point.id, "readings", stated[0]), what, severity=NOTE)
            continue
        area, unit = found
        for name, least in counts_of_rule(rule_named, area, plan, unit).items():
            planned: int | None = getattr(plan, name)
            if planned is not None and planned < least.number:
                weak = None if least.source.basis.confirmed else WARNING
                what = f"{name} planned: {planned}; {rule_named} requires {least.number}"
                yield Problem(("inspection", point.id, "readings", name), what, severity=weak, source=least.source)
