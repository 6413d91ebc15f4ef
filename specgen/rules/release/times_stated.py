"""REL002 A system in use states when parts may be handled and put into service

Checks
    Each system that a job applies states the minimum time before handling and before return to service; the latter not where the last coat cures in heat alone, which a time does not give (REL008 asks who heats it).
Why
    Where the paper is silent the vehicle leaves when it looks dry, days before the film bears a strap, a wash or a load.
Passes
    systems.spare: {id: spare, title: Barrier coat, layers: [{id: barrier, role: primer, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1}]}

    Given second good
Fails
    without systems.cab.handle_after    # at systems.cab.handle_after

    without systems.chassis.service_after    # at systems.chassis.service_after

    products.clear.drying: [{id: hand, stage: dry-to-handle, time: 8 h, air: 15 degC}, {id: cure, stage: fully-cured, time: 1 h, air: 200 degC}]
    jobs.refit.scope: Doors and step; the first run heats the film slowly to 200 °C.
    without systems.cab.handle_after    # at systems.cab.handle_after    # also USU002 at products.clear.drying.cure.air
    without systems.cab.service_after

    Given second good
    without systems.touch.handle_after    # at systems.touch.handle_after    # at systems.touch.service_after
    without systems.touch.service_after
To put right
    Write handle_after and service_after from the drying stages of the last coat at the lowest air temperature of the job.
"""

from specgen.facts.placing import jobs_painted_with
from specgen.facts.product.drying import cures_in_heat_alone
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("REL002", on=System, severity=WARNING, source=LOGIC)
def times_stated(system: System, spec: Spec, on: date) -> Problems:
    if not jobs_painted_with(system, spec) or any(layer.product is None for layer in system.layers):
        return
    if system.handle_after is None:
        yield Problem(("handle_after",), f"the system {system.id} does not state when parts may be handled")
    if system.service_after is None and not cures_in_heat_alone(spec.product_of(system.layers[-1])):
        yield Problem(("service_after",), f"the system {system.id} does not state when parts may go into service")
