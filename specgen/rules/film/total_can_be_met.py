"""FLM004 A stated total can be met by its layers

Checks
    The stated total against the sums of the layers' minima and maxima.
Why
    Where the sums and the total do not meet, no film that is right in every layer can be right in total.
Passes
    systems.cab.total: {min: 95 um, max: 180 um}
Fails
    systems.cab.total: {min: 190 um}    # at systems.cab.total.min

    systems.cab.total: {max: 90 um}    # at systems.cab.total.max
To put right
    Work the total out from its layers, or leave it out.
"""

from specgen.facts.layer.sums import sum_of
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("FLM004", on=System, severity=ERROR, source=LOGIC)
def total_can_be_met(system: System, spec: Spec, on: date) -> Problems:
    if system.total is None:
        return
    least, most = sum_of(system, "min"), sum_of(system, "max")
    if system.total.max is not None and least is not None and least > system.total.max:
        yield Problem(
            ("total", "max"), f"the layers are at least {least} thick, the total is at most {system.total.max}"
        )
    if system.total.min is not None and most is not None and most < system.total.min:
        yield Problem(
            ("total", "min"), f"the layers are at most {most} thick, the total is at least {system.total.min}"
        )
