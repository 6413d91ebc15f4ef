"""FLM006 A stated total can decide something

Checks
    A total minimum below the sum of the layers' minima, or a total maximum above the sum of their maxima.
Why
    Such a total is met by every film that meets its layers: it looks like a requirement and is none.
Passes
    systems.cab.total: {min: 100 um, max: 170 um}
Fails
    systems.cab.total: {min: 80 um, max: 180 um}    # at systems.cab.total.min

    systems.cab.total: {min: 95 um, max: 200 um}    # at systems.cab.total.max
To put right
    Set the total between the sums, or drop it.
"""

from specgen.facts.layer.sums import sum_of
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("FLM006", on=System, severity=WARNING, source=LOGIC)
def total_decides(system: System, spec: Spec, on: date) -> Problems:
    if system.total is None:
        return
    least, most = sum_of(system, "min"), sum_of(system, "max")
    if system.total.min is not None and least is not None and system.total.min < least:
        yield Problem(
            ("total", "min"), f"total minimum {system.total.min} is below the {least} the layers give already"
        )
    if system.total.max is not None and most is not None and system.total.max > most:
        yield Problem(
            ("total", "max"), f"total maximum {system.total.max} is above the {most} the layers allow already"
        )
