"""USU008 A stated area agrees with its shapes

Checks
    The stated area of one part, where its shapes are given too, against the area calculated from these, before masking and edge allowance: within a tenth of the larger.
Why
    The packs are ordered for the area. A side left out, or millimetres for centimetres, shows nowhere else before the paint runs out.
Passes
    jobs.refit.items.STEP: {id: STEP, name: Step, count: 4, area: 0.33 m2, shapes: [{id: plate, kind: plate, length: 500 mm, width: 300 mm, sides: 2}]}

    jobs.refit.items.STEP: {id: STEP, name: Step, count: 4, area: 0.27 m2, shapes: [{id: plate, kind: plate, length: 500 mm, width: 300 mm, sides: 2}], masked: [{id: holes, what: holes, area: 0.1 m2}]}

    jobs.refit.items.STEP: {id: STEP, name: Step, count: 4, area: 0.6 m2, shapes: [{id: plate, kind: plate, length: 500 mm, width: 300 mm, sides: 2, count: 2}]}
Fails
    jobs.refit.items.STEP: {id: STEP, name: Step, count: 4, area: 0.34 m2, shapes: [{id: plate, kind: plate, length: 500 mm, width: 300 mm, sides: 2}]}    # at jobs.refit.items.STEP.area

    jobs.refit.items.STEP: {id: STEP, name: Step, count: 4, area: 0.26 m2, shapes: [{id: plate, kind: plate, length: 500 mm, width: 300 mm, sides: 2}]}    # at jobs.refit.items.STEP.area
To put right
    Measure the part, or take the area from its drawing; correct the shapes or the area. The shapes are what the packs are calculated from.
"""

from specgen.facts.job.areas import area_of_shapes
from specgen.facts.usual import proportion
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule, show
from specgen.trade.known import NotKnown


@rule("USU008", on=Job, severity=WARNING, source=LOGIC)
def area_agrees_with_shapes(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        if item.area is None or not item.shapes:
            continue
        found = area_of_shapes(item, ("jobs", job.id, "items", item.id))
        if isinstance(found, NotKnown):
            continue  # what is missing of a shape is told there
        calculated = found[1].quantity
        smaller, larger = sorted((item.area, calculated))
        if larger.base - smaller.base > proportion("area") * larger.base:
            what = f"area of {item.id} {item.area}; its shapes give {show(calculated)}"
            yield Problem(("items", item.id, "area"), what)
