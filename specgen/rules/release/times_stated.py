"""REL002 A system in use states when parts may be handled and put into service

Checks
    Each system that a job applies states the minimum time before handling and before return to service.
Why
    Where the paper is silent the vehicle leaves when it looks dry, days before the film bears a strap, a wash or a load.
Passes
    systems.spare: {id: spare, title: Barrier coat, layers: [{id: barrier, role: primer, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1}]}

    Given second good
Fails
    without systems.cab.handle_after    # at systems.cab.handle_after

    without systems.chassis.service_after    # at systems.chassis.service_after

    Given second good
    without systems.touch.handle_after    # at systems.touch.handle_after    # at systems.touch.service_after
    without systems.touch.service_after
To put right
    Write handle_after and service_after from the drying stages of the last coat at the lowest air temperature of the job.
"""

from specgen.facts.placing import jobs_painted_with
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("REL002", on=System, severity=WARNING, source=LOGIC)
def times_stated(system: System, spec: Spec, on: date) -> Problems:
    if not jobs_painted_with(system, spec) or any(layer.product is None for layer in system.layers):
        return
    if system.handle_after is None:
        yield Problem(("handle_after",), f"the system {system.id} does not state when parts may be handled")
    if system.service_after is None:
        yield Problem(("service_after",), f"the system {system.id} does not state when parts may go into service")
