"""CLI003 No part exceeds the continuous service temperature of its coats

Checks
    The service temperature of each item, against the maximum continuous service temperature of every product of its system.
Why
    Above its limit a film yellows, softens or loses adhesion; the weakest coat governs for the whole system.
Passes
    jobs.refit.items.DOOR.service_temperature: 80 degC

    Given second good
    jobs.lids.items.FRAME.service_temperature: 200 degF
    jobs.lids.items.LID.service_temperature: 180 degF
Fails
    jobs.refit.items.DOOR.service_temperature: 85 degC    # at jobs.refit.items.DOOR.service_temperature

    jobs.refit.items.DOOR.service_temperature: 80.1 degC    # at jobs.refit.items.DOOR.service_temperature

    jobs.refit.items.STEP.service_temperature: 60 degC    # note at jobs.refit.items.STEP.service_temperature

    Given second good
    jobs.lids.items.FRAME.service_temperature: 200.1 degF    # at jobs.lids.items.FRAME.service_temperature
    jobs.lids.items.LID.service_temperature: 181 degF    # also CLI003 at jobs.lids.items.LID.service_temperature
To put right
    Choose a system in which every product is rated for the temperature, or shield the part.
"""

from specgen.rules.kit import ERROR, LOGIC, NOTE, Concern, Job, Problem, Problems, Spec, date, rule


@rule("CLI003", on=Job, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def service_heat(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        system = spec.system_of(job, item)
        if item.service_temperature is None or system is None:
            continue
        path = ("items", item.id, "service_temperature")
        for product in dict.fromkeys(layer.product for layer in system.layers if layer.product is not None):
            stated = spec.products[product].service_temperature
            limit = stated.continuous_max if stated is not None else None
            if limit is None:
                what = f"{item.id} reaches {item.service_temperature} in service; cannot be assessed: {product} states no continuous limit"
                yield Problem(path, what, severity=NOTE)
            elif item.service_temperature > limit:
                yield Problem(
                    path,
                    f"{item.id} reaches {item.service_temperature} in service; the continuous limit of {product} is {limit}",
                )
